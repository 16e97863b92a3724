"""The page on which a commitment is reported on: from the sitting, a calendar, a mail."""

from datetime import date
from uuid import UUID, uuid4

import pytest
from flask.testing import FlaskClient

from cards.kinds.base import KindName
from service.use_cases.add_digest import Added
from service.use_cases.commitments import all_commitments, open_commitment
from service.use_cases.ports import Desk
from tests.pages.house import Clock
from tests.pages.sittings import answer, form, only

HOSTILE = "</textarea><script>alert(1)</script>"


@pytest.fixture
def promised(desk: Desk, added: Added) -> UUID:
    """The first commitment of the digest: five evenings a week."""
    return next(each.id for those in all_commitments(desk).by_pace.values() for each in those)


def test_a_restated_commitment_leads_to_whether_it_was_kept(
    client: FlaskClient, desk: Desk, promised: UUID
) -> None:
    """In the sitting it is restated, then asked about; one word goes on, and is told and undone."""
    only(desk, KindName.RESTATE)
    graded = answer(client, "clear", words="Ask Hanne about her day, five evenings a week.")
    assert f"/commitments/{promised}/check-in" in graded.location
    page = client.get(graded.location).text
    assert "Was it kept?" in page
    assert "So far 0 of 5 this week" in page
    report = form(page, "/check-ins")
    kept = client.post(report.action, data={**report.hidden, "outcome": "kept"})
    assert kept.location.startswith("/?checked=")
    done = client.get(kept.location).text
    assert "<strong>kept</strong>; 1 of 5 this week" in done
    back = form(done, "/taken-back")
    told = client.get(client.post(back.action, data=back.hidden).location).text
    assert "Taken back: kept" in told


def test_what_is_done_for_the_week_is_not_asked_again(
    client: FlaskClient, desk: Desk, promised: UUID
) -> None:
    """When all of the running week is done, a restated commitment leads on to the next item."""
    address = f"/commitments/{promised}/check-ins"
    client.post(address, data={"outcome": "kept", "count": "5"})
    only(desk, KindName.RESTATE)
    graded = answer(client, "clear", words="Ask Hanne about her day.")
    assert graded.location.startswith("/?answered=")


def test_all_that_can_be_said_is_kept(client: FlaskClient, desk: Desk, promised: UUID) -> None:
    """Another day, a count, a note and who saw it come with the word, and lead to the record."""
    report = form(client.get(f"/commitments/{promised}/check-in").text, "/check-ins")
    sent = {"outcome": "partly", "day": "2026-02-28", "count": "2", "note": " On Friday. "}
    kept = client.post(report.action, data={**report.hidden, **sent, "witness": "Hanne"})
    page = client.get(kept.location).text
    assert "<strong>partly</strong>, two deeds, seen by" in page
    assert "(said on 2\N{NO-BREAK SPACE}March\N{NO-BREAK SPACE}2026)" in page
    (fact,) = open_commitment(desk, promised).check_ins
    assert (fact.day, fact.count, fact.note, fact.witness) == (
        date(2026, 2, 28),
        2,
        "On Friday.",
        "Hanne",
    )


def test_a_report_is_corrected(client: FlaskClient, desk: Desk, promised: UUID) -> None:
    """A correction is a report of its own; the former one stays on record as taken back."""
    first = form(client.get(f"/commitments/{promised}/check-in").text, "/check-ins")
    client.post(first.action, data={**first.hidden, "outcome": "kept", "note": "All of it."})
    (fact,) = open_commitment(desk, promised).check_ins
    page = client.get(f"/commitments/{promised}/check-in?instead_of={fact.id}").text
    assert "stays on record as taken back" in page
    assert ">\nAll of it.</textarea>" in page
    again = form(page, "/check-ins")
    client.post(again.action, data={**again.hidden, "outcome": "partly"})
    said = {
        each.outcome.value: each.withdrawn_on for each in open_commitment(desk, promised).check_ins
    }
    assert said == {"kept": date(2026, 3, 2), "partly": None}


@pytest.mark.parametrize(
    ("sent", "said"),
    [
        ({}, "Say what came of it: kept, partly or missed."),
        ({"outcome": "splendid"}, "Say what came of it: kept, partly or missed."),
        ({"outcome": "kept", "day": "2026-03-03"}, "2026-03-03 has not come yet."),
        ({"outcome": "kept", "day": "2026-01-17"}, "was made on 2026-01-18"),
        ({"outcome": "kept", "day": "2026-02-30"}, "This day does not exist."),
        ({"outcome": "kept", "count": "0"}, "What was kept counts one deed or more"),
        ({"outcome": "missed", "count": "2"}, "What was missed counts no deeds"),
        ({"outcome": "kept", "count": "many"}, "The count is a whole number from 0 to 1000."),
        ({"outcome": "kept", "note": "n" * 2001}, "The note is 2001 characters long"),
        ({"outcome": "kept", "witness": "w" * 201}, "The witness is 201 characters long"),
    ],
    ids=lambda value: value[:24] if isinstance(value, str) else "",
)
def test_what_cannot_be_is_refused_with_what_was_typed(
    client: FlaskClient, desk: Desk, promised: UUID, sent: dict[str, str], said: str
) -> None:
    """A report that cannot be comes back with the reason and its fields as typed; none is kept."""
    typed = {"note": HOSTILE} | sent
    refused = client.post(f"/commitments/{promised}/check-ins", data=typed)
    assert refused.status_code == 422
    assert said in refused.text
    assert "<script>alert" not in refused.text
    if "note" not in sent:
        assert "&lt;/textarea&gt;&lt;script&gt;" in refused.text
    assert open_commitment(desk, promised).check_ins == ()


def test_the_same_report_saying_something_else(
    client: FlaskClient, desk: Desk, promised: UUID
) -> None:
    """A form sent again with another word keeps the first, and offers to keep the second beside."""
    report = form(client.get(f"/commitments/{promised}/check-in").text, "/check-ins")
    client.post(report.action, data={**report.hidden, "outcome": "kept"})
    again = client.post(report.action, data={**report.hidden, "outcome": "missed"})
    assert again.status_code == 409
    assert "This was kept already, saying something else." in again.text
    offered = form(again.text, "/check-ins")
    assert offered.hidden["check_in"] != report.hidden["check_in"]
    client.post(offered.action, data={**offered.hidden, "outcome": "missed"})
    assert len(open_commitment(desk, promised).check_ins) == 2


def test_too_many_in_a_day_are_refused(client: FlaskClient, desk: Desk, promised: UUID) -> None:
    """A hundred are kept about a day; the next says that one can count several deeds."""
    for _ in range(100):
        client.post(f"/commitments/{promised}/check-ins", data={"outcome": "kept"})
    refused = client.post(f"/commitments/{promised}/check-ins", data={"outcome": "kept"})
    assert refused.status_code == 422
    assert "One check-in can count several deeds." in refused.text


def test_what_is_not_there(client: FlaskClient, clock: Clock, added: Added) -> None:
    """A commitment or a report nobody made is answered with 404 in a sentence."""
    assert client.get(f"/commitments/{uuid4()}/check-in").status_code == 404
    refused = client.post(f"/commitments/{uuid4()}/check-ins", data={"outcome": "kept"})
    assert refused.status_code == 404
    assert "There is no commitment" in refused.text
    assert client.post(f"/check-ins/{uuid4()}/taken-back").status_code == 404
