"""The commitments' page and its check-ins."""

from uuid import uuid4

import pytest
from flask.testing import FlaskClient

from service.use_cases import library
from service.use_cases.add_digest import Added, add_digest
from service.use_cases.library import open_digest
from service.use_cases.ports import Desk
from tests.pages.house import DIGEST
from tests.pages.sittings import form

HOSTILE = "</textarea><script>alert(1)</script>"


def test_without_commitments_the_page_says_what_they_are(client: FlaskClient) -> None:
    """An empty index explains itself instead of showing an empty table."""
    page = client.get("/commitments").text
    assert "No book in this library has asked for anything yet" in page
    assert "<table" not in page


def test_every_commitment_is_listed(
    client: FlaskClient, desk: Desk, added: Added, monkeypatch: pytest.MonkeyPatch
) -> None:
    """All commitments of all books are listed, however many pages the library has."""
    monkeypatch.setattr(library.list_digests, "__defaults__", (None, 1))
    other = DIGEST.replace("title: Silas Marner", "title: Middlemarch")
    add_digest(desk, "middlemarch.md", other.encode())
    page = client.get("/commitments").text
    assert page.count('<span class="lines" dir="auto">When the tea is poured') == 2
    assert "Middlemarch" in page
    assert "Silas Marner" in page
    assert page.count("This touches your money") == 2


def test_a_check_in_is_kept_and_counted(client: FlaskClient, desk: Desk, added: Added) -> None:
    """What came of a commitment today is kept with its note, shown, and counted."""
    report = form(client.get("/commitments").text, "/check-ins")
    sent = {**report.hidden, "outcome": "partly", "note": "  Only twice. "}
    answered = client.post(report.action, data=sent)
    assert answered.status_code == 303
    page = client.get(answered.location).text
    assert 'role="status"><strong>partly</strong>: <span dir="auto">Only twice.</span>' in page
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
