"""The lists of commitments: what wants a word first, what is on course, what is over."""

import re
from html import unescape
from uuid import uuid4

import pytest
from flask.testing import FlaskClient

from cards.commitments import Act, Outcome
from service.pages import commitments
from service.use_cases.add_digest import Added, add_digest
from service.use_cases.check_in import Report, check_in
from service.use_cases.commitments import all_commitments
from service.use_cases.decide import Ruling, decide
from service.use_cases.ports import Desk
from tests.pages.house import DIGEST, Clock
from tests.pages.sittings import form

PAST = DIGEST.replace("* Put 20 euros", "* Write to Clara within two weeks.\n* Put 20 euros")


def next_page(page: str) -> str:
    """Return the address of the page that follows."""
    found = re.search(r'rel="next" href="([^"]+)"', page)
    assert found is not None
    return unescape(found[1])


def under(page: str, heading: str) -> str:
    """Return the part of the list below a heading."""
    found = re.search(rf'<h2 class="caps" id="\w+">{heading}</h2>(.*?)</section>', page, re.DOTALL)
    return found[1] if found else ""


def test_without_commitments_the_page_says_what_they_are(client: FlaskClient) -> None:
    """An empty index explains itself instead of showing an empty list."""
    page = client.get("/commitments").text
    assert "No book in this library has asked for anything yet" in page
    assert "promises" not in page


def test_each_stands_under_its_pace(
    client: FlaskClient, desk: Desk, clock: Clock, added: Added
) -> None:
    """What nothing was said of for two weeks is stalled, with rule, question and offers."""
    page = client.get("/commitments").text
    assert "When the tea is poured" in under(page, "On course")
    assert "This touches your money" in under(page, "On course")
    clock.next_day(28)
    wanting = under(client.get("/commitments").text, "Wanting a word")
    assert "<strong>Stalled</strong>. Nothing was said about the last two weeks" in wanting
    assert "Did you do it?" in wanting
    for act in ("reword", "halve", "pause", "release"):
        assert f'name="act" value="{act}"' in wanting


def test_one_tap_checks_in(client: FlaskClient, desk: Desk, added: Added) -> None:
    """A word is kept by one button, said in the list, counted, and can be taken back there."""
    report = form(client.get("/commitments").text, "/check-ins")
    answered = client.post(report.action, data={**report.hidden, "outcome": "kept"})
    assert answered.status_code == 303
    page = client.get(answered.location).text
    assert '<p class="last-said" role="status">Today: <strong>kept</strong></p>' in page
    assert "1 of 5 this week" in page
    client.post(report.action, data={**report.hidden, "outcome": "kept"})
    back = form(page, "/taken-back")
    gone = client.post(back.action, data=back.hidden, follow_redirects=True).text
    assert "last-said" not in gone
    assert "0 of 5 this week" in gone


def test_what_is_past_on_arrival_waits_for_a_word(
    client: FlaskClient, desk: Desk, clock: Clock
) -> None:
    """A digest handed in long after stalls nothing: what ended before is asked what came of it."""
    kept = add_digest(desk, "silas.md", PAST.encode()).kept
    page = client.get("/commitments").text
    assert not under(page, "Wanting a word")
    waiting = under(page, "Over, and waiting for a word")
    assert "Write to Clara" in waiting
    assert "What came of it?" in waiting
    closing = form(waiting, "/decisions")
    closed = client.post(closing.action, data={**closing.hidden, "outcome": "kept"})
    assert closed.status_code == 303
    assert not under(client.get("/commitments").text, "Over, and waiting for a word")
    over = client.get("/commitments/over").text
    assert "Write to Clara" in over
    assert str(kept.id) in over


def test_few_wait_at_once(client: FlaskClient, desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    """Of many that are over and unsettled some are shown, and how many more wait is said."""
    monkeypatch.setattr(commitments, "UNSETTLED", 1)
    for title in ("Emma", "Middlemarch"):
        text = PAST.replace("title: Silas Marner", f"title: {title}")
        add_digest(desk, f"{title}.md", text.encode())
    page = client.get("/commitments").text
    assert under(page, "Over, and waiting for a word").count('class="promise"') == 1
    assert "One more waits." in page


def test_so_many_are_shown_at_once(
    client: FlaskClient, desk: Desk, added: Added, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What is still asked is listed page by page, each once; a word leads back to its page."""
    monkeypatch.setattr(commitments, "AT_ONCE", 1)
    first = client.get("/commitments").text
    second = client.get(next_page(first)).text
    for page, asked in ((first, "When the tea is poured"), (second, "Put 20 euros")):
        assert page.count('class="promise"') == 1
        assert asked in under(page, "On course")
    assert 'rel="next"' not in second
    assert "From the first" in second
    report = form(second, "/check-ins")
    told = client.post(report.action, data={**report.hidden, "outcome": "kept"})
    assert "Put 20 euros" in client.get(told.location).text
    for odd in ("x", "-1", "9" * 5000):
        assert "When the tea is poured" in client.get(f"/commitments?from={odd}").text


def test_what_is_over_is_listed_page_by_page(
    client: FlaskClient, desk: Desk, clock: Clock, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What ended is listed by pages of the library, each once, with what was said of it."""
    monkeypatch.setattr(commitments, "BOOKS", 1)
    for title in ("Emma", "Middlemarch"):
        clock.next_day()
        text = PAST.replace("title: Silas Marner", f"title: {title}")
        add_digest(desk, f"{title}.md", text.encode())
    first = client.get("/commitments/over").text
    second = client.get(next_page(first)).text
    assert "Middlemarch" in first
    assert "Emma" in second
    assert first.count("Write to Clara") == second.count("Write to Clara") == 1
    assert "From the first" in second
    assert "no check-ins" in first
    assert client.get("/commitments/over?after=x").status_code == 404


def test_the_paused_are_asked_nothing(client: FlaskClient, desk: Desk, added: Added) -> None:
    """A paused commitment stands apart, without the buttons that report on it."""
    (first, *_) = [each for those in all_commitments(desk).by_pace.values() for each in those]
    decide(desk, Ruling(uuid4(), first.id, Act.PAUSE, words="Away."))
    paused = under(client.get("/commitments").text, "Paused")
    assert "When the tea is poured" in paused
    assert "/check-ins" not in paused


def test_other_peoples_words_stay_words(client: FlaskClient, desk: Desk, added: Added) -> None:
    """Markup in a note or in who saw it is shown as it was typed."""
    (first, *_) = [each for those in all_commitments(desk).by_pace.values() for each in those]
    hostile = "</p><script>alert(1)</script>"
    check_in(desk, Report(uuid4(), first.id, Outcome.KEPT, note=hostile, witness=hostile))
    for address in ("/commitments", f"/commitments/{first.id}", "/commitments/over"):
        page = client.get(address).text
        assert "<script>alert" not in page
        assert ("&lt;script&gt;alert(1)" in page) == (address != "/commitments/over")


def test_what_a_word_finished_is_told(
    client: FlaskClient, desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A commitment that is done by the word just said is told of, though it is listed no more."""
    monkeypatch.setattr(commitments, "UNSETTLED", 0)
    text = DIGEST.replace("* Put 20 euros", "* Write to Clara by 1 May 2026.\n* Put 20 euros")
    add_digest(desk, "silas.md", text.encode())
    (letter,) = [
        each
        for those in all_commitments(desk).by_pace.values()
        for each in those
        if "Clara" in each.kept.text
    ]
    sent = {"outcome": "kept", "then": "commitments"}
    page = client.post(f"/commitments/{letter.id}/check-ins", data=sent, follow_redirects=True).text
    assert "“Write to Clara by 1 May 2026.”" in page
    assert 'role="status">Today: <strong>kept</strong>' in page
    assert "Done" in page
