"""Documents read by pandoc: the adapter behind the port `Documents`."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import PurePosixPath, PureWindowsPath
from typing import Any

from cards.digest import folded
from cards.errors import DocumentBroken, DocumentEmpty, DocumentTooLarge
from cards.intake.blocks import Block, Document, Shape
from service.documents.archives import open_parts, packed
from service.documents.bundles import files_in
from service.documents.formats import ZIPPED, Format, format_of
from service.documents.front_matter import split_front_matter
from service.documents.marks import Mark
from service.documents.odt_styles import marked
from service.documents.pandoc import syntax_tree
from service.documents.press.own_files import own_file
from service.documents.properties import archived_properties, tree_properties
from service.documents.rtf import (
    with_escaped_stand_ins,
    with_notes_kept,
    with_tabs_kept,
    without_pictures,
)
from service.documents.rtf_styles import running_parts, with_styles_marked
from service.documents.running_heads import gathered, running_words
from service.documents.syntax_tree import NestedTooDeep, blocks_of
from service.documents.text import (
    decoded,
    headings_marked,
    lists_marked,
    rejoined,
    without_embedded,
    without_fences,
)
from service.documents.web_pages import PageTooDeep, readied_page
from service.documents.word_text import readied
from service.documents.workers import Workers
from service.documents.xml import MalformedXml
from service.use_cases.ports import LARGEST_FILE
from service.use_cases.records import BundledFile

MAX_TEXT_BYTES = 1024 * 1024
"""Bytes of one file of bare text, without pictures: the most a digest keeps, in any encoding."""
MAX_BLOCKS = 20_000
"""Headings, paragraphs and items of one document: two hundred times a digest's."""
_BARE = frozenset({Format.PLAIN, Format.MARKDOWN})
_COMMONMARK = (
    "commonmark+smart+hard_line_breaks+pipe_tables+footnotes+definition_lists+strikeout"
    "+superscript+subscript"
)
_READERS = {
    Format.DOCX: "docx+styles",
    Format.ODT: "odt",
    Format.RTF: "rtf",
    Format.HTML: "html",
    Format.MARKDOWN: _COMMONMARK,
    Format.PLAIN: "commonmark+smart+hard_line_breaks",
}
_TITLE_STYLES = {"title": "Title", "subtitle": "Subtitle", "author": "Author", "date": "Date"}
_MAX_NAME = 200


@dataclass(frozen=True, slots=True)
class PandocDocuments:
    """Reads documents of six formats.

    Attributes:
        seconds: how long one file may take; a two-page document takes 0.02.
        workers: the pandoc processes it reads with.
    """

    seconds: float = 10.0
    workers: Workers = field(default_factory=Workers)

    def close(self) -> None:
        """End the pandoc processes. They start again if another file comes."""
        self.workers.close()

    def unpack(self, name: str, content: bytes) -> Iterator[BundledFile] | None:
        """Return the files in a zip, one by one, or None when it is no bundle of files."""
        return files_in(name, content)

    def read(self, name: str, content: bytes) -> Document:
        """Return a file as a document.

        Raises:
            DocumentEmpty: it has no content, or no words.
            DocumentTooLarge: it is over a bound, packed or unpacked.
            DocumentTooSlow: it could not be read in time.
            DocumentLocked: it is protected by a password.
            DocumentBroken: it is damaged, or not what its name says.
            DocumentUnsupported: it is of a format that is not read.
        """
        name = _bare_name(name)
        if not content.strip(b"\x00 \t\r\n"):
            raise _empty(name)
        if len(content) > LARGEST_FILE:
            raise _too_large(name, LARGEST_FILE)
        kind = format_of(name, content)
        if (own := own_file(name, kind, content)) is not None:
            return own
        try:
            blocks, properties = self._read(name, kind, content)
        except (NestedTooDeep, PageTooDeep) as error:
            raise DocumentBroken(
                f"“{name}” has lists, tables or quotations nested far deeper than a person would. "
                "Copy the digest's words into a new document and hand that over.",
                where="file",
            ) from error
        except MalformedXml as error:
            raise DocumentBroken(
                f"“{name}” is damaged inside and can not be read. Open it in the program it was "
                "written with and save it again.",
                where="file",
            ) from error
        if not blocks:
            raise _empty(name)
        if len(blocks) > MAX_BLOCKS:
            raise DocumentTooLarge(
                f"“{name}” has {len(blocks)} paragraphs, far more than a two-page digest. Copy the "
                "digest alone into a new document and hand that over.",
                where="file",
            )
        return Document(name, blocks, properties)

    def _read(
        self, name: str, kind: Format, content: bytes
    ) -> tuple[tuple[Block, ...], dict[str, str]]:
        properties: dict[str, str] = {}
        marks: tuple[Mark, ...] = ()
        if kind in ZIPPED:
            kind, parts = open_parts(name, content)
            properties = archived_properties(kind, parts) | running_words(kind, parts)
            if kind is Format.ODT:
                parts, marks = marked(parts)
            else:
                parts = readied(parts)
            content = packed(parts)
        elif kind in _BARE:
            properties, content = _bare_text(name, content, literal=kind is Format.PLAIN)
        elif kind is Format.RTF:
            kept = with_notes_kept(without_pictures(content))
            properties = gathered(self._running(name, kept))
            content, marks = with_styles_marked(kept)
            content = with_tabs_kept(with_escaped_stand_ins(content))
        else:
            page, properties = readied_page(without_embedded(decoded(name, content)))
            content = page.encode()
        tree = syntax_tree(self.workers, name, content, _READERS[kind], self.seconds)
        blocks = blocks_of(tree["blocks"], marks, literal=kind is Format.PLAIN)
        said = tree_properties(tree["meta"])
        if kind is Format.DOCX:
            return (
                *_title_blocks(said, blocks),
                *_abstract(tree["meta"]),
                *blocks,
            ), said | properties
        return blocks, properties | said

    def _running(self, name: str, content: bytes) -> Iterator[tuple[str, str]]:
        """Yield the lines of an RTF document's page headers and footers; a broken one has none."""
        for place, part in running_parts(content):
            words = with_tabs_kept(with_escaped_stand_ins(part))
            try:
                tree = syntax_tree(self.workers, name, words, _READERS[Format.RTF], self.seconds)
                blocks = blocks_of(tree["blocks"])
            except (DocumentBroken, NestedTooDeep):
                continue
            for block in blocks:
                for line in block.text.split("\n"):
                    yield place, line


def _bare_text(name: str, content: bytes, *, literal: bool) -> tuple[dict[str, str], bytes]:
    if len(content) > MAX_TEXT_BYTES:
        raise _too_large(name, MAX_TEXT_BYTES)
    properties, text = split_front_matter(decoded(name, content))
    if literal:
        text = without_fences(text)
    return properties, rejoined(lists_marked(headings_marked(text))).encode()


def _title_blocks(said: dict[str, str], blocks: Sequence[Block]) -> tuple[Block, ...]:
    """Return the title page pandoc took off the top of a Word document, put back as blocks.

    Where the text begins with the same title as a heading, the writer made a title page of
    their own, and what a program set above it are the file's properties once more: whose
    document it is, not who wrote the book.
    """
    title = folded(said.get("title", ""))
    if title and any(
        block.shape is Shape.HEADING and folded(block.text) == title for block in blocks[:1]
    ):
        return ()
    return tuple(
        Block(Shape.PARAGRAPH, said[key], style=style)
        for key, style in _TITLE_STYLES.items()
        if key in said
    )


def _abstract(meta: dict[str, Any]) -> tuple[Block, ...]:
    """Return the paragraphs in the style `Abstract`, which pandoc takes off a Word document too."""
    match meta.get("abstract"):
        case {"t": "MetaBlocks", "c": list(nodes)}:
            return blocks_of(nodes)
        case {"t": "MetaInlines", "c": list(inlines)}:
            return blocks_of([{"t": "Para", "c": inlines}])
        case _:
            return ()


def _bare_name(name: str) -> str:
    """Return a file's name without folders, fit to be shown in a sentence."""
    last = PureWindowsPath(PurePosixPath(name).name).name
    shown = "".join(letter if letter.isprintable() else " " for letter in last).strip()
    return shown[-_MAX_NAME:] or "the file"


def _empty(name: str) -> DocumentEmpty:
    return DocumentEmpty(
        f"“{name}” is empty. Hand over a document with the digest in it.", where="file"
    )


def _too_large(name: str, limit: int) -> DocumentTooLarge:
    return DocumentTooLarge(
        f"“{name}” is larger than {limit // (1024 * 1024)} MB, far more than a two-page digest. "
        "Copy the digest alone into a new document and hand that over.",
        where="file",
    )
