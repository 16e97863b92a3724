"""How much of a book is kept, through the API."""

from uuid import UUID

import pytest

from tests.api.conftest import Door


def test_care_is_steady_until_the_reader_says_otherwise(door: Door, walks: UUID) -> None:
    """The care said is the digest's from then on, under a new tag of it."""
    where = f"/api/digests/{walks}"
    first = door.client.get(f"{where}/care")
    assert (first.json, first.headers["ETag"]) == ({"care": "steady"}, door.tag(where))
    said = door.client.put(
        f"{where}/care", json={"care": "resting"}, headers={"If-Match": door.tag(where)}
    )
    assert (said.status_code, said.json) == (200, {"care": "resting"})
    assert said.headers["ETag"] == door.tag(where) != first.headers["ETag"]
    assert door.client.get(where).json["care"] == "resting"
    known = {"If-None-Match": said.headers["ETag"]}
    assert door.client.get(f"{where}/care", headers=known).status_code == 304


def test_saying_the_same_again_changes_nothing(door: Door, walks: UUID) -> None:
    """The care a book has already leaves its tag as it was."""
    where = f"/api/digests/{walks}"
    before = door.tag(where)
    said = door.client.put(f"{where}/care", json={"care": "steady"}, headers={"If-Match": before})
    assert (said.status_code, said.headers["ETag"]) == (200, before)


def test_a_resting_book_asks_nothing_new(door: Door, walks: UUID) -> None:
    """What is unasked of it waits, and comes back when it rests no more."""
    for care, asked in (("resting", False), ("close", True)):
        door.client.put(
            f"/api/digests/{walks}/care", json={"care": care}, headers={"If-Match": "*"}
        )
        assert bool(door.client.get("/api/sitting").json["items"]) is asked


def test_a_close_book_is_asked_sooner(door: Door, walks: UUID) -> None:
    """After the same answer an item of a close book is due no later than of a resting one."""
    item = door.item("theme")
    door.answer(item)
    due = {}
    for care in ("close", "steady", "resting"):
        door.client.put(
            f"/api/digests/{walks}/care", json={"care": care}, headers={"If-Match": "*"}
        )
        due[care] = door.client.get(f"/api/items/{item}").json["due_on"]
    assert due["close"] <= due["steady"] <= due["resting"]
    assert due["close"] < due["resting"]


@pytest.mark.parametrize("body", [{}, {"care": "dearly"}, {"care": None}, {"care": 1}, {"x": 1}])
def test_what_is_no_care_is_refused(door: Door, walks: UUID, body: dict[str, object]) -> None:
    """Anything but one of the three words is refused with 422, and nothing changes."""
    refused = door.client.put(f"/api/digests/{walks}/care", json=body, headers={"If-Match": "*"})
    assert refused.status_code == 422
    assert door.client.get(f"/api/digests/{walks}/care").json == {"care": "steady"}
