"""A sitting on paper through the API: made, looked at, taken as a PDF, entered."""

from io import BytesIO
from typing import Any

import pytest
from pypdf import PdfReader

from tests.api.conftest import Clock, Door
from tests.api.shelf import fill, made_up


@pytest.fixture
def sheet(door: Door) -> dict[str, Any]:
    """A sheet of today's sitting."""
    fill(door, books=2)
    made = door.client.post("/api/sheets")
    assert made.status_code == 201
    found: dict[str, Any] = made.json
    return found


def enter(door: Door, sheet: dict[str, Any], entries: list[dict[str, Any]], **more: object) -> Any:
    """Send what came back of a sheet."""
    return door.client.post(f"/api/sheets/{sheet['id']}/answers", json={"entries": entries, **more})


def graded(*lines: dict[str, Any], grade: str = "clear") -> list[dict[str, Any]]:
    """Return the entries that give lines of a sheet a grade."""
    return [{"item": line["item"], "grade": grade} for line in lines]


def answers(door: Door, sheet: dict[str, Any]) -> list[list[dict[str, Any]]]:
    """Return the answers to each item of a sheet."""
    return [
        door.client.get(f"/api/items/{line['item']}/answers").json["answers"]
        for line in sheet["lines"]
    ]


def test_a_sheet_holds_the_sitting_with_its_answers(door: Door, sheet: dict[str, Any]) -> None:
    """Items of it in their order, numbered from 1; it is found again where Location says."""
    asked = [each["id"] for each in door.client.get("/api/sitting").json["items"]]
    on_paper = [line["item"] for line in sheet["lines"]]
    assert on_paper == [each for each in asked if each in on_paper]
    assert [line["number"] for line in sheet["lines"]] == list(range(1, len(on_paper) + 1))
    assert all(line["answer"]["words"] for line in sheet["lines"])
    assert (sheet["entered_at"], sheet["minutes"]) == (None, 10)
    assert door.client.get(f"/api/sheets/{sheet['id']}").json == sheet
    short = door.client.post("/api/sheets?minutes=1")
    assert short.headers["Location"] == f"/api/sheets/{short.json['id']}"
    assert len(short.json["lines"]) < len(sheet["lines"])


def test_a_sheet_is_taken_as_a_pdf(door: Door, sheet: dict[str, Any]) -> None:
    """A file with a name, of two pages or more, what is asked on the first."""
    taken = door.client.get(f"/api/sheets/{sheet['id']}/pdf")
    assert taken.status_code == 200
    assert taken.headers["Content-Type"] == "application/pdf"
    assert "sitting-2026-03-01.pdf" in taken.headers["Content-Disposition"]
    pages = PdfReader(BytesIO(taken.data)).pages
    assert len(pages) >= 2
    assert sheet["lines"][0]["cue"]["question"] in " ".join(pages[0].extract_text().split())


def test_grades_are_entered_once(door: Door, sheet: dict[str, Any]) -> None:
    """What has no grade stays as it is; the same form again counts nothing twice."""
    first, *rest = sheet["lines"]
    assert enter(door, sheet, graded(*rest)).json == {"fresh": len(rest)}
    assert enter(door, sheet, graded(*rest)).json == {"fresh": 0}
    counts = [len(each) for each in answers(door, sheet)]
    assert counts == [0, *[1] * len(rest)]
    entered = door.client.get(f"/api/sheets/{sheet['id']}").json
    assert entered["entered_at"] == "2026-03-01T21:40:00+00:00"
    assert [line["answered_since"] for line in entered["lines"]] == [False, *[True] * len(rest)]
    assert enter(door, sheet, graded(first)).json == {"fresh": 1}


def test_words_on_paper_are_marked_by_the_cue_that_was_printed(
    door: Door, sheet: dict[str, Any]
) -> None:
    """What was written is kept with the mark it would have had; what is not asked in words is
    kept by its grade alone.
    """
    entries = [
        {"item": line["item"], "grade": "hazy", "words": line["answer"]["words"]}
        for line in sheet["lines"]
    ]
    assert enter(door, sheet, entries).json == {"fresh": len(entries)}
    for line, (kept,) in zip(sheet["lines"], answers(door, sheet), strict=True):
        if line["cue"]["asked"] == ["words"]:
            assert kept["attempt"] == line["answer"]["words"]
            assert kept["suggested"] in {"clear", "vivid"}
        else:
            assert (kept["attempt"], kept["suggested"]) == ("", None)


def test_a_sheet_is_held_to_the_cue_that_was_printed(door: Door, clock: Clock) -> None:
    """Given by heart on paper, words are marked so, though the item asks for blanks by now."""
    fill(door, books=1)
    item = door.item("complete")
    while "words" not in door.client.get(f"/api/items/{item}").json["cue"]["asked"]:
        door.answer(item, "vivid")
        clock.move(days=10)
    clock.move(days=365)
    sheet = door.client.post("/api/sheets").json
    (line,) = (each for each in sheet["lines"] if each["item"] == item)
    assert line["cue"]["asked"] == ["words"]
    door.answer(item, "blank")
    assert door.client.get(f"/api/items/{item}").json["cue"]["asked"] == ["blanks"]
    clock.move(minutes=5)
    words = line["answer"]["words"]
    entered = enter(door, sheet, [{"item": item, "grade": "clear", "words": words}])
    assert entered.json == {"fresh": 1}
    kept = door.client.get(f"/api/items/{item}/answers").json["answers"][0]
    assert (kept["attempt"], kept["suggested"]) == (words, "vivid")


@pytest.mark.parametrize(
    ("wrong", "status", "problem", "pointer"),
    [
        ("a foreign item", 422, "invalid-answer", "#/entries"),
        ("an item twice", 422, "invalid-request", "#/entries"),
        ("nothing", 422, "invalid-request", "#/entries"),
        ("too many", 422, "invalid-request", "#/entries"),
        ("a bad grade", 422, "invalid-request", "#/entries/1/grade"),
        ("no grade", 422, "invalid-request", "#/entries/1/grade"),
        ("too many words", 422, "invalid-request", "#/entries/1/words"),
        ("the day before", 422, "invalid-answer", "#/on"),
        ("a day to come", 422, "invalid-answer", "#/on"),
        ("no day", 422, "invalid-request", "#/on"),
    ],
)
def test_what_cannot_be_entered_keeps_nothing(
    door: Door, sheet: dict[str, Any], wrong: str, status: int, problem: str, pointer: str
) -> None:
    """One thing amiss refuses the whole form: no answer is kept, and the sheet still waits."""
    good, other = graded(*sheet["lines"][:2])
    body: dict[str, Any] = {
        "a foreign item": {"entries": [good, {**other, "item": made_up("no item")}]},
        "an item twice": {"entries": [good, good]},
        "nothing": {"entries": []},
        "too many": {"entries": [{**good, "item": made_up(str(n))} for n in range(501)]},
        "a bad grade": {"entries": [good, {**other, "grade": "superb"}]},
        "no grade": {"entries": [good, {"item": other["item"]}]},
        "too many words": {"entries": [good, {**other, "words": "x" * 20_001}]},
        "the day before": {"entries": [good], "on": "2026-02-28"},
        "a day to come": {"entries": [good], "on": "2026-03-02"},
        "no day": {"entries": [good], "on": "2026-02-30"},
    }[wrong]
    refused = door.client.post(f"/api/sheets/{sheet['id']}/answers", json=body)
    assert (refused.status_code, refused.json["type"]) == (status, f"/api/problems/{problem}")
    assert [each["pointer"] for each in refused.json["errors"]] == [pointer]
    assert not any(answers(door, sheet))
    assert door.client.get(f"/api/sheets/{sheet['id']}").json == sheet


def test_another_grade_for_what_was_entered_is_a_conflict(
    door: Door, sheet: dict[str, Any]
) -> None:
    """Facts are not changed, and nothing else of that form is kept."""
    one, other = sheet["lines"][:2]
    enter(door, sheet, graded(one))
    refused = enter(door, sheet, [*graded(other), *graded(one, grade="vivid")])
    assert (refused.status_code, refused.json["type"]) == (409, "/api/problems/answer-conflict")
    assert [len(each) for each in answers(door, sheet)[:2]] == [1, 0]


def test_a_sheet_counts_on_its_day(door: Door, clock: Clock, sheet: dict[str, Any]) -> None:
    """Entered two days later for the day after it was printed, it is that day's."""
    clock.move(days=2)
    enter(door, sheet, graded(sheet["lines"][0]), on="2026-03-02")
    ((kept,), *_) = answers(door, sheet)
    assert kept["day"] == "2026-03-02"


def test_what_the_library_no_longer_holds_is_left_off(door: Door, sheet: dict[str, Any]) -> None:
    """A digest removed since takes its lines from the sheet; its items are then foreign to it."""
    fens = sheet["lines"][0]["item"]
    digest = door.client.get(f"/api/items/{fens}").json["digest"]
    door.client.delete(f"/api/digests/{digest}", headers={"If-Match": "*"})
    left = door.client.get(f"/api/sheets/{sheet['id']}").json
    assert fens not in {line["item"] for line in left["lines"]}
    refused = enter(door, sheet, graded(sheet["lines"][0]))
    assert refused.json["type"] == "/api/problems/invalid-answer"


def test_nothing_to_ask_is_nothing_to_print(door: Door) -> None:
    """An empty library has no sheet; minutes out of range have none either."""
    empty = door.client.post("/api/sheets")
    assert (empty.status_code, empty.json["type"]) == (422, "/api/problems/invalid")
    for minutes in ("0", "121", "ten", "1.5", ""):
        refused = door.client.post(f"/api/sheets?minutes={minutes}")
        assert refused.json["errors"][0]["parameter"] == "minutes"


def test_a_sheet_that_is_not_there_is_missing(door: Door) -> None:
    """Looked at, taken or entered: 404 `sheet-missing`."""
    nowhere = f"/api/sheets/{made_up('no sheet')}"
    entries = [{"item": made_up("no item"), "grade": "clear"}]
    for refused in (
        door.client.get(nowhere),
        door.client.get(f"{nowhere}/pdf"),
        door.client.post(f"{nowhere}/answers", json={"entries": entries}),
    ):
        assert (refused.status_code, refused.json["type"]) == (404, "/api/problems/sheet-missing")
