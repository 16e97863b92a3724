"""Files in our own written form, read for what they are before anything else looks at them."""

from codecs import BOM_UTF8

from cards.intake.blocks import Document
from cards.intake.own_blocks import MARK, TEMPLATE, VERSION, blocks_of_digest
from service.documents.archives import open_parts
from service.documents.formats import ZIPPED, Format
from service.documents.press.docx import blocks_of_docx, mark_of_docx
from service.documents.press.json_form import MAX_BYTES, digest_of_json
from service.documents.press.markdown import blocks_of_markdown, mark_of_markdown
from service.documents.press.odt import blocks_of_odt, mark_of_odt
from service.documents.properties import archived_properties
from service.documents.text import decoded
from service.documents.xml import MalformedXml

_TEXTS = frozenset({Format.MARKDOWN, Format.PLAIN})
_MARKS = frozenset({VERSION, TEMPLATE})


def own_file(name: str, kind: Format, content: bytes) -> Document | None:
    """Return a file that bears the mark of our own form as a document, or None for any other.

    Raises:
        DocumentRefused: it is JSON and not of the shape of a digest, or an archive that
            is damaged or over its bounds.
        InvalidDigest: it is JSON, and what it holds breaks a bound of a digest.
    """
    if kind is Format.JSON:
        return Document(name, blocks_of_digest(digest_of_json(name, content)), {MARK: VERSION})
    if kind in ZIPPED:
        return _archive(name, content)
    if (
        kind in _TEXTS
        and len(content) <= MAX_BYTES
        and content.removeprefix(BOM_UTF8).startswith(b"---")
    ):
        return _text(name, _lines(name, content))
    return None


def _archive(name: str, content: bytes) -> Document | None:
    kind, parts = open_parts(name, content)
    mark_of, blocks_of = (
        (mark_of_odt, blocks_of_odt) if kind is Format.ODT else (mark_of_docx, blocks_of_docx)
    )
    try:
        mark = mark_of(parts)
        if mark not in _MARKS:
            return None
        blocks = blocks_of(parts)
    except MalformedXml:
        return None
    return Document(name, blocks, archived_properties(kind, parts) | {MARK: mark})


def _text(name: str, text: str) -> Document | None:
    mark = mark_of_markdown(text)
    if mark not in _MARKS:
        return None
    return Document(name, blocks_of_markdown(text), {MARK: mark})


def _lines(name: str, content: bytes) -> str:
    """Return the text of a file letter for letter: only the ends of lines are made the same."""
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError:
        return decoded(name, content)
    return text.replace("\r\n", "\n").replace("\r", "\n")
