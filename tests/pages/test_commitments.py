"""The commitments' page and its check-ins."""

import re
from html import unescape
from uuid import uuid4

import pytest
from flask.testing import FlaskClient

from service.pages import commitments
from service.use_cases.add_digest import Added, add_digest
from service.use_cases.library import open_digest
from service.use_cases.ports import Desk
from tests.pages.house import DIGEST, WITHOUT_POINTS, Clock
from tests.pages.sittings import form

HOSTILE = "</textarea><script>alert(1)</script>"


def next_page(page: str) -> str:
    """Return the address of the page that follows."""
    found = re.search(r'rel="next" href="([^"]+)"', page)
    assert found is not None
    return unescape(found[1])


def test_without_commitments_the_page_says_what_they_are(client: FlaskClient) -> None:
    """An empty index explains itself instead of showing an empty table."""
    page = client.get("/commitments").text
    assert "No book in this library has asked for anything yet" in page
    assert "<table" not in page


def test_every_commitment_is_listed(
    client: FlaskClient, desk: Desk, clock: Clock, added: Added, monkeypatch: pytest.MonkeyPatch
) -> None:
    """All commitments of all books are listed, page by page of the library, each once."""
    monkeypatch.setattr(commitments, "BOOKS", 1)
    clock.next_day()
    other = DIGEST.replace("title: Silas Marner", "title: Middlemarch")
    add_digest(desk, "middlemarch.md", other.encode())
    first = client.get("/commitments").text
    assert "From the first" not in first
    second = client.get(next_page(first)).text
    assert 'rel="next"' not in second
    assert "From the first" in second
    for page, title in ((first, "Middlemarch"), (second, "Silas Marner")):
        assert page.count('<span class="lines" dir="auto">When the tea is poured') == 1
        assert page.count("This touches your money") == 1
        assert title in page
    assert client.get("/commitments?after=x").status_code == 404


def test_a_check_in_stays_on_its_page(
    client: FlaskClient, desk: Desk, clock: Clock, added: Added, monkeypatch: pytest.MonkeyPatch
) -> None:
    """From a later page a refused check-in comes back open on it, and a kept one leads to it."""
    monkeypatch.setattr(commitments, "BOOKS", 1)
    clock.next_day()
    add_digest(desk, "essays.md", WITHOUT_POINTS.encode())
    first = client.get("/commitments").text
    assert "None of the books on this page asks for anything." in first
    report = form(client.get(next_page(first)).text, "/check-ins")
    refused = client.post(report.action, data=report.hidden)
    assert refused.text.count("<details open>") == 1
    kept = client.post(report.action, data={**report.hidden, "outcome": "kept"})
    assert 'role="status">today: <strong>kept</strong>' in client.get(kept.location).text


def test_the_same_check_in_saying_something_else(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """A form sent again with other words keeps the first, and offers to keep the second beside."""
    report = form(client.get("/commitments").text, "/check-ins")
    client.post(report.action, data={**report.hidden, "outcome": "kept"})
    again = client.post(report.action, data={**report.hidden, "outcome": "missed", "note": "No."})
    assert again.status_code == 409
    assert "This was kept already, saying something else." in again.text
    offered = form(again.text, "/check-ins")
    assert offered.hidden["check_in"] != report.hidden["check_in"]
    client.post(offered.action, data={**offered.hidden, "outcome": "missed", "note": "No."})
    outcomes = [each.outcome for each in open_digest(desk, added.kept.id).check_ins]
    assert sorted(outcomes) == ["kept", "missed"]


def test_a_check_in_is_kept_and_counted(client: FlaskClient, desk: Desk, added: Added) -> None:
    """What came of a commitment today is kept with its note, shown, and counted."""
    report = form(client.get("/commitments").text, "/check-ins")
    sent = {**report.hidden, "outcome": "partly", "note": "  Only twice. "}
    answered = client.post(report.action, data=sent)
    assert answered.status_code == 303
    page = client.get(answered.location).text
    said = '<strong>partly</strong><span class="note lines" dir="auto">Only twice.</span>'
    assert f'role="status">today: {said}' in page
    assert "partly once" in page
    client.post(report.action, data=sent)
    (kept,) = open_digest(desk, added.kept.id).check_ins
    assert (kept.outcome, kept.note, kept.day.isoformat()) == (
        "partly",
        "Only twice.",
        "2026-03-02",
    )


def test_a_check_in_without_an_outcome_is_refused(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """Without an outcome, or with an unknown one, the form comes back with the note in it."""
    report = form(client.get("/commitments").text, "/check-ins")
    for outcome in ({}, {"outcome": "splendid"}):
        refused = client.post(report.action, data={**report.hidden, **outcome, "note": HOSTILE})
        assert refused.status_code == 422
        assert "Say what came of it: kept, partly or missed." in refused.text
        assert refused.text.count("<details open>") == 1
        assert "&lt;/textarea&gt;&lt;script&gt;" in refused.text
        assert "<script>alert" not in refused.text
    assert open_digest(desk, added.kept.id).check_ins == ()


def test_a_note_too_long_is_refused(client: FlaskClient, desk: Desk, added: Added) -> None:
    """A note beyond its bound is refused beside its field, and still there."""
    report = form(client.get("/commitments").text, "/check-ins")
    note = "n" * 2001
    sent = {**report.hidden, "outcome": "kept", "note": note}
    refused = client.post(report.action, data=sent)
    assert refused.status_code == 422
    assert "The note is 2001 characters long; at most 2000 are kept." in refused.text
    assert note in refused.text
    assert open_digest(desk, added.kept.id).check_ins == ()


def test_a_commitment_that_is_not_there(client: FlaskClient, added: Added) -> None:
    """A check-in on nothing is answered with 404 in a sentence."""
    for digest_id in (uuid4(), added.kept.id):
        address = f"/books/{digest_id}/commitments/{uuid4()}/check-ins"
        refused = client.post(address, data={"outcome": "kept"})
        assert refused.status_code == 404
        assert "There is no commitment" in refused.text
