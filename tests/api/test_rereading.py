"""The re-reading list and re-readings over the API."""

from uuid import uuid4

import pytest

from tests.api.conftest import Clock, Door

LISTED = "digest title author reasons stretches minutes".split()


@pytest.fixture
def forgotten(door: Door, clock: Clock) -> str:
    """The id of a digest whose theme came back blank twice running."""
    digest = door.add().json["digest"]["id"]
    items = door.client.get("/api/items", query_string={"kind": "theme"}).json["items"]
    for _ in range(2):
        door.answer(items[0]["id"], grade="blank")
        clock.move(days=1)
    return digest


def test_an_empty_list(door: Door) -> None:
    """Nothing to open is a list without books."""
    assert door.client.get("/api/re-reading").json["books"] == []
    assert door.client.get("/api/re-readings").json == {"rereadings": []}


def test_a_book_is_listed_with_reasons_stretches_and_minutes(door: Door, forgotten: str) -> None:
    """All that the document names."""
    (book,) = door.client.get("/api/re-reading").json["books"]
    assert sorted(book) == sorted(LISTED)
    assert book["digest"] == forgotten
    assert book["reasons"][0]["reason"] == "theme"
    assert [each["place"] for each in book["stretches"]] == [
        "pp. 11-15",
        "pp. 79-81",
        "pp. 96-98",
        "pp. 149-151",
    ]
    assert book["stretches"][0]["quotations"][0]["text"] == "Mud keeps its own accounts."
    assert book["minutes"] == 28


def test_a_rereading_is_kept_once_looked_at_and_taken_back(door: Door, forgotten: str) -> None:
    """Sent twice it is one fact; taken back it stays on record and counts no longer."""
    sent = {"id": str(uuid4()), "digest": forgotten, "pages": "11-15", "minutes": 12, "note": "Mud"}
    replies = [door.client.post("/api/re-readings", json=sent) for _ in range(2)]
    assert [each.status_code for each in replies] == [201, 201]
    assert replies[0].json == replies[1].json
    assert replies[0].json["helped"]["waiting"] == 1
    assert len(replies[0].json["items"]) == 1
    assert door.client.get("/api/re-reading").json["books"] == []
    assert len(door.client.get("/api/re-readings").json["rereadings"]) == 1
    where = f"/api/re-readings/{sent['id']}"
    assert door.client.get(where).json["pages"] == "11-15"
    assert door.client.delete(where).status_code == 204
    assert door.client.get(where).json["withdrawn_on"] == "2026-03-03"
    assert door.client.get("/api/re-readings").json["rereadings"] == []
    assert len(door.client.get("/api/re-reading").json["books"]) == 1


@pytest.mark.parametrize(
    ("more", "status"),
    [
        ({"day": "2027-01-01"}, 422),
        ({"pages": "1" * 201}, 422),
        ({"minutes": 0}, 422),
        ({"minutes": "12"}, 422),
        ({"note": "x" * 2_001}, 422),
        ({"colour": "red"}, 422),
        ({"digest": str(uuid4())}, 404),
    ],
)
def test_what_cannot_be_kept_is_refused(door: Door, forgotten: str, more, status: int) -> None:
    """A problem document, and nothing is kept."""
    sent = {"id": str(uuid4()), "digest": forgotten, **more}
    reply = door.client.post("/api/re-readings", json=sent)
    assert reply.status_code == status
    assert reply.mimetype == "application/problem+json"
    assert door.client.get("/api/re-readings").json == {"rereadings": []}


def test_what_is_not_there_and_what_contradicts(door: Door, forgotten: str) -> None:
    """404 for no such re-reading, 409 for another under a kept id."""
    for method in ("get", "delete"):
        missing = getattr(door.client, method)(f"/api/re-readings/{uuid4()}")
        assert missing.json["type"].endswith("/re-reading-missing")
    sent = {"id": str(uuid4()), "digest": forgotten, "pages": "1"}
    door.client.post("/api/re-readings", json=sent)
    other = door.client.post("/api/re-readings", json={**sent, "pages": "2"})
    assert other.status_code == 409
