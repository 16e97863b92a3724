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


def write_bytes(path: Path, content: bytes) -> Path | None:
    """Write a file, or to standard output when it is called `-`; return it, None for that.

    Raises:
        CannotWrite: it cannot be written.
    """
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
