"""Every way an attempt can be given, right and amiss, and what a reader may grade without one."""

from typing import Any

import pytest

from tests.api.conftest import Clock, Door
from tests.api.shelf import OTHERS, digest_of, fill, link_first_point, made_up

WITHOUT_POINTS = """# Essays on Weather

by E. Fell

## Theme

Weather is what is left when plans are taken away.

## Quotations

- "Rain is a kind of patience that falls on everybody." (ch. 4)
"""


@pytest.fixture
def shelf(door: Door) -> Door:
    """A library of six books and one of essays, with items asked in every way."""
    fill(door)
    link_first_point(door)
    door.add(WITHOUT_POINTS, "essays.md")
    return door


def asked(door: Door, kind: str, way: str) -> dict[str, Any]:
    """Return the first item of a kind that is asked in a way."""
    found: list[dict[str, Any]] = door.client.get(f"/api/items?kind={kind}&limit=200").json["items"]
    return next(each for each in found if way in each["cue"]["asked"])


def compared(door: Door, item: dict[str, Any], attempt: dict[str, Any]) -> dict[str, Any]:
    """Compare an attempt that must be taken."""
    answered = door.client.post(f"/api/items/{item['id']}/comparison", json={"attempt": attempt})
    assert answered.status_code == 200, answered.json
    found: dict[str, Any] = answered.json
    return found


def refused(door: Door, item: dict[str, Any], attempt: dict[str, Any]) -> str:
    """Compare and answer with an attempt that must be refused, alike; return what is said."""
    compare = door.client.post(f"/api/items/{item['id']}/comparison", json={"attempt": attempt})
    answer = door.answer(item["id"], "vivid", attempt=attempt)
    for each in (compare, answer):
        assert (each.status_code, each.json["type"]) == (422, "/api/problems/invalid-answer")
        assert each.json["where"] == "attempt"
        assert each.json["errors"] == [{"detail": each.json["detail"], "pointer": "#/attempt"}]
    assert compare.json["detail"] == answer.json["detail"]
    assert door.client.get(f"/api/items/{item['id']}/answers").json["answers"] == []
    said: str = answer.json["detail"]
    return said


RIGHT = [
    ("theme", "words", "vivid"),
    ("next", "words", "vivid"),
    ("restate", "words", "vivid"),
    ("across", "words", "clear"),
    ("order", "order", "hazy"),
    ("complete", "blanks", "vivid"),
    ("source", "book", "clear"),
    ("place", "gap", "clear"),
    ("place", "page", "clear"),
    ("place", "chapter", "clear"),
]


@pytest.mark.parametrize(("kind", "way", "least"), RIGHT)
def test_what_the_digest_says_is_right_in_every_way(
    shelf: Door, kind: str, way: str, least: str
) -> None:
    """Given back as the digest has it, an answer is marked as well as its kind allows, and kept.

    Three points in order are hazy, since chance alone does that once in six (reference, part 4);
    a choice of few and a place beside the points are clear.
    """
    grades = ["blank", "hazy", "clear", "vivid"]
    item = asked(shelf, kind, way)
    says = compared(shelf, item, {"words": ""})["answer"]
    attempt = {way: says[way]}
    mark = compared(shelf, item, attempt)["mark"]
    assert grades.index(mark["grade"]) >= grades.index(least), mark["reason"]
    kept = shelf.answer(item["id"], "clear", attempt=attempt).json
    assert kept["suggested"] == mark["grade"]
    assert kept["attempt"]


@pytest.mark.parametrize(("kind", "way"), [(kind, way) for kind, way, _ in RIGHT])
def test_no_other_way_than_those_asked_is_taken(shelf: Door, kind: str, way: str) -> None:
    """Whatever the cue does not ask is refused, pointed at, and nothing is kept."""
    item = asked(shelf, kind, way)
    ways: dict[str, Any] = {
        "words": "Walks in the Fens, by E. Fell",
        "gap": 1,
        "page": 14,
        "chapter": 4,
        "order": [1],
        "blanks": [""],
        "book": digest_of(shelf, "Walks in the Fens"),
    }
    others = [name for name in ways if name not in item["cue"]["asked"]]
    assert len(others) >= len(ways) - 2
    for name in others:
        assert "give the grade alone" in refused(shelf, item, {name: ways[name]})


def test_a_title_typed_is_no_choice_of_a_book(shelf: Door) -> None:
    """Words against a list of books are not marked: reading the list is not recalling."""
    item = asked(shelf, "source", "book")
    said = refused(shelf, item, {"words": "Walks in the Fens, by E. Fell", "ticked": [1]})
    assert said.startswith("This is asked by a book chosen, and the attempt is given in words.")


def test_a_book_is_one_of_the_choices(shelf: Door) -> None:
    """A wrong choice is blank; a book of nobody's, or one that is not offered, is no choice."""
    item = asked(shelf, "source", "book")
    right = compared(shelf, item, {"words": ""})["answer"]["book"]
    offered = [each["id"] for each in item["cue"]["choices"]]
    assert right in offered
    by_others = [each["id"] for each in item["cue"]["choices"] if each["title"] in OTHERS]
    wrong = next(each for each in by_others if each != right)
    assert compared(shelf, item, {"book": wrong})["mark"]["grade"] == "blank"
    shelved = {each["id"] for each in shelf.client.get("/api/digests").json["digests"]}
    for book in [made_up("no book"), *sorted(shelved - set(offered))]:
        assert "none of those to choose among" in refused(shelf, item, {"book": book})


@pytest.mark.parametrize(
    ("kind", "way", "attempt", "said"),
    [
        ("order", "order", {"order": [1, 99]}, "numbers from 1 to 3"),
        ("order", "order", {"order": [4, 1]}, "numbers from 1 to 3"),
        ("place", "gap", {"gap": 4}, "no place 4 among 3"),
        ("complete", "blanks", {"blanks": ["mud"] * 500}, "500 words are given for"),
    ],
)
def test_numbers_beyond_what_is_shown_are_refused(
    shelf: Door, kind: str, way: str, attempt: dict[str, Any], said: str
) -> None:
    """An attempt names only what its cue shows."""
    assert said in refused(shelf, asked(shelf, kind, way), attempt)


@pytest.mark.parametrize(
    ("attempt", "pointer"),
    [
        ({"order": [1, 1]}, "#/attempt/order"),
        ({"order": [0]}, "#/attempt/order/0"),
        ({"order": [1.5]}, "#/attempt/order/0"),
        ({"order": "1 2"}, "#/attempt/order"),
        ({"gap": -1}, "#/attempt/gap"),
        ({"page": 100_000}, "#/attempt/page"),
        ({"chapter": 2**70}, "#/attempt/chapter"),
        ({"blanks": [1]}, "#/attempt/blanks/0"),
        ({"blanks": [""] * 501}, "#/attempt/blanks"),
        ({"blanks": ["x" * 20_001]}, "#/attempt/blanks/0"),
        ({"book": "Walden"}, "#/attempt/book"),
        ({"words": "a", "ticked": [1, 1]}, "#/attempt/ticked"),
        ({"words": "a", "ticked": [0]}, "#/attempt/ticked/0"),
        ({"words": "a", "ticked": [1001]}, "#/attempt/ticked/0"),
        ({"words": "a\x00b"}, "#/attempt/words"),
        ({"words": "\ud800"}, "#/attempt/words"),
        ({"words": None}, "#/attempt/words"),
        ({"book": None}, "#/attempt/book"),
        ({"words": "a", "book": made_up("a book")}, "#/attempt"),
        ({"ticked": [1]}, "#/attempt"),
    ],
)
def test_an_attempt_without_its_shape_is_pointed_at(
    door: Door, attempt: dict[str, Any], pointer: str
) -> None:
    """Twice in an order, out of bounds, of another type, in two ways or none: 422 at the field."""
    fill(door, books=1)
    item = door.item("order")
    for answered in (
        door.client.post(f"/api/items/{item}/comparison", json={"attempt": attempt}),
        door.answer(item, attempt=attempt),
    ):
        assert (answered.status_code, answered.json["type"]) == (
            422,
            "/api/problems/invalid-request",
        )
        assert [each["pointer"] for each in answered.json["errors"]] == [pointer]


@pytest.mark.parametrize(("kind", "way"), [(kind, way) for kind, way, _ in RIGHT])
def test_nothing_may_be_graded_as_the_reader_likes(shelf: Door, kind: str, way: str) -> None:
    """A grade without an attempt, and with one that is empty, is the reader's own to give."""
    item = asked(shelf, kind, way)
    alone = shelf.answer(item["id"], "vivid")
    empty = shelf.answer(item["id"], "vivid", attempt={"words": "  "})
    assert (alone.status_code, empty.status_code) == (201, 201)
    assert (alone.json["grade"], alone.json["suggested"]) == ("vivid", None)
    assert (empty.json["grade"], empty.json["suggested"]) == ("vivid", "blank")


def test_some_of_the_words_left_out_may_be_missing(shelf: Door) -> None:
    """Blanks that stay empty, or are not sent, count as not come back."""
    item = asked(shelf, "complete", "blanks")
    wanted = compared(shelf, item, {"words": ""})["answer"]["blanks"]
    none = compared(shelf, item, {"blanks": [""] * len(wanted)})["mark"]
    assert none["grade"] == "blank"
    fewer = compared(shelf, item, {"blanks": wanted[:-1]})["mark"]
    padded = compared(shelf, item, {"blanks": [*wanted[:-1], ""]})["mark"]
    assert fewer == padded


def test_ticks_beyond_the_ideas_count_for_nothing(shelf: Door) -> None:
    """Numbers of ideas there are not leave the mark as if they had not been ticked."""
    item = asked(shelf, "theme", "words")
    marks = [
        compared(shelf, item, {"words": "A clerk.", "ticked": ticked})["mark"]
        for ticked in ([], [900, 901])
    ]
    assert marks[0] == marks[1]
    assert marks[0]["grade"] == "blank"


def test_seconds_and_who_graded_first_are_kept(shelf: Door, clock: Clock) -> None:
    """As they were sent, in the answer, in its history, and in the minutes spent today."""
    item = asked(shelf, "theme", "words")["id"]
    spent = shelf.client.get("/api/sitting").json["spent"]
    kept = shelf.answer(item, seconds=600, graded_first=True).json
    clock.move(minutes=1)
    bare = shelf.answer(item, id=made_up("bare")).json
    assert (kept["seconds"], kept["graded_first"]) == (600, True)
    assert (bare["seconds"], bare["graded_first"]) == (None, False)
    history = shelf.client.get(f"/api/items/{item}/answers").json["answers"]
    assert [(each["seconds"], each["graded_first"]) for each in history] == [
        (None, False),
        (600, True),
    ]
    assert shelf.client.get("/api/sitting").json["spent"] >= spent + 600


@pytest.mark.parametrize("kind", ["theme", "restate", "next", "across"])
@pytest.mark.parametrize(
    "words",
    [
        "x" * 20_000,
        "not " * 5_000,
        "".join(map(chr, [*range(1, 32), 127, *range(128, 160)])),
        "<script>alert(1)</script>&amp;' OR 1=1 --",
        "Чиновник уходит из конторы. 書記官は机を離れる。 كاتب يترك مكتبه",
        "\u202e\u2066e\u0301\U0001f9ff" * 200,
    ],
    ids=["one long word", "many denials", "control", "markup", "scripts", "turned round"],
)
def test_any_words_are_marked_and_kept_as_they_are(shelf: Door, kind: str, words: str) -> None:
    """Hostile words are a poor answer, no failure, and come back as they were written."""
    item = asked(shelf, kind, "words")
    mark = compared(shelf, item, {"words": words})["mark"]
    assert mark["grade"] in {"blank", "hazy"}
    for span in mark["attempt_spans"]:
        assert 0 <= span["start"] <= span["end"] <= len(words)
    assert shelf.answer(item["id"], "blank", attempt={"words": words}).json["attempt"] == words


@pytest.mark.parametrize("way", ["words", "blanks"])
def test_an_attempt_of_a_hundred_thousand_characters_is_refused(door: Door, way: str) -> None:
    """Longer than is kept: 422 at its field before anything is compared."""
    fill(door, books=1)
    long = "a" * 100_000
    item = door.item("theme" if way == "words" else "complete")
    attempt = {way: long if way == "words" else [long]}
    answered = door.answer(item, attempt=attempt)
    assert answered.status_code == 422
    assert answered.json["errors"][0]["pointer"].startswith(f"#/attempt/{way}")
