"""A document in our own written form, taken at its word.

What Catchword wrote is read back verbatim, by the styles of its paragraphs. A reader who
went on writing in such a document is understood too: what stands in no style of ours
belongs to the part it stands in, and is read as in any other document.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from pathlib import PurePosixPath

from cards.digest import Commitment, Digest, Notice, Point, Quotation
from cards.errors import NothingRecognised
from cards.intake.blocks import Block, Document, Shape
from cards.intake.commitments import commitments_of
from cards.intake.headings import Part, part_named
from cards.intake.own_blocks import (
    MARK,
    MORE,
    PARAGRAPHS,
    PLACE,
    TEMPLATE,
    VERSION,
    Role,
)
from cards.intake.own_facts import OwnFacts
from cards.intake.own_hints import without_hints
from cards.intake.own_opened import Opened
from cards.intake.places import Places
from cards.intake.points import points_of
from cards.intake.prose import prose_of
from cards.intake.quotations import quotations_of
from cards.intake.telling import asked
from cards.intake.wording import excerpt

_ROLES = {role.value: role for role in Role}
_OF_MORE = {more: role for role, more in MORE.items()}
_OF_PLACE = {place: role for role, place in PLACE.items()}
_PART = {
    Role.THEME: Part.THEME,
    Role.POINT: Part.POINTS,
    Role.COMMITMENT: Part.COMMITMENTS,
    Role.QUOTATION: Part.QUOTATIONS,
    Role.JUDGEMENT: Part.JUDGEMENT,
}
_MAX_TOLD = 20
"""Lines left out that are told of one by one."""
_NO_THEME = "There is no theme. Say what the book comes to under Theme."


@dataclass(frozen=True, slots=True)
class OwnForm:
    """A digest read back from our own written form.

    Attributes:
        digest: as it was written, or as the reader went on writing it.
        notices: what to tell the reader.
        sources: for each part, in the order of the digest, its name as in `Notice` and
            the words it came from.
        left: the words that were not taken in, in the order of the document.
    """

    digest: Digest
    notices: tuple[Notice, ...]
    sources: tuple[tuple[str, str], ...]
    left: tuple[str, ...]


def own_form(document: Document) -> OwnForm | None:
    """Return the digest a document in our own written form holds; None for any other document.

    Raises:
        NothingRecognised: it is a blank template, or nothing is left in it.
        InvalidDigest: what it holds breaks a bound of a digest.
    """
    mark = document.properties.get(MARK)
    if mark not in {VERSION, TEMPLATE} or not any(b.style in _ROLES for b in document.blocks):
        return None
    template = mark == TEMPLATE
    reading = _Reading(template, OwnFacts(typed=template))
    for block in without_hints(document.blocks) if template else document.blocks:
        reading.take(block)
    reading.close()
    return reading.understood(document.name)


@dataclass(slots=True)
class _Reading:
    """What the blocks taken so far come to."""

    template: bool
    facts: OwnFacts
    part: Part | None = None
    titles: list[str] = field(default_factory=list)
    authors: list[str] = field(default_factory=list)
    texts: dict[Part, list[str]] = field(default_factory=dict)
    points: list[Point] = field(default_factory=list)
    commitments: list[Commitment] = field(default_factory=list)
    quotations: list[Quotation] = field(default_factory=list)
    words: dict[Part, list[str]] = field(default_factory=dict)
    unsettled: set[int] = field(default_factory=set)
    left: list[str] = field(default_factory=list)
    open: Opened | None = None

    def take(self, block: Block) -> None:
        role = _ROLES.get(block.style)
        more = None if role is None else _OF_MORE.get(role)
        placed = None if role is None else _OF_PLACE.get(role)
        if self.open is not None and self.open.role is more:
            self.open.paragraphs.append(block.text)
            return
        if self.open is not None and self.open.role is placed and self.open.place is None:
            self.open.place = block.text
            return
        self.close()
        match role:
            case Role.TITLE:
                self.titles.append(block.text)
            case Role.AUTHOR:
                self.authors.append(block.text)
            case Role.FACT:
                self._fact(block.text)
            case Role.SECTION:
                self._section(block)
            case Role.THEME | Role.JUDGEMENT:
                self.part = _PART[role]
                self._prose(self.part, block.text)
            case Role.POINT | Role.COMMITMENT | Role.QUOTATION:
                self.part = _PART[role]
                self.open = Opened(role, [block.text])
            case _ if more is not None:
                self.part = _PART[more]
                self.open = Opened(more, [block.text])
            case _:
                self._added(replace(block, style=""))

    def close(self) -> None:
        """Finish the part whose paragraphs were being gathered."""
        opened, self.open = self.open, None
        if opened is None:
            return
        if not opened.text.strip():
            self._leave(opened.place or "")
            return
        if self.template:
            opened.settle()
        part = _PART[opened.role]
        self.words.setdefault(part, []).append(opened.words)
        match part:
            case Part.POINTS:
                self.points.append(opened.as_point(len(self.points), typed=self.template))
            case Part.COMMITMENTS:
                self.commitments.append(Commitment(opened.text))
            case _:
                if self.template or opened.place is None:
                    self.unsettled.add(len(self.quotations))
                number = len(self.quotations)
                self.quotations.append(opened.as_quotation(number, typed=self.template))

    def understood(self, name: str) -> OwnForm:
        """Return what was read, with what to tell of it.

        Raises:
            NothingRecognised: it comes to nothing.
            InvalidDigest: it breaks a bound of a digest.
        """
        texts = {part: PARAGRAPHS.join(found) for part, found in self.texts.items()}
        theme = _words_or_none(texts.get(Part.THEME))
        if not (theme or self.points or self.commitments or self.quotations):
            raise NothingRecognised(_nothing_in(name, template=self.template), where="document")
        notices = [] if theme else [Notice("theme", _NO_THEME)]
        title = "\n".join(self.titles)
        if not title.strip():
            title = PurePosixPath(name).stem
            notices.append(
                Notice("title", f"It bears no title; the name of the file, “{title}”, was taken.")
            )
        digest = Digest(
            title=title,
            author=_words_or_none("\n".join(self.authors)),
            edition=self.facts.edition,
            isbn=self.facts.isbn,
            pages=self.facts.pages,
            finished_on=self.facts.finished_on,
            theme=theme,
            judgement=_words_or_none(texts.get(Part.JUDGEMENT)),
            points=tuple(self.points),
            commitments=tuple(self.commitments),
            quotations=self._settled(),
        )
        told = [f"This was not taken in: “{excerpt(words)}”." for words in self.left[:_MAX_TOLD]]
        if len(self.left) > _MAX_TOLD:
            told.append(f"{len(self.left) - _MAX_TOLD} more lines were not taken in.")
        notices += asked(digest) + [Notice("document", message) for message in told]
        return OwnForm(digest, tuple(notices), tuple(self._sources(digest)), tuple(self.left))

    def _fact(self, line: str) -> None:
        if not self.facts.take(line):
            self._leave(line)

    def _section(self, block: Block) -> None:
        announced = part_named(block.text)
        self.part = None if announced is None else announced.part
        if announced is None:
            self._leave(block.text)

    def _prose(self, part: Part, text: str) -> None:
        self.texts.setdefault(part, []).append(text)
        self.words.setdefault(part, []).append(text)

    def _added(self, block: Block) -> None:
        """Take a block in no style of ours as the part it stands in would in any document."""
        if block.shape is Shape.HEADING:
            self._section(block)
            return
        match self.part:
            case Part.POINTS:
                found = points_of([block])
                self.points += found.points
                self.words.setdefault(Part.POINTS, []).extend([block.text] * len(found.points))
                stray = [*found.stray, *(quoted for quoted, _ in found.quoted)]
            case Part.COMMITMENTS:
                made = commitments_of([block])
                self.commitments += made.commitments
                self.words.setdefault(Part.COMMITMENTS, []).extend(
                    [block.text] * len(made.commitments)
                )
                stray = made.stray
            case Part.QUOTATIONS:
                quoted = quotations_of([block])
                stray = quoted.stray
                for quotation in quoted.quotations:
                    self.unsettled.add(len(self.quotations))
                    self.quotations.append(quotation)
                    self.words.setdefault(Part.QUOTATIONS, []).append(block.text)
            case Part.THEME | Part.JUDGEMENT:
                text = prose_of([block])
                stray = [block] if text is None else []
                if text is not None:
                    self._prose(self.part, text)
            case _:
                stray = [block]
        for one in stray:
            self._leave(one.text)

    def _leave(self, words: str) -> None:
        if words.strip():
            self.left.append(words)

    def _settled(self) -> tuple[Quotation, ...]:
        """Return the quotations; those a reader added stand where their page puts them."""
        places = Places([point.locator for point in self.points])
        return tuple(
            replace(quotation, after=places.point_before(quotation.locator))
            if number in self.unsettled and quotation.after is None
            else quotation
            for number, quotation in enumerate(self.quotations)
        )

    def _sources(self, digest: Digest) -> Iterator[tuple[str, str]]:
        yield "title", digest.title
        if digest.author is not None:
            yield "author", digest.author
        yield from self.facts.lines
        for part in (Part.THEME, Part.JUDGEMENT):
            if self.words.get(part) and getattr(digest, part.value) is not None:
                yield part.value, "\n".join(self.words[part])
        for part in (Part.POINTS, Part.COMMITMENTS, Part.QUOTATIONS):
            for number, words in enumerate(self.words.get(part, ()), 1):
                yield f"{part.value} {number}", words


def _words_or_none(text: str | None) -> str | None:
    return text if text and text.strip() else None


def _nothing_in(name: str, *, template: bool) -> str:
    if template:
        return (
            f"“{name}” is the blank template, and nothing has been written in it yet. Write over "
            "what stands in square brackets, save it, and hand it over again."
        )
    return (
        f"Nothing of the digest is left in “{name}”. Write what the book comes to under Theme, or "
        "its ideas under Points, save it, and hand it over again."
    )
