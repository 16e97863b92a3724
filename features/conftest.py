"""Mira, her clock and her library: what every scenario starts from."""

from collections.abc import Iterator
from contextlib import ExitStack
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import Any
from uuid import UUID, uuid4
from zoneinfo import ZoneInfo

import pypandoc
import pytest
from pytest_bdd import given, parsers, then, when

from cards.answers import Grade
from cards.commitments import Act, Outcome, Pace
from cards.commitments.telling import told as told_of
from cards.items import KeptItem
from cards.kinds.base import KindName
from features.keeping_steps import Keeping, day_of, told
from features.winter_steps import MUCH_FASTER, Doors
from service.main import desk_on
from service.store.sql_store import SqlStore
from service.use_cases.add_digest import Added, add_digest
from service.use_cases.answer import record_answer
from service.use_cases.items import ItemView, list_items
from service.use_cases.ports import Desk
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.recording import GivenAnswer, Recorded
from service.use_cases.records import ReaderId
from service.use_cases.sit import Sitting, todays_sitting
from tests.standing import lay_empty_library

SILAS_MARNER = """\
---
title: Silas Marner
author: Mira Vale
---

# Silas Marner

George Eliot · 186 pages

Finished: 4 January 2026

## Summary

Driven out by a friend's treachery and a drawn lot, Marner stops trusting either God or men,
and hoards. The theft of his gold empties the hearth on which, one winter night, a child is
found asleep; through her the village comes back in at his door.

## Points

1. The lot falls on Marner, and he leaves Lantern Yard. (p. 12)
2. Fifteen years of weaving: the guineas become his company. (p. 20)
3. Dunstan takes the gold; Raveloe begins to pity. (p. 42)
4. The child on the hearth; he names her for his mother. (p. 110)

## Commitments

1. When the tea is poured, I will ask Hanne one question before saying anything of mine.
2. I will write to one old friend by hand on the first Saturday of each month.

## Quotations

> In old days there were angels who came and took men by the hand and led them away from the
> city of destruction. (p. 131)

> The gods of the hearth exist for us still. (p. 139)
"""


@dataclass
class Mira:
    """A reader with a clock of her own.

    Attributes:
        desk: what the doors would hand to the use cases.
        now: the time by her clock.
        zone: where she is.
        folder: where her files are.
        file: the document she works on.
        noted: what she noted down to compare with later.
    """

    folder: Path
    desk: Desk
    now: datetime = datetime(2026, 1, 5, 19, 0, tzinfo=UTC)
    zone: str = "Europe/London"
    source: str = SILAS_MARNER
    file: str = "silas-marner.docx"
    reports: list[Added] = field(default_factory=list)
    answers: list[Recorded] = field(default_factory=list)
    noted: Any = None
    attempt: Any = None
    compared: Any = None
    following: Any = None
    link: Any = None
    point: Any = None
    ticked: Any = None
    entered: Any = None
    fresh: Any = None

    def document(self) -> bytes:
        """Write what she typed as her word processor would."""
        path = self.folder / self.file
        pypandoc.convert_text(self.source, "docx", format="markdown", outputfile=str(path))
        return path.read_bytes()

    def adds(self) -> Added:
        """Hand her document over."""
        self.reports.append(add_digest(self.desk, self.file, self.document()))
        return self.reports[-1]

    def sitting(self) -> Sitting:
        """Look at what is asked today."""
        return todays_sitting(self.desk)

    def items(self) -> dict[UUID, ItemView]:
        """Look at every item of hers by id."""
        return {item.kept.item.id: item for item in list_items(self.desk).items}

    def theme(self, title: str = "Silas Marner") -> KeptItem:
        """Find the item that asks the theme of a book."""
        found = (item for item in self.items().values() if item.title == title)
        return next(item.kept for item in found if item.kept.item.kind is KindName.THEME)

    def answer(self, item: UUID, grade: Grade, answer_id: UUID | None = None) -> Recorded:
        """Answer an item now, an id made by her device."""
        given_answer = GivenAnswer(answer_id or uuid4(), item, grade)
        self.answers.append(record_answer(self.desk, given_answer))
        self.now += timedelta(seconds=40)
        return self.answers[-1]

    def answers_everything(self, grade: Grade) -> None:
        """Answer until nothing more is asked today."""
        while items := self.sitting().items:
            for item in items:
                self.answer(item.kept.item.id, grade)

    def answers_all_of_it(self, grade: Grade) -> None:
        """Sit down every day, an hour each, until every item was asked."""
        set_preferences(self.desk, Preferences(unasked_a_day=100, minutes=60))
        for _ in range(40):
            self.answers_everything(grade)
            if all(item.kept.memory for item in self.items().values()):
                break
            self.now += timedelta(days=1)
        set_preferences(self.desk, Preferences(unasked_a_day=6, minutes=10))

    def at(self, day: int, month: str, hour: int = 19, minute: int = 0) -> None:
        """Set her clock to an hour in 2026."""
        self.on(datetime.strptime(f"2026 {month} {day}", "%Y %B %d"), hour, minute)  # noqa: DTZ007

    def on(self, day: date, hour: int = 19, minute: int = 0) -> None:
        """Set her clock to an hour of a day, as the clocks on the wall show it where she is."""
        wall = datetime(day.year, day.month, day.day, hour, minute, tzinfo=ZoneInfo(self.zone))
        self.now = wall.astimezone(UTC)


@pytest.fixture
def mira(tmp_path: Path) -> Iterator[Mira]:
    """Give Mira an empty library in a folder of its own."""
    file = tmp_path / "library.sqlite3"
    lay_empty_library(file)
    store = SqlStore(f"sqlite:///{file}")
    reader = ReaderId(uuid4())
    with store.writing() as work:
        work.readers.put(replace(work.readers.lock(reader), time_zone="Europe/London"))
        work.commit()
    with desk_on(store, lambda: her.now, reader=reader) as desk:
        her = Mira(folder=tmp_path, desk=desk)
        yield her
    store.close()


@given(parsers.parse('"Silas Marner" was added on {day:d} {month} 2026'))
def added(mira: Mira, day: int, month: str) -> None:
    mira.at(day, month)
    mira.adds()


@pytest.fixture
def keeping(mira: Mira) -> Keeping:
    """Give Mira promises to keep."""
    return Keeping(mira)


@pytest.fixture
def doors(mira: Mira) -> Iterator[Doors]:
    """Open every door of Mira's library."""
    with ExitStack() as opened:
        yield Doors(mira, opened)


@given("the books Mira kept for a winter")
def winter(doors: Doors) -> None:
    """Have her keep some books through a winter, her memory known."""
    doors.keeps_for_a_winter(MUCH_FASTER)


@given(told('on {day:Day} Mira promises "{words}"'))
def promised(keeping: Keeping, day: date, words: str) -> None:
    keeping.mira.on(day)
    keeping.promises(words, finished=day)


@given(told("on {day:Day} Mira promises"))
def promised_these(keeping: Keeping, day: date, datatable: list[list[str]]) -> None:
    keeping.mira.on(day)
    keeping.promises(*(words for (words,) in datatable), finished=day)


@given(told("on {on:Day} Mira hands in these digests"))
def hands_in(keeping: Keeping, on: date, datatable: list[list[str]]) -> None:
    keeping.mira.on(on)
    for title, finished, promise in datatable[1:]:
        keeping.promises(promise, finished=day_of(finished), title=title)


@given(told("on {on:Day} she says: {outcome:Outcome}"))
@when(told("on {on:Day} she says: {outcome:Outcome}"))
def says(keeping: Keeping, on: date, outcome: Outcome) -> None:
    keeping.mira.on(on)
    keeping.says(outcome)


@given(told("on {on:Day} she says of {day:Day}: {outcome:Outcome}"))
@when(told("on {on:Day} she says of {day:Day}: {outcome:Outcome}"))
def says_of(keeping: Keeping, on: date, day: date, outcome: Outcome) -> None:
    keeping.mira.on(on)
    keeping.says(outcome, day)


@given(told("{day:Day} comes"))
@when(told("{day:Day} comes"))
def day_comes(keeping: Keeping, day: date) -> None:
    keeping.mira.on(day)


@when(told("on {on:Day} she closes it: {outcome:Outcome}"))
def closes(keeping: Keeping, on: date, outcome: Outcome) -> None:
    keeping.mira.on(on)
    keeping.decides(Act.CLOSE, outcome=outcome)


@when(told("on {on:Day} she renews it"))
def renews(keeping: Keeping, on: date) -> None:
    keeping.mira.on(on)
    keeping.decides(Act.RENEW)


@then(told("on {day:Day} it is {pace:Pace}"), target_fixture="asked_about")
def stands(keeping: Keeping, day: date, pace: Pace) -> date:
    assert keeping.stand(day).pace is pace
    return day


@then(parsers.parse('on that day she is told "{words}"'))
def told_on_it(keeping: Keeping, asked_about: date, words: str) -> None:
    assert told_of(keeping.stand(asked_about)) == words
