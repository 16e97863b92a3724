"""Many remembered items at once, column by column, as a store hands them over."""

from collections.abc import Sequence
from datetime import date
from typing import Protocol

from cards.kinds.base import KindName


class Held(Protocol):
    """What is held of items; each column as long as the others."""

    @property
    def kinds(self) -> Sequence[KindName]:
        """Of each item."""
        ...

    @property
    def stability(self) -> Sequence[float]:
        """Days, above 0."""
        ...

    @property
    def difficulty(self) -> Sequence[float]:
        """From 1 to 10."""
        ...


class Memories(Held, Protocol):
    """What items hold, and how closely their books are kept."""

    @property
    def close(self) -> Sequence[bool]:
        """Whether the item's book is kept close."""
        ...


class Dated(Held, Protocol):
    """What items hold that were asked before, and when."""

    @property
    def last_days(self) -> Sequence[date]:
        """The reader's day of the last answer."""
        ...

    @property
    def due_on(self) -> Sequence[date]:
        """The reader's day each is due, or was."""
        ...


class Columns(Memories, Dated, Protocol):
    """Items that were asked before: what they hold, how closely, and when they were asked."""
