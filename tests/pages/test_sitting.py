"""The sitting on the pages: asked, compared, graded, taken back, all without a script."""

import re
from dataclasses import replace
from uuid import UUID, uuid4

import pytest
from flask.testing import FlaskClient

from service.use_cases.add_digest import Added, add_digest
from service.use_cases.answer import show_answer
from service.use_cases.items import item_history
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import mend_digest
from service.use_cases.ports import Desk
from tests.pages.house import WITHOUT_POINTS, Clock
from tests.pages.sittings import answer, compare, form

THEME = "The theft of his gold empties the hearth"


def test_an_empty_library_says_how_to_add(client: FlaskClient) -> None:
    """Without a book, Today says so and offers the form that adds one."""
    page = client.get("/").text
    assert "No books yet" in page
    assert 'type="file"' in page
    assert 'action="/books"' in page


def test_the_first_item_is_asked_without_its_answer(client: FlaskClient, added: Added) -> None:
    """Today asks the theme by title and author, says how much is left, and gives nothing away."""
    page = client.get("/").text
    assert "Recall the theme" in page
    assert "Silas Marner" in page
    assert "6 left in this sitting" in page
    assert "treachery" not in page


def test_comparison_marks_both_texts(client: FlaskClient, added: Added) -> None:
    """What was found is marked in both texts, what was missed is dotted, a grade is chosen."""
    page = compare(client, words=THEME).text
    assert page.count("<mark>") >= 3
    assert '<span class="missed">' in page
    blank = "Blank: once more before you stop, then on 3\u00a0March\u00a02026"
    assert f'value="blank" data-due="{blank}' in page
    assert page.count(" checked>") == 1
    assert "is suggested" in page


def test_comparison_keeps_nothing(client: FlaskClient, added: Added) -> None:
    """Comparing alone is no answer: the same item is asked again."""
    compare(client, words=THEME)
    assert "6 left in this sitting" in client.get("/").text


def test_comparison_asked_for_by_address_leads_back(client: FlaskClient, added: Added) -> None:
    """Typing the comparison's address leads to Today, since there is nothing to compare."""
    action = form(client.get("/").text, "/compare").action
    answered = client.get(action)
    assert (answered.status_code, answered.location) == (303, "/")


def test_an_answer_leads_to_the_next_item(client: FlaskClient, added: Added) -> None:
    """After an answer the next item is asked, under a line that says what became of the last."""
    kept = answer(client, "clear", words=THEME)
    assert kept.status_code == 303
    page = client.get(kept.location).text
    assert "5 left in this sitting" in page
    assert "Silas Marner</em>, the theme: <strong>clear</strong>" in page
    assert re.search(r"Asked again on \d+\xa0March\xa02026, in \d+ days\.", page)
    assert "Take it back" in page


def test_blank_is_asked_once_more(client: FlaskClient, added: Added) -> None:
    """What came back blank is announced to come once more, and comes before the sitting ends."""
    kept = answer(client, "blank", nothing="yes")
    page = client.get(kept.location).text
    assert "Once more before you stop, then on" in page
    assert "Recall the theme" not in page
    assert "Recall the theme" in _until(client, "Recall the theme")
    last = client.get(answer(client, "clear", nothing="yes").location).text
    assert "Once more" not in last


def test_sending_an_answer_twice_is_harmless(client: FlaskClient, added: Added) -> None:
    """The same form sent twice, as a double click does, makes one answer."""
    compared = form(compare(client, words=THEME).text, "/answers")
    data = {**compared.hidden, "words": THEME, "grade": "hazy"}
    first, second = (client.post(compared.action, data=data) for _ in range(2))
    assert first.location == second.location
    assert "5 left in this sitting" in client.get("/").text


def test_an_item_answered_elsewhere_meanwhile_keeps_that_answer(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """A comparison made before another tab answered adds nothing, and Today says so.

    Coming round again after a blank is no such case, nor is the same answer sent twice.
    """
    compared = form(compare(client, words=THEME).text, "/answers")
    kept = answer(client, "blank", words=THEME)
    late = client.post(compared.action, data={**compared.hidden, "words": THEME, "grade": "vivid"})
    assert late.status_code == 303
    page = client.get(late.location).text
    assert "Nothing was added: <em" in page
    assert "was answered or taken back elsewhere meanwhile." in page
    item_id = show_answer(desk, _answer_id(kept.location)).answer.answer.item_id
    assert len(item_history(desk, item_id).answers) == 1
    while "Recall the theme" not in client.get("/").text:
        answer(client, "clear", nothing="yes")
    assert "answered=" in answer(client, "clear", words=THEME).location
    assert len(item_history(desk, item_id).answers) == 2
    for wrong in ("x", str(uuid4())):
        assert "Nothing was added" not in client.get(f"/?elsewhere={wrong}").text


def test_an_answer_id_that_says_something_else_is_a_conflict(
    client: FlaskClient, added: Added
) -> None:
    """The same answer with another grade is refused with 409, in a sentence."""
    compared = form(compare(client, words=THEME).text, "/answers")
    data = {**compared.hidden, "words": THEME}
    client.post(compared.action, data={**data, "grade": "hazy"})
    refused = client.post(compared.action, data={**data, "grade": "vivid"})
    assert refused.status_code == 409
    assert "already kept, and says something else" in refused.text


def test_the_attempt_is_kept_with_the_answer(client: FlaskClient, desk: Desk, added: Added) -> None:
    """What was written is kept as written, line ends and all, with the grade suggested for it."""
    words = "One line,\nanother <line> & “more”."
    kept = answer(client, "hazy", words=words.replace("\n", "\r\n"))
    shown = show_answer(desk, _answer_id(kept.location))
    assert shown.answer.answer.attempt == words
    assert shown.answer.answer.suggested == "blank"


def test_the_answer_page_shows_both_sides(client: FlaskClient, added: Added) -> None:
    """An answer's page shows the reader's words, the digest's, grade, expectation and due day."""
    kept = answer(client, "vivid", words=THEME)
    page = client.get(f"/answers/{_answer_id(kept.location)}").text
    assert THEME in page
    assert "Driven out by a friend" in page
    assert "<strong>vivid</strong>, where blank was suggested" in page
    assert "it was asked for the first time" in page


def test_a_later_answer_shows_what_was_expected(
    client: FlaskClient, added: Added, clock: Clock
) -> None:
    """An answer to an item known already says how likely it was to come back."""
    answer(client, "hazy", words=THEME)
    clock.next_day(60)
    page = client.get("/").text
    while "Recall the theme" not in page:
        kept = answer(client, "clear", nothing="yes")
        page = client.get(kept.location).text
    kept = answer(client, "clear", words=THEME)
    page = client.get(f"/answers/{_answer_id(kept.location)}").text
    assert "% likely to come back that day" in page


def test_an_answer_can_be_taken_back(client: FlaskClient, added: Added) -> None:
    """Taking an answer back leads to Today, which says so and asks the item again."""
    kept = answer(client, "clear", words=THEME)
    back = form(client.get(kept.location).text, "/taken-back")
    answered = client.post(back.action)
    assert answered.status_code == 303
    page = client.get(answered.location).text
    assert "Taken back" in page
    assert "6 left in this sitting" in page
    assert "Recall the theme" in page
    assert "taken back" in client.get(f"/answers/{_answer_id(kept.location)}").text
    assert client.post(back.action).status_code == 303


def test_a_place_is_asked_on_the_plot(client: FlaskClient, added: Added) -> None:
    """A quotation is placed among the points, by gap or by page; both ways are offered."""
    page = _until(client, "Place this in the plot")
    assert page.count('name="gap"') == 4
    assert 'name="page"' in page
    assert "before all of these" in page
    assert "after all of these" in page
    compared = compare(client, gap="2").text
    assert "here it stands" in compared
    assert "you said here" in compared
    assert "<em>Hazy</em> is suggested: one place off." in compared


def test_the_plot_can_be_put_out_of_sight(client: FlaskClient, desk: Desk, added: Added) -> None:
    """With the plot hidden no point is shown, and an exact page is suggested as vivid."""
    _until(client, "Place this in the plot")
    page = client.get("/?plot=hidden").text
    assert "Lantern Yard" not in page
    assert 'name="gap"' not in page
    hidden = form(page, "/compare")
    compared = client.post(hidden.action, data={**hidden.hidden, "page": "140"}).text
    assert "<em>Vivid</em> is suggested" in compared
    graded = form(compared, "/answers")
    kept = client.post(graded.action, data={**graded.hidden, "grade": "vivid"})
    shown = show_answer(desk, _answer_id(kept.location)).answer.answer
    assert shown.attempt == "page 140, points out of sight"
    assert shown.suggested == "vivid"


def test_with_the_plot_in_sight_a_page_is_clear_at_best(client: FlaskClient, added: Added) -> None:
    """The exact page beside the points is suggested as clear: the points help."""
    _until(client, "Place this in the plot")
    assert "<em>Clear</em> is suggested" in compare(client, page="140").text


def test_no_place_given_is_asked_for(client: FlaskClient, added: Added) -> None:
    """Comparing without a place is refused beside the field; saying one can't tell is not."""
    _until(client, "Place this in the plot")
    refused = compare(client)
    assert refused.status_code == 422
    assert "or say that you can’t tell" in refused.text
    assert 'aria-describedby="cue gap-fault"' in refused.text
    told = compare(client, nothing="yes")
    assert told.status_code == 200
    assert "You could not tell." in told.text


def test_a_page_that_is_no_number_keeps_what_was_typed(client: FlaskClient, added: Added) -> None:
    """A page that is no number is refused beside its field, with what was typed still in it."""
    _until(client, "Place this in the plot")
    for typed in ("twelve", "0", "-3", "99999999999", "²"):
        refused = compare(client, page=typed)
        assert refused.status_code == 422
        assert "A page is a whole number from 1 to 50000." in refused.text
        assert f'value="{typed}"' in refused.text


def test_places_without_points(client: FlaskClient, desk: Desk) -> None:
    """Without points a quotation is asked by page, or by chapter, with nothing else in sight."""
    add_digest(desk, "essays.md", WITHOUT_POINTS.encode())
    first = client.get("/").text
    assert 'name="page"' in first
    assert 'name="gap"' not in first
    assert "<em>Vivid</em> is suggested" in compare(client, page="50").text
    kept = answer(client, "vivid", page="50")
    second = client.get(kept.location).text
    assert 'name="chapter"' in second
    assert compare(client).status_code == 422
    assert "<em>Hazy</em> is suggested: one chapter off." in compare(client, chapter="8").text


def test_the_end_of_a_sitting(client: FlaskClient, added: Added) -> None:
    """When nothing is left, Today says when something is asked again."""
    for _ in range(6):
        kept = answer(client, "clear", nothing="yes")
    page = client.get(kept.location).text
    assert "That is all for today" in page
    assert "Something is asked again on" in page
    assert "March\u00a02026" in page
    assert "the last of this sitting" not in page


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"gap": "2"}, "After “<span"),
        ({"gap": "0"}, "Before all of them."),
        ({"page": "60"}, "Page 60."),
        ({"page": "60", "plot": "hidden"}, "Page 60, the plot out of sight."),
    ],
)
def test_a_place_is_shown_afterwards_as_it_was_compared(
    client: FlaskClient, added: Added, given: dict[str, str], said: str
) -> None:
    """The page of an answer to a place shows what was said and the plot as the comparison did."""
    _until(client, "Place this in the plot")
    compared = compare(client, **given).text
    shown = client.get(f"/answers/{_answer_id(answer(client, 'hazy', **given).location)}").text
    plot = re.compile(
        r'<p class="said" dir="auto">.*?</p>\s*<ol class="plot told" id="says">.*?</ol>', re.DOTALL
    )
    for page in (compared, shown):
        assert f"<p>{said}" in page
    before, after = plot.search(compared), plot.search(shown)
    assert before is not None
    assert after is not None
    assert before[0] == after[0]


def test_a_place_by_chapter_is_shown_afterwards(client: FlaskClient, desk: Desk) -> None:
    """What was said by chapter is said in words, and so is not being able to tell."""
    add_digest(desk, "essays.md", WITHOUT_POINTS.encode())
    answer(client, "vivid", page="50")
    kept = answer(client, "hazy", chapter="8")
    assert "<p>Chapter 8.</p>" in client.get(f"/answers/{_answer_id(kept.location)}").text


def test_an_answer_outlives_its_plot(client: FlaskClient, desk: Desk, added: Added) -> None:
    """An answer by gap is still shown when its digest has fewer points, or none, by now."""
    _until(client, "Place this in the plot")
    address = f"/answers/{_answer_id(answer(client, 'hazy', gap='3').location)}"
    digest = open_digest(desk, added.kept.id).kept.digest()
    placed = tuple(replace(each, after=None) for each in digest.quotations)
    mend_digest(desk, added.kept.id, replace(digest, points=digest.points[:1], quotations=placed))
    assert "What you said on" in client.get(address).text
    mend_digest(desk, added.kept.id, replace(digest, points=(), quotations=placed[:2]))
    assert "What you said on" in client.get(address).text
    mend_digest(desk, added.kept.id, replace(digest, quotations=()))
    assert "The digest no longer holds it." in client.get(address).text


def test_a_hostile_attempt_is_shown_as_text(client: FlaskClient, added: Added) -> None:
    """Whatever is written comes back escaped, in the comparison and on the answer's page."""
    words = "</textarea><script>alert(1)</script>\"'& \u202eevil\u202c {{ 7 * 7 }}"
    page = compare(client, words=words)
    kept = answer(client, "clear", words=words)
    shown = client.get(f"/answers/{_answer_id(kept.location)}")
    for text in (page.text, shown.text):
        assert "<script>alert" not in text
        assert "&lt;script&gt;alert(1)" in text
        assert "{{ 7 * 7 }}" in text


def test_the_longest_attempt_is_taken_and_a_longer_one_refused(
    client: FlaskClient, added: Added
) -> None:
    """20,000 characters are compared and kept; one more is refused, and none of it is lost."""
    longest = "gold " * 4000
    assert answer(client, "hazy", words=longest).status_code == 303
    refused = compare(client, words=longest + "!")
    assert refused.status_code == 422
    assert "20001 characters long" in refused.text
    assert longest + "!" in refused.text


def test_answers_that_cannot_be(client: FlaskClient, added: Added) -> None:
    """No id, no grade, an unknown grade, an item that is not there: each is refused in words."""
    compared = form(compare(client, words=THEME).text, "/answers")
    data = {**compared.hidden, "words": THEME}
    for sent, sentence in (
        ({**data, "answer": "", "grade": "clear"}, "came without its id"),
        ({**data, "answer": "x", "grade": "clear"}, "came without its id"),
        (data, "Choose how well it came back"),
        ({**data, "grade": "splendid"}, "Choose how well it came back"),
        ({**data, "grade": "clear", "words": "x" * 20_001}, "at most 20000"),
    ):
        refused = client.post(compared.action, data=sent)
        assert refused.status_code == 422
        assert sentence in refused.text
    nowhere = client.post(f"/items/{uuid4()}/answers", data={**data, "grade": "clear"})
    assert nowhere.status_code == 404
    assert "There is no item" in nowhere.text
    assert client.post(f"/items/{uuid4()}/compare", data=data).status_code == 404
    assert client.get(f"/answers/{uuid4()}").status_code == 404
    assert client.post(f"/answers/{uuid4()}/taken-back").status_code == 404
    assert "6 left in this sitting" in client.get("/").text


def test_an_answer_named_wrongly_in_the_address_is_no_matter(
    client: FlaskClient, added: Added
) -> None:
    """A last answer that is not there, or is no id, leaves Today as it is."""
    for wrong in ("x", str(uuid4())):
        assert "Recall the theme" in client.get(f"/?answered={wrong}").text


def _answer_id(location: str) -> UUID:
    return UUID(location.partition("answered=")[2])


def _until(client: FlaskClient, heading: str) -> str:
    """Answer until an item with this heading is asked, and return its page."""
    page = client.get("/").text
    while heading not in page:
        page = client.get(answer(client, "clear", nothing="yes").location).text
    return page
