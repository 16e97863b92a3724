"""Archives of everything as files: written in one go, and opened to be read back."""

import os
import shutil
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import IO

from cards.errors import CannotWrite, DocumentRefused, DocumentTooLarge
from service.use_cases.archiving import FILE, archive_everything, spooled_archive
from service.use_cases.archiving_back import LARGEST_ARCHIVE
from service.use_cases.ports import Desk


def write_archive(desk: Desk, target: Path | None = None) -> Path | None:
    """Write everything a reader has into a file, or to standard output when it is called `-`.

    It stands there whole or not at all: it is written beside itself first.

    Args:
        desk: of the library.
        target: the file; without one it is `catchword.zip`, and what stands there stays.

    Returns:
        The file, or None for standard output.

    Raises:
        CannotWrite: it cannot be written, or stands there already and was not named.
    """
    path = target or Path(FILE)
    if str(path) == "-":
        with spooled_archive(desk) as archive:
            shutil.copyfileobj(archive, sys.stdout.buffer)
        return None
    if target is None and path.exists():
        raise CannotWrite(
            f"{path} stands there already, and nothing was written. Give another with --out, or "
            "the same to write over it.",
            where=path.name,
        )
    try:
        _write_beside(desk, path)
    except OSError as error:
        raise CannotWrite(
            f"{path} cannot be written: {error.strerror or 'it is not writable'}. Give another "
            "with --out.",
            where=path.name,
        ) from error
    return path


def _write_beside(desk: Desk, path: Path) -> None:
    with NamedTemporaryFile(dir=path.parent, prefix=f".{path.name}.", delete=False) as beside:
        try:
            archive_everything(desk, beside)
            beside.close()
            Path(beside.name).replace(path)
        except BaseException:
            with suppress(FileNotFoundError):
                Path(beside.name).unlink()
            raise


@contextmanager
def open_archive(path: Path) -> Iterator[IO[bytes]]:
    """Lend a file that is to be an archive.

    Raises:
        DocumentRefused: it cannot be opened, or is larger than any archive that is read.
    """
    try:
        file = path.open("rb")
        size = os.fstat(file.fileno()).st_size
    except OSError as error:
        raise DocumentRefused(
            f"{path} cannot be opened: {error.strerror or 'it is not readable'}.", where=path.name
        ) from error
    with file:
        if size > LARGEST_ARCHIVE:
            raise DocumentTooLarge(
                f"{path.name} has {size:,} bytes; at most {LARGEST_ARCHIVE:,} are read back.",
                where=path.name,
            )
        yield file
