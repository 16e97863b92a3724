"""The commitments of the library through the API."""

from uuid import UUID, uuid4

import pytest

from tests.api.conftest import WALKS, Clock, Door


def report(door: Door, digest: UUID, outcome: str, **more: object) -> dict[str, object]:
    """Check in on the first commitment of a digest, and return the fact."""
    commitment = door.client.get(f"/api/digests/{digest}").json["commitments"][0]["id"]
    sent = {"id": str(uuid4()), "commitment": commitment, "outcome": outcome, **more}
    kept = door.client.post("/api/check-ins", json=sent)
    assert kept.status_code == 201
    fact: dict[str, object] = kept.json
    return fact


def test_commitments_are_listed_with_what_came_of_them(
    door: Door, walks: UUID, clock: Clock
) -> None:
    """Each has its book, words, caution and measure, its check-ins counted, the last whole."""
    clock.move(days=2)
    missed = report(door, walks, "missed", note="Rain.")
    clock.move(hours=1)
    report(door, walks, "kept", day="2026-03-02")
    listed = door.client.get("/api/commitments")
    assert listed.status_code == 200
    assert "Link" not in listed.headers
    assert (listed.json["day"], listed.json["next"]) == ("2026-03-03", None)
    first, second = listed.json["commitments"]
    stand = first.pop("stand")
    assert first == {
        "id": missed["commitment"],
        "digest": str(walks),
        "title": "Walks in the Fens",
        "author": "E. Fell",
        "number": 1,
        "text": "When the tea is poured, ask Hanne one question about her day.",
        "made_on": "2026-03-01",
        "caution": None,
        "measure": first["measure"],
        "check_ins": {"kept": 1, "partly": 0, "missed": 1},
        "last": missed,
    }
    assert (stand["pace"], stand["rule"], stand["offer"]) == ("on course", "not closed", None)
    assert "doctor" in second["caution"]
    assert second["measure"] == {
        "times": 1,
        "period": "week",
        "every": 1,
        "on": ["SU"],
        "periods": None,
        "deadline": None,
        "minutes": 20,
    }
    assert second["stand"]["progress"] == "0 of 1 this week"
    assert second["check_ins"] == {"kept": 0, "partly": 0, "missed": 0}
    assert second["last"] is None


def test_how_they_stand_is_told_for_any_day(door: Door, walks: UUID, clock: Clock) -> None:
    """Before it came in, none; two weeks of silence on, stalled, with the rule and the offer.

    Source: design, "Stalled, precisely": windows of a week, closed two days after their last day.
    """
    clock.move(days=40)
    paces = {}
    for day in ("2026-02-28", "2026-03-09", "2026-03-11", "2026-03-17"):
        _, sunday = door.client.get(f"/api/commitments?on={day}").json["commitments"]
        paces[day] = sunday["stand"] and sunday["stand"]["pace"]
    assert list(paces.values()) == [None, "on course", "slipping", "stalled"]
    stand = sunday["stand"]
    assert stand["rule"] == "two without"
    assert "Nothing was said about the last two weeks" in stand["said"]
    assert stand["offer"]["question"] == "Did you do it?"
    assert "halve" not in stand["offer"]["acts"], "it touches health"
    assert stand["offer"]["halved"] is None


def test_one_is_laid_open_with_its_facts(door: Door, walks: UUID, clock: Clock) -> None:
    """Windows with their periods, former words, pauses, check-ins and decisions come with it."""
    fact = report(door, walks, "kept")
    commitment = fact["commitment"]
    clock.move(days=10)
    for more in (
        {"act": "reword", "words": "Every evening I will ask Hanne one question."},
        {"act": "pause", "words": "Away."},
    ):
        sent = {"id": str(uuid4()), "commitment": commitment, **more}
        assert door.client.post("/api/decisions", json=sent).status_code == 201
        clock.move(minutes=1)
    found = door.client.get(f"/api/commitments/{commitment}").json
    assert found["text"] == "Every evening I will ask Hanne one question."
    assert found["former"] == ["When the tea is poured, ask Hanne one question about her day."]
    assert found["pauses"] == [{"first": "2026-03-11", "last": None}]
    assert found["stand"]["pace"] == "paused"
    assert found["measure"]["period"] == "day"
    assert found["reports"] == [fact]
    assert [each["act"] for each in found["decisions"]] == ["pause", "reword"]
    assert found["windows"][0]["first"] == "2026-03-11"
    before = door.client.get(f"/api/commitments/{commitment}?on=2026-03-09").json
    assert (before["former"], before["pauses"], before["day"]) == ([], [], "2026-03-09")


@pytest.mark.parametrize(
    ("path", "status", "problem"),
    [
        (f"/{UUID(int=1)}", 404, "commitment-missing"),
        ("/walks", 404, "nothing-here"),
        ("?on=2027-03-03", 422, "invalid"),
        ("?on=tomorrow", 422, "invalid-request"),
        (f"/{UUID(int=1)}?limit=2", 422, "invalid-request"),
    ],
)
def test_what_cannot_be_looked_at_is_refused(
    door: Door, path: str, status: int, problem: str
) -> None:
    """An unknown id, a day that is none or more than a year ahead, a parameter of the list."""
    refused = door.client.get(f"/api/commitments{path}")
    assert (refused.status_code, refused.json["type"]) == (status, f"/api/problems/{problem}")


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
