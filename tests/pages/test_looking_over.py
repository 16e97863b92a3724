"""Looking over: each part beside its words, what is left taken in, headings said once."""

import re

import pytest
from flask.testing import FlaskClient

from cards.intake.heading_words import Part
from service.pages.digest_form import lay
from service.use_cases.add_digest import Added
from service.use_cases.drafts import list_drafts, look_over
from service.use_cases.headings import show_headings
from service.use_cases.library import list_digests, open_digest, open_original
from service.use_cases.ports import Desk
from tests.pages.draft_pages import (
    DraftForm,
    draft_form,
    hand_in,
    listed_as_left,
    looked_over,
    press,
    pressed,
)
from tests.pages.house import DIGEST

LIFELINES = DIGEST.replace(
    "## Commitments", "## Lifelines\n\n* Ask Hanne about the loom every Sunday.\n\n## Commitments"
)
"""A digest with a heading that Catchword does not know, and a line under it."""
LINE = "Ask Hanne about the loom every Sunday."


def over(client: FlaskClient, text: str = DIGEST) -> DraftForm:
    """Hand a digest in to look it over."""
    return looked_over(client, "silas.md", text.encode())


def beside(page: str, stem: str) -> str:
    """Return the words of the file that stand beside a part."""
    row = page.partition(f'id="{stem}"')[2].partition("</li>\n")[0]
    found = re.search(r'<div class="found lines"[^>]*>(.*?)</div>', row, re.DOTALL)
    return found[1] if found else ""


def test_looking_over_keeps_nothing(client: FlaskClient, desk: Desk) -> None:
    """A file looked over is laid out as a draft, and the library is as it was."""
    form = over(client)
    assert "silas.md" in client.get(form.action).text
    assert form.fields["title"] == "Silas Marner"
    assert form.fields["quotations-1-after"] == "3"
    assert list_digests(desk).entries == ()
    assert len(list_drafts(desk).drafts) == 1


def test_each_part_stands_beside_its_words(client: FlaskClient) -> None:
    """Beside each part are the words of the document it was read from, locator and all."""
    page = client.get(over(client).action).text
    assert "Dunstan takes the gold; Raveloe begins to pity. (p. 45)" in beside(page, "points-3")
    assert "(p. 140, after point 3)" in beside(page, "quotations-1")


def test_words_follow_their_part(client: FlaskClient) -> None:
    """A part that is moved, joined or made another keeps the words it came from beside it."""
    form = pressed(client, over(client), "up points-3")
    page = client.get(form.action).text
    assert "Dunstan takes the gold" in beside(page, "points-2")
    form = pressed(client, form, "join points-1")
    page = client.get(form.action).text
    assert "The lot falls on Marner" in beside(page, "points-1")
    assert "Dunstan takes the gold" in beside(page, "points-1")


def test_what_was_not_understood_is_listed(client: FlaskClient, desk: Desk) -> None:
    """Words that were not taken in stand at the foot, and one button takes them in."""
    form = over(client, LIFELINES)
    page = client.get(form.action).text
    assert listed_as_left(page) == [LINE]
    assert page.count(LINE) == page.partition('id="left-heading"')[2].count(LINE)
    assert "Lifelines" in page
    form = pressed(client, form, "take left-1 commitments")
    page = client.get(form.action).text
    assert form.fields["commitments-3-text"] == LINE
    assert form.fields["commitments-3-source"] == "left 1"
    assert LINE in beside(page, "commitments-3")
    assert listed_as_left(page) == []


@pytest.mark.parametrize("into", ["theme", "judgement"])
def test_a_line_is_taken_into_the_theme(client: FlaskClient, into: str) -> None:
    """What belongs to the theme or the judgement is added to it on a line of its own."""
    before = over(client, LIFELINES)
    form = pressed(client, before, f"take left-1 {into}")
    assert form.fields[into].split("\n")[-1] == LINE
    assert listed_as_left(client.get(form.action).text) == []


def test_a_part_taken_out_is_listed_too(client: FlaskClient) -> None:
    """What the reader takes out is not lost from sight: it stands at the foot, to be taken in."""
    form = pressed(client, over(client), "out points-2")
    page = client.get(form.action).text
    assert "Fifteen years of weaving" not in form.fields["points-2-text"]
    assert any("Fifteen years of weaving" in words for words in listed_as_left(page))
    assert "You took it out." in page
    form = pressed(client, form, "take points-2 points")
    assert form.fields["points-3-text"].startswith("Fifteen years of weaving")
    assert form.fields["points-3-locator"] == "p. 20"
    assert listed_as_left(client.get(form.action).text) == []


def test_words_are_taken_in_once(client: FlaskClient) -> None:
    """The button pressed twice, from an old page, takes nothing in a second time."""
    first = over(client, LIFELINES)
    pressed(client, first, "take left-1 points")
    now = draft_form(client.get(first.action).text)
    answered = press(client, now, "take left-1 points")
    assert answered.status_code == 422
    assert "taken in already" in answered.text


def test_a_part_is_split_without_a_script(client: FlaskClient) -> None:
    """An empty line typed into a part splits it there; without one, the page says what to do."""
    form = over(client)
    answered = press(client, form, "split points-1")
    assert answered.status_code == 422
    assert 'id="points-1-text-fault"' in answered.text
    two = "The lot falls on Marner.\r\n\r\nHe leaves Lantern Yard."
    form = draft_form(client.get(form.action).text)
    form = pressed(client, form, "split points-1", **{"points-1-text": two})
    assert form.fields["points-2-text"] == "He leaves Lantern Yard."
    assert form.fields["quotations-1-after"] == "4"


def test_the_focus_goes_where_the_part_went(client: FlaskClient) -> None:
    """After a part is reshaped its page opens with the focus in it."""
    answered = press(client, over(client), "down points-1")
    assert answered.location.endswith("?at=points-2-text")
    page = client.get(answered.location).text
    assert re.search(r'id="points-2-text"[^>]* autofocus>', page)


def test_one_more_row(client: FlaskClient) -> None:
    """One more row of each list can be had, with the focus in it, and nothing typed is lost."""
    for name in ("points", "commitments", "quotations"):
        form = over(client)
        answered = press(client, form, f"more {name}", title="Typed meanwhile")
        page = client.get(answered.location).text
        again = draft_form(page)
        assert again.fields["title"] == "Typed meanwhile"
        fresh = [key for key in again.fields if key.endswith("-text") and key not in form.fields]
        assert len(fresh) == 1
        assert re.search(rf'id="{fresh[0]}"[^>]* autofocus>', page)


def test_orders_that_are_none_change_nothing(client: FlaskClient, desk: Desk) -> None:
    """A button that no page has saves what is typed, and does nothing else."""
    form = over(client)
    before = dict(list_drafts(desk).drafts[0].typed)
    for order in ("", "up", "up nowhere-1", "turn points-1", "turn points-1 points", "take x y"):
        assert press(client, form, order).status_code == 303
    assert press(client, form, "up points-99").status_code == 422
    assert press(client, form, "heading document-99").status_code == 422
    assert list_drafts(desk).drafts[0].typed == before


def test_an_empty_row_cannot_be_reshaped(client: FlaskClient) -> None:
    """A button for a row in which nothing is typed is answered in a sentence."""
    form = pressed(client, over(client), "more points")
    for order in ("join points-4", "split points-4", "up points-4", "turn points-4 quotations"):
        answered = press(client, form, order)
        assert answered.status_code == 422
        assert "There is nothing in this place among the points." in answered.text


def test_a_heading_of_the_readers_own_is_said_once(client: FlaskClient, desk: Desk) -> None:
    """A heading announced is kept, the file is read again with it, and so is every later one."""
    form = over(client, LIFELINES)
    page = client.get(form.action).text
    order = re.search(
        r'value="(heading [a-z]+-\d+)">Read[^<]*<span class="unseen"> \(Lifelines', page
    )
    assert order is not None
    stem = order[1].removeprefix("heading ")
    answered = press(client, form, order[1])
    assert answered.status_code == 422
    assert "Choose the part of a digest" in answered.text
    form = draft_form(client.get(form.action).text)
    answered = press(client, form, order[1], **{f"{stem}-part": "commitments"})
    assert answered.status_code == 303
    page = client.get(answered.location).text
    assert "is a heading of yours from now on" in page
    assert draft_form(page).fields["commitments-1-text"] == LINE
    assert listed_as_left(page) == []
    assert show_headings(desk) == {"Lifelines": Part.COMMITMENTS}
    again = looked_over(client, "other.md", LIFELINES.replace("Silas", "Simon").encode())
    assert again.fields["commitments-1-text"] == LINE


def test_where_a_quotation_stands_is_asked_beside_it(client: FlaskClient) -> None:
    """The question stands beside the quotation, and goes as soon as it is answered."""
    form = over(client)
    assert form.shown.count("Nothing says after which point it stands.") == 1
    assert "Apart from the line" in form.shown
    form = pressed(client, form, "save", **{"quotations-3-after": "0"})
    assert "Nothing says after which point" not in form.shown
    assert "Apart from the line" not in form.shown


def test_the_plot_line_has_each_quotation_in_its_gap(client: FlaskClient) -> None:
    """Without a script the plot line shows each quotation after its point."""
    page = client.get(over(client).action).text
    line = page.partition('<ol class="plot standing"')[2].partition("</ol>")[0]
    gap = line.partition('data-after="3"')[2].partition("</ul>")[0]
    assert "In old days there were angels" in gap


def test_what_is_looked_over_is_kept_with_its_file(client: FlaskClient, desk: Desk) -> None:
    """Kept, the digest says what the form says, and the file comes back byte for byte."""
    answered = press(client, over(client), "keep", theme="Gold, and a child.")
    assert answered.status_code == 303
    (entry,) = list_digests(desk).entries
    assert entry.kept.digest().theme == "Gold, and a child."
    assert open_original(desk, entry.kept.id).content == DIGEST.encode()
    assert list_drafts(desk).drafts == ()


def test_a_corrected_file_corrects_its_digest(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """A book already kept is told of, with its day, and keeping corrects it."""
    form = over(client, DIGEST.replace("Dunstan takes", "Dunsey takes"))
    assert "This book is in your library already" in form.shown
    assert press(client, form, "keep").status_code == 303
    (entry,) = list_digests(desk).entries
    assert entry.kept.id == added.kept.id
    assert open_digest(desk, added.kept.id).kept.digest().points[2].text.startswith("Dunsey")


def test_the_reader_can_say_it_is_another_reading(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """Whatever is suggested, the reader's word decides."""
    assert press(client, over(client), "keep", **{"as": "reading"}).status_code == 303
    assert len(list_digests(desk).entries) == 2


def test_several_digests_in_one_file(client: FlaskClient, desk: Desk) -> None:
    """Each digest of a file is a draft of its own, and the page leads to each."""
    two = (
        "# Walden\n\n## Theme\n\nEnough is plenty.\n\n"
        "# Emma\n\n## Theme\n\nShe is wrong about everyone, herself first.\n"
    )
    answered = hand_in(client, ("two.md", two.encode()))
    drafts = list_drafts(desk).drafts
    assert {draft.typed["title"] for draft in drafts} == {"Walden", "Emma"}
    for draft in drafts:
        assert f'href="/drafts/{draft.id}"' in answered.text
    assert "number 2 in it" in client.get("/drafts").text


def test_advice_and_measure_stand_on_the_page(client: FlaskClient) -> None:
    """Advice stands beside the part it is about, and both pages are measured."""
    form = pressed(client, over(client), "save", theme="Gold.")
    page = client.get(form.action).text
    said = page.partition('id="theme-said"')[2].partition("</div>")[0]
    assert 'class="remark advice"' in said
    assert re.search(r"Page one: \d+ of \d+ lines", form.shown)
    assert re.search(r"Page two: \d+ of \d+ lines", form.shown)


def test_a_draft_of_a_file_that_lost_its_place(client: FlaskClient, desk: Desk) -> None:
    """Hostile words of a file are shown as words beside the parts too."""
    hostile = LIFELINES.replace("Dunstan takes", "`<script>alert(1)</script>` takes").replace(
        "Ask Hanne", "`<script>alert(2)</script>`"
    )
    (draft,) = look_over(desk, "<script>.md", hostile.encode(), lay)
    page = client.get(f"/drafts/{draft.id}").text
    assert "<script>alert" not in page
    assert page.count("&lt;script&gt;alert(1)") >= 2
    assert "&lt;script&gt;alert(2)" in page
