"""One transaction on the store, with a repository for each thing kept in it."""

from collections.abc import Callable
from contextlib import ExitStack
from types import TracebackType
from typing import Self

from sqlalchemy import Connection, Engine, RootTransaction
from sqlalchemy.exc import SQLAlchemyError

from service.store.answers import SqlAnswers
from service.store.archive.facts import SqlFacts
from service.store.books import SqlBooks
from service.store.check_ins import SqlCheckIns
from service.store.commitments import SqlCommitments
from service.store.decisions import SqlDecisions
from service.store.digests import SqlDigests
from service.store.drafts import SqlDrafts
from service.store.exporting import SqlExportRows
from service.store.fittings import SqlFittings
from service.store.headings import SqlHeadings
from service.store.items import SqlItems
from service.store.links import SqlLinks
from service.store.readers import SqlReaders
from service.store.refusals import store_error
from service.store.reminding import SqlReminding
from service.store.rereadings import SqlRereadings
from service.store.sheets import SqlSheets
from service.store.sitting_days import SqlSittingDays
from service.store.talks import SqlTalks
from service.store.tallies import SqlTallies
from service.store.versions import SqlVersions
from service.store.withdrawals import SqlWithdrawals
from service.use_cases.records import Reader, ReaderId


class SqlUnitOfWork:
    """One transaction; satisfies `ports.UnitOfWork`.

    It begins on entering the block. Leaving without `commit` rolls everything back;
    after `commit`, nothing more can be done in it. Whatever the database refuses
    comes out as a `StoreError`.
    """

    def __init__(self, engine: Engine, defaults: Callable[[ReaderId], Reader]) -> None:
        self._engine = engine
        self._defaults = defaults
        self._open: Connection | None = None
        self._transaction: RootTransaction | None = None

    @property
    def readers(self) -> SqlReaders:
        """The readers."""
        return SqlReaders(self._connection, self._defaults)

    @property
    def digests(self) -> SqlDigests:
        """The digests."""
        return SqlDigests(self._connection, self.readers)

    @property
    def versions(self) -> SqlVersions:
        """The versions of the digests."""
        return SqlVersions(self._connection)

    @property
    def drafts(self) -> SqlDrafts:
        """The drafts."""
        return SqlDrafts(self._connection, self.readers)

    @property
    def headings(self) -> SqlHeadings:
        """The reader's own heading words."""
        return SqlHeadings(self._connection, self.readers)

    @property
    def books(self) -> SqlBooks:
        """The texts of the books."""
        return SqlBooks(self._connection)

    @property
    def items(self) -> SqlItems:
        """The items."""
        return SqlItems(self._connection)

    @property
    def answers(self) -> SqlAnswers:
        """The answers."""
        return SqlAnswers(self._connection)

    @property
    def check_ins(self) -> SqlCheckIns:
        """The check-ins."""
        return SqlCheckIns(self._connection)

    @property
    def days(self) -> SqlSittingDays:
        """What the reader set for single days."""
        return SqlSittingDays(self._connection)

    @property
    def links(self) -> SqlLinks:
        """The links between books."""
        return SqlLinks(self._connection)

    @property
    def sheets(self) -> SqlSheets:
        """The sittings that were printed."""
        return SqlSheets(self._connection)

    @property
    def commitments(self) -> SqlCommitments:
        """The commitments."""
        return SqlCommitments(self._connection)

    @property
    def decisions(self) -> SqlDecisions:
        """The decisions about them."""
        return SqlDecisions(self._connection)

    @property
    def rereadings(self) -> SqlRereadings:
        """The re-readings."""
        return SqlRereadings(self._connection)

    @property
    def talks(self) -> SqlTalks:
        """The talks about books."""
        return SqlTalks(self._connection)

    @property
    def withdrawals(self) -> SqlWithdrawals:
        """What was taken back."""
        return SqlWithdrawals(self._connection)

    @property
    def reminding(self) -> SqlReminding:
        """How the reader is reminded."""
        return SqlReminding(self._connection, self.readers)

    @property
    def tallies(self) -> SqlTallies:
        """What the answers add up to."""
        return SqlTallies(self._connection)

    @property
    def fittings(self) -> SqlFittings:
        """The fits of the reader's weights."""
        return SqlFittings(self._connection)

    @property
    def exporting(self) -> SqlExportRows:
        """All rows of a kind, few at a time."""
        return SqlExportRows(self._connection)

    @property
    def facts(self) -> SqlFacts:
        """Everything that is kept, sort by sort."""
        return SqlFacts(self._connection)

    def commit(self) -> None:
        """Make everything done in it lasting, and end it."""
        transaction, self._transaction = self._transaction, None
        if transaction is None:
            raise RuntimeError("there is no transaction to commit, or it was committed already")
        transaction.commit()

    def __enter__(self) -> Self:
        try:
            self._open = self._engine.connect()
        except SQLAlchemyError as error:
            raise store_error(error) from error
        with ExitStack() as closing:
            closing.callback(self._open.close)
            self._transaction = self._open.begin()
            closing.pop_all()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        connection, self._open = self._open, None
        transaction, self._transaction = self._transaction, None
        if connection is not None:
            with connection:
                if transaction is not None:
                    transaction.rollback()

    @property
    def _connection(self) -> Connection:
        if self._open is None or self._transaction is None:
            raise RuntimeError("a unit of work is used inside its with block, before its commit")
        return self._open
