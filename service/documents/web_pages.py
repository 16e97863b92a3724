"""Web pages made ready for pandoc: closed, shallow, and with nothing in them that is no words."""

import re
from collections.abc import Iterator

from lxml import etree, html

from service.documents.running_heads import PAGE_NUMBER, gathered

MAX_DEPTH = 200
"""Elements within elements; what word processors write stays under 30, and libxml2 ends at 255."""
_UNSEEN = frozenset(
    "script style template svg canvas iframe frame object embed applet audio video map "
    "select textarea button dialog datalist".split()
)
_PASSED_OVER = frozenset({"header", "footer", "main", "aside"})
"""Elements that pandoc leaves out, or may, with all their words."""
_BEGINS = re.compile(r"break-before\s*:\s*(?:always|page)", re.IGNORECASE)
_BLOCKS = frozenset({"p", "li", "div", "dd", "td", "aside", "section"})
_MAX_CALL = 8
"""Characters of what calls a note: `1`, `[12]`, `*`."""


class PageTooDeep(ValueError):
    """A page nested beyond `MAX_DEPTH`."""


def readied_page(text: str) -> tuple[str, dict[str, str]]:
    """Return a page with every element closed, notes in place, and boxes to tick as signs.

    With it come the words LibreOffice writes out as the head and the foot of its pages,
    as the properties `header` and `footer`.

    Scripts, styles, frames and what a form offers are left out: none of it is the
    reader's words. Pandoc takes minutes for pages whose lists are never closed.

    Raises:
        PageTooDeep: it is nested deeper than any document.
    """
    parser = html.HTMLParser(encoding="utf-8", remove_comments=True, remove_pis=True)
    try:
        root = html.document_fromstring(text.encode(errors="replace"), parser=parser)
    except (etree.ParserError, etree.XMLSyntaxError):
        return "", {}
    _check_depth(root)
    for element in list(root.iter(etree.Element)):
        if element.tag in _UNSEEN:
            _take_out(element)
        elif _BEGINS.search(element.get("style") or ""):
            element.addprevious(html.Element("hr"))
        elif element.tag in _PASSED_OVER:
            element.tag = "div"
        elif element.tag == "input":
            _take_out(element, _ticked(element))
    _put_notes_in_place(root)
    running = gathered(_running(root))
    return html.tostring(root, encoding="unicode"), running


def _running(root: etree._Element) -> Iterator[tuple[str, str]]:
    """Take the heads and feet of LibreOffice's pages out, and yield their lines."""
    for place in ("header", "footer"):
        for found in list(root.iter("div")):
            if found.get("title") != place or found.getparent() is None:
                continue
            for number in list(found.iter("sdfield")):
                if (number.get("type") or "").upper() in {"PAGE", "DOCSTAT"}:
                    number.text = PAGE_NUMBER
            for line in found.iter("p"):
                yield place, "".join(line.itertext())
            _take_out(found)


def _check_depth(root: etree._Element) -> None:
    depth = 0
    for event, _ in etree.iterwalk(root, events=("start", "end")):
        depth += 1 if event == "start" else -1
        if depth > MAX_DEPTH:
            raise PageTooDeep


def _ticked(box: etree._Element) -> str:
    if (box.get("type") or "").strip().lower() != "checkbox":
        return ""
    return "☐ " if box.get("checked") is None else "☒ "


def _take_out(element: etree._Element, words: str = "") -> None:
    """Put words in the place of an element; what follows it stays."""
    parent = element.getparent()
    if parent is None:
        return
    words += element.tail or ""
    before = element.getprevious()
    if before is None:
        parent.text = (parent.text or "") + words
    else:
        before.tail = (before.tail or "") + words
    parent.remove(element)


def _put_notes_in_place(root: etree._Element) -> None:
    """Put each footnote in brackets where it is called: a link and a note that link to each other.

    So do LibreOffice, Word, pandoc and most others write them.
    """
    named = {name: element for element in root.iter(etree.Element) for name in _names(element)}
    for call in list(root.iter("a")):
        words = "".join(call.itertext()).strip()
        note = named.get((call.get("href") or "").removeprefix("#"))
        if note is None or not 0 < len(words) <= _MAX_CALL:
            continue
        body = _body(note)
        if body is None or body in set(call.iterancestors()):
            continue
        around = [call, call.getparent(), *call]
        targets = {f"#{name}" for each in around if each is not None for name in _names(each)}
        back = next((link for link in body.iter("a") if link.get("href") in targets), None)
        if back is not None and back is not call:
            _take_out(back)
            said = " ".join("".join(body.itertext()).split())
            _take_out(body)
            _take_out(call, f" [{said}]" if said else "")


def _names(element: etree._Element) -> Iterator[str]:
    for key in ("id", "name"):
        if (name := element.get(key)) is not None:
            yield name


def _body(note: etree._Element) -> etree._Element | None:
    if note.tag in _BLOCKS:
        return note
    return next((each for each in note.iterancestors() if each.tag in _BLOCKS), None)
