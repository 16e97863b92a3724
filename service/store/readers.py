"""The readers of this house and what they set."""

from collections.abc import Callable

from sqlalchemy import Connection, bindparam, select

from service.store.inserts import insert_once, insert_or_update
from service.store.tables import readers
from service.use_cases.records import Reader, ReaderId

_SETTINGS = ("time_zone", "turns_at", "target", "unasked_a_day", "minutes", "revision")

_GET = select(*(readers.c[name] for name in _SETTINGS)).where(
    readers.c.reader_id == bindparam("reader")
)
_LOCK = _GET.with_for_update()  # says nothing to SQLite, where a writer is alone anyway
_ADD = insert_once(readers)
_PUT = insert_or_update(readers, _SETTINGS)


class SqlReaders:
    """The readers, in one transaction; satisfies `ports.Readers`.

    Whatever else is kept needs its reader's row: `lock` and `put` make it, and so do digests,
    drafts and heading words when they are put; everything else belongs to one of these.
    """

    def __init__(self, connection: Connection, defaults: Callable[[ReaderId], Reader]) -> None:
        self._connection = connection
        self._defaults = defaults

    def get(self, reader: ReaderId) -> Reader:
        """Return a reader; one never seen before has the default settings."""
        row = self._connection.execute(_GET, {"reader": reader}).first()
        return self._defaults(reader) if row is None else Reader(reader, *row)

    def lock(self, reader: ReaderId) -> Reader:
        """Return a reader, and hold their row until the end, having made it if need be."""
        row = self._connection.execute(_LOCK, {"reader": reader}).first()
        if row is None:
            self.ensure(reader)
            row = self._connection.execute(_LOCK, {"reader": reader}).one()
        return Reader(reader, *row)

    def put(self, reader: Reader) -> None:
        """Keep a reader's settings, the revision as given."""
        self._connection.execute(_PUT, _row(reader))

    def ensure(self, reader: ReaderId) -> None:
        """Make a reader's row, with the default settings, unless there is one."""
        self._connection.execute(_ADD, _row(self._defaults(reader)))


def _row(reader: Reader) -> dict[str, object]:
    return {"reader_id": reader.id} | {name: getattr(reader, name) for name in _SETTINGS}
