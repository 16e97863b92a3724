"""The sections of a digest read one after another, and where each part of them stood."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from cards.digest import MAX_PARTS, Commitment, Notice, Point, Quotation
from cards.intake.blocks import Block
from cards.intake.commitments import commitments_of
from cards.intake.heading_words import BUILT_IN, HeadingWords, Part
from cards.intake.headings import is_verdict
from cards.intake.locating import locator_in, split_start
from cards.intake.places import Places
from cards.intake.points import points_of
from cards.intake.prose import prose_of
from cards.intake.quotation_text import read_quotation
from cards.intake.quotations import quotations_of
from cards.intake.sections import Section
from cards.intake.telling import listed
from cards.intake.traces import Trace, origins_of


@dataclass(slots=True)
class Reading:
    """What the sections read so far come to.

    Attributes:
        names: folded names of the book and its author.
        trace: which lines each part was read from.
        words: the reader's own heading words.
        left: for each section, its heading and the blocks that were not taken in.
    """

    names: frozenset[str]
    trace: Trace
    words: HeadingWords = BUILT_IN
    texts: dict[Part, list[str]] = field(default_factory=dict)
    points: list[Point] = field(default_factory=list)
    commitments: list[Commitment] = field(default_factory=list)
    quotations: list[Quotation] = field(default_factory=list)
    left: list[tuple[str, list[Block]]] = field(default_factory=list)
    notices: list[Notice] = field(default_factory=list)

    @property
    def holds_something(self) -> bool:
        """Whether a part was found that can be asked about."""
        return bool(
            self.texts.get(Part.THEME) or self.points or self.commitments or self.quotations
        )

    def take(self, section: Section) -> None:
        """Read one section."""
        part = section.part
        if part is not None:
            self.trace.read(part.value, section.origins)
        match part:
            case Part.POINTS:
                self._points(section)
            case Part.COMMITMENTS:
                made = commitments_of(section.blocks, self.words)
                self._trace(part, len(self.commitments), made.origins, made.columns)
                self.commitments += made.commitments
                self.left.append((section.name, made.stray))
            case Part.QUOTATIONS:
                found = quotations_of(section.blocks, self.names, self.words)
                self._trace(part, len(self.quotations), found.origins, found.columns)
                self.quotations += found.quotations
                self.left.append((section.name, found.stray))
                self._tell_names(part, found.places)
            case None:
                self.left.append((section.name, section.blocks))
            case _:
                self._prose(part, section)

    def joined(self, part: Part) -> str | None:
        """Return the words of a part that is prose, or None."""
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

    def _prose(self, part: Part, section: Section) -> None:
        text = prose_of(section.blocks)
        name = section.name.rstrip(":")
        if part is Part.JUDGEMENT and is_verdict(name):
            text = name if text is None else f"{name}: {text}"
        self.trace.read(part.value, origins_of(section.blocks))
        if text:
            self.texts.setdefault(part, []).append(text)

    def _points(self, section: Section) -> None:
        found = points_of(section.blocks, self.words)
        before = len(self.points)
        self._trace(Part.POINTS, before, found.origins, found.columns)
        self.points += found.points
        for block, number in found.quoted:
            quotation = read_quotation(block.text, self.names)
            if quotation is None:
                found.stray.append(block)
                continue
            if quotation.after is None and number is not None:
                quotation = replace(quotation, after=before + number)
            self._trace(Part.QUOTATIONS, len(self.quotations), [block.origins], ())
            self.quotations.append(quotation)
        self.left.append((section.name, found.stray))
        self._tell_names(Part.POINTS, found.places)

    def _trace(
        self,
        part: Part,
        before: int,
        origins: Sequence[tuple[int, ...]],
        columns: Sequence[Block],
    ) -> None:
        self.trace.read(part.value, origins_of(columns))
        for number, lines in enumerate(origins, before + 1):
            self.trace.read(f"{part.value} {number}", lines)

    def _tell_names(self, part: Part, places: Sequence[Block]) -> None:
        """Tell which names of chapters are not kept, where their numbers are."""
        self.trace.read(part.value, origins_of(places))
        named = [block.text for block in places if locator_in(block.text) is None]
        if names := [split_start(text).text for text in named]:
            said = (
                f"Of the headings that give places only the numbers are kept, not {listed(names)}."
            )
            self.notices.append(Notice("document", said))
