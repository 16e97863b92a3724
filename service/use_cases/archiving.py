"""A reader takes everything out at once, in one archive of open formats."""

from collections.abc import Generator, Iterator
from contextlib import ExitStack
from datetime import datetime
from tempfile import TemporaryFile
from typing import IO, TypeVar, cast
from uuid import UUID

from service.use_cases.archiving_records import Contents
from service.use_cases.ports import Desk
from service.use_cases.records import Form
from service.use_cases.unit_of_work import UnitOfWork
from service.use_cases.writing_out import file_stem

FILE = "catchword.zip"
"""What an archive is called unless the reader says otherwise."""
_AT_ONCE = 50
"""Digests in memory."""
_PIECE = 64 * 1024
_Each = TypeVar("_Each")


def archive_everything(desk: Desk, target: IO[bytes]) -> None:
    """Write everything the reader has into a file, as it stands at one moment.

    The same library gives the same bytes; whatever is being written meanwhile is in it wholly or
    not at all.

    Args:
        desk: of the library.
        target: empty, and able to seek.

    Raises:
        CannotWrite: there is more than an archive holds.
    """
    with desk.store.reading() as work, ExitStack() as given_up:
        facts = work.facts

        def let_go(rows: Generator[_Each]) -> Generator[_Each]:
            # Where the disk is full, they are left in their midst, and close before the store does.
            given_up.callback(rows.close)
            return rows

        contents = Contents(
            facts.revision,
            facts.tables,
            facts.left_out,
            lambda table: let_go(facts.rows(desk.reader, table)),
            lambda table: let_go(facts.files(desk.reader, table)),
            _digests(desk, work),
        )
        desk.feeds.write_archive(target, contents)


def pieces_of(archive: IO[bytes]) -> Iterator[bytes]:
    """Yield an archive piece by piece, and close it after the last."""
    with archive:
        while piece := archive.read(_PIECE):
            yield piece


def _digests(desk: Desk, work: UnitOfWork) -> Iterator[tuple[str, bytes]]:
    """Yield the digests not removed in Markdown, the longest kept first."""
    (table,) = (each for each in work.facts.tables if each.name == "digests")
    shelf: list[tuple[datetime, UUID]] = sorted(
        (cast("datetime", row["added_at"]), cast("UUID", row["id"]))
        for row in work.facts.rows(desk.reader, table)
        if not row["removed"]
    )
    for first in range(0, len(shelf), _AT_ONCE):
        ids = [digest_id for _, digest_id in shelf[first : first + _AT_ONCE]]
        several = work.digests.many(desk.reader, ids)
        for digest_id in ids:
            digest = several[digest_id].digest()
            yield file_stem(digest.title), desk.press.write(digest, Form.MARKDOWN)


def spooled_archive(desk: Desk) -> IO[bytes]:
    """Return an archive in a nameless file, which is gone when it is closed.

    So it fills no memory, a refusal comes before the first byte of it is sent, and the store is
    let go of before a slow reader has fetched the last.

    Raises:
        CannotWrite: there is more than an archive holds.
    """
    with ExitStack() as closing:
        file = closing.enter_context(TemporaryFile())
        archive_everything(desk, file)
        file.seek(0)
        closing.pop_all()
    return file
