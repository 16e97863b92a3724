"""Steps of `writing.feature`."""

import re
from datetime import timedelta

import pytest
from pytest_bdd import parsers, scenarios, then, when

from features.draft_steps import Desktop
from service.use_cases.drafts import list_drafts
from service.use_cases.library import list_digests
from tests.pages.draft_pages import draft_form, hand_in, looked_over, press

scenarios("writing.feature")

PARAGRAPH = (
    "He plants, builds, reckons and walks, and each of these is told with what it cost. " * 8
)


@pytest.fixture
def desktop(mira) -> Desktop:
    return Desktop.of(mira)


@when(parsers.parse('Mira begins a digest of "{title}" with the theme "{theme}"'))
def begins(desktop, title, theme):
    desktop.opens("/write")
    desktop.presses("save", title=title, theme=theme)


@when("she closes the page and comes back a day later")
def comes_back(mira, desktop):
    mira.noted = dict(desktop.form.fields)
    mira.now += timedelta(days=1)
    (draft,) = list_drafts(mira.desk).drafts
    desktop.opens(f"/drafts/{draft.id}")


@when(parsers.parse('she writes the point "{point}"'))
def writes_a_point(desktop, point):
    desktop.presses("save", **{"points-1-text": point})


@when("she keeps it")
def keeps(desktop):
    desktop.keeps()


@when(parsers.parse('Mira sends the same blank page with the title "{title}" twice'))
def sends_twice(desktop, title):
    desktop.opens("/write")
    for _ in range(2):
        assert press(desktop.client, desktop.form, "live", title=title).status_code == 200


@when("she pastes a theme of two pages")
def pastes(desktop):
    desktop.presses("save", theme="\n".join([PARAGRAPH] * 12))


@when("she opens it in two windows")
def two_windows(desktop):
    desktop.windows = [draft_form(desktop.page()), draft_form(desktop.page())]


@when(parsers.parse('she changes the theme to "{theme}" in the {window}'))
def changes_in(desktop, theme, window):
    form = desktop.windows[("first", "second").index(window)]
    desktop.answer = press(desktop.client, form, "live", theme=theme)


@when("Mira takes a blank digest away as a Word document")
def takes_a_blank(desktop):
    desktop.answer = desktop.client.get("/write/blank.docx")
    assert desktop.answer.headers["Content-Disposition"] == "attachment; filename=digest.docx"


@when("she hands that blank in unfilled")
def hands_it_in(desktop):
    desktop.answer = hand_in(desktop.client, ("digest.docx", desktop.answer.data))


@then("what she typed is as she left it")
def as_she_left_it(mira, desktop):
    assert desktop.form.fields == mira.noted


@then(
    parsers.parse('her library holds "{title}" with {points:d} point and {quotations:d} quotations')
)
@then(
    parsers.parse(
        'her library holds "{title}" with {points:d} points and {quotations:d} quotations'
    )
)
def library_holds(mira, title, points, quotations):
    (entry,) = list_digests(mira.desk).entries
    digest = entry.kept.digest()
    assert digest.title == title
    assert (len(digest.points), len(digest.quotations)) == (points, quotations)


@then("she has no drafts")
def no_drafts(mira):
    assert list_drafts(mira.desk).drafts == ()


@then("she has one draft")
def one_draft(mira):
    assert len(list_drafts(mira.desk).drafts) == 1


@then("she is told how many lines of page one are used")
def told_how_many(desktop):
    assert re.search(r"Page one: \d+ of \d+ lines", desktop.form.shown)


@then("she is told that page one is over, and what to cut")
def told_what_to_cut(desktop):
    assert re.search(r"Page one: \d+ of \d+ lines[^.]*too many", desktop.form.shown)
    assert re.search(r'class="remark cut">[^<]*lines?', desktop.page())


@then("advice stands beside the theme")
def advice_beside(desktop):
    said = desktop.page().partition('id="theme-said"')[2].partition("</div>")[0]
    assert 'class="remark advice"' in said


@then("the second window offers both")
def offers_both(desktop):
    assert desktop.answer.status_code == 409
    assert "Go on with what is typed here" in desktop.answer.text
    assert "Open what was kept elsewhere" in desktop.answer.text


@then("what she typed in the second window is still in it")
def still_there(desktop):
    form = draft_form(desktop.answer.text)
    assert form.fields["theme"] == "He stays in the woods."


@then("it is refused with a sentence that says nothing has been written in it yet")
def refused(desktop):
    assert desktop.answer.status_code == 422
    assert "nothing has been written in it yet" in desktop.answer.text


@when(parsers.parse('she takes one away as Markdown and fills in "{title}" with a theme'))
def fills_in(mira, desktop, title):
    text = desktop.client.get("/write/blank.md").text
    text = text.replace("[Title of the book]", title)
    mira.noted = re.sub(r"\[What the book comes to[^]]*\]", "Enough is plenty.", text)


@when("she hands it in to look it over")
def looks_it_over(mira, desktop):
    desktop.form = looked_over(desktop.client, "digest.md", mira.noted.encode())


@then("her draft holds what she filled in, and nothing that was printed on the blank")
def holds_what_was_filled_in(desktop):
    said = {name: words for name, words in desktop.form.fields.items() if words}
    for name in ("revision", "theme-source", "care"):
        said.pop(name, None)
    assert said == {"title": "Walden", "theme": "Enough is plenty."}
