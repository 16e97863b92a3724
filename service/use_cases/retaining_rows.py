"""What came back and how well it was foreseen, as one flat table for other programs."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from uuid import UUID

from cards.kinds.base import KindName, Shelved
from cards.retention.ages import CLASSES, class_of
from cards.retention.losses import losses_of
from cards.retention.reading import Sorted, read
from cards.retention.shares import share_of
from cards.retention.tally import Tally, total
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.retaining import books_of
from service.use_cases.tallying import bring_on, tallied


@dataclass(frozen=True, slots=True)
class RetentionRow:
    """One row of the table; its fields are the columns `retaining_columns` describes."""

    of: str
    key: str
    label: str
    asked: int
    came_back: int
    share: float
    low: float
    high: float
    foreseen: int
    predicted_mean: float | None
    log_loss: float | None
    brier: float | None


def show_rows(desk: Desk) -> tuple[RetentionRow, ...]:
    """Return the table as it stands now."""
    bring_on(desk)
    with desk.store.reading() as work:
        return rows_in(desk, work)


def rows_in(desk: Desk, work: UnitOfWork) -> tuple[RetentionRow, ...]:
    """Return the table in one moment of a transaction; rows of nothing asked are left out."""
    sorts = read(tallied(work, desk.reader))
    books = books_of(desk, work, set(sorts.books))
    return tuple(_row(*each) for each in _tallies(sorts, books) if each[-1].n)


def _tallies(sorts: Sorted, books: Mapping[UUID, Shelved]) -> Iterator[tuple[str, str, str, Tally]]:
    yield "all", "", "everything", sorts.whole()
    for book, tally in sorts.books.items():
        yield "book", str(book), books[book].title if book in books else "", tally
    for kind in KindName:
        yield "kind", kind.value, kind.value, sorts.of_kind(kind)
    ages = sorts.by_age()
    for each in CLASSES:
        last = "" if each.last is None else str(each.last)
        within = [tally for age, tally in ages.items() if class_of(age) is each]
        yield "age", f"{each.first}-{last}", each.words, total(within)
    for month, tally in sorts.months.items():
        yield "month", month, month, tally


def _row(of: str, key: str, label: str, tally: Tally) -> RetentionRow:
    share, losses = share_of(tally), losses_of(tally)
    return RetentionRow(
        of,
        key,
        label,
        share.asked,
        share.recalled,
        share.recalled / share.asked,
        share.low,
        share.high,
        tally.foreseen,
        None if losses is None else losses.predicted,
        None if losses is None else losses.log_loss,
        None if losses is None else losses.brier,
    )
