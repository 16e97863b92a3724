"""The heading words of a reader's own."""

from collections.abc import Mapping

from sqlalchemy import Connection, bindparam, delete, insert, select

from cards.intake.heading_words import Part
from service.store.readers import SqlReaders
from service.store.tables import heading_words
from service.use_cases.records import ReaderId

_MINE = heading_words.c.reader_id == bindparam("reader")
_ALL = select(heading_words.c.word, heading_words.c.part).where(_MINE)
_DROP = delete(heading_words).where(_MINE)
_ADD = insert(heading_words)


class SqlHeadings:
    """The heading words, in one transaction; satisfies `ports.Headings`."""

    def __init__(self, connection: Connection, readers: SqlReaders) -> None:
        self._connection = connection
        self._readers = readers

    def all(self, reader: ReaderId) -> dict[str, Part]:
        """Return the words as the reader wrote them, with the part each announces, by word.

        Words go by their characters, for PostgreSQL would sort them by its own language.
        """
        rows = self._connection.execute(_ALL, {"reader": reader}).all()
        return {word: Part(part) for word, part in sorted((row.word, row.part) for row in rows)}

    def put(self, reader: ReaderId, words: Mapping[str, Part]) -> None:
        """Keep these words in place of all there were."""
        # Two who put theirs at once do so one after the other, and the second's are kept.
        self._readers.lock(reader)
        self._connection.execute(_DROP, {"reader": reader})
        if words:
            self._connection.execute(
                _ADD,
                [
                    {"reader_id": reader, "word": word, "part": part.value}
                    for word, part in words.items()
                ],
            )
