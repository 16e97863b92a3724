"""Check-ins through the API: facts, corrected by others, taken back."""

from typing import Any
from uuid import UUID, uuid4

import pytest
from werkzeug.test import TestResponse

from tests.api.conftest import WALKS, Clock, Door


@pytest.fixture
def commitment(door: Door, walks: UUID) -> str:
    """The id of the first commitment of the one digest."""
    return str(door.client.get(f"/api/digests/{walks}").json["commitments"][0]["id"])


def send(door: Door, about: str, outcome: str = "kept", **more: object) -> TestResponse:
    """Send a check-in."""
    sent = {"id": str(uuid4()), "commitment": about, "outcome": outcome, **more}
    return door.client.post("/api/check-ins", json=sent)


def tally(door: Door) -> dict[str, int]:
    """Return what came of the first commitment, counted."""
    first, *_ = door.client.get("/api/commitments").json["commitments"]
    found: dict[str, int] = first["check_ins"]
    return found


def test_a_check_in_is_kept_whole(door: Door, walks: UUID, commitment: str) -> None:
    """With its day, count, note and witness, and where it can be looked at."""
    more = {"count": 2, "note": "At  breakfast.", "witness": "Hanne", "digest": str(walks)}
    kept = send(door, commitment, day="2026-03-01", **more)
    assert kept.status_code == 201
    fact = kept.json
    assert door.client.get(kept.headers["Location"]).json == fact
    assert {**fact, "id": None} == {
        "id": None,
        "commitment": commitment,
        "outcome": "kept",
        "day": "2026-03-01",
        "reported_at": "2026-03-01T21:40:00+00:00",
        "reported_on": "2026-03-01",
        "note": "At  breakfast.",
        "count": 2,
        "witness": "Hanne",
        "taken_back_on": None,
    }


def test_the_very_same_again_changes_nothing(door: Door, commitment: str, clock: Clock) -> None:
    """It gives the first fact; the same id with another outcome is a conflict."""
    identity = str(uuid4())
    first = send(door, commitment, id=identity).json
    clock.move(hours=1)
    assert send(door, commitment, id=identity).json == first
    refused = send(door, commitment, "missed", id=identity)
    assert (refused.status_code, refused.json["type"]) == (409, "/api/problems/conflict")
    assert tally(door) == {"kept": 1, "partly": 0, "missed": 0}


def test_a_correction_takes_the_place_of_the_former(door: Door, commitment: str) -> None:
    """The former is taken back with it and stays on record; it cannot be corrected twice."""
    former = send(door, commitment).json["id"]
    corrected = send(door, commitment, "partly", instead_of=former)
    assert corrected.status_code == 201
    assert tally(door) == {"kept": 0, "partly": 1, "missed": 0}
    assert door.client.get(f"/api/check-ins/{former}").json["taken_back_on"] == "2026-03-01"
    again = send(door, commitment, "missed", instead_of=former)
    assert (again.status_code, again.json["type"]) == (404, "/api/problems/check-in-missing")
    assert tally(door) == {"kept": 0, "partly": 1, "missed": 0}


def test_taking_back_twice_changes_nothing(door: Door, commitment: str, clock: Clock) -> None:
    """It counts no longer, stays on record, and keeps the day it was first taken back."""
    where = send(door, commitment).headers["Location"]
    assert door.client.delete(where).status_code == 204
    clock.move(days=1)
    assert door.client.delete(where).status_code == 204
    assert door.client.get(where).json["taken_back_on"] == "2026-03-01"
    assert tally(door) == {"kept": 0, "partly": 0, "missed": 0}


@pytest.mark.parametrize(
    ("more", "status", "problem"),
    [
        ({"day": "2026-02-28"}, 422, "invalid"),
        ({"day": "2026-03-02"}, 422, "invalid"),
        ({"day": "2026-02-30"}, 422, "invalid-request"),
        ({"count": 0}, 422, "invalid"),
        ({"count": -1}, 422, "invalid-request"),
        ({"count": 1_001}, 422, "invalid-request"),
        ({"count": "2"}, 422, "invalid-request"),
        ({"outcome": "missed", "count": 1}, 422, "invalid"),
        ({"outcome": "done"}, 422, "invalid-request"),
        ({"note": "n" * 2_001}, 422, "invalid-request"),
        ({"note": "\x00"}, 422, "invalid-request"),
        ({"witness": "w" * 201}, 422, "invalid-request"),
        ({"commitment": str(UUID(int=1))}, 404, "commitment-missing"),
        ({"digest": str(UUID(int=1))}, 404, "commitment-missing"),
        ({"instead_of": str(UUID(int=1))}, 404, "check-in-missing"),
        ({"instead_of": ""}, 422, "invalid-request"),
        ({"grade": "vivid"}, 422, "invalid-request"),
    ],
)
def test_what_cannot_be_a_report_is_refused(
    door: Door, commitment: str, more: dict[str, Any], status: int, problem: str
) -> None:
    """Days that cannot be, counts against the outcome, ids that are not there; none is kept."""
    refused = send(door, commitment, **more)
    assert (refused.status_code, refused.json["type"]) == (status, f"/api/problems/{problem}")
    assert tally(door) == {"kept": 0, "partly": 0, "missed": 0}


def test_a_digest_is_only_checked(door: Door, walks: UUID, commitment: str) -> None:
    """The digest of another book refuses the check-in; its own, or none at all, does not."""
    other = door.add(WALKS.replace("Walks in", "Nights in"), "nights.md").json["digest"]["id"]
    assert send(door, commitment, digest=other).status_code == 404
    assert send(door, commitment, digest=str(walks)).status_code == 201
    assert send(door, commitment, digest=None).status_code == 201


@pytest.mark.parametrize("method", ["GET", "DELETE"])
def test_an_unknown_check_in_is_missing(door: Door, method: str) -> None:
    """Looking at one that is not there, or taking it back, says so."""
    refused = door.client.open(f"/api/check-ins/{UUID(int=1)}", method=method)
    assert (refused.status_code, refused.json["type"]) == (404, "/api/problems/check-in-missing")
