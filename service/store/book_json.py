"""The text of a book as the compressed JSON it is kept as, and back."""

import json
import zlib
from typing import Any

from cards.proving import BookText, Chapter, PageMark


def book_to_bytes(book: BookText) -> bytes:
    """Return a book's text, chapters and pages, compressed."""
    written = json.dumps(
        {
            "title": book.title,
            "author": book.author,
            "isbn": book.isbn,
            "text": book.text,
            "chapters": [_chapter_to_json(chapter) for chapter in book.chapters],
            "pages": [{"label": page.label, "start": page.start} for page in book.pages],
        },
        ensure_ascii=False,
    )
    # Offsets count characters, so not one may be lost, be it half of a pair.
    return zlib.compress(written.encode(errors="surrogatepass"))


def book_from_bytes(content: bytes) -> BookText:
    """Return the text `book_to_bytes` wrote, equal to what it was given."""
    found = json.loads(zlib.decompress(content).decode(errors="surrogatepass"))
    return BookText(
        title=found["title"],
        author=found["author"],
        isbn=found["isbn"],
        text=found["text"],
        chapters=tuple(_chapter_from_json(chapter) for chapter in found["chapters"]),
        pages=tuple(PageMark(page["label"], page["start"]) for page in found["pages"]),
    )


def _chapter_to_json(chapter: Chapter) -> dict[str, Any]:
    return {
        "number": chapter.number,
        "title": chapter.title,
        "start": chapter.start,
        "end": chapter.end,
    }


def _chapter_from_json(found: dict[str, Any]) -> Chapter:
    return Chapter(
        number=found["number"], title=found["title"], start=found["start"], end=found["end"]
    )
