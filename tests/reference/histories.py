"""Answers made from the gaps and grades that published tables are written in."""

import json
from collections.abc import Iterable
from datetime import UTC, date, datetime, time, timedelta
from pathlib import Path
from typing import Any
from uuid import UUID

from cards.answers import GRADES, Answer
from cards.schedule import Memory

ITEM = UUID("00000000-0000-4000-8000-000000000001")
START = date(2020, 1, 1)


def vectors(name: str) -> dict[str, Any]:
    """Return a table of vectors kept beside this module, by its file name."""
    return json.loads(Path(__file__).with_name(name).read_text(encoding="utf-8"))


def answers_of(steps: Iterable[tuple[int, int]]) -> list[Answer]:
    """Return answers from (whole days since the one before, grade from 1 to 4)."""
    answers: list[Answer] = []
    day = START
    for number, (gap, grade) in enumerate(steps):
        day += timedelta(days=gap)
        # A second apart within the evening of their day, so that their order is plain.
        at = datetime.combine(day, time(20), UTC) + timedelta(seconds=number)
        answers.append(Answer(UUID(int=number + 1), ITEM, GRADES[grade - 1], at, day))
    return answers


def memory(stability: float, difficulty: float = 5.0, last_day: date = START) -> Memory:
    """Return a memory in a state of its own, last answered on a day."""
    return Memory(stability, difficulty, last_day, last_day, GRADES[2], 1, last_day)
