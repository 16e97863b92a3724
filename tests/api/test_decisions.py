"""Decisions about commitments through the API."""

from typing import Any
from uuid import UUID, uuid4

import pytest
from werkzeug.test import TestResponse

from tests.api.conftest import Clock, Door

WEEKLY = {"times": 3, "period": "week"}


@pytest.fixture
def commitment(door: Door, walks: UUID) -> str:
    """The id of the first commitment of the one digest."""
    return str(door.client.get(f"/api/digests/{walks}").json["commitments"][0]["id"])


def send(door: Door, about: str, act: str, **more: object) -> TestResponse:
    """Send a decision."""
    sent = {"id": str(uuid4()), "commitment": about, "act": act, **more}
    return door.client.post("/api/decisions", json=sent)


def opened(door: Door, commitment: str) -> dict[str, Any]:
    """Lay a commitment open."""
    found: dict[str, Any] = door.client.get(f"/api/commitments/{commitment}").json
    return found


def test_a_measure_is_given(door: Door, commitment: str) -> None:
    """It is kept with what was not said, its days in the order of the week, and asked from now."""
    kept = send(door, commitment, "measure", measure={**WEEKLY, "on": ["SA", "MO"]})
    assert kept.status_code == 201
    assert kept.json["measure"] == {
        "times": 3,
        "period": "week",
        "every": 1,
        "on": ["MO", "SA"],
        "periods": None,
        "deadline": None,
        "minutes": None,
    }
    found = opened(door, commitment)
    assert found["measure"] == kept.json["measure"]
    assert found["stand"]["progress"] == "0 of 3 this week"
    assert found["decisions"] == [kept.json]


def test_the_very_same_again_changes_nothing(door: Door, commitment: str, clock: Clock) -> None:
    """A decision sent twice is one, in whatever order its days; another under its id conflicts."""
    identity = str(uuid4())
    measure = {**WEEKLY, "on": ["SA", "MO"]}
    first = send(door, commitment, "measure", id=identity, measure=measure)
    clock.move(hours=1)
    again = send(door, commitment, "measure", id=identity, measure=measure)
    assert (again.status_code, again.json) == (201, first.json)
    other = send(door, commitment, "release", id=identity, words="No.")
    assert (other.status_code, other.json["type"]) == (409, "/api/problems/conflict")
    assert len(opened(door, commitment)["decisions"]) == 1


def test_one_taken_back_holds_no_longer(door: Door, commitment: str) -> None:
    """It stays on record; of a new wording the digest says the former again; twice is nothing."""
    before = opened(door, commitment)["text"]
    made = send(door, commitment, "reword", words="Every evening I will ask Hanne how she is.")
    assert opened(door, commitment)["text"] == "Every evening I will ask Hanne how she is."
    for _ in range(2):
        assert door.client.delete(f"/api/decisions/{made.json['id']}").status_code == 204
    found = opened(door, commitment)
    assert (found["text"], found["former"]) == (before, [])
    assert found["decisions"][0]["taken_back_on"] == "2026-03-01"
    missing = door.client.delete(f"/api/decisions/{UUID(int=1)}")
    assert (missing.status_code, missing.json["type"]) == (404, "/api/problems/decision-missing")


@pytest.mark.parametrize(
    ("act", "more", "status", "problem", "where"),
    [
        ("measure", {}, 422, "invalid", "measure"),
        ("measure", {"measure": {}}, 422, "invalid-request", None),
        ("measure", {"measure": {**WEEKLY, "times": 0}}, 422, "invalid-request", None),
        ("measure", {"measure": {**WEEKLY, "every": 10_000}}, 422, "invalid-request", None),
        ("measure", {"measure": {**WEEKLY, "every": 105}}, 422, "invalid", "measure"),
        ("measure", {"measure": {**WEEKLY, "on": ["XX"]}}, 422, "invalid-request", None),
        ("measure", {"measure": {**WEEKLY, "on": ["1SA"]}}, 422, "invalid", "measure"),
        ("measure", {"measure": {"period": "once", "on": ["MO"]}}, 422, "invalid", "measure"),
        (
            "measure",
            {"measure": {**WEEKLY, "deadline": "2026-02-28"}},
            422,
            "invalid",
            "measure",
        ),
        (
            "measure",
            {"measure": {**WEEKLY, "deadline": "2026-03-10", "periods": 3}},
            422,
            "invalid",
            "measure",
        ),
        ("pause", {"measure": WEEKLY}, 422, "invalid", "measure"),
        ("pause", {"until": "2026-02-01"}, 422, "invalid", "until"),
        ("pause", {"day": "2028-03-01"}, 422, "invalid", "day"),
        ("resume", {}, 422, "invalid", "act"),
        ("renew", {"day": "2026-03-02"}, 422, "invalid", "day"),
        ("move", {"until": "2026-04-01"}, 422, "invalid", "act"),
        ("release", {"words": " "}, 422, "invalid", "words"),
        ("reword", {}, 422, "invalid", "words"),
        ("close", {}, 422, "invalid", "outcome"),
        ("forget", {}, 422, "invalid-request", None),
        ("pause", {"words": "w" * 2_001}, 422, "invalid-request", None),
        ("pause", {"commitment": str(UUID(int=1))}, 404, "commitment-missing", "commitment"),
    ],
)
def test_what_cannot_be_decided_is_refused(
    door: Door,
    commitment: str,
    act: str,
    more: dict[str, Any],
    status: int,
    problem: str,
    where: str | None,
) -> None:
    """What the act needs and lacks, and what contradicts itself, is said; nothing is kept."""
    refused = send(door, commitment, act, **more)
    assert (refused.status_code, refused.json["type"]) == (status, f"/api/problems/{problem}")
    assert refused.json.get("where") == where
    assert not opened(door, commitment)["decisions"]


def test_what_touches_health_is_not_halved(door: Door, walks: UUID) -> None:
    """Halving is refused, with whom to talk to."""
    sunday = door.client.get(f"/api/digests/{walks}").json["commitments"][1]["id"]
    refused = send(door, sunday, "halve")
    assert (refused.status_code, refused.json["where"]) == (422, "act")
    assert "talk to a professional" in refused.json["detail"]
