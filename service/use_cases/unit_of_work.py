"""Where everything is kept, as the use cases see it: a store, and one transaction on it."""

from types import TracebackType
from typing import Protocol, Self

from service.use_cases.archiving_records import Facts
from service.use_cases.exporting_records import ExportRows
from service.use_cases.repositories import (
    Answers,
    Books,
    CheckIns,
    Commitments,
    Decisions,
    Digests,
    Drafts,
    Fittings,
    Headings,
    Items,
    Links,
    Readers,
    Reminding,
    Rereadings,
    Sheets,
    SittingDays,
    Talks,
    Tallies,
    Versions,
    Withdrawals,
)


class UnitOfWork(Protocol):
    """One transaction. Leaving it without `commit` rolls everything back."""

    @property
    def readers(self) -> Readers:
        """The readers."""
        ...

    @property
    def digests(self) -> Digests:
        """The digests."""
        ...

    @property
    def versions(self) -> Versions:
        """The versions of the digests."""
        ...

    @property
    def drafts(self) -> Drafts:
        """The drafts."""
        ...

    @property
    def headings(self) -> Headings:
        """The reader's own heading words."""
        ...

    @property
    def books(self) -> Books:
        """The texts of the books."""
        ...

    @property
    def items(self) -> Items:
        """The items."""
        ...

    @property
    def answers(self) -> Answers:
        """The answers."""
        ...

    @property
    def check_ins(self) -> CheckIns:
        """The check-ins."""
        ...

    @property
    def days(self) -> SittingDays:
        """What the reader set for single days."""
        ...

    @property
    def links(self) -> Links:
        """The links between books."""
        ...

    @property
    def sheets(self) -> Sheets:
        """The sittings that were printed."""
        ...

    @property
    def commitments(self) -> Commitments:
        """The commitments."""
        ...

    @property
    def decisions(self) -> Decisions:
        """The decisions about them."""
        ...

    @property
    def rereadings(self) -> Rereadings:
        """The re-readings."""
        ...

    @property
    def talks(self) -> Talks:
        """The talks about books."""
        ...

    @property
    def withdrawals(self) -> Withdrawals:
        """What was taken back."""
        ...

    @property
    def reminding(self) -> Reminding:
        """How the reader is reminded."""
        ...

    @property
    def tallies(self) -> Tallies:
        """What the answers add up to."""
        ...

    @property
    def fittings(self) -> Fittings:
        """The fits of the reader's weights."""
        ...

    @property
    def exporting(self) -> ExportRows:
        """All rows of a kind, few at a time."""
        ...

    @property
    def facts(self) -> Facts:
        """Everything that is kept, sort by sort, to be taken out and brought back whole."""
        ...

    def commit(self) -> None:
        """Make everything done in it lasting."""
        ...

    def __enter__(self) -> Self: ...

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None: ...


class Store(Protocol):
    """Where everything is kept."""

    def reading(self) -> UnitOfWork:
        """Begin a transaction that only reads: one state of the store throughout."""
        ...

    def writing(self) -> UnitOfWork:
        """Begin a transaction that may write."""
        ...
