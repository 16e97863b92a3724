"""The store on SQLite or PostgreSQL."""

from collections.abc import Callable

from service.store.engine import open_engines
from service.store.migrations import bring_up_to_date
from service.store.unit_of_work import SqlUnitOfWork
from service.use_cases.records import Reader, ReaderId


class SqlStore:
    """Where everything is kept; satisfies `ports.Store`. Safe to share between threads.

    Attributes:
        engines: the connections, for tests and measurements.

    Args:
        address: `sqlite:///path/to/file.db` or `postgresql://user@host/name`. Nothing
            is opened before it is used.
        defaults: gives a reader never seen before, with the settings they start from.

    Raises:
        StoreUnavailable: the address is of neither kind.
    """

    def __init__(self, address: str, defaults: Callable[[ReaderId], Reader] = Reader) -> None:
        self.engines = open_engines(address)
        self._defaults = defaults

    def migrate(self) -> None:
        """Bring the tables up to date. Quick when they are, and safe in several processes at once.

        Raises:
            StoreNewer: they are of a later Catchword.
            StoreError: the database refused.
        """
        bring_up_to_date(self.engines)

    def reading(self) -> SqlUnitOfWork:
        """Begin a transaction that only reads: one state of the store throughout."""
        return SqlUnitOfWork(self.engines.reading, self._defaults)

    def writing(self) -> SqlUnitOfWork:
        """Begin a transaction that may write."""
        return SqlUnitOfWork(self.engines.writing, self._defaults)

    def close(self) -> None:
        """Close every connection."""
        self.engines.close()
