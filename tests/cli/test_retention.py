"""Retention from the command line: sentences, figures in columns, and rows for programs."""

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from uuid import uuid4

import pytest

from cards.answers import Grade
from cards.kinds.base import KindName
from service.main import open_desk
from service.settings import from_environment
from service.use_cases.answer import record_answer
from service.use_cases.items import list_items
from service.use_cases.recording import GivenAnswer
from service.use_cases.retaining_columns import RETENTION


@pytest.fixture
def answered(terminal, written) -> Callable[[], None]:
    """Have the theme of Silas Marner answered clear eleven days ago and six days ago."""

    def answer() -> None:
        terminal.json("add", written("one.md"))
        now = datetime.now(UTC)  # the commands read the clock themselves
        with open_desk(from_environment({"CATCHWORD_HOME": str(terminal.home)})) as desk:
            (theme,) = list_items(desk, kind=KindName.THEME).items
            for days in (11, 6):
                at = now - timedelta(days=days)
                record_answer(desk, GivenAnswer(uuid4(), theme.kept.item.id, Grade.CLEAR, at))

    return answer


def test_an_empty_library_is_told(terminal):
    """Nothing asked is said in a sentence, and there is no row."""
    told = terminal.run("retention")
    assert told.exit_code == 0, told.output
    assert "Nothing has been asked a second time yet." in told.stdout
    assert "Nothing was foretold yet." in told.stdout
    assert terminal.json("retention") == {"rows": []}


def test_shares_stand_in_columns(terminal, answered):
    """A line a kind, with its share, its bounds and how many answers it rests on."""
    answered()
    told = terminal.run("retention").stdout
    assert "1 of 1 came back, 100%" in told
    assert "Themes  100.0%  20.7% to 100.0%  1 of 1" in told
    assert "In force are the published default weights" in told
    assert all(len(line) <= 80 for line in told.splitlines())


def test_rows_have_the_columns_that_are_described(terminal, answered):
    """What programs read has the names the table is documented with, of everything first."""
    answered()
    rows = terminal.json("retention")["rows"]
    assert [*rows[0]] == [column.name for column in RETENTION.columns]
    assert [row["of"] for row in rows] == ["all", "book", "kind", "age", "month"]
    assert {(row["asked"], row["came_back"]) for row in rows} == {(1, 1)}
    assert rows[1]["label"] == "Silas Marner"
    assert rows[2]["key"] == "theme"
    assert rows[3]["key"] == "4-7"


def test_a_plan_is_told(terminal, written):
    """Targets stand in columns with minutes and what is known; as JSON all of them."""
    terminal.json("add", written("one.md"))
    told = terminal.run("retention", "--plan").stdout
    assert "target  min, 1  min, 5  min, 10  known, 1  known, 5  known, 10" in told
    assert all(len(line) <= 80 for line in told.splitlines())
    assert "\n97%  " in told
    plan = terminal.json("retention", "--plan")
    assert len(plan["whole"]["targets"]) == 28
