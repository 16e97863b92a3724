"""Retention through the API: figures, plan, weights, pictures."""

from datetime import date
from uuid import UUID

import pytest

from cards.fitting.records import Comparison, Verdict
from cards.schedule import DEFAULT_WEIGHTS
from cards.weighting import Weighting
from service.use_cases.learning_records import Fitting
from service.use_cases.ports import Desk
from tests.api.conftest import Clock, Door

OWN = tuple(each * 1.1 for each in DEFAULT_WEIGHTS)


@pytest.fixture
def answered(door: Door, walks: UUID, clock: Clock) -> int:
    """How many items there are; each was clear twice, six days apart, but one blank at last."""
    items = [each["id"] for each in door.client.get("/api/items").json["items"]]
    for grade in ("clear", "blank"):
        for item in items:
            door.answer(item, grade if item == items[0] else "clear")
        clock.move(days=6)
    return len(items)


def test_an_empty_library_has_figures(door: Door) -> None:
    """Nothing asked is nothing claimed: no share, no quality, the bounds all there is."""
    found = door.client.get("/api/retention").json
    assert found["whole"] == {
        "asked": 0,
        "came_back": 0,
        "share": None,
        "low": 0.0,
        "high": 1.0,
        "verdict": "too few to say",
    }
    assert (found["quality"], found["books"], found["answers"]) == (None, [], 0)
    assert len(found["coming"]) == 56
    weights = door.client.get("/api/retention/weights").json
    assert (weights["own"], weights["verdicts"], weights["former"]) == (False, [], [])
    assert weights["in_force"] == {"general": list(DEFAULT_WEIGHTS), "by_kind": []}


def test_figures_are_told(door: Door, walks: UUID, answered: int) -> None:
    """First answers are left out; of the others all came back but one."""
    found = door.client.get("/api/retention").json
    assert (found["answers"], found["day"], found["target"]) == (2 * answered, "2026-03-13", 0.9)
    assert (found["whole"]["asked"], found["whole"]["came_back"]) == (answered, answered - 1)
    (book,) = found["books"]
    assert (book["digest"], book["title"]) == (str(walks), "Walks in the Fens")
    assert [each["first"] for each in found["ages"]] == [4]
    assert found["quality"]["losses"]["n"] == answered
    assert found["known"]["asked"] == answered
    (known,) = found["known"]["books"]
    assert known["now"] == pytest.approx(found["known"]["expected"])
    assert sum(each["blanks"] for each in found["survival"]) == 1


def test_a_plan_is_told(door: Door, walks: UUID) -> None:
    """Every target from 0.70 to 0.97 has minutes and what is known, in words what is proposed."""
    found = door.client.get("/api/retention/plan").json
    targets = [each["target"] for each in found["whole"]["targets"]]
    assert (targets[0], targets[-1], len(targets)) == (0.7, 0.97, 28)
    assert all(len(each["minutes"]) == 3 for each in found["whole"]["targets"])
    assert [each["care"] for each in found["by_care"]] == ["steady"]
    assert found["proposed"].endswith(".")


def test_own_weights_are_told(door: Door, desk: Desk, clock: Clock) -> None:
    """Whose weights are in force, since when, what was found, and what was in force before."""
    verdict = Verdict(None, 300, 60, Comparison(1, 0.32, 0.3, 0.004), adopted=True, sentence="So.")
    fitting = Fitting(
        UUID(int=1), clock.at, date(2026, 3, 1), 300, (verdict,), Weighting(OWN), refolded=True
    )
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        work.fittings.add(desk.reader, fitting)
        work.readers.weigh(desk.reader, fitting.weighting)
        work.commit()
    found = door.client.get("/api/retention/weights").json
    assert (found["own"], found["since"], found["considered_on"]) == (
        True,
        "2026-03-01",
        "2026-03-01",
    )
    assert found["in_force"]["general"] == pytest.approx(OWN)
    (told,) = found["verdicts"]
    assert (told["in_force"], told["proposed"], told["adopted"]) == (0.32, 0.3, True)
    (before,) = found["former"]
    assert (before["since"], before["until"]) == (None, "2026-03-01")
    assert before["weighting"]["general"] == list(DEFAULT_WEIGHTS)


@pytest.mark.parametrize(
    ("form", "kind", "begins"),
    [
        ("svg", "image/svg+xml", b"<?xml"),
        ("png", "image/png", b"\x89PNG"),
        ("dark.png", "image/png", b"\x89PNG"),
        ("csv", "text/csv", b"kind,asked,came_back,share,low,high,told\r\n"),
    ],
)
def test_a_picture_is_taken(door: Door, walks: UUID, form: str, kind: str, begins: bytes) -> None:
    """As a file of its own name."""
    taken = door.client.get(f"/api/retention/pictures/by-kind.{form}")
    assert (taken.status_code, taken.mimetype) == (200, kind)
    assert taken.data.startswith(begins)
    assert f"by-kind.{form}" in taken.headers["Content-Disposition"]


@pytest.mark.parametrize("name", ["nothing.svg", "by-kind.gif", "by-kind", "target-resting.svg"])
def test_no_such_picture(door: Door, walks: UUID, name: str) -> None:
    """A problem document says that nothing is there."""
    missing = door.client.get(f"/api/retention/pictures/{name}")
    assert (missing.status_code, missing.mimetype) == (404, "application/problem+json")
