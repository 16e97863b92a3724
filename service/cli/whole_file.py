"""A file written piece by piece: whole, or not there."""

import errno
import sys
from collections.abc import Callable
from pathlib import Path
from shutil import copymode
from tempfile import NamedTemporaryFile
from typing import IO

from cards.errors import CannotWrite

_UNFINISHED = ".catchword-"
"""What the name of a file begins with that is not whole yet."""


def write_whole(target: Path | None, name: str, write: Callable[[IO[bytes]], None]) -> Path | None:
    """Write a file, or to standard output when it is called `-`; return it, None for that.

    Without a target it is called `name`, and what stands there stays. What stands at a target is
    replaced once the new file is whole, which may be read by whom it could; a new one is the
    reader's alone. A device or a pipe is written to, never replaced; of a link, what it leads to.

    Raises:
        CannotWrite: it cannot be written, or stands there already and was not named.
    """
    path = target or Path(name)
    if target is None and path.exists():
        raise CannotWrite(
            f"{path} stands there already, and nothing was written. Give another with --out, or "
            "the same to write over it.",
            where=path.name,
        )
    to_output = str(path) == "-"
    try:
        if to_output:
            write(sys.stdout.buffer)
            sys.stdout.buffer.flush()
        elif path.exists() and not path.is_file():
            with path.open("wb") as file:
                write(file)
        else:
            _replace(path.resolve(), write)
    except OSError as error:
        if to_output and error.errno == errno.EPIPE:
            raise  # whoever read it has read enough: no fault to tell of
        said = "Standard output" if to_output else path
        raise CannotWrite(
            f"{said} cannot be written: {error.strerror or 'it is not writable'}. Give another "
            "with --out.",
            where=path.name,
        ) from error
    return None if to_output else path


def _replace(path: Path, write: Callable[[IO[bytes]], None]) -> None:
    with NamedTemporaryFile(dir=path.parent, prefix=_UNFINISHED, delete=False) as file:
        unfinished = Path(file.name)
        try:
            write(file)
            file.flush()
            if path.exists():
                copymode(path, unfinished)
            unfinished.replace(path)
        except BaseException:
            unfinished.unlink()
            raise
