"""A document understood as a digest: the sections read, the facts gathered, the rest told."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from cards.digest import MAX_PARTS, Commitment, Digest, Notice, Point, Quotation
from cards.errors import NothingRecognised
from cards.intake.blocks import Block, Document, Shape
from cards.intake.commitments import commitments_of
from cards.intake.facts import Facts
from cards.intake.headings import Part, is_verdict
from cards.intake.labels import is_detail_label
from cards.intake.locating import locator_in, split_start
from cards.intake.outline import Section, outline
from cards.intake.places import Places
from cards.intake.points import points_of
from cards.intake.prose import prose_of
from cards.intake.quotation_text import read_quotation
from cards.intake.quotations import quotations_of
from cards.intake.tellings import settle_tellings
from cards.intake.title import is_generic
from cards.intake.title_page import TitlePage, without_facts
from cards.intake.wording import excerpt, folded

MAX_TOLD = 20
"""Lines left out of one section that are told of one by one."""


@dataclass(frozen=True, slots=True)
class Source:
    """Words of the document one part of a digest was read from.

    Attributes:
        part: as in `Notice`: `title`, `theme`, `points 3`, `quotations 2`, ...
        words: as they stood, the marker of a list item and the locator included; blocks
            are parted by a new line.
    """

    part: str
    words: str


@dataclass(frozen=True, slots=True)
class Understood:
    """A digest, and how it was understood.

    Attributes:
        digest: what was understood.
        notices: what to tell the reader.
        sources: for each part found in the document, the words it came from, in the order
            of the digest.
        left: the words that were not taken in, in the order of the document.
    """

    digest: Digest
    notices: tuple[Notice, ...]
    sources: tuple[Source, ...] = ()
    left: tuple[str, ...] = ()


def understand(document: Document) -> Understood:
    """Return the digest a document holds.

    Words that were not taken in are listed in the notices, never dropped in silence.

    Raises:
        NothingRecognised: no part of a digest was found in it.
        InvalidDigest: what was found breaks a bound of a digest.
    """
    found = outline(document.blocks)
    settle_tellings(found.sections)
    page = TitlePage(Facts())
    page.read(found.front, document)
    for section in found.sections:
        _take_facts(section, page.facts)
    bare = _bare_headings(found.sections)
    reading = _Reading(_names(page))
    for section in found.sections:
        reading.take(section)
    if not reading.holds_something:
        raise NothingRecognised(
            f"No part of a digest was found in “{document.name}”. Put what the book comes to under "
            "a heading such as Summary, its ideas under Points, what you will do under "
            "Commitments, and the words to keep under Quotations.",
            where="document",
        )
    page.settle(document)
    theme = reading.joined(Part.THEME)
    notices = list(page.notices)
    if theme is None and page.prose:
        theme = "\n\n".join(page.prose)
        notices.append(
            Notice(
                "theme",
                "The words at the top stand under no heading and were taken as the theme. Put "
                "Summary over them to say so.",
            )
        )
    elif theme is None:
        notices.append(
            Notice("theme", "There is no theme. Say what the book comes to under Summary.")
        )
    else:
        page.left += [Block(Shape.PARAGRAPH, text) for text in page.prose]
    quotations = reading.placed()
    digest = Digest(
        title=page.title,
        author=page.facts.author,
        isbn=page.facts.isbn,
        pages=page.facts.pages,
        finished_on=page.facts.finished_on,
        theme=theme,
        judgement=reading.joined(Part.JUDGEMENT),
        points=tuple(reading.points),
        commitments=tuple(reading.commitments),
        quotations=quotations,
    )
    left = [("", page.left), *reading.left]
    notices += reading.notices + bare + _asked(digest)
    for name, blocks in left:
        notices += _left_out(name, blocks)
    notices += page.facts.told()
    return Understood(digest, tuple(notices))


@dataclass(slots=True)
class _Reading:
    """What the sections read so far come to."""

    names: frozenset[str]
    texts: dict[Part, list[str]] = field(default_factory=dict)
    points: list[Point] = field(default_factory=list)
    commitments: list[Commitment] = field(default_factory=list)
    quotations: list[Quotation] = field(default_factory=list)
    left: list[tuple[str, list[Block]]] = field(default_factory=list)
    notices: list[Notice] = field(default_factory=list)

    @property
    def holds_something(self) -> bool:
        return bool(
            self.texts.get(Part.THEME) or self.points or self.commitments or self.quotations
        )

    def take(self, section: Section) -> None:
        match section.part:
            case Part.POINTS:
                self._points(section)
            case Part.COMMITMENTS:
                commitments, stray = commitments_of(section.blocks)
                self.commitments += commitments
                self.left.append((section.name, stray))
            case Part.QUOTATIONS:
                found = quotations_of(section.blocks, self.names)
                self.quotations += found.quotations
                self.left.append((section.name, found.stray))
                self._tell_names(found.places)
            case None:
                self.left.append((section.name, section.blocks))
            case part:
                text = prose_of(section.blocks)
                name = section.name.rstrip(":")
                if part is Part.JUDGEMENT and is_verdict(name):
                    text = name if text is None else f"{name}: {text}"
                if text:
                    self.texts.setdefault(part, []).append(text)

    def _points(self, section: Section) -> None:
        found = points_of(section.blocks)
        before = len(self.points)
        self.points += found.points
        for block, number in found.quoted:
            quotation = read_quotation(block.text, self.names)
            if quotation is None:
                found.stray.append(block)
                continue
            if quotation.after is None and number is not None:
                quotation = replace(quotation, after=before + number)
            self.quotations.append(quotation)
        self.left.append((section.name, found.stray))
        self._tell_names(found.places)

    def _tell_names(self, places: Sequence[Block]) -> None:
        """Tell which names of chapters are not kept, where their numbers are."""
        named = [block.text for block in places if locator_in(block.text) is None]
        if names := [split_start(text).text for text in named]:
            said = (
                f"Of the headings that give places only the numbers are kept, not {_listed(names)}."
            )
            self.notices.append(Notice("document", said))

    def joined(self, part: Part) -> str | None:
        return "\n\n".join(self.texts.get(part, [])) or None

    def placed(self) -> tuple[Quotation, ...]:
        """Return the quotations, each with its point where something settles it.

        More parts than a digest keeps are left as they are: it will refuse them.
        """
        if max(len(self.points), len(self.quotations)) > MAX_PARTS:
            return tuple(self.quotations)
        places = Places([point.locator for point in self.points])
        placed = []
        for number, quotation in enumerate(self.quotations, 1):
            after = quotation.after
            if after is not None and after > len(self.points):
                self.notices.append(
                    Notice(
                        f"quotations {number}",
                        f"It is said to stand after point {after}, but there are "
                        f"{len(self.points)} points.",
                    )
                )
                after = None
            if after is None:
                after = places.point_before(quotation.locator)
            placed.append(replace(quotation, after=after))
        return tuple(placed)


def _take_facts(section: Section, facts: Facts) -> None:
    """Take the facts that stand in labelled lines among the words of a section."""
    kept: list[Block] = []
    for block in section.blocks:
        if section.part is None:
            kept += without_facts(block, facts)
        elif block.shape is not Shape.PARAGRAPH:
            kept.append(block)
        elif text := facts.take_within(block.text, section.part):
            kept.append(replace(block, text=text))
    section.blocks = kept


def _bare_headings(sections: Sequence[Section]) -> list[Notice]:
    """Return a notice of the headings that announce nothing and have nothing left under them."""
    names = [
        section.name
        for section in sections
        if section.part is None
        and section.name
        and not section.blocks
        and not is_generic(section.name)
        and not is_detail_label(section.name)
    ]
    if not names:
        return []
    told = _listed(names)
    return [Notice("document", f"These headings announce no part of a digest: {told}.")]


def _listed(names: Sequence[str]) -> str:
    """Return words in quotation marks, as many as are told of one by one."""
    told = ", ".join(f"“{excerpt(name)}”" for name in names[:MAX_TOLD])
    return told + (f" and {len(names) - MAX_TOLD} more" if len(names) > MAX_TOLD else "")


def _names(page: TitlePage) -> frozenset[str]:
    """Return the folded names of the book and its author that may stand beside a quotation."""
    names = {folded(page.title)}
    if page.facts.author is not None:
        names |= {folded(page.facts.author), folded(page.facts.author.split()[-1])}
    return frozenset(names)


def _asked(digest: Digest) -> list[Notice]:
    """Return what the reader is asked about quotations that can not be placed."""
    notices = []
    for number, quotation in enumerate(digest.quotations, 1):
        if quotation.locator is None:
            notices.append(
                Notice(
                    f"quotations {number}",
                    "It has no locator. Add the page or the chapter where it stands.",
                )
            )
        if digest.points and quotation.after is None:
            notices.append(unplaced(number))
    return notices


def unplaced(number: int) -> Notice:
    """Return what the reader is asked about a quotation of which nothing says where it stands."""
    return Notice(
        f"quotations {number}",
        "Nothing says after which point it stands. Say so once, and it can be placed.",
    )


def _left_out(name: str, blocks: Sequence[Block]) -> list[Notice]:
    """Return a notice for each block that was not taken in, and one for what is past the bound."""
    where = f"Under “{excerpt(name, 60)}”" if name else "Before the first heading"
    texts = [block.text.replace("\t", ", ") for block in blocks[:MAX_TOLD]]
    told = [f"this was not taken in: “{excerpt(text)}”" for text in texts]
    if len(blocks) > MAX_TOLD:
        told.append(f"{len(blocks) - MAX_TOLD} more lines were not taken in")
    return [Notice("document", f"{where}, {words}.") for words in told]
