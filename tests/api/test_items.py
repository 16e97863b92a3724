"""Items and the sitting through the API."""

from uuid import UUID, uuid4

import pytest

from tests.api.conftest import Clock, Door

SHAPE = {
    "id",
    "kind",
    "digest",
    "title",
    "author",
    "cue",
    "standing",
    "due_on",
    "recall",
    "retired",
}
ANSWERS = {
    "theme": "learns to wait for weather",
    "restate": "ask Hanne one question",
    "place": "p. 14",
}


@pytest.mark.parametrize("kind", ["theme", "place", "restate"])
def test_an_item_shows_its_cue_and_never_its_answer(door: Door, walks: UUID, kind: str) -> None:
    """An item has exactly the fields of the contract, and its answer is in none of them."""
    shown = door.client.get(f"/api/items/{door.item(kind)}")
    assert set(shown.json) == SHAPE
    assert (shown.json["kind"], shown.json["digest"]) == (kind, str(walks))
    assert (shown.json["standing"], shown.json["recall"]) == ("unasked", None)
    assert shown.json["cue"]["question"].endswith(("?", "."))
    assert ANSWERS[kind] not in shown.get_data(as_text=True)


@pytest.mark.usefixtures("walks")
def test_items_are_filtered_and_come_in_pages(door: Door) -> None:
    """Filters hold on every page, and following the links gives each item once."""
    path: str | None = "/api/items?limit=1&kind=place"
    seen = []
    while path:
        page = door.client.get(path)
        seen += page.json["items"]
        link = page.headers.get("Link")
        path = link and link.removeprefix("<").removesuffix('>; rel="next"')
    assert [each["kind"] for each in seen] == ["place", "place"]
    assert len({each["id"] for each in seen}) == 2
    assert door.client.get(f"/api/items?digest={uuid4()}").json["items"] == []


def test_a_retired_item_has_no_cue(door: Door, walks: UUID) -> None:
    """An item whose source is gone is still shown, retired and without a cue."""
    theme = door.item("theme")
    body = {"title": "Walks in the Fens", "author": "E. Fell", "points": [{"text": "A point."}]}
    door.client.put(f"/api/digests/{walks}", json=body, headers={"If-Match": "*"})
    shown = door.client.get(f"/api/items/{theme}").json
    assert (shown["retired"], shown["cue"]) == (True, None)
    refused = door.client.post(f"/api/items/{theme}/comparison", json={"attempt": {"words": "A."}})
    assert refused.json["type"] == "/api/problems/item-missing"


@pytest.mark.usefixtures("walks")
def test_a_comparison_suggests_a_grade_and_keeps_nothing(door: Door) -> None:
    """A comparison gives the mark, the digest's words and a due day by grade; nothing is kept."""
    item = door.item("theme")
    compared = door.client.post(
        f"/api/items/{item}/comparison", json={"attempt": {"words": "A clerk walks the drains."}}
    ).json
    assert set(compared) == {"mark", "answer", "due"}
    assert compared["answer"]["words"].startswith("A clerk leaves his desk")
    assert compared["mark"]["grade"] in {"blank", "hazy", "clear", "vivid"}
    assert compared["mark"]["answer_spans"]
    due = compared["due"]
    assert due["blank"] <= due["hazy"] <= due["clear"] <= due["vivid"]
    assert door.client.get(f"/api/items/{item}/answers").json == {"answers": [], "next": None}


@pytest.mark.parametrize(
    ("attempt", "pointer"),
    [
        ({}, "#/attempt"),
        ({"words": "a", "gap": 1}, "#/attempt"),
        ({"gap": -1}, "#/attempt/gap"),
        ({"page": 1, "landmarks_seen": 1}, "#/attempt/landmarks_seen"),
        ("words", "#/attempt"),
    ],
)
@pytest.mark.usefixtures("walks")
def test_an_attempt_is_given_in_exactly_one_way(door: Door, attempt: object, pointer: str) -> None:
    """An attempt in no way, in two ways, or out of bounds is refused and pointed at."""
    refused = door.client.post(
        f"/api/items/{door.item('place')}/comparison", json={"attempt": attempt}
    )
    assert refused.status_code == 422
    assert [each["pointer"] for each in refused.json["errors"]] == [pointer]


@pytest.mark.usefixtures("walks")
def test_the_sitting_asks_what_is_most_at_risk_first(door: Door, clock: Clock) -> None:
    """Of two items answered on one day, the forgotten one is asked first, and neither before."""
    today = door.client.get("/api/sitting").json
    assert today["day"] == "2026-03-01"
    assert {each["due_on"] for each in today["items"]} == {"2026-03-01"}
    first, second = (each["id"] for each in today["items"][:2])
    door.answer(first, "clear")
    door.answer(second, "blank")
    assert first not in {each["id"] for each in door.client.get("/api/sitting").json["items"]}
    clock.move(days=40)
    order = [each["id"] for each in door.client.get("/api/sitting").json["items"]]
    assert order.index(second) < order.index(first)


def test_an_empty_library_asks_nothing(door: Door) -> None:
    """Without digests the sitting is empty, and nothing is asked later."""
    assert door.client.get("/api/sitting").json == {
        "day": "2026-03-01",
        "items": [],
        "next_on": None,
    }
