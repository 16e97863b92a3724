"""No page of items, and no sitting, holds the answer of what it asks."""

import json
from typing import Any

import pytest
from sqlalchemy import event

from service.store.sql_store import SqlStore
from tests.api.conftest import Clock, Door
from tests.api.shelf import fill, link_first_point

KINDS = {"theme", "next", "restate", "order", "place", "complete", "source", "across"}


@pytest.fixture
def shelf(door: Door) -> Door:
    """A library of six books with an item of every kind."""
    fill(door)
    link_first_point(door)
    return door


def everything(door: Door) -> list[dict[str, Any]]:
    """Return every item, as a program reads them."""
    items: list[dict[str, Any]] = door.client.get("/api/items?limit=200").json["items"]
    return items


def says(door: Door, item: str) -> dict[str, Any]:
    """Return the answer of an item, which costs an attempt."""
    compared = door.client.post(f"/api/items/{item}/comparison", json={"attempt": {"words": ""}})
    answer: dict[str, Any] = compared.json["answer"]
    return answer


def test_no_item_holds_its_answer(shelf: Door) -> None:
    """Of every kind the whole item is read, and its answer's words are nowhere in it.

    Design, rule 4: a cue never contains its answer. What stands on the line for `place` is the
    place in words; the choices of `source` hold the right book among others, and nothing else
    of the item names it.
    """
    found = everything(shelf)
    assert {each["kind"] for each in found} == KINDS
    for item in found:
        answer = says(shelf, item["id"])
        text = json.dumps(item, ensure_ascii=False)
        assert answer["words"] not in text, item["kind"]
        assert not answer["page"] or item["kind"] != "place" or answer["locator"] not in text
        if item["kind"] == "source":
            assert (item["title"], item["author"]) == (None, None)
            assert len(item["cue"]["choices"]) >= 3
            assert text.count("Walks in the Fens") <= 1
        if item["kind"] == "across":
            assert "Walden" not in text


def test_the_sitting_and_single_items_tell_the_same(shelf: Door) -> None:
    """An item has one shape and one content, wherever it is met."""
    asked = shelf.client.get("/api/sitting?minutes=120").json["items"]
    listed = {each["id"]: each for each in everything(shelf)}
    assert asked
    for item in asked:
        alone = shelf.client.get(f"/api/items/{item['id']}").json
        assert alone == listed[item["id"]]
        assert {**item, "due_on": None} == {**alone, "due_on": None}


@pytest.mark.parametrize("path", ["/api/digests?limit=1", "/api/items?limit=1", "/api/sitting"])
def test_a_longer_shelf_costs_no_more_statements(
    door: Door, library: SqlStore, path: str, clock: Clock
) -> None:
    """What is read does not ask the store once a book: with six books as often as with two."""
    counted: list[str] = []

    def note(*of: Any) -> None:
        counted.append(of[2])

    def statements() -> int:
        counted.clear()
        assert door.client.get(path).status_code == 200
        return len(counted)

    fill(door, books=2)
    for engine in {library.engines.reading, library.engines.writing}:
        event.listen(engine, "before_cursor_execute", note)
    few = statements()
    fill(door, books=6)
    clock.move(days=1)
    assert few > 0
    assert statements() <= few
