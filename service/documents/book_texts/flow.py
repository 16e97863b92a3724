"""A page of markup -> its words in reading order, with its headings, page marks and ids."""

import re
from dataclasses import dataclass, field

from lxml import etree

from service.documents.book_texts.markup import briefly

_UNSEEN = frozenset(
    "head script style template noscript svg math nav iframe object audio video form button "
    "select textarea title".split()
)
_BLOCKS = frozenset(
    "address article aside blockquote body caption center dd details div dl dt fieldset "
    "figcaption figure footer h1 h2 h3 h4 h5 h6 header hr html li main ol p pre section summary "
    "table tbody td tfoot th thead tr ul".split()
)
_LEVELS = {f"h{level}": level for level in range(1, 7)}
_TYPE = "{http://www.idpf.org/2007/ops}type"
_NUMBERED_PAGE = re.compile(r"(?:\d{1,5}|[ivxlcdm]{1,9})", re.IGNORECASE)
_PAGE_ID = re.compile(r"(?:page|pg|p)[-_. ]?(\d{1,5}|[ivxlcdm]{1,9})", re.IGNORECASE)
"""An id that tells a page: `Page_169`, `p12`; a program's own `pb_3` counts breaks, not pages."""
_MARK = 24
"""Characters of the longest mark; an element that holds more is of the book, broken before."""
_AROUND_MARK = 400
"""Characters of a mark, or of a note's number, with the white space its markup is set out in."""
_PAGE_CLASSES = frozenset({"pagenum", "pageno", "page-number", "pagenumber", "pagebreak"})
_WORD = re.compile(r"\d+|[^\W\d_]+")
_SPACE = re.compile(r"\s+")
_MAX_HEADING = 300


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading: its words, the offset it begins at, and how deep it stands, 1 outermost."""

    title: str
    start: int
    level: int


@dataclass(slots=True)
class Flow:
    """What was read so far, of one page or of many.

    Attributes:
        pieces: of the text, in order.
        length: of the pieces together, in characters.
        headings: in order.
        pages: labels and offsets of page marks, in order.
        ids: offsets of the elements that bear one, by `page#id`; of the page itself by `page`.
    """

    pieces: list[str] = field(default_factory=list)
    length: int = 0
    headings: list[Heading] = field(default_factory=list)
    pages: list[tuple[str, int]] = field(default_factory=list)
    ids: dict[str, int] = field(default_factory=dict)
    _parting: str = ""
    _heading: list[str] | None = None
    _heading_start: int = 0

    @property
    def text(self) -> str:
        """The words so far: paragraphs parted by a blank line."""
        return "".join(self.pieces)

    @property
    def ahead(self) -> int:
        """The offset the next words will have."""
        return self.length + (len(self._parting) if self.length else 0)

    def part(self, parting: str) -> None:
        """Part what comes from what was: by a space, a line feed or a blank line, the widest."""
        if len(parting) > len(self._parting) or (parting == "\n" and self._parting == " "):
            self._parting = parting

    def say(self, words: str) -> None:
        """Add words, their white space made single spaces."""
        plain = _SPACE.sub(" ", words)
        if plain[:1] == " ":
            self.part(" ")
        stripped = plain.strip(" ")
        if stripped:
            start = self.ahead
            self._add(self._parting if self.length else "")
            self._parting = ""
            if self._heading is not None:
                if not self._heading:
                    self._heading_start = start
                self._heading.append(stripped)
            self._add(stripped)
        if plain[-1:] == " ":
            self.part(" ")

    def read(self, page: str, root: etree._Element) -> None:
        """Add a page.

        Args:
            page: what its ids are kept under.
            root: its tree.
        """
        self.part("\n\n")
        self.ids.setdefault(page, self.ahead)
        skipping: etree._Element | None = None
        for event, element in etree.iterwalk(root, events=("start", "end")):
            if event == "start" and skipping is None:
                if self._enter(page, element):
                    self.say(element.text or "")
                else:
                    skipping = element
            elif event == "end":
                if skipping is None:
                    self._leave(element)
                elif skipping is element:
                    skipping = None
                if skipping is None and element is not root:
                    self.say(element.tail or "")
        self._heading = None
        self.part("\n\n")

    def _enter(self, page: str, element: etree._Element) -> bool:
        """Take note of an element; tell whether its words are the book's."""
        name = _name(element)
        if name in _BLOCKS:
            self.part("\n\n")
        elif name == "br":
            self.part("\n")
        self._bear(page, element)
        kinds = _kinds(element)
        if "pagebreak" in kinds:
            words = briefly(element, _AROUND_MARK)
            label = _page_label(element, words or "")
            if label:
                self.pages.append((label, self.ahead))
            if words is not None and len(words) <= _MARK:
                for inner in element.iter():
                    self._bear(page, inner)
                return False
        if name in _UNSEEN or "noteref" in kinds or _is_note(name, element):
            return False
        if name in _LEVELS:
            self._heading = []
        return True

    def _bear(self, page: str, element: etree._Element) -> None:
        """Keep where the ids an element bears lead to."""
        named = element.get("name") if _name(element) == "a" else None
        for key in (element.get("id"), named):
            if key:
                self.ids.setdefault(f"{page}#{key}", self.ahead)

    def _leave(self, element: etree._Element) -> None:
        name = _name(element)
        if name in _LEVELS and self._heading is not None:
            title = " ".join(self._heading)[:_MAX_HEADING]
            if title:
                self.headings.append(Heading(title, self._heading_start, _LEVELS[name]))
            self._heading = None
        if name in _BLOCKS:
            self.part("\n\n")

    def _add(self, piece: str) -> None:
        if piece:
            self.pieces.append(piece)
            self.length += len(piece)


def _name(element: etree._Element) -> str:
    tag = element.tag
    return tag.rpartition("}")[2].lower() if isinstance(tag, str) else ""


def _kinds(element: etree._Element) -> frozenset[str]:
    """Return what an element is said to be, by EPUB 3's types, by its role, by its class."""
    said = " ".join(element.get(key) or "" for key in (_TYPE, "epub:type", "role")).lower()
    kinds = {kind.removeprefix("doc-").rpartition(":")[2] for kind in said.split()}
    classes = (element.get("class") or "").lower().split()
    if not _PAGE_CLASSES.isdisjoint(classes):
        kinds.add("pagebreak")
    return frozenset(kinds)


def _page_label(element: etree._Element, words: str) -> str:
    """Return the number of a page mark: its title, its label, its words, or the end of its id."""
    for said in (element.get("title"), element.get("aria-label"), words[:_MARK]):
        numbers = [word for word in _WORD.findall(said or "") if _NUMBERED_PAGE.fullmatch(word)]
        if numbers:
            return str(numbers[-1])
    named = _PAGE_ID.fullmatch(element.get("id") or "")
    return "" if named is None else named[1]


def _is_note(name: str, element: etree._Element) -> bool:
    """Tell whether an element is the number of a note: raised, or a link within the book."""
    if name != "sup" and not (name == "a" and "#" in (element.get("href") or "")):
        return False
    words = briefly(element, _AROUND_MARK) or ""
    number = words.strip(" []()*†‡§↩︎")
    return number.isdecimal() or (not number and bool(words))
