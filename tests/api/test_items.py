"""Items and the sitting through the API."""

from uuid import NAMESPACE_URL, UUID, uuid4, uuid5

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
    assert set(compared) == {"mark", "answer", "due", "graded_first"}
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
def test_the_sitting_goes_on_from_the_facts(door: Door, clock: Clock) -> None:
    """What was answered is not asked again that day; what came back blank comes at the end."""
    today = door.client.get("/api/sitting").json
    assert today["day"] == "2026-03-01"
    assert {each["due_on"] for each in today["items"]} == {"2026-03-01"}
    assert 0 < today["seconds"] <= 60 * today["minutes"]
    first, second = (each["id"] for each in today["items"][:2])
    door.answer(first, "clear")
    door.answer(second, "blank")
    later = [each["id"] for each in door.client.get("/api/sitting").json["items"]]
    assert first not in later
    assert later[-1] == second
    clock.move(days=40)
    again = {each["id"] for each in door.client.get("/api/sitting").json["items"]}
    assert again & {first, second}


@pytest.mark.usefixtures("walks")
def test_minutes_are_asked_for_or_set_for_the_day(door: Door) -> None:
    """In the query for one look, by PUT for the day, and never out of bounds."""
    assert door.client.get("/api/sitting?minutes=3").json["minutes"] == 3
    assert door.client.get("/api/sitting").json["minutes"] == 10
    assert door.client.put("/api/sitting/minutes", json={"minutes": 25}).json["minutes"] == 25
    assert door.client.get("/api/sitting").json["minutes"] == 25
    for wrong in (0, 121):
        assert door.client.get(f"/api/sitting?minutes={wrong}").status_code == 422
        refused = door.client.put("/api/sitting/minutes", json={"minutes": wrong})
        assert refused.status_code == 422


@pytest.mark.usefixtures("walks")
def test_an_item_is_left_out_for_today(door: Door) -> None:
    """Twice is once; taken in again it is asked; an item of nobody's is missing."""
    first = door.client.get("/api/sitting").json["items"][0]["id"]
    for _ in range(2):
        assert door.client.put(f"/api/sitting/left-out/{first}").status_code == 204
    sitting = door.client.get("/api/sitting").json
    assert sitting["left_out"] == [first]
    assert first not in {each["id"] for each in sitting["items"]}
    assert door.client.delete(f"/api/sitting/left-out/{first}").status_code == 204
    assert door.client.get("/api/sitting").json["left_out"] == []
    missing = door.client.put(f"/api/sitting/left-out/{uuid4()}")
    assert missing.json["type"] == "/api/problems/item-missing"


@pytest.mark.parametrize(
    ("kind", "attempt", "said"),
    [
        ("theme", {"gap": 1}, "asked in words"),
        ("theme", {"book": str(uuid5(NAMESPACE_URL, "no book"))}, "asked in words"),
        ("order", {"words": "A, B, C"}, "asked by an order"),
        ("order", {"order": [1, 99]}, "each once at the most"),
        ("complete", {"blanks": ["a"] * 40}, "words are given for"),
        ("complete", {"words": "the whole of it"}, "asked by words for blanks"),
    ],
)
@pytest.mark.usefixtures("walks")
def test_an_attempt_is_given_in_a_way_that_is_asked(
    door: Door, kind: str, attempt: dict[str, object], said: str
) -> None:
    """Another way is refused, pointed at, and no answer is kept with it."""
    item = door.item(kind)
    refused = door.client.post(f"/api/items/{item}/comparison", json={"attempt": attempt})
    assert refused.json["type"] == "/api/problems/invalid-answer"
    assert said in refused.json["detail"]
    assert refused.json["errors"][0]["pointer"] == "#/attempt"
    given = {"id": str(uuid4()), "item": item, "grade": "clear", "attempt": attempt}
    assert door.client.post("/api/answers", json=given).status_code == 422
    assert door.client.get(f"/api/items/{item}/answers").json["answers"] == []


@pytest.mark.usefixtures("walks")
def test_ideas_are_ticked_by_their_numbers(door: Door) -> None:
    """The ticks take the place of what was found, and are kept with the answer."""
    item = door.item("theme")
    compare = f"/api/items/{item}/comparison"
    none = door.client.post(compare, json={"attempt": {"words": "Something."}}).json["mark"]
    assert none["grade"] == "blank"
    every = list(range(1, len(none["ideas"]) + 1))
    attempt = {"words": "Something.", "ticked": every}
    ticked = door.client.post(compare, json={"attempt": attempt}).json["mark"]
    assert ticked["grade"] == "vivid"
    assert all(idea["found"] for idea in ticked["ideas"])
    given = {
        "id": str(uuid4()),
        "item": item,
        "grade": "hazy",
        "attempt": attempt,
        "seconds": 42,
        "graded_first": True,
    }
    assert door.client.post("/api/answers", json=given).status_code == 201
    (kept,) = door.client.get(f"/api/items/{item}/answers").json["answers"]
    assert (kept["suggested"], kept["ticked"]) == ("vivid", every)
    assert (kept["seconds"], kept["graded_first"]) == (42, True)


@pytest.mark.parametrize("seconds", [0, 601, "12", 1.5])
@pytest.mark.usefixtures("walks")
def test_seconds_that_cannot_be_are_refused(door: Door, seconds: object) -> None:
    """From 1 to 600, as a whole number."""
    given = {"id": str(uuid4()), "item": door.item("theme"), "grade": "hazy", "seconds": seconds}
    refused = door.client.post("/api/answers", json=given)
    assert refused.status_code == 422
    assert refused.json["errors"][0]["pointer"] == "#/seconds"


@pytest.mark.parametrize(
    "words",
    ["x" * 19_999, "<script>alert(1)</script>", "Ελένη 海 שלום", "\u0007\u001b[31m"],
    ids=["long", "markup", "other scripts", "control characters"],
)
@pytest.mark.usefixtures("walks")
def test_whatever_is_written_is_compared(door: Door, words: str) -> None:
    """Long, hostile or in another script: it is marked, and comes back as it was sent."""
    item = door.item("theme")
    compared = door.client.post(f"/api/items/{item}/comparison", json={"attempt": {"words": words}})
    assert compared.status_code == 200
    given = {"id": str(uuid4()), "item": item, "grade": "blank", "attempt": {"words": words}}
    assert door.client.post("/api/answers", json=given).json["attempt"] == words


@pytest.mark.usefixtures("walks")
def test_an_attempt_longer_than_is_kept_is_refused(door: Door) -> None:
    """A hundred thousand characters are more than any digest holds."""
    refused = door.client.post(
        f"/api/items/{door.item('theme')}/comparison", json={"attempt": {"words": "x" * 100_000}}
    )
    assert refused.status_code == 422
    assert refused.json["errors"][0]["pointer"] == "#/attempt/words"


def test_an_empty_library_asks_nothing(door: Door) -> None:
    """Without digests the sitting is empty, and nothing is asked later."""
    assert door.client.get("/api/sitting").json == {
        "day": "2026-03-01",
        "items": [],
        "minutes": 10,
        "seconds": 0,
        "spent": 0,
        "next_on": None,
        "left_out": [],
        "away": None,
    }
