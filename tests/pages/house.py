"""A digest with every part, a clock that can be set, and a library over both."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from functools import partial
from itertools import count
from pathlib import Path
from uuid import UUID, uuid5

from service.main import desk_on
from service.store.sql_store import SqlStore
from service.use_cases.ports import Desk
from service.use_cases.records import Reader, ReaderId
from tests.standing import lay_empty_library

READER = ReaderId(UUID("00000000-0000-4000-8000-00000000abcd"))

DIGEST = """\
---
title: Silas Marner
author: George Eliot
pages: 186
finished: 2026-01-18
---

## Theme

Driven out by a friend's treachery, Marner stops trusting God and men, and hoards. The theft
of his gold empties the hearth. A child found asleep brings the village back in at his door.

## Points

1. The lot falls on Marner and he leaves Lantern Yard. (p. 12)
2. Fifteen years of weaving: the guineas become his company. (p. 20)
3. Dunstan takes the gold; Raveloe begins to pity. (p. 45)

## Commitments

* When the tea is poured, ask Hanne one question about her day, five evenings a week.
* Put 20 euros a month into the savings account.

## Quotations

* "In old days there were angels who came and took men by the hand." (p. 140, after point 3)
* "Nothing is so good as it seems beforehand." (p. 172)
* "Our consciousness rarely registers the beginning of a growth." (Finale)
"""
"""A digest with every part a digest can have but a judgement; quotation 3 has no known place."""

WITHOUT_POINTS = """\
---
title: Essays
pages: 300
---

## Quotations

* "A foolish consistency is the hobgoblin of little minds." (p. 50)
* "Hitch your wagon to a star." (ch. 7)
"""
"""A digest whose quotations can only be asked by page and by chapter."""


@dataclass
class Clock:
    """A clock that stands still until a test sets it on."""

    at: datetime = field(default_factory=lambda: datetime(2026, 3, 2, 20, 0, tzinfo=UTC))

    def now(self) -> datetime:
        """Return the time it shows."""
        return self.at

    def pass_seconds(self, seconds: int) -> None:
        """Set it on by some seconds."""
        self.at += timedelta(seconds=seconds)

    def next_day(self, days: int = 1) -> None:
        """Set it on by whole days."""
        self.at += timedelta(days=days)


def _made(numbers: Iterator[int]) -> UUID:
    return uuid5(READER, str(next(numbers)))


@contextmanager
def library(folder: Path, now: Callable[[], datetime], *, demo: bool = False) -> Iterator[Desk]:
    """Lay an empty library in a folder; its documents are read by the real reader.

    Its ids are the same in every run: which answers are graded before the mark is shown, and
    in which order things are shown, hangs on them.
    """
    file = folder / "library.db"
    lay_empty_library(file)
    store = SqlStore(f"sqlite:///{file}", lambda reader: Reader(reader, "UTC"))
    try:
        with desk_on(store, now, new_id=partial(_made, count()), reader=READER, demo=demo) as desk:
            yield desk
    finally:
        store.close()
