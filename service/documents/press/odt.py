"""Our own written form as OpenDocument text (ISO/IEC 26300): each paragraph in a style of ours."""

import re
from collections.abc import Iterator, Sequence
from html import escape
from importlib.resources import files
from itertools import groupby

from lxml import etree

from cards.intake.blocks import Block, Shape
from cards.intake.headings import Part, part_named
from cards.intake.own_blocks import MARK, VERSION, Role
from service.documents.archives import Parts
from service.documents.odt_styles import ParagraphStyle, paragraph_styles, resolved
from service.documents.press.direction import runs_to_the_left
from service.documents.press.parcel import parcel
from service.documents.xml import parsed

_NAMES = {
    short: f"urn:oasis:names:tc:opendocument:xmlns:{full}:1.0"
    for short, full in {
        "office": "office",
        "style": "style",
        "text": "text",
        "fo": "xsl-fo-compatible",
        "meta": "meta",
        "table": "table",
        "manifest": "manifest",
    }.items()
}
_TEXT = f"{{{_NAMES['text']}}}"
_TABLE = f"{{{_NAMES['table']}}}"
_META = f"{{{_NAMES['meta']}}}"
_HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n'
_TYPE = "application/vnd.oasis.opendocument.text"
_SKIPPED = frozenset(
    (
        f"{_TEXT}tracked-changes",
        f"{{{_NAMES['office']}}}annotation",
        f"{_TEXT}note",
        f"{_TEXT}sequence-decls",
    )
)
_LISTED = {
    Role.POINT: "CatchwordPoints",
    Role.POINT_MORE: "CatchwordPoints",
    Role.POINT_PLACE: "CatchwordPoints",
    Role.COMMITMENT: "CatchwordCommitments",
    Role.COMMITMENT_MORE: "CatchwordCommitments",
}
_OPENING = frozenset({Role.POINT, Role.COMMITMENT})
_LEVELS = {Role.TITLE: 1, Role.SECTION: 2}
_MOST_SPACES = 1_000
_SPACES = re.compile(r"[ \t\r\n]+")
_TURNED = "Turned"
_LEFTWARD = "Leftward_20_"
_STYLES = (
    f'<style:style style:name="{_TURNED}" style:family="paragraph" '
    f'style:parent-style-name="{Role.SECTION.value.replace(" ", "_20_")}">'
    '<style:paragraph-properties fo:break-before="page"/></style:style>'
) + "".join(
    f'<style:style style:name="{_LEFTWARD}{name}" style:family="paragraph" '
    f'style:parent-style-name="{name}"><style:paragraph-properties '
    'style:writing-mode="rl-tb" fo:text-align="right"/></style:style>'
    for name in (role.value.replace(" ", "_20_") for role in Role)
)
"""The styles of single paragraphs: one that opens a page, and one of each that runs leftward."""


def odt(blocks: Sequence[Block], language: str, *, mark: str = VERSION) -> bytes:
    """Return blocks of our own form as an OpenDocument text; `blocks_of_odt` reads it back."""
    title = next((block.text for block in blocks if block.style == Role.TITLE), "")
    author = next((block.text for block in blocks if block.style == Role.AUTHOR), "")
    listed = groupby(blocks, lambda block: _LISTED.get(Role(block.style)))
    body = "".join(_list(name, list(group)) for name, group in listed)
    styles = (files("service.documents.press") / "odt_parts" / "styles.xml").read_text("utf-8")
    return parcel(
        {
            "mimetype": _TYPE,
            "META-INF/manifest.xml": _manifest(),
            "styles.xml": styles.replace("LANGUAGE", f'fo:language="{escape(language)}"'),
            "content.xml": f"{_HEAD}<office:document-content {_spaces()}><office:automatic-styles>"
            f"{_STYLES}</office:automatic-styles><office:body><office:text>{body}</office:text>"
            "</office:body></office:document-content>",
            "meta.xml": f"{_HEAD}<office:document-meta {_spaces()} "
            'xmlns:dc="http://purl.org/dc/elements/1.1/"><office:meta>'
            f"<dc:title>{escape(title)}</dc:title><dc:creator>{escape(author)}</dc:creator>"
            f"<meta:initial-creator>{escape(author)}</meta:initial-creator>"
            f"<dc:language>{escape(language)}</dc:language>"
            f'<meta:user-defined meta:name="{MARK}">{escape(mark)}</meta:user-defined>'
            "</office:meta></office:document-meta>",
        }
    )


def mark_of_odt(parts: Parts) -> str | None:
    """Return the mark of our own form in an OpenDocument text's own properties, or None.

    Raises:
        MalformedXml: they are not well formed.
    """
    if "meta.xml" not in parts:
        return None
    for element in parsed(parts["meta.xml"]).iter(f"{_META}user-defined"):
        if element.get(f"{_META}name") == MARK:
            return (element.text or "").strip()
    return None


def blocks_of_odt(parts: Parts) -> tuple[Block, ...]:
    """Return the blocks of an OpenDocument text in our own form, whatever else stands in it.

    Raises:
        MalformedXml: a part is not well formed.
    """
    content = parsed(parts["content.xml"])
    styles = paragraph_styles(content, automatic=True)
    if "styles.xml" in parts:
        styles = paragraph_styles(parsed(parts["styles.xml"]), automatic=False) | styles
    body = content.find("office:body/office:text", _NAMES)
    return () if body is None else tuple(_blocks(body, styles, listed=False))


def _spaces() -> str:
    return 'office:version="1.3" ' + " ".join(
        f'xmlns:{short}="{full}"' for short, full in _NAMES.items()
    )


def _manifest() -> str:
    entries = "".join(
        f'<manifest:file-entry manifest:full-path="{path}" manifest:media-type="{kind}"/>'
        for path, kind in (
            ("/", _TYPE),
            ("content.xml", "text/xml"),
            ("styles.xml", "text/xml"),
            ("meta.xml", "text/xml"),
        )
    )
    space = f'xmlns:manifest="{_NAMES["manifest"]}"'
    return f'{_HEAD}<manifest:manifest {space} manifest:version="1.3">{entries}</manifest:manifest>'


def _list(name: str | None, blocks: list[Block]) -> str:
    paragraphs = [_paragraph(block) for block in blocks]
    if name is None:
        return "".join(paragraphs)
    items = ""
    for block, paragraph in zip(blocks, paragraphs, strict=True):
        opens = Role(block.style) in _OPENING
        items += ("</text:list-item>" if opens and items else "") + (
            "<text:list-item>" if opens or not items else ""
        )
        items += paragraph
    return f'<text:list text:style-name="{name}">{items}</text:list-item></text:list>'


def _paragraph(block: Block) -> str:
    role = Role(block.style)
    announced = part_named(block.text) if role is Role.SECTION else None
    turned = announced is not None and announced.part is Part.QUOTATIONS
    style = block.style.replace(" ", "_20_")
    if turned or runs_to_the_left(block.text):
        style = _TURNED if turned else f"{_LEFTWARD}{style}"
    words = _written(block.text) or "<text:span/>"
    if role in _LEVELS:
        return (
            f'<text:h text:style-name="{style}" text:outline-level="{_LEVELS[role]}">'
            f"{words}</text:h>"
        )
    return f'<text:p text:style-name="{style}">{words}</text:p>'


def _written(text: str) -> str:
    """Return a text as the content of a paragraph, with what ODF would run together said."""
    written, loose = "", True
    for letter in text:
        if letter == " ":
            written += "<text:s/>" if loose else " "
            loose = True
        elif letter in "\n\t":
            written += "<text:line-break/>" if letter == "\n" else "<text:tab/>"
            loose = True
        else:
            written += escape(letter, quote=False)
            loose = False
    return written.removesuffix(" ") + "<text:s/>" if written.endswith(" ") else written


def _blocks(
    holder: etree._Element, styles: dict[str, ParagraphStyle], *, listed: bool
) -> Iterator[Block]:
    for element in holder:
        if element.tag in {f"{_TEXT}p", f"{_TEXT}h"}:
            yield from _block(element, styles, listed=listed)
        elif element.tag == f"{_TABLE}table-row":
            cells = [
                " ".join(_words(p).strip().replace("\t", " ") for p in cell.iter(f"{_TEXT}p"))
                for cell in element.findall(f"{_TABLE}table-cell")
            ]
            if any(cells):
                yield Block(Shape.ROW, "\t".join(cells))
        elif element.tag not in _SKIPPED:
            yield from _blocks(element, styles, listed=listed or element.tag == f"{_TEXT}list")


def _block(
    element: etree._Element, styles: dict[str, ParagraphStyle], *, listed: bool
) -> Iterator[Block]:
    style, outline, _ = resolved(element.get(f"{_TEXT}style-name"), styles)
    text = _words(element)
    written = len(element) > 0
    if style.startswith("Catchword ") and (text or written):
        yield Block(Shape.PARAGRAPH, text, style=style)
    elif text.strip():
        level = element.get(f"{_TEXT}outline-level") or str(outline or "")
        if level.isdecimal():
            yield Block(Shape.HEADING, text.strip(), level=min(int(level), 6), style=style)
        elif listed:
            yield Block(Shape.ITEM, text.strip(), level=1, style=style)
        else:
            yield Block(Shape.PARAGRAPH, text.strip(), style=style)


def _words(element: etree._Element) -> str:
    """Return the words of a paragraph; spaces run together as ODF 1.3, part 3, 6.1.2 says."""
    text, loose = "", True
    for piece, literal in _pieces(element):
        said = piece if literal else _SPACES.sub(" ", piece)
        if not literal and loose:
            said = said.removeprefix(" ")
        text += said
        if said:
            loose = not literal and said.endswith(" ")
    return text


def _pieces(element: etree._Element) -> Iterator[tuple[str, bool]]:
    yield element.text or "", False
    for inner in element:
        if inner.tag == f"{_TEXT}s":
            yield " " * _count(inner.get(f"{_TEXT}c")), True
        elif inner.tag == f"{_TEXT}tab":
            yield "\t", True
        elif inner.tag == f"{_TEXT}line-break":
            yield "\n", True
        elif inner.tag not in _SKIPPED:
            yield from _pieces(inner)
        yield inner.tail or "", False


def _count(said: str | None) -> int:
    return min(int(said), _MOST_SPACES) if said and said.isdecimal() else 1
