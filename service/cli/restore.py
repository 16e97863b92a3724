"""`catchword restore FILE`: everything back, into a library that has nothing in it yet."""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import IO

import click

from cards.errors import DocumentRefused, DocumentTooLarge
from service.cli.group import Tools
from service.cli.screen import print_json
from service.use_cases.archiving_back import LARGEST_ARCHIVE, restore_everything


@click.command()
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="Print what was brought back as JSON.")
@click.pass_obj
def restore(tools: Tools, file: Path, *, as_json: bool) -> None:
    """Bring back everything from FILE, an archive that `catchword export everything` wrote.

    The library has to be empty: name a new folder as CATCHWORD_HOME to make a new one. Memories,
    due days and pages are as they were.
    """
    with _opened(file) as archive, tools.desk() as desk:
        back = restore_everything(desk, archive)
    if as_json:
        print_json(
            {
                "digests": back.digests,
                "items": back.items,
                "answers": back.answers,
                "originals": back.originals,
            }
        )
        return
    click.echo(
        f"Everything is back: digests {back.digests:,}, items {back.items:,}, "
        f"answers {back.answers:,}, files {back.originals:,}."
    )


@contextmanager
def _opened(path: Path) -> Iterator[IO[bytes]]:
    """Lend a file that is to be an archive.

    Raises:
        DocumentRefused: it cannot be opened, or is larger than any archive that is read.
    """
    try:
        file = path.open("rb")
    except OSError as error:
        raise DocumentRefused(
            f"{path} cannot be opened: {error.strerror or 'it is not readable'}.", where=path.name
        ) from error
    with file:
        if not file.seekable():
            raise DocumentRefused(
                f"{path} is a pipe, and an archive is read from its end. Save it as a file, and "
                "give that.",
                where=path.name,
            )
        size = os.fstat(file.fileno()).st_size
        if size > LARGEST_ARCHIVE:
            raise DocumentTooLarge(
                f"{path.name} has {size:,} bytes; at most {LARGEST_ARCHIVE:,} are read back.",
                where=path.name,
            )
        yield file
