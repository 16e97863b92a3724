"""Word documents made ready for pandoc, which drops tabs, text boxes, lines and page breaks."""

from lxml import etree

from service.documents.archives import Parts
from service.documents.marks import FORGERIES, PAGE, TAB
from service.documents.syntax_tree import RULE
from service.documents.xml import parsed

WORDS = "word/document.xml"
_W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
_STRICT = "{http://purl.oclc.org/ooxml/wordprocessingml/main}"
_FALLBACK = "{http://schemas.openxmlformats.org/markup-compatibility/2006}Fallback"
_LINE = "{urn:schemas-microsoft-com:office:office}hr"
_SPACE = "{http://www.w3.org/XML/1998/namespace}space"


def readied(parts: Parts) -> Parts:
    """Return the parts with everything in the text that a reader sees as words or as a break.

    Tabs and page breaks stand as their marks, a drawn line as a rule, and what is in a text
    box follows the paragraph it is tied to.

    Raises:
        MalformedXml: the text part is not well formed.
    """
    root = parsed(parts[WORDS])
    space = _STRICT if str(root.tag).startswith(_STRICT) else _W
    boxes = []
    for element in list(root.iter(etree.Element)):
        tag = element.tag
        if tag == f"{space}t":
            if element.text and not element.text.isascii():
                element.text = element.text.translate(FORGERIES)
        elif tag == f"{space}tab" and _parent(element) == f"{space}r":
            _become(element, space, TAB)
        elif tag == f"{space}br" and element.get(f"{space}type") == "page":
            _become(element, space, PAGE)
        elif tag == f"{space}pageBreakBefore":
            _begin_page(element, space)
        elif element.get(_LINE) in {"t", "true", "1"}:
            _draw(element, space)
        elif tag == f"{space}txbxContent":
            boxes.append(element)
    for box in boxes:
        _lift(box, space)
    return parts | {WORDS: etree.tostring(root, encoding="UTF-8", xml_declaration=True)}


def _parent(element: etree._Element) -> str:
    parent = element.getparent()
    return "" if parent is None else str(parent.tag)


def _become(element: etree._Element, space: str, words: str) -> None:
    """Turn an element into words."""
    element.clear(keep_tail=True)
    element.tag = f"{space}t"
    element.set(_SPACE, "preserve")
    element.text = words


def _begin_page(element: etree._Element, space: str) -> None:
    """Write that a paragraph begins a page as a page break in front of its words."""
    layout = element.getparent()
    if layout is None or element.get(f"{space}val") in {"0", "false", "off"}:
        return
    run = etree.Element(f"{space}r")
    _become(etree.SubElement(run, f"{space}t"), space, PAGE)
    layout.addnext(run)


def _draw(element: etree._Element, space: str) -> None:
    """Write a drawn line as a rule, in the run it is drawn in."""
    run = next(element.iterancestors(f"{space}r"), None)
    if run is not None:
        beside = etree.Element(f"{space}r")
        etree.SubElement(beside, f"{space}t").text = RULE
        run.addnext(beside)


def _lift(box: etree._Element, space: str) -> None:
    """Put what a text box holds behind its paragraph; a second drawing of it is left out."""
    if next(box.iterancestors(_FALLBACK), None) is not None:
        return
    paragraph = next(box.iterancestors(f"{space}p"), None)
    if paragraph is None:
        return
    for inner in reversed(list(box)):
        paragraph.addnext(inner)
