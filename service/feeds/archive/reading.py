"""Reads an archive back: each line a fact, each value typed, nothing more in memory than one."""

import io
import zipfile
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from hashlib import sha256
from typing import IO, Self

from cards.errors import InvalidArchive
from service.feeds.archive import layout
from service.feeds.archive.manifest import Manifest
from service.feeds.archive.opening import damage_told, open_zip
from service.feeds.archive.strict_json import Unreadable
from service.feeds.archive.values import fact_in
from service.use_cases.archiving_records import FactTable, FieldType, Located, Row

_BUFFER = 256 * 1024


class OpenArchive:
    """An archive that was held against its manifest; satisfies `archiving_records.Archive`.

    Raises:
        InvalidArchive: it is damaged, beyond its bounds, of a later Catchword, or not as it
            was written.
    """

    def __init__(self, source: IO[bytes]) -> None:
        self._archive: zipfile.ZipFile
        self._manifest: Manifest
        self._archive, self._manifest = open_zip(source)
        self._known: dict[str, FactTable] = {}

    @property
    def revision(self) -> str:
        """The revision of the store its facts come from."""
        return self._manifest.revision

    def hold_to(self, tables: Iterable[FactTable]) -> None:
        """Check that it has the facts of each of these sorts, and of no other.

        Raises:
            InvalidArchive: one is missing, or one is not known.
        """
        self._known = {table.name: table for table in tables}
        expected = {layout.facts_path(name) for name in self._known}
        there = {path for path in self._manifest.files if path.endswith(".jsonl")}
        if amiss := sorted(expected.symmetric_difference(there)):
            what = "is missing" if amiss[0] in expected else "is not known"
            raise InvalidArchive(
                f"{amiss[0]} {what} in an archive of revision {self.revision}. Use one as it was "
                "exported.",
                where=amiss[0],
            )

    def rows(self, table: FactTable) -> Iterator[Located]:
        """Yield the facts of one sort, each value typed as its field says, files with their bytes.

        Raises:
            InvalidArchive: a line is none of them, or there are more or fewer than counted.
        """
        file = next((each for each in table.fields if each.type is FieldType.FILE), None)
        path, count = layout.facts_path(table.name), 0
        for found in self._facts(table):
            count += 1
            if file is not None:
                with _told(found.place):
                    found.row[file.name] = self._content(table, found.row, file.name)
            yield found
        if count != self._manifest.facts.get(table.name):
            raise InvalidArchive(
                f"{path} has {count} lines, which is not what the manifest counts. Use an archive "
                "as it was exported.",
                where=path,
            )

    def place(self, table: str, key: Row) -> str:
        """Return the file and the line a fact stands on."""
        known = self._known.get(table)
        if known is not None:
            for each in self._facts(known):
                if all(each.row.get(name) == value for name, value in key.items()):
                    return each.place
        return layout.facts_path(table)

    def _facts(self, table: FactTable) -> Iterator[Located]:
        path = layout.facts_path(table.name)
        with damage_told(), self._archive.open(path) as packed:
            lines = io.BufferedReader(packed, _BUFFER)  # type: ignore[type-var] # it has no more to do
            number = 0
            while line := lines.readline(layout.MAX_LINE + 1):
                number += 1
                place = f"{path}, line {number}"
                with _told(place):
                    fact = _fact(table, line)
                yield Located(fact, place)

    def _content(self, table: FactTable, row: Row, file: str) -> bytes:
        path = layout.file_path(table.name, str(row["sha256"]), str(row.get("name", "")))
        if row[file] != path or path not in self._manifest.files:
            raise Unreadable("names a file that is not in the archive")
        entry = self._archive.getinfo(path)
        if entry.file_size > layout.MAX_CONTENT:
            raise Unreadable("names a file larger than any document")
        with damage_told():
            content = self._archive.read(entry)
        if sha256(content).hexdigest() != row["sha256"]:
            raise Unreadable("says another SHA-256 than its file has")
        return content

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self._archive.close()


def _fact(table: FactTable, line: bytes) -> Row:
    if len(line) > layout.MAX_LINE:
        raise Unreadable("is longer than any fact")
    return fact_in(table, line)


@contextmanager
def _told(place: str) -> Iterator[None]:
    """Say of a line that cannot be read where it stands."""
    try:
        yield
    except Unreadable as error:
        raise InvalidArchive(
            f"{place}, {error}. Use an archive as it was exported.", where=place
        ) from error
