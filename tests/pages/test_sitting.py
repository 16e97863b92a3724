"""The sitting on the pages: asked, compared, graded, taken back, all without a script."""

import re
from uuid import uuid4

import pytest
from flask.testing import FlaskClient

from cards.kinds.base import KindName
from service.use_cases.add_digest import Added
from service.use_cases.answer import show_answer
from service.use_cases.items import item_history
from service.use_cases.ports import Desk
from tests.pages.house import Clock
from tests.pages.sittings import answer, answer_id, asked, compare, form, only

WORDS = "The theft of his gold empties the hearth"


@pytest.fixture
def theme(desk: Desk, added: Added) -> Added:
    """A library of which only the theme is asked today."""
    only(desk, KindName.THEME)
    return added


def test_an_empty_library_says_how_to_add(client: FlaskClient) -> None:
    """Without a book, Today says so and offers the form that adds one."""
    page = client.get("/").text
    assert "No books yet" in page
    assert 'type="file"' in page
    assert 'action="/books"' in page


def test_an_item_is_asked_without_its_answer(client: FlaskClient, theme: Added) -> None:
    """Today asks the theme by title and author, and gives nothing of it away."""
    page = client.get("/").text
    assert "Recall the theme" in page
    assert "Silas Marner" in page
    assert "treachery" not in page


def test_comparison_marks_both_texts(client: FlaskClient, theme: Added) -> None:
    """What was found is marked in both texts, a grade is suggested and chosen, with its day."""
    page = compare(client, words=WORDS).text
    assert page.count("<mark>") >= 3
    blank = "Blank: once more before you stop, then on 3\u00a0March\u00a02026"
    assert f'value="blank" data-due="{blank}' in page
    assert len(re.findall(r'name="grade"[^>]* checked>', page)) == 1
    assert "is suggested" in page


def test_the_source_is_shown_after_every_attempt(client: FlaskClient, theme: Added) -> None:
    """Beside the digest's words stand title and author, the digest, and the way to mend it."""
    page = compare(client, words=WORDS).text
    source = '<p class="source"><em dir="auto">Silas Marner</em>, <span dir="auto">George Eliot<'
    assert source in page
    assert f'href="/books/{theme.kept.id}"' in page
    assert f'href="/books/{theme.kept.id}/mend?then=sitting"' in page


def test_comparison_keeps_nothing(client: FlaskClient, added: Added) -> None:
    """Comparing alone is no answer: the same item is asked again."""
    before = asked(client)
    compare(client, nothing="yes")
    assert asked(client) == before


def test_comparison_asked_for_by_address_leads_back(client: FlaskClient, added: Added) -> None:
    """Typing the comparison's address leads to Today, since there is nothing to compare."""
    action = form(client.get("/").text, "/compare").action
    answered = client.get(action)
    assert (answered.status_code, answered.location) == (303, "/")


def test_an_answer_leads_to_the_next_item(client: FlaskClient, desk: Desk, added: Added) -> None:
    """After an answer the next item is asked, under a line that says what became of the last."""
    before = asked(client)
    kept = answer(client, "clear", nothing="yes")
    assert kept.status_code == 303
    page = client.get(kept.location).text
    assert form(page, "/compare").action.partition("?")[0] != before
    assert re.search(r"<p><em dir=\"auto\">Silas Marner</em>, [^<]+: <strong>clear</strong>", page)
    assert re.search(r"Asked again on \d+\xa0March\xa02026, in \d+ days\.", page)
    assert "Take it back" in page


def test_blank_is_asked_once_more(client: FlaskClient, added: Added) -> None:
    """What came back blank is announced to come once more, and comes before the sitting ends."""
    first = asked(client)
    kept = answer(client, "blank", nothing="yes")
    assert "Once more before you stop, then on" in client.get(kept.location).text
    later = []
    while "That is all for today" not in (page := client.get("/").text):
        later.append(asked(client))
        kept = answer(client, "clear", nothing="yes")
    assert first in later
    assert later[0] != first
    assert "Once more" not in page


def test_sending_an_answer_twice_is_harmless(client: FlaskClient, desk: Desk, theme: Added) -> None:
    """The same form sent twice, as a double click does, makes one answer."""
    compared = form(compare(client, words=WORDS).text, "/answers")
    data = {**compared.hidden, "words": WORDS, "grade": "hazy"}
    first, second = (client.post(compared.action, data=data) for _ in range(2))
    assert first.location == second.location
    item_id = show_answer(desk, answer_id(first.location)).answer.answer.item_id
    assert len(item_history(desk, item_id).answers) == 1


def test_an_item_answered_elsewhere_meanwhile_keeps_that_answer(
    client: FlaskClient, desk: Desk, theme: Added
) -> None:
    """A comparison made before another tab answered adds nothing, and Today says so.

    Nor does an attempt written before it. Coming round again after a blank is no such case.
    """
    written = form(client.get("/").text, "/compare")
    compared = form(compare(client, words=WORDS).text, "/answers")
    kept = answer(client, "blank", words=WORDS)
    item_id = show_answer(desk, answer_id(kept.location)).answer.answer.item_id
    for late in (
        client.post(compared.action, data={**compared.hidden, "words": WORDS, "grade": "vivid"}),
        client.post(written.action, data={**written.hidden, "words": WORDS}),
    ):
        assert late.status_code == 303
        page = client.get(late.location).text
        assert "Nothing was added: <em" in page
        assert "was answered or taken back elsewhere meanwhile." in page
    assert len(item_history(desk, item_id).answers) == 1
    assert "answered=" in answer(client, "clear", words=WORDS).location
    assert len(item_history(desk, item_id).answers) == 2
    for wrong in ("x", str(uuid4())):
        assert "Nothing was added" not in client.get(f"/?elsewhere={wrong}").text


def test_an_answer_id_that_says_something_else_is_a_conflict(
    client: FlaskClient, theme: Added
) -> None:
    """The same answer with another grade is refused with 409, in a sentence."""
    compared = form(compare(client, words=WORDS).text, "/answers")
    data = {**compared.hidden, "words": WORDS}
    client.post(compared.action, data={**data, "grade": "hazy"})
    refused = client.post(compared.action, data={**data, "grade": "vivid"})
    assert refused.status_code == 409
    assert "already kept, and says something else" in refused.text


def test_the_attempt_is_kept_with_the_answer(client: FlaskClient, desk: Desk, theme: Added) -> None:
    """What was written is kept as written, line ends and all, with the grade suggested for it."""
    words = "One line,\nanother <line> & “more”."
    kept = answer(client, "hazy", words=words.replace("\n", "\r\n"))
    shown = show_answer(desk, answer_id(kept.location))
    assert shown.answer.answer.attempt == words
    assert shown.answer.answer.suggested == "blank"


def test_the_seconds_from_the_cue_to_the_grade_are_kept(
    client: FlaskClient, desk: Desk, clock: Clock, theme: Added
) -> None:
    """What passes between the cue and the grade is measured by the server's clock."""
    page = client.get("/").text
    written = form(page, "/compare")
    clock.pass_seconds(30)
    compared = form(
        client.post(written.action, data={**written.hidden, "words": WORDS}).text, "/answers"
    )
    clock.pass_seconds(12)
    data = {**compared.hidden, "words": WORDS, "grade": "clear"}
    kept = client.post(compared.action, data=data)
    assert show_answer(desk, answer_id(kept.location)).answer.answer.seconds == 42


@pytest.mark.parametrize("begun", ["", "x", "2036-01-01T00:00:00+00:00", "2026-03-02T20:00:00"])
def test_seconds_that_cannot_be_right_are_left_out(
    client: FlaskClient, desk: Desk, theme: Added, begun: str
) -> None:
    """An instant that is broken or in the future is no error: nothing was measured."""
    compared = form(compare(client, words=WORDS).text, "/answers")
    data = {**compared.hidden, "words": WORDS, "grade": "clear", "begun": begun}
    kept = client.post(compared.action, data=data)
    assert show_answer(desk, answer_id(kept.location)).answer.answer.seconds is None


def test_the_answer_page_shows_both_sides(client: FlaskClient, theme: Added) -> None:
    """An answer's page shows the reader's words, the digest's, grade, mark, and due day."""
    kept = answer(client, "vivid", words=WORDS)
    page = client.get(f"/answers/{answer_id(kept.location)}").text
    assert page.count("<mark>") >= 3
    assert "Driven out by a friend" in page
    assert re.search(r"<strong>vivid</strong>, where (blank|hazy) (was|would have been)", page)
    assert "it was asked for the first time" in page
    assert "<dt>The mark</dt>" in page


def test_a_later_answer_shows_what_was_expected(
    client: FlaskClient, desk: Desk, theme: Added, clock: Clock
) -> None:
    """An answer to an item known already says how likely it was to come back."""
    answer(client, "hazy", words=WORDS)
    clock.next_day(60)
    only(desk, KindName.THEME)
    kept = answer(client, "clear", words=WORDS)
    page = client.get(f"/answers/{answer_id(kept.location)}").text
    assert "% likely to come back that day" in page


def test_an_answer_can_be_taken_back(client: FlaskClient, added: Added) -> None:
    """Taking an answer back leads to Today, which says so and asks the item again."""
    before = asked(client)
    kept = answer(client, "clear", nothing="yes")
    back = form(client.get(kept.location).text, "/taken-back")
    answered = client.post(back.action)
    assert answered.status_code == 303
    assert "Taken back" in client.get(answered.location).text
    assert asked(client) == before
    assert "taken back" in client.get(f"/answers/{answer_id(kept.location)}").text
    assert client.post(back.action).status_code == 303


def test_a_hostile_attempt_is_shown_as_text(client: FlaskClient, theme: Added) -> None:
    """Whatever is written comes back escaped, in the comparison and on the answer's page."""
    words = "</textarea><script>alert(1)</script>\"'& \u202eevil\u202c {{ 7 * 7 }}"
    page = compare(client, words=words)
    kept = answer(client, "clear", words=words)
    shown = client.get(f"/answers/{answer_id(kept.location)}")
    for text in (page.text, shown.text):
        assert "<script>alert" not in text
        assert "&lt;script&gt;alert(1)" in text
        assert "{{ 7 * 7 }}" in text


@pytest.mark.parametrize(
    "words",
    [
        "\x01\x07\x1b[31m gold \x00\x7f",
        "ذهب الذهب من بيته ليلا",
        "黃金被盜，爐邊空了。",
        "\ud83d gold",
    ],
    ids=["control characters", "Arabic", "Chinese", "half a pair"],
)
def test_words_of_any_kind_are_compared_and_kept(
    client: FlaskClient, desk: Desk, theme: Added, words: str
) -> None:
    """Control characters, other scripts, broken letters: compared, kept and shown, no error."""
    sent = words.encode("utf-8", "replace").decode()
    assert compare(client, words=sent).status_code == 200
    kept = answer(client, "hazy", words=sent)
    shown = show_answer(desk, answer_id(kept.location)).answer.answer
    assert shown.attempt == sent.replace("\x00", "")
    assert client.get(f"/answers/{shown.id}").status_code == 200


def test_a_hundred_kilobytes_are_refused_in_words(client: FlaskClient, theme: Added) -> None:
    """An answer of 100 kB is refused beside its field, in whatever field it comes."""
    refused = compare(client, words="gold " * 20_000)
    assert refused.status_code == 422
    assert "at most 20000 can be compared" in refused.text


def test_the_longest_attempt_is_taken_and_a_longer_one_refused(
    client: FlaskClient, theme: Added
) -> None:
    """20,000 characters are compared and kept; one more is refused, and none of it is lost."""
    longest = "gold " * 4000
    refused = compare(client, words=longest + "!")
    assert refused.status_code == 422
    assert "20001 characters long" in refused.text
    assert longest + "!" in refused.text
    assert answer(client, "hazy", words=longest).status_code == 303


def test_answers_that_cannot_be(client: FlaskClient, theme: Added) -> None:
    """No id, no grade, an unknown grade, an item that is not there: each is refused in words."""
    compared = form(compare(client, words=WORDS).text, "/answers")
    data = {**compared.hidden, "words": WORDS}
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
    assert "Recall the theme" in client.get("/").text


def test_what_the_address_names_wrongly_is_no_matter(client: FlaskClient, theme: Added) -> None:
    """An answer, an item or a digest in the address that is not there leaves Today as it is."""
    for name in ("answered", "elsewhere", "changed", "gone", "left_out", "mended"):
        for wrong in ("x", str(uuid4())):
            page = client.get(f"/?{name}={wrong}")
            assert page.status_code == 200
            assert "Recall the theme" in page.text
            assert '<div class="last">\n</div>' in re.sub(r"\n+", "\n", page.text)
