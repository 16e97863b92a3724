"""One transaction a use case."""

from uuid import uuid4

from service.store.sql_store import SqlStore
from service.use_cases.ports import Reader, ReaderId


def test_nothing_is_kept_without_commit(store: SqlStore) -> None:
    """Leaving a unit of work without commit rolls everything back."""
    reader = ReaderId(uuid4())
    with store.writing() as work:
        work.readers.put(Reader(reader, unasked_a_day=1))
    with store.reading() as work:
        assert work.readers.get(reader).unasked_a_day == 6
