"""The words at the head and the foot of every page, which pandoc leaves out."""

import re
from collections.abc import Iterable, Iterator

from lxml import etree

from service.documents.archives import Parts
from service.documents.characters import cleaned
from service.documents.formats import Format
from service.documents.properties import MAX_LENGTH
from service.documents.xml import MalformedXml, parsed

PAGE_NUMBER = "\ue004"
"""Stands for a page's number until it is taken out with the words around it."""
_W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
_FALLBACK = "{http://schemas.openxmlformats.org/markup-compatibility/2006}Fallback"
_STYLE = "{urn:oasis:names:tc:opendocument:xmlns:style:1.0}"
_TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
_PART = re.compile(r"word/(header|footer)\d*\.xml")
_MASTERS = ("", "-left", "-first")
_NUMBERS = re.compile(r"\s*(PAGE|NUMPAGES|SECTION|SECTIONPAGES)\b", re.IGNORECASE)
_AROUND = re.compile(
    r"[^\w\t]*(?:\b(?:pages?|p|seiten?|s|p[áa]gs?|p[áa]ginas?|pagine?|pag|blz|bladzijden?)\b)?"
    rf"[^\w\t]*{PAGE_NUMBER}(?:\W*(?:\b(?:of|von|de|sur|di|van)\b)?\W*{PAGE_NUMBER})?[^\w\t]*",
    re.IGNORECASE,
)


def running_words(kind: Format, parts: Parts) -> dict[str, str]:
    """Return the words of the page headers and footers, as the properties `header` and `footer`.

    Each paragraph is a line, its tabs are kept, and page numbers are left out with the
    words around them (`Page 3 of 5`). Damaged ones count as none.
    """
    return gathered(_of_word(parts) if kind is Format.DOCX else _of_open_text(parts))


def gathered(lines: Iterable[tuple[str, str]]) -> dict[str, str]:
    """Return lines, each with `header` or `footer` before it, as the two properties."""
    found: dict[str, list[str]] = {"header": [], "footer": []}
    for place, line in lines:
        words = _without_numbers(line)
        if any(map(str.isalnum, words)) and words not in found[place]:
            found[place].append(words)
    return {place: "\n".join(said)[:MAX_LENGTH] for place, said in found.items() if said}


def _without_numbers(line: str) -> str:
    parted = _AROUND.sub(" ", line) if PAGE_NUMBER in line else line
    cells = [" ".join(cleaned(cell).split()) for cell in parted.split("\t")]
    return "\t".join(cells).strip()


def _of_word(parts: Parts) -> Iterator[tuple[str, str]]:
    for path in sorted(parts):
        found = _PART.fullmatch(path)
        if found is None:
            continue
        try:
            root = parsed(parts[path])
        except MalformedXml:
            continue
        for paragraph in root.iter(f"{_W}p"):
            if next(paragraph.iterancestors(_FALLBACK), None) is None:
                for line in "".join(_word_pieces(paragraph)).split("\n"):
                    yield found[1], line


def _word_pieces(paragraph: etree._Element) -> Iterator[str]:
    """Yield the words of a paragraph of Word, those of an inner one left to itself."""
    hidden = False
    for element in paragraph.iter(etree.Element):
        if next(element.iterancestors(f"{_W}p"), None) not in {paragraph, None}:
            continue
        if element.tag == f"{_W}fldChar" and element.get(f"{_W}fldCharType") == "end":
            hidden = False
        elif element.tag in {f"{_W}instrText", f"{_W}fldSimple"}:
            asked = element.text or element.get(f"{_W}instr") or ""
            if _NUMBERS.match(asked):
                hidden = element.tag == f"{_W}instrText"
                yield PAGE_NUMBER
        elif element.tag == f"{_W}t" and not hidden and not _in_number(element):
            yield element.text or ""
        elif element.tag == f"{_W}tab" and element.getparent().tag == f"{_W}r":  # type: ignore[union-attr]  # below a paragraph
            yield "\t"
        elif element.tag == f"{_W}br":
            yield "\n"


def _in_number(element: etree._Element) -> bool:
    simple = next(element.iterancestors(f"{_W}fldSimple"), None)
    return simple is not None and _NUMBERS.match(simple.get(f"{_W}instr") or "") is not None


def _of_open_text(parts: Parts) -> Iterator[tuple[str, str]]:
    try:
        root = parsed(parts["styles.xml"])
    except (KeyError, MalformedXml):
        return
    for place in ("header", "footer"):
        for master in _MASTERS:
            for element in root.iter(f"{_STYLE}{place}{master}"):
                for paragraph in element.iter(f"{_TEXT}p", f"{_TEXT}h"):
                    for line in _open_text(paragraph).split("\n"):
                        yield place, line


def _open_text(element: etree._Element) -> str:
    said = [element.text or ""]
    for inner in element:
        if inner.tag in {f"{_TEXT}page-number", f"{_TEXT}page-count"}:
            said.append(PAGE_NUMBER)
        elif inner.tag == f"{_TEXT}tab":
            said.append("\t")
        elif inner.tag == f"{_TEXT}line-break":
            said.append("\n")
        elif inner.tag == f"{_TEXT}s":
            said.append(" ")
        elif isinstance(inner.tag, str) and not inner.tag.endswith("}annotation"):
            said.append(_open_text(inner))
        said.append(inner.tail or "")
    return "".join(said)
