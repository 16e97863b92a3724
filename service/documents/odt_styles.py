"""OpenDocument text made ready for pandoc: its paragraphs' styles marked, its deletions dropped."""

from dataclasses import dataclass

from lxml import etree

from service.documents.archives import Parts
from service.documents.marks import FORGERIES, PAGE, TAB, Mark, written
from service.documents.xml import parsed

_OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
_STYLE = "{urn:oasis:names:tc:opendocument:xmlns:style:1.0}"
_TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
_DRAW = "{urn:oasis:names:tc:opendocument:xmlns:drawing:1.0}"
_FO = "{urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0}"
_DROPPED = (f"{_TEXT}tracked-changes", f"{_OFFICE}annotation", f"{_TEXT}index-body")
_MAX_ANCESTRY = 20
_BOLD = frozenset({"bold", "600", "700", "800", "900"})


@dataclass(frozen=True, slots=True)
class ParagraphStyle:
    """A paragraph style: what it is made from, its name, outline level, boldness, page break."""

    parent: str | None
    automatic: bool
    name: str
    outline: int | None
    bold: bool
    breaks: bool


def marked(parts: Parts) -> tuple[Parts, tuple[Mark, ...]]:
    """Return the parts with each paragraph marked, and what the marks stand for.

    A paragraph whose style counts in the outline becomes a heading. Tracked
    deletions and comments are taken out.

    Raises:
        MalformedXml: a part is not well formed.
    """
    content = parsed(parts["content.xml"])
    styles = paragraph_styles(content, automatic=True)
    if "styles.xml" in parts:
        styles = paragraph_styles(parsed(parts["styles.xml"]), automatic=False) | styles
    for tag in _DROPPED:
        for element in list(content.iter(tag)):
            _drop(element)
    for element in content.iter(etree.Element):
        element.text = element.text.translate(FORGERIES) if element.text else element.text
        element.tail = element.tail.translate(FORGERIES) if element.tail else element.tail
    for element in list(content.iter(f"{_TEXT}tab")):
        element.tail = TAB + (element.tail or "")
        _drop(element)
    for box in list(content.iter(f"{_DRAW}text-box")):
        _lift(box)
    marks: list[Mark] = []
    for element in content.iter(etree.Element):
        if element.tag not in {f"{_TEXT}p", f"{_TEXT}h"}:
            continue
        given = element.get(f"{_TEXT}style-name")
        name, outline, bold = resolved(given, styles)
        if element.tag == f"{_TEXT}p" and outline is not None:
            element.tag = f"{_TEXT}h"
            element.set(f"{_TEXT}outline-level", str(outline))
        own = styles.get(given or "")
        begins = PAGE if own is not None and own.breaks else ""
        element.text = written(len(marks)) + begins + (element.text or "")
        marks.append(Mark(name, bold))
    return parts | {"content.xml": etree.tostring(content, encoding="UTF-8")}, tuple(marks)


def paragraph_styles(root: etree._Element, *, automatic: bool) -> dict[str, ParagraphStyle]:
    """Return the paragraph styles under an element, by the name paragraphs refer to them by."""
    found = {}
    for element in root.iter(f"{_STYLE}style"):
        name = element.get(f"{_STYLE}name")
        if name is None or element.get(f"{_STYLE}family") != "paragraph":
            continue
        text = element.find(f"{_STYLE}text-properties")
        layout = element.find(f"{_STYLE}paragraph-properties")
        level = element.get(f"{_STYLE}default-outline-level") or ""
        found[name] = ParagraphStyle(
            parent=element.get(f"{_STYLE}parent-style-name"),
            automatic=automatic,
            name=element.get(f"{_STYLE}display-name") or name.replace("_20_", " "),
            outline=int(level) if level.isdecimal() and 1 <= int(level) <= 6 else None,
            bold=text is not None and text.get(f"{_FO}font-weight") in _BOLD,
            breaks=layout is not None and layout.get(f"{_FO}break-before") == "page",
        )
    return found


def resolved(name: str | None, styles: dict[str, ParagraphStyle]) -> tuple[str, int | None, bool]:
    """Follow a style to the named one it was made from: its name, outline level, boldness.

    Boldness counts only where the writer set it by hand, in an automatic style.
    """
    bold = False
    for _ in range(_MAX_ANCESTRY):
        if name is None:
            break
        style = styles.get(name)
        if style is None:
            return name.replace("_20_", " "), None, bold
        if not style.automatic:
            return style.name, style.outline, bold
        bold = bold or style.bold
        name = style.parent
    return "", None, bold


def _lift(box: etree._Element) -> None:
    """Put what a text box holds behind the paragraph it is tied to."""
    paragraph = next(box.iterancestors(f"{_TEXT}p", f"{_TEXT}h"), None)
    if paragraph is None:
        return
    after, paragraph.tail = paragraph.tail, None
    for inner in reversed(list(box)):
        paragraph.addnext(inner)
    paragraph.tail = after


def _drop(element: etree._Element) -> None:
    """Take an element out and keep the words that follow it."""
    parent = element.getparent()
    if parent is None:
        return
    if element.tail:
        before = element.getprevious()
        if before is None:
            parent.text = (parent.text or "") + element.tail
        else:
            before.tail = (before.tail or "") + element.tail
    parent.remove(element)
