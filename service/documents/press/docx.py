"""Our own written form as DOCX (ECMA-376, Office Open XML): each paragraph in a style of ours."""

from collections.abc import Iterator, Sequence
from html import escape
from importlib.resources import files

from lxml import etree

from cards.intake.blocks import Block, Shape
from cards.intake.headings import Part, part_named
from cards.intake.own_blocks import MARK, VERSION, Role
from service.documents.archives import Parts
from service.documents.press.direction import runs_to_the_left
from service.documents.press.parcel import parcel
from service.documents.xml import parsed

_W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
_HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
_MAIN = 'xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"'
_OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006"
_PACKAGE = "http://schemas.openxmlformats.org/package/2006"
_FORMAT = "{D5CDD505-2E9C-101B-9397-08002B2CF9AE}"
"""The format id of custom properties ([MS-OSHARED] 2.3.3.2.3)."""
_MEDIA = "application/vnd.openxmlformats-officedocument"
_PARTS = {
    "word/document.xml": f"{_MEDIA}.wordprocessingml.document.main+xml",
    "word/styles.xml": f"{_MEDIA}.wordprocessingml.styles+xml",
    "word/numbering.xml": f"{_MEDIA}.wordprocessingml.numbering+xml",
    "word/fontTable.xml": f"{_MEDIA}.wordprocessingml.fontTable+xml",
    "docProps/core.xml": "application/vnd.openxmlformats-package.core-properties+xml",
    "docProps/custom.xml": f"{_MEDIA}.custom-properties+xml",
}
_SKIPPED = frozenset(
    f"{_W}{name}"
    for name in ("pPr", "rPr", "del", "moveFrom", "instrText", "delText", "footnoteReference")
)
_FALLBACK = "{http://schemas.openxmlformats.org/markup-compatibility/2006}Fallback"
_SIGNS = {
    f"{_W}tab": "\t",
    f"{_W}cr": "\n",
    f"{_W}noBreakHyphen": "\u2011",
    f"{_W}softHyphen": "\u00ad",
}


def docx(blocks: Sequence[Block], language: str, *, mark: str = VERSION) -> bytes:
    """Return blocks of our own form as a Word document; `blocks_of_docx` reads it back."""
    title = next((block.text for block in blocks if block.style == Role.TITLE), "")
    author = next((block.text for block in blocks if block.style == Role.AUTHOR), "")
    body = "".join(_paragraph(block) for block in blocks)
    fixed = files("service.documents.press") / "docx_parts"
    return parcel(
        {
            "[Content_Types].xml": _content_types(),
            "_rels/.rels": _relations(
                (f"{_OFFICE}/relationships/officeDocument", "word/document.xml"),
                (f"{_PACKAGE}/relationships/metadata/core-properties", "docProps/core.xml"),
                (f"{_OFFICE}/relationships/custom-properties", "docProps/custom.xml"),
            ),
            "word/_rels/document.xml.rels": _relations(
                (f"{_OFFICE}/relationships/styles", "styles.xml"),
                (f"{_OFFICE}/relationships/numbering", "numbering.xml"),
                (f"{_OFFICE}/relationships/fontTable", "fontTable.xml"),
            ),
            "word/document.xml": f"{_HEAD}<w:document {_MAIN}><w:body>{body}{_PAGE}</w:body>"
            "</w:document>",
            "word/styles.xml": (fixed / "styles.xml")
            .read_text(encoding="utf-8")
            .replace("LANGUAGE", escape(language)),
            "word/numbering.xml": (fixed / "numbering.xml").read_text(encoding="utf-8"),
            "word/fontTable.xml": (fixed / "fontTable.xml").read_text(encoding="utf-8"),
            "docProps/core.xml": _core(title, author, language),
            "docProps/custom.xml": f'{_HEAD}<Properties xmlns="{_OFFICE}/custom-properties" '
            f'xmlns:vt="{_OFFICE}/docPropsVTypes"><property fmtid="{_FORMAT}" pid="2" '
            f'name="{MARK}"><vt:lpwstr>{escape(mark)}</vt:lpwstr></property></Properties>',
        }
    )


def mark_of_docx(parts: Parts) -> str | None:
    """Return the mark of our own form in a Word document's own properties, or None.

    Raises:
        MalformedXml: they are not well formed.
    """
    if "docProps/custom.xml" not in parts:
        return None
    for element in parsed(parts["docProps/custom.xml"]):
        if element.get("name") == MARK:
            return "".join(str(text) for text in element.itertext()).strip()
    return None


def blocks_of_docx(parts: Parts) -> tuple[Block, ...]:
    """Return the blocks of a Word document in our own form, whatever else was written in it.

    Raises:
        MalformedXml: a part is not well formed.
    """
    styles = _style_names(parts)
    body = parsed(parts["word/document.xml"]).find(f"{_W}body")
    return () if body is None else tuple(_blocks(body, styles))


def _paragraph(block: Block) -> str:
    turned = "<w:pageBreakBefore/>" if _opens_quotations(block) else ""
    left = runs_to_the_left(block.text)
    style = block.style.replace(" ", "")
    runs = "".join(_runs(block.text)) or "<w:t></w:t>"
    return (
        f'<w:p><w:pPr><w:pStyle w:val="{style}"/>{turned}{"<w:bidi/>" if left else ""}</w:pPr>'
        f"<w:r>{'<w:rPr><w:rtl/></w:rPr>' if left else ''}{runs}</w:r></w:p>"
    )


def _opens_quotations(block: Block) -> bool:
    if block.style != Role.SECTION:
        return False
    announced = part_named(block.text)
    return announced is not None and announced.part is Part.QUOTATIONS


def _runs(text: str) -> Iterator[str]:
    for number, line in enumerate(text.split("\n")):
        if number:
            yield "<w:br/>"
        for cell_number, cell in enumerate(line.split("\t")):
            if cell_number:
                yield "<w:tab/>"
            if cell:
                yield f'<w:t xml:space="preserve">{escape(cell, quote=False)}</w:t>'


_PAGE = (
    '<w:sectPr><w:pgSz w:w="11906" w:h="16838"/><w:pgMar w:top="1247" w:right="1418" '
    'w:bottom="1247" w:left="1418" w:header="680" w:footer="680" w:gutter="0"/></w:sectPr>'
)
"""A4, in twentieths of a point, with margins of 22 and 25 mm."""


def _content_types() -> str:
    parts = "".join(
        f'<Override PartName="/{path}" ContentType="{kind}"/>' for path, kind in _PARTS.items()
    )
    return (
        f'{_HEAD}<Types xmlns="{_PACKAGE}/content-types"><Default Extension="rels" '
        'ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
        f'<Default Extension="xml" ContentType="application/xml"/>{parts}</Types>'
    )


def _relations(*pairs: tuple[str, str]) -> str:
    inner = "".join(
        f'<Relationship Id="r{number}" Type="{kind}" Target="{target}"/>'
        for number, (kind, target) in enumerate(pairs, 1)
    )
    return f'{_HEAD}<Relationships xmlns="{_PACKAGE}/relationships">{inner}</Relationships>'


def _core(title: str, author: str, language: str) -> str:
    return (
        f'{_HEAD}<cp:coreProperties xmlns:cp="{_PACKAGE}/metadata/core-properties" '
        'xmlns:dc="http://purl.org/dc/elements/1.1/">'
        f"<dc:title>{escape(title)}</dc:title><dc:creator>{escape(author)}</dc:creator>"
        f"<dc:language>{escape(language)}</dc:language></cp:coreProperties>"
    )


def _style_names(parts: Parts) -> dict[str, str]:
    if "word/styles.xml" not in parts:
        return {}
    found = {}
    for style in parsed(parts["word/styles.xml"]).iter(f"{_W}style"):
        name = style.find(f"{_W}name")
        if name is not None:
            found[style.get(f"{_W}styleId", "")] = name.get(f"{_W}val", "")
    return found


def _blocks(holder: etree._Element, styles: dict[str, str]) -> Iterator[Block]:
    for element in holder:
        if element.tag == f"{_W}p":
            yield from _block(element, styles)
        elif element.tag == f"{_W}tr":
            cells = [" ".join(_lines(cell)) for cell in element.findall(f"{_W}tc")]
            if any(cells):
                yield Block(Shape.ROW, "\t".join(cells))
        elif element.tag not in _SKIPPED:
            yield from _blocks(element, styles)


def _lines(cell: etree._Element) -> Iterator[str]:
    for paragraph in cell.iter(f"{_W}p"):
        yield "".join(_words(paragraph)).strip().replace("\t", " ")


def _block(element: etree._Element, styles: dict[str, str]) -> Iterator[Block]:
    known = element.find(f"{_W}pPr/{_W}pStyle")
    style = "" if known is None else known.get(f"{_W}val", "")
    style = styles.get(style, style)
    text = "".join(_words(element))
    written = any(True for _ in element.iter(f"{_W}t"))
    if style.startswith("Catchword ") and (text or written):
        yield Block(Shape.PARAGRAPH, text, style=style)
    elif text.strip():
        name, _, level = style.lower().partition(" ")
        if name == "heading" and level.isdecimal():
            yield Block(Shape.HEADING, text.strip(), level=min(int(level), 6), style=style)
        elif element.find(f"{_W}pPr/{_W}numPr") is not None:
            yield Block(Shape.ITEM, text.strip(), level=1, style=style)
        else:
            yield Block(Shape.PARAGRAPH, text.strip(), style=style)


def _words(element: etree._Element) -> Iterator[str]:
    for inner in element:
        if inner.tag == f"{_W}t":
            yield inner.text or ""
        elif inner.tag == f"{_W}br":
            yield "\n" if inner.get(f"{_W}type", "textWrapping") == "textWrapping" else ""
        elif inner.tag in _SIGNS:
            yield _SIGNS[inner.tag]
        elif inner.tag not in _SKIPPED and inner.tag != _FALLBACK:
            yield from _words(inner)
