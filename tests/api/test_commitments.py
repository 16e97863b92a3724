"""The commitments of the library through the API."""

from uuid import UUID, uuid4

import pytest

from tests.api.conftest import WALKS, Clock, Door


def report(door: Door, digest: UUID, outcome: str, **more: object) -> dict[str, object]:
    """Check in on the first commitment of a digest, and return the fact."""
    commitment = door.client.get(f"/api/digests/{digest}").json["commitments"][0]["id"]
    sent = {
        "id": str(uuid4()),
        "digest": str(digest),
        "commitment": commitment,
        "outcome": outcome,
        **more,
    }
    kept = door.client.post("/api/check-ins", json=sent)
    assert kept.status_code == 201
    fact: dict[str, object] = kept.json
    return fact


def test_commitments_are_listed_with_what_came_of_them(
    door: Door, walks: UUID, clock: Clock
) -> None:
    """Each has its book, words and caution, its check-ins counted and the last of them whole."""
    missed = report(door, walks, "missed", note="Rain.")
    clock.move(hours=1)
    report(door, walks, "kept", day="2026-02-27")
    listed = door.client.get("/api/commitments")
    assert listed.status_code == 200
    assert "Link" not in listed.headers
    assert (listed.json["day"], listed.json["next"]) == ("2026-03-01", None)
    first, second = listed.json["commitments"]
    assert first == {
        "id": missed["commitment"],
        "digest": str(walks),
        "title": "Walks in the Fens",
        "author": "E. Fell",
        "number": 1,
        "text": "When the tea is poured, ask Hanne one question about her day.",
        "caution": None,
        "check_ins": {"kept": 1, "partly": 0, "missed": 1},
        "last": missed,
    }
    assert "doctor" in second["caution"]
    assert second["check_ins"] == {"kept": 0, "partly": 0, "missed": 0}
    assert second["last"] is None


def test_following_the_links_gives_every_book_once(door: Door, clock: Clock) -> None:
    """Page after page of one digest each gives every digest's commitments, newest first."""
    for number in range(3):
        door.add(WALKS.replace("Walks in the Fens", f"Volume {number}"), f"{number}.md")
        clock.move(minutes=1)
    seen = []
    path: str | None = "/api/commitments?limit=1"
    while path:
        page = door.client.get(path)
        seen += [each["title"] for each in page.json["commitments"]]
        link = page.headers.get("Link")
        path = link and link.removeprefix("<").removesuffix('>; rel="next"')
    assert seen == [f"Volume {number}" for number in (2, 2, 1, 1, 0, 0)]


@pytest.mark.parametrize("query", ["cursor=x", "limit=0", "limit=201", "digest=1"])
def test_a_query_that_cannot_be_is_refused(door: Door, query: str) -> None:
    """A cursor that is none, a limit out of bounds and an unknown parameter are refused."""
    refused = door.client.get(f"/api/commitments?{query}")
    assert (refused.status_code, refused.json["type"]) == (422, "/api/problems/invalid-request")


def test_commitments_are_only_looked_at(door: Door) -> None:
    """Commitments are changed with their digest: any other method is refused."""
    assert door.client.post("/api/commitments", json={}).status_code == 405


def test_the_list_of_digests_counts_standings(door: Door, walks: UUID) -> None:
    """A digest in the list says how many of its items stand how."""
    door.answer(door.item("theme"), "blank")
    (entry,) = door.client.get("/api/digests").json["digests"]
    assert entry["id"] == str(walks)
    assert entry["standings"] == {"unasked": 11, "settling": 0, "held": 0, "faded": 1}
