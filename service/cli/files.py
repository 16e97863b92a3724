"""Files named on the command line: their bytes, and how a digest is printed."""

import sys
from pathlib import Path

from cards.digest import Digest, Notice
from cards.errors import CannotWrite, DocumentRefused, DocumentTooLarge
from service.use_cases.ports import LARGEST_FILE


def bytes_of(path: Path, largest: int = LARGEST_FILE) -> bytes:
    """Return the content of a file of at most so many bytes; a digest's unless said otherwise.

    Raises:
        DocumentRefused: it cannot be opened, or is larger.
    """
    if path.is_dir():
        raise DocumentRefused(
            f"{path} is a folder, and one file is wanted here. `catchword add` keeps the digests "
            "of a whole folder.",
            where=path.name,
        )
    try:
        size = path.stat().st_size
        if size > largest:
            advice = (
                " A digest is two pages: save it alone, without pictures."
                if largest == LARGEST_FILE
                else ""
            )
            raise DocumentTooLarge(
                f"{path.name} has {size:,} bytes; at most {largest:,} bytes are read.{advice}",
                where=path.name,
            )
        return path.read_bytes()
    except OSError as error:
        raise DocumentRefused(
            f"{path} cannot be opened: {error.strerror or 'it is not readable'}.", where=path.name
        ) from error


def write_bytes(target: Path | None, name: str, content: bytes) -> Path | None:
    """Write a file, or to standard output when it is called `-`; return it, None for that.

    Without a target it is called `name`, and what stands there stays: it may be a blank
    somebody has filled in, or a digest they have gone on writing.

    Raises:
        CannotWrite: it cannot be written, or stands there already and was not named.
    """
    path = target or Path(name)
    if target is None and path.exists():
        raise CannotWrite(
            f"{path} stands there already, and nothing was written. Give another with --to, or "
            "the same to write over it.",
            where=path.name,
        )
    if str(path) == "-":
        sys.stdout.buffer.write(content)
        return None
    try:
        path.write_bytes(content)
    except OSError as error:
        raise CannotWrite(
            f"{path} cannot be written: {error.strerror or 'it is not writable'}. Give another "
            "with --to.",
            where=path.name,
        ) from error
    return path


def digest_fields(digest: Digest, notices: tuple[Notice, ...]) -> dict[str, object]:
    """Return a digest in the shape `catchword read --json` prints and the README documents."""
    return {
        "title": digest.title,
        "author": digest.author,
        "isbn": digest.isbn,
        "pages": digest.pages,
        "finished_on": digest.finished_on.isoformat() if digest.finished_on else None,
        "theme": digest.theme,
        "judgement": digest.judgement,
        "points": [
            {"text": point.text, "locator": point.locator, "page": point.page}
            for point in digest.points
        ],
        "commitments": [{"text": commitment.text} for commitment in digest.commitments],
        "quotations": [
            {
                "text": quotation.text,
                "locator": quotation.locator,
                "page": quotation.page,
                "after": quotation.after,
            }
            for quotation in digest.quotations
        ],
        "warnings": warnings_of(notices),
    }


def warnings_of(notices: tuple[Notice, ...]) -> list[dict[str, str]]:
    """Return notices as the warnings of a report."""
    return [{"part": notice.part, "message": notice.message} for notice in notices]
