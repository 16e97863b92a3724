"""A reader brings everything back, from an archive into an empty library."""

from collections.abc import Iterator
from contextlib import ExitStack
from dataclasses import dataclass
from functools import partial
from typing import IO

from cards.errors import LibraryNotEmpty
from service.use_cases.archiving_checks import check
from service.use_cases.archiving_records import Archive, Facts, FactTable, FieldType, Located
from service.use_cases.entering import enter_missing
from service.use_cases.ports import Desk
from service.use_cases.records import ReaderId

LARGEST_ARCHIVE = 8 * 1024**3
"""Bytes of an archive that is read back from a file on the reader's own machine."""
LARGEST_SENT = 512 * 1024**2
"""Bytes of one that is sent over HTTP: a thousand digests with the pictures some paste in."""


@dataclass(frozen=True, slots=True)
class Restored:
    """What was brought back: how many digests, items, answers and original files."""

    digests: int
    items: int
    answers: int
    originals: int


def is_empty(desk: Desk) -> bool:
    """Tell whether the library has nothing but settings, so that an archive can be read back."""
    with desk.store.reading() as work:
        return not work.facts.taken(desk.reader)


def restore_everything(desk: Desk, source: IO[bytes]) -> Restored:
    """Bring everything back into an empty library, all of it or nothing.

    Memories, due days and pages are those of the library it was taken from. An archive of an
    earlier Catchword is brought up to date on the way.

    Args:
        desk: of the empty library.
        source: a file of an archive, able to seek.

    Raises:
        LibraryNotEmpty: there is, or was, a digest or a draft in the library.
        InvalidArchive: it is damaged, of a later Catchword, or holds what cannot be.
    """
    counts: dict[str, int] = {}
    with desk.feeds.open_archive(source) as archive:
        with desk.store.writing() as work:
            work.readers.lock(desk.reader)
            if work.facts.taken(desk.reader):
                raise LibraryNotEmpty
            work.facts.clear(desk.reader)
            with ExitStack() as lent:
                facts = work.facts
                if archive.revision != facts.revision:
                    fill = partial(_fill, archive, desk.reader, {})
                    earlier = lent.enter_context(facts.raised(archive.revision, fill))
                    _copy(earlier, facts, desk.reader, counts)
                else:
                    _fill(archive, desk.reader, counts, facts)
            check(work, desk.reader, archive)
            work.commit()
        enter_missing(desk)
    return Restored(*(counts[name] for name in ("digests", "items", "answers", "originals")))


def _fill(archive: Archive, reader: ReaderId, counts: dict[str, int], facts: Facts) -> None:
    archive.hold_to(facts.tables)
    for table in facts.tables:
        facts.put(reader, table, _counted(archive.rows(table), table, counts))


def _copy(earlier: Facts, facts: Facts, reader: ReaderId, counts: dict[str, int]) -> None:
    for table in facts.tables:
        facts.put(reader, table, _counted(_located(earlier, reader, table), table, counts))


def _located(facts: Facts, reader: ReaderId, table: FactTable) -> Iterator[Located]:
    file = next((each.name for each in table.fields if each.type is FieldType.FILE), None)
    if file is None:
        return (Located(row, table.name) for row in facts.rows(reader, table))
    return (Located({**row, file: has}, table.name) for row, has in facts.files(reader, table))


def _counted(
    found: Iterator[Located], table: FactTable, counts: dict[str, int]
) -> Iterator[Located]:
    counts[table.name] = 0
    for each in found:
        counts[table.name] += 1
        yield each
