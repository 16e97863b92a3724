"""Answers, check-ins and settings through the API."""

from uuid import UUID, uuid4

import pytest

from tests.api.conftest import Clock, Door

pytestmark = pytest.mark.usefixtures("walks")


def test_an_answer_is_recorded_once_however_often_it_is_sent(door: Door) -> None:
    """The first time is answered 201, the very same again 200, alike and with the same Location."""
    body = {"id": str(uuid4()), "item": door.item("theme"), "grade": "clear"}
    first = door.client.post("/api/answers", json=body)
    again = door.client.post("/api/answers", json=body)
    assert (first.status_code, again.status_code) == (201, 200)
    assert again.json == first.json
    assert first.headers["Location"] == again.headers["Location"] == f"/api/answers/{body['id']}"
    history = door.client.get(f"/api/items/{body['item']}/answers").json["answers"]
    assert [each["id"] for each in history] == [body["id"]]


def test_an_answer_tells_what_it_made_of_its_item(door: Door) -> None:
    """An answer carries the prediction made just before it and the item's next due day."""
    item = door.item("theme")
    first = door.answer(item, "clear", answered_at="2026-02-20T22:00:00+01:00").json
    second = door.answer(item, "hazy", attempt={"words": "A clerk."}).json
    assert (first["predicted"], first["suggested"]) == (None, None)
    assert first["answered_at"] == "2026-02-20T21:00:00+00:00"
    assert first["day"] == "2026-02-20"
    assert 0 < second["predicted"] < 1
    assert second["suggested"] is not None
    assert second["attempt"] == "A clerk."
    assert second["due_on"] > "2026-03-01"
    assert second["standing"] in {"settling", "held"}


def test_another_answer_under_the_same_id_is_a_conflict(door: Door) -> None:
    """An id that is taken by another answer is refused with 409, and the first one stays."""
    kept = door.answer(door.item("theme"), "clear").json
    refused = door.answer(kept["item"], "blank", id=kept["id"])
    assert refused.status_code == 409
    assert refused.json["type"] == "/api/problems/answer-conflict"
    assert door.client.get(f"/api/answers/{kept['id']}").json["grade"] == "clear"


@pytest.mark.parametrize(
    ("change", "status", "problem"),
    [
        ({"item": str(uuid4())}, 404, "item-missing"),
        ({"grade": "splendid"}, 422, "invalid-request"),
        ({"grade": ["clear"]}, 422, "invalid-request"),
        ({"id": "1"}, 422, "invalid-request"),
        ({"id": "{" + "a" * 32 + "}"}, 422, "invalid-request"),
        ({"answered_at": "2026-03-02T21:40:00+00:00"}, 422, "answer-in-future"),
        ({"answered_at": "2026-03-01T20:00:00"}, 422, "invalid-request"),
        ({"answered_at": "2026-02-30T20:00:00Z"}, 422, "invalid-request"),
        ({"answered_at": "0001-01-01T00:00:00+23:59"}, 422, "invalid-request"),
        ({"answered_at": "9999-12-31T23:59:59-23:59"}, 422, "invalid-request"),
        ({"attempt": {"words": "a" * 20_001}}, 422, "invalid-request"),
        ({"stability": 3}, 422, "invalid-request"),
    ],
)
def test_an_answer_that_cannot_be_is_refused_in_words(
    door: Door, change: dict[str, object], status: int, problem: str
) -> None:
    """A missing item, an unknown grade, a date to come and what is malformed are refused."""
    item = door.item("theme")
    refused = door.answer(item, **change) if "item" not in change else door.answer(**change)
    assert (refused.status_code, refused.json["type"]) == (status, f"/api/problems/{problem}")
    assert door.client.get(f"/api/items/{item}/answers").json["answers"] == []


def test_an_answer_is_shown_beside_what_the_digest_says(door: Door) -> None:
    """An answer that is opened has the digest's words with it."""
    kept = door.answer(door.item("theme")).json
    shown = door.client.get(f"/api/answers/{kept['id']}").json
    assert shown.pop("says")["words"].startswith("A clerk leaves his desk")
    assert shown == kept


def test_taking_an_answer_back_restores_its_item(door: Door, clock: Clock) -> None:
    """Taking back, once or twice, leaves the item as before; both facts are kept."""
    kept = door.answer(door.item("theme")).json
    clock.move(minutes=1)
    fact = {"id": str(uuid4())}
    taken = door.client.post(f"/api/answers/{kept['id']}/taken-back", json=fact)
    again = door.client.post(f"/api/answers/{kept['id']}/taken-back")
    assert (taken.status_code, again.status_code) == (200, 200)
    assert taken.json == again.json
    assert taken.json["taken_back_at"] == "2026-03-01T21:41:00+00:00"
    assert (taken.json["due_on"], taken.json["standing"]) == (None, "unasked")
    (one,) = door.client.get(f"/api/items/{kept['item']}/answers").json["answers"]
    assert one["taken_back_at"] is not None


def test_an_answer_that_is_not_there_is_missing(door: Door) -> None:
    """Looking at or taking back an unknown answer is 404 `answer-missing`."""
    for gone in (
        door.client.get(f"/api/answers/{uuid4()}"),
        door.client.post(f"/api/answers/{uuid4()}/taken-back"),
    ):
        assert (gone.status_code, gone.json["type"]) == (404, "/api/problems/answer-missing")


def test_the_history_comes_newest_first_in_pages(door: Door, clock: Clock) -> None:
    """Following the links of a history gives each answer once, the newest first."""
    item = door.item("restate")
    given = []
    for _ in range(5):
        clock.move(days=1)
        given.append(door.answer(item).json["id"])
    seen: list[str] = []
    path: str | None = f"/api/items/{item}/answers?limit=2"
    while path:
        page = door.client.get(path)
        seen += [each["id"] for each in page.json["answers"]]
        clock.move(days=1)
        door.answer(item)
        link = page.headers.get("Link")
        path = link and link.removeprefix("<").removesuffix('>; rel="next"')
    assert seen == given[::-1]


def test_a_check_in_is_a_fact(door: Door, walks: UUID) -> None:
    """A check-in is kept with the day it is about; sent again it is answered alike.

    One that says something else under its id is a conflict.
    """
    commitment = door.client.get(f"/api/digests/{walks}").json["commitments"][0]
    body = {
        "id": str(uuid4()),
        "digest": str(walks),
        "commitment": commitment["id"],
        "outcome": "partly",
        "note": "On two evenings.",
    }
    first = door.client.post("/api/check-ins", json=body)
    again = door.client.post("/api/check-ins", json=body)
    assert (first.status_code, again.status_code) == (201, 201)
    assert first.json == again.json
    assert (first.json["day"], first.json["outcome"]) == ("2026-03-01", "partly")
    refused = door.client.post("/api/check-ins", json={**body, "outcome": "kept"})
    assert (refused.status_code, refused.json["type"]) == (409, "/api/problems/conflict")


@pytest.mark.parametrize(
    ("change", "status", "problem"),
    [
        ({"commitment": str(uuid4())}, 404, "commitment-missing"),
        ({"digest": str(uuid4())}, 404, "commitment-missing"),
        ({"day": "2026-03-03"}, 422, "invalid"),
        ({"outcome": "done"}, 422, "invalid-request"),
        ({"note": "a" * 2_001}, 422, "invalid-request"),
    ],
)
def test_a_check_in_that_cannot_be_is_refused(
    door: Door, walks: UUID, change: dict[str, object], status: int, problem: str
) -> None:
    """An unknown commitment, a day to come and a malformed report are refused in words."""
    commitment = door.client.get(f"/api/digests/{walks}").json["commitments"][0]
    body = {
        "id": str(uuid4()),
        "digest": str(walks),
        "commitment": commitment["id"],
        "outcome": "kept",
        **change,
    }
    refused = door.client.post("/api/check-ins", json=body)
    assert (refused.status_code, refused.json["type"]) == (status, f"/api/problems/{problem}")


def test_settings_are_changed_only_as_they_were_read(door: Door) -> None:
    """Settings change with the tag they were read with, once; a stale or no tag is refused."""
    given = door.client.get("/api/reader")
    wanted = {**given.json, "turns_at": 5, "target": 0.95}
    headers = {"If-Match": given.headers["ETag"]}
    changed = door.client.put("/api/reader", json=wanted, headers=headers)
    assert (changed.status_code, changed.json["turns_at"]) == (200, 5)
    assert door.client.get("/api/reader").headers["ETag"] == changed.headers["ETag"]
    stale = door.client.put("/api/reader", json=wanted, headers=headers)
    assert (stale.status_code, stale.json["type"]) == (412, "/api/problems/settings-changed")
    assert door.client.put("/api/reader", json=wanted).status_code == 428
    known = door.client.get("/api/reader", headers={"If-None-Match": changed.headers["ETag"]})
    assert known.status_code == 304


@pytest.mark.parametrize(
    ("change", "problem"),
    [
        ({"time_zone": "Mars/Olympus"}, "invalid-preference"),
        ({"time_zone": "../etc/passwd"}, "invalid-preference"),
        ({"target": 0.5}, "invalid-request"),
        ({"target": "0.9"}, "invalid-request"),
        ({"turns_at": 24}, "invalid-request"),
        ({"turns_at": 4.5}, "invalid-request"),
        ({"unasked_a_day": -1}, "invalid-request"),
    ],
)
def test_a_setting_outside_its_range_is_refused(
    door: Door, change: dict[str, object], problem: str
) -> None:
    """A time zone that is none and numbers out of range are refused, and nothing is changed."""
    given = door.client.get("/api/reader").json
    refused = door.client.put("/api/reader", json={**given, **change}, headers={"If-Match": "*"})
    assert (refused.status_code, refused.json["type"]) == (422, f"/api/problems/{problem}")
    assert door.client.get("/api/reader").json == given
