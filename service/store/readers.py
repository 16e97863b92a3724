"""The readers of this house and what they set."""

from collections.abc import Callable, Sequence
from typing import Any

from sqlalchemy import Connection, bindparam, select, update

from cards.weighting import Weighting
from service.store.inserts import insert_once, insert_or_update
from service.store.tables import readers
from service.store.weighting_json import weighting_from_json, weighting_to_json
from service.use_cases.records import Reader, ReaderId

_SETTINGS = ("time_zone", "turns_at", "target", "unasked_a_day", "minutes", "revision")

_WHOLE = (*_SETTINGS, "weights")

_GET = select(*(readers.c[name] for name in _WHOLE)).where(
    readers.c.reader_id == bindparam("reader")
)
_LOCK = _GET.with_for_update()  # says nothing to SQLite, where a writer is alone anyway
_ADD = insert_once(readers)
_PUT = insert_or_update(readers, _SETTINGS)
_WEIGH = (
    update(readers)
    .where(readers.c.reader_id == bindparam("reader"))
    .values(weights=bindparam("new_weights"))
)


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
        return self._defaults(reader) if row is None else _reader(reader, row)

    def lock(self, reader: ReaderId) -> Reader:
        """Return a reader, and hold their row until the end, having made it if need be."""
        row = self._connection.execute(_LOCK, {"reader": reader}).first()
        if row is None:
            self.ensure(reader)
            row = self._connection.execute(_LOCK, {"reader": reader}).one()
        return _reader(reader, row)

    def put(self, reader: Reader) -> None:
        """Keep a reader's settings, the revision as given. What was learned of them stays."""
        self._connection.execute(_PUT, _row(reader))

    def weigh(self, reader: ReaderId, weighting: Weighting) -> None:
        """Have a reader's recall foreseen by these weights from now on."""
        self._connection.execute(
            _WEIGH, {"reader": reader, "new_weights": weighting_to_json(weighting)}
        )

    def ensure(self, reader: ReaderId) -> None:
        """Make a reader's row, with the default settings, unless there is one."""
        self._connection.execute(_ADD, _row(self._defaults(reader)))


def _row(reader: Reader) -> dict[str, object]:
    settings = {name: getattr(reader, name) for name in _SETTINGS}
    return {"reader_id": reader.id, "weights": None} | settings


def _reader(reader: ReaderId, row: Sequence[Any]) -> Reader:
    *settings, weights = row
    return Reader(reader, *(*settings, weighting_from_json(weights)))
