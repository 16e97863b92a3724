"""Book texts read from files: the adapter behind the port of that name."""

import re
from html import unescape
from pathlib import PurePosixPath, PureWindowsPath

from cards.digest import MAX_TITLE
from cards.errors import DocumentBroken, DocumentEmpty, DocumentUnsupported
from cards.proving.text import MAX_CHARACTERS, MAX_MARKS, BookText
from service.documents.book_texts.bounds import MAX_FILE, too_large, too_long
from service.documents.book_texts.chapters import chapters_of
from service.documents.book_texts.epub import book_in_epub, marks_of
from service.documents.book_texts.flow import Flow
from service.documents.book_texts.markup import NoMarkup, decoded_markup, page_of
from service.documents.book_texts.plain import book_in_plain_text, isbn_in
from service.documents.text import decoded

READABLE = ".epub, .txt or .html"
"""The endings a reader is told to hand over."""
_HTML = frozenset({".html", ".htm", ".xhtml"})
_TEXT = frozenset({".txt", ".text", ".md", ""})
_ZIP = b"PK\x03\x04"
_OPENS_HTML = re.compile(
    rb"\A[\xef\xbb\xbf\s]*(?:<\?xml[^>]{0,200}\?>\s*)?(?:<!--.{0,500}?-->\s*)?<(?:!doctype\s+html|html)\b",
    re.IGNORECASE | re.DOTALL,
)
_TITLE = re.compile(r"<title[^>]*>([^<]{1,500})</title>", re.IGNORECASE)
_MAX_NAME = 200


class BookTexts:
    """Reads the texts of books: EPUB, plain text and HTML. Nothing is fetched, nothing run."""

    def read(self, name: str, content: bytes) -> BookText:
        """Return a file as the text of a book.

        Args:
            name: of the file; only its last part and its ending are looked at.
            content: its bytes.

        Raises:
            DocumentEmpty: it has no content, or no words.
            DocumentTooLarge: it is over a bound, packed or unpacked.
            DocumentLocked: it is protected against copying.
            DocumentBroken: it is damaged, or not what its name says.
            DocumentUnsupported: it is of a format that is not read.
        """
        name = _bare_name(name)
        suffix = PurePosixPath(name).suffix.lower()
        if not content.strip(b"\x00 \t\r\n"):
            raise _empty(name)
        if len(content) > MAX_FILE:
            raise too_large(name)
        if content.startswith(_ZIP) or suffix == ".epub":
            return _zipped(name, suffix, content)
        if suffix in _HTML or (suffix in _TEXT and _OPENS_HTML.match(content)):
            return _book_in_html(name, content)
        if suffix in _TEXT:
            return _book_in_text(name, content)
        raise DocumentUnsupported(
            f"“{name}” is of a kind from which no book is read. Hand over {READABLE}.",
            where="file",
        )


def _zipped(name: str, suffix: str, content: bytes) -> BookText:
    if not content.startswith(_ZIP):
        raise DocumentBroken(
            f"“{name}” is no EPUB, whatever its name says, or its beginning is damaged. Fetch or "
            "export the book once more.",
            where="file",
        )
    if suffix != ".epub" and b"application/epub+zip" not in content[:200]:
        raise DocumentUnsupported(
            f"“{name}” is an archive from which no book is read. Hand over {READABLE}.",
            where="file",
        )
    return book_in_epub(name, content)


def _book_in_text(name: str, content: bytes) -> BookText:
    try:
        text = decoded(name, content)
    except DocumentBroken as error:
        raise DocumentBroken(
            f"“{name}” does not hold text, whatever its name says. Save the book as plain text in "
            "UTF-8 and hand it over again.",
            where="file",
        ) from error
    if len(text) > MAX_CHARACTERS:
        raise too_long(name)
    if not any(map(str.isalnum, text)):
        raise _empty(name)
    return book_in_plain_text(text)


def _book_in_html(name: str, content: bytes) -> BookText:
    markup = decoded_markup(content)
    if len(markup) > 2 * MAX_CHARACTERS:
        raise too_long(name)
    flow = Flow()
    try:
        flow.read(
            name, page_of(markup, well_formed="http://www.w3.org/1999/xhtml" in markup[:2000])
        )
    except NoMarkup as error:
        raise DocumentBroken(
            f"“{name}” can not be read as HTML: it is damaged, or its elements stand in one "
            "another too deep. Save the page once more, or hand over its text.",
            where="file",
        ) from error
    if flow.length > MAX_CHARACTERS:
        raise too_long(name)
    text = flow.text
    if not any(map(str.isalnum, text)):
        raise _empty(name)
    head = _TITLE.search(markup[:20_000])
    title = None if head is None else " ".join(unescape(head[1]).split())[:MAX_TITLE] or None
    return BookText(
        title=title,
        author=None,
        isbn=isbn_in(text[:10_000]),
        text=text,
        chapters=chapters_of(flow.headings, len(text), title)[:MAX_MARKS],
        pages=marks_of(flow),
    )


def _bare_name(name: str) -> str:
    """Return a file's name without folders, fit to be shown in a sentence."""
    last = PureWindowsPath(PurePosixPath(name).name).name
    shown = "".join(letter if letter.isprintable() else " " for letter in last).strip()
    return shown[-_MAX_NAME:] or "the file"


def _empty(name: str) -> DocumentEmpty:
    return DocumentEmpty(f"“{name}” holds no words. Hand over the text of the book.", where="file")
