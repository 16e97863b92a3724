"""The yearly review: what was promised to which book, what was kept, what changed, what next."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from uuid import UUID

from cards.commitments import Act, Outcome, Pace
from cards.yearly.likeness import Pair, minutes_a_day, pairs_of
from cards.yearly.promises import Facts, Promise, promise_in

MANY_MINUTES = 60
"""Minutes a day from which what is promised together is put before the reader: an hour of every
day. Our own choice, no published source."""


@dataclass(frozen=True, slots=True)
class BookYear:
    """What was promised to one book.

    Attributes:
        digest_id, title, author: of the book.
        promises: by the order they came in.
    """

    digest_id: UUID
    title: str
    author: str | None
    promises: tuple[Promise, ...]


@dataclass(frozen=True, slots=True)
class Review:
    """A year of a reader's commitments.

    Attributes:
        year: which.
        last: the last day looked at: its last, or today while it runs.
        books: by the day the first commitment of each was made.
        pairs: commitments of different books that collide or repeat.
        minutes: what the live ones that say how long ask of a day together.
        timed: those, where they come to an hour or more of different books; else none.
    """

    year: int
    last: date
    books: tuple[BookYear, ...]
    pairs: tuple[Pair, ...]
    minutes: int
    timed: tuple[Promise, ...]

    @property
    def promises(self) -> tuple[Promise, ...]:
        """All of them, book by book."""
        return tuple(promise for book in self.books for promise in book.promises)

    @property
    def counts(self) -> Mapping[Outcome, int]:
        """The check-ins of the year by what came of it; none left at 0."""
        found = {
            outcome: sum(each.counts.get(outcome, 0) for each in self.promises)
            for outcome in Outcome
        }
        return {outcome: count for outcome, count in found.items() if count}

    @property
    def changed(self) -> tuple[Promise, ...]:
        """Those about which something was decided in the year."""
        return tuple(each for each in self.promises if each.changes)

    @property
    def to_renew(self) -> tuple[Promise, ...]:
        """Those of which the reader is asked what next: over, stalled or never judged."""
        return tuple(each for each in self.promises if each.renewing is not None)

    @property
    def done(self) -> int:
        """How many came to their end kept."""
        return sum(each.stand.pace is Pace.DONE for each in self.promises)

    @property
    def released(self) -> int:
        """How many were released in the year."""
        return sum(
            any(change.act is Act.RELEASE for change in each.changes) for each in self.promises
        )


def review_of(year: int, last: date, known: Iterable[Facts]) -> Review:
    """Return the review of a year.

    Args:
        year: which, of the reader's days.
        last: the last day looked at, in that year.
        known: what is known of every commitment of the library.
    """
    first = date(year, 1, 1)
    books: dict[UUID, list[Promise]] = {}
    named: dict[UUID, tuple[str, str | None]] = {}
    for facts in known:
        promise = promise_in(facts, first, last)
        if promise is not None:
            books.setdefault(facts.digest_id, []).append(promise)
            named[facts.digest_id] = (facts.title, facts.author)
    told = sorted(
        (BookYear(book, *named[book], tuple(promises)) for book, promises in books.items()),
        key=lambda each: (min(one.made_on for one in each.promises), each.title, each.digest_id),
    )
    promises = [promise for book in told for promise in book.promises]
    minutes, timed = minutes_a_day(promises)
    many = minutes >= MANY_MINUTES and len({each.digest_id for each in timed}) > 1
    return Review(year, last, tuple(told), pairs_of(promises), minutes, timed if many else ())
