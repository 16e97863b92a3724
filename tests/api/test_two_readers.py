"""Two readers of one library, and one reader with two devices."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any, cast
from uuid import UUID

import pytest
from werkzeug.test import TestResponse

from service.main import create_app
from service.use_cases.ports import Desk
from service.use_cases.records import ReaderId
from tests.api.conftest import Door
from tests.api.shelf import digest_of, fill, link_first_point, made_up

STRANGER = cast("ReaderId", UUID("00000000-0000-4000-8000-0000000000aa"))


@pytest.fixture
def stranger(desk: Desk) -> Door:
    """The API as another reader of the same store uses it."""
    return Door(create_app(replace(desk, reader=STRANGER)).test_client())


@pytest.fixture
def own(door: Door) -> dict[str, str]:
    """The ids of one reader's digest, point, item, answer, link and sheet."""
    fill(door, books=2)
    link = link_first_point(door).json
    item = door.item("across")
    return {
        "digest": digest_of(door, "Walks in the Fens"),
        "point": link["point"],
        "book": link["book"],
        "link": link["id"],
        "item": item,
        "answer": door.answer(item).json["id"],
        "sheet": door.client.post("/api/sheets").json["id"],
    }


_LINK = {"id": made_up("a stranger's link")}
_SENDS: dict[str, Callable[[Door, dict[str, str]], TestResponse]] = {
    "look at an item": lambda it, own: it.client.get(f"/api/items/{own['item']}"),
    "look at its answers": lambda it, own: it.client.get(f"/api/items/{own['item']}/answers"),
    "compare": lambda it, own: it.client.post(
        f"/api/items/{own['item']}/comparison", json={"attempt": {"words": ""}}
    ),
    "answer": lambda it, own: it.answer(own["item"]),
    "look at an answer": lambda it, own: it.client.get(f"/api/answers/{own['answer']}"),
    "take an answer back": lambda it, own: it.client.post(
        f"/api/answers/{own['answer']}/taken-back"
    ),
    "leave out": lambda it, own: it.client.put(f"/api/sitting/left-out/{own['item']}"),
    "take in": lambda it, own: it.client.delete(f"/api/sitting/left-out/{own['item']}"),
    "list links": lambda it, own: it.client.get(f"/api/digests/{own['digest']}/links"),
    "link": lambda it, own: it.client.post(
        f"/api/digests/{own['digest']}/links",
        json={**_LINK, "point": own["point"], "book": own["book"]},
    ),
    "drop a link": lambda it, own: it.client.delete(
        f"/api/digests/{own['digest']}/links/{own['link']}"
    ),
    "price": lambda it, own: it.client.get(f"/api/digests/{own['digest']}/price"),
    "look at a sheet": lambda it, own: it.client.get(f"/api/sheets/{own['sheet']}"),
    "print a sheet": lambda it, own: it.client.get(f"/api/sheets/{own['sheet']}/pdf"),
    "enter a sheet": lambda it, own: it.client.post(
        f"/api/sheets/{own['sheet']}/answers",
        json={"entries": [{"item": own["item"], "grade": "clear"}]},
    ),
}


@pytest.mark.parametrize("what", sorted(_SENDS))
def test_what_is_anothers_is_missing(
    door: Door, stranger: Door, own: dict[str, str], what: str
) -> None:
    """Another reader's id is answered as one that is none, word for word but for the id."""
    refused = _SENDS[what](stranger, own)
    assert refused.status_code == 404
    nowhere = {name: made_up(f"no {name}") for name in own}
    same = _SENDS[what](stranger, nowhere)
    assert same.status_code == 404
    told = refused.text
    for name, known in own.items():
        told = told.replace(known, nowhere[name])
    assert told == same.text
    assert "Fens" not in refused.text
    assert len(door.client.get(f"/api/items/{own['item']}/answers").json["answers"]) == 1
    assert door.client.get("/api/sitting").json["left_out"] == []


def test_no_way_leads_to_anothers_book(door: Door, stranger: Door, own: dict[str, str]) -> None:
    """A stranger's own digest can be linked to nothing of another's, nor another's book chosen."""
    fill(stranger)
    refused = link_first_point(stranger, book=own["book"])
    assert (refused.status_code, refused.json["type"]) == (404, "/api/problems/digest-missing")
    item = stranger.item("source")
    compared = stranger.client.post(
        f"/api/items/{item}/comparison", json={"attempt": {"book": own["book"]}}
    )
    assert compared.json["type"] == "/api/problems/invalid-answer"
    listed: list[dict[str, Any]] = stranger.client.get("/api/items?limit=200").json["items"]
    assert own["item"] not in {each["id"] for each in listed}
    assert own["book"] not in stranger.client.get("/api/items?limit=200").text


def test_one_id_may_be_two_readers(door: Door, stranger: Door, own: dict[str, str]) -> None:
    """An answer and a link under an id that another reader uses are kept, and tell of neither."""
    fill(stranger, books=2)
    assert link_first_point(stranger, id=own["link"]).status_code == 201
    kept = stranger.answer(stranger.item("theme"), id=own["answer"])
    assert kept.status_code == 201
    assert door.client.get(f"/api/answers/{own['answer']}").json["item"] == own["item"]


def test_two_devices_answer_in_the_same_second(door: Door) -> None:
    """Both answers are kept, in the order of their ids, whichever arrived first."""
    fill(door, books=2)
    items = {door.item("theme"): ("phone", "laptop"), door.item("restate"): ("laptop", "phone")}
    for item, devices in items.items():
        for device in devices:
            given = door.answer(
                item,
                "clear" if device == "phone" else "blank",
                id=made_up(f"{device} {item}"),
                answered_at="2026-03-01T21:00:00+00:00",
            )
            assert given.status_code == 201
    for item in items:
        history = door.client.get(f"/api/items/{item}/answers").json["answers"]
        ids = [UUID(each["id"]).bytes for each in history]
        assert len(ids) == 2
        assert ids == sorted(ids, reverse=True)
        latest = history[0]["grade"]
        shown = door.client.get(f"/api/items/{item}").json
        assert (shown["standing"] == "faded") == (latest == "blank")


def test_two_devices_send_one_answer(door: Door) -> None:
    """The same id with the same words is one answer, told as kept already the second time."""
    fill(door, books=2)
    body = {
        "id": made_up("once"),
        "item": door.item("theme"),
        "grade": "clear",
        "answered_at": "2026-03-01T21:00:00+00:00",
        "attempt": {"words": "A clerk walks."},
    }
    first, again = (door.client.post("/api/answers", json=body) for _ in range(2))
    assert (first.status_code, again.status_code) == (201, 200)
    assert first.json == again.json
    history = door.client.get(f"/api/items/{body['item']}/answers").json["answers"]
    assert len(history) == 1


@pytest.mark.parametrize("how", ["mended", "removed"])
def test_an_answer_outlives_its_source(door: Door, how: str) -> None:
    """Given to an item whose source went meanwhile it is a fact, unmarked; comparing is not."""
    fill(door, books=2)
    digest = f"/api/digests/{digest_of(door, 'Walks in the Fens')}"
    item = next(
        each["id"]
        for each in door.client.get("/api/items?kind=theme").json["items"]
        if digest.endswith(each["digest"])
    )
    if how == "removed":
        door.client.delete(digest, headers={"If-Match": "*"})
    else:
        door.change(digest, theme=None)
    given = door.answer(item, "hazy", attempt={"gap": 3})
    assert given.status_code == 201
    assert given.json["suggested"] is None
    shown = door.client.get(f"/api/answers/{given.json['id']}").json
    assert (shown["says"], shown["attempt"]) == (None, "after 3")
    compared = door.client.post(f"/api/items/{item}/comparison", json={"attempt": {"words": "A."}})
    assert compared.json["type"] == "/api/problems/item-missing"


def test_an_edit_between_cue_and_answer_is_told(door: Door) -> None:
    """Numbers of a cue that has fewer by now are refused with what to do; the grade is taken."""
    fill(door, books=2)
    item = door.item("order")
    digest = f"/api/digests/{digest_of(door, 'Walks in the Fens')}"
    points = door.client.get(digest).json["points"]
    extra = {"text": "The clerk buys back his clock.", "locator": "p. 190"}
    door.change(digest, points=[*points, extra])
    attempt = {"order": [4, 3, 2, 1]}
    assert door.answer(item, attempt=attempt, id=made_up("before")).status_code == 201
    door.change(digest, points=points)
    refused = door.answer(item, attempt=attempt, id=made_up("after"))
    assert refused.json["type"] == "/api/problems/invalid-answer"
    assert "give the grade alone" in refused.json["detail"]
    assert door.answer(item, id=made_up("after")).status_code == 201
