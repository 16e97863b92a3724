"""A digest as the blocks of our own written form: each with a style that says what it is.

Every format Catchword writes carries these blocks, and is read back to them; so what
is written as DOCX, ODT, Markdown or JSON comes back by one way (`own_form`).
"""

import re
from collections.abc import Iterable, Iterator
from enum import StrEnum

from cards.digest import Digest, Point, Quotation
from cards.intake.blocks import Block, Shape
from cards.intake.own_words import OWN_WORDS, OwnWords, language_of, words_for
from cards.intake.points import points_of
from cards.intake.quotation_text import read_quotation

MARK = "catchword"
"""The property of a document that says it is our own written form, and of which version."""
VERSION = "1"
"""The version written. A template bears `1 template`."""
TEMPLATE = "1 template"


class Role(StrEnum):
    """What a block is; the value is the name of the paragraph style that says so."""

    TITLE = "Catchword Title"
    AUTHOR = "Catchword Author"
    FACT = "Catchword Fact"
    SECTION = "Catchword Section"
    THEME = "Catchword Theme"
    POINT = "Catchword Point"
    POINT_MORE = "Catchword Point More"
    POINT_PLACE = "Catchword Point Place"
    COMMITMENT = "Catchword Commitment"
    COMMITMENT_MORE = "Catchword Commitment More"
    QUOTATION = "Catchword Quotation"
    QUOTATION_MORE = "Catchword Quotation More"
    QUOTATION_PLACE = "Catchword Quotation Place"
    JUDGEMENT = "Catchword Judgement"


MORE = {
    Role.POINT: Role.POINT_MORE,
    Role.COMMITMENT: Role.COMMITMENT_MORE,
    Role.QUOTATION: Role.QUOTATION_MORE,
}
"""What the further paragraphs of one point, commitment or quotation are."""
PLACE = {Role.POINT: Role.POINT_PLACE, Role.QUOTATION: Role.QUOTATION_PLACE}
"""What the line under a point or a quotation is that says where it stands."""
PARAGRAPHS = "\n\n"
"""What parts two paragraphs of one text."""

_AFTER = re.compile(
    "(?:" + "|".join(re.escape(words.after) for words in OWN_WORDS.values()) + r") ([0-9]{1,3})"
)
_BEFORE = frozenset(words.before for words in OWN_WORDS.values())
_UNSAID = frozenset(words.unsaid for words in OWN_WORDS.values())
_UNPLACED = frozenset(words.unplaced for words in OWN_WORDS.values())
_JOINTS = (" · ", ", ", "; ")


def blocks_of_digest(digest: Digest, language: str | None = None) -> tuple[Block, ...]:
    """Return a digest as blocks, the headings in a language, or else in the digest's own."""
    return tuple(_blocks(digest, words_for(language or language_of(whole_text(digest)))))


def whole_text(digest: Digest) -> str:
    """Return what the reader wrote of a digest, without the words of the book."""
    own = [digest.theme or "", digest.judgement or ""]
    own += [point.text for point in digest.points]
    own += [commitment.text for commitment in digest.commitments]
    text = "\n".join(filter(None, own))
    return text or "\n".join(quotation.text for quotation in digest.quotations)


def natural_point(text: str) -> Point:
    """Return the point a reader means who writes this text and no line that says its place."""
    if PARAGRAPHS in text:
        return Point(text)
    found = points_of([Block(Shape.ITEM, text, level=1)])
    if len(found.points) != 1 or found.quoted or found.stray or found.places:
        return Point(text)
    return found.points[0]


def natural_quotation(text: str) -> Quotation:
    """Return the quotation a reader means who writes this text and no line of its place."""
    found = None if PARAGRAPHS in text else read_quotation(text)
    return Quotation(text) if found is None else found


def place_line(locator: str | None, after: int | None, words: OwnWords) -> str:
    """Return the line that says where something stands; `place_said` reads it back."""
    if locator is None and after is None:
        return words.unplaced
    said = None
    if after is not None:
        said = f"{words.after} {after}" if after else words.before
    line = " · ".join(filter(None, (locator, said)))
    return line if place_said(line) == (locator, after) else f"{locator} · {words.unsaid}"


def place_said(line: str) -> tuple[str | None, int | None]:
    """Return the locator in a line that says where something stands, and the point before it."""
    if line in _UNPLACED:
        return None, None
    for joint in _JOINTS:
        locator, _, said = line.rpartition(joint)
        if locator.strip() and _says_point(said):
            return locator, _point_said(said)
    return (None, _point_said(line)) if _says_point(line) else (line, None)


def _says_point(said: str) -> bool:
    return said in _BEFORE | _UNSAID or _AFTER.fullmatch(said) is not None


def _point_said(said: str) -> int | None:
    found = _AFTER.fullmatch(said)
    if found is not None:
        return int(found[1])
    return 0 if said in _BEFORE else None


def _blocks(digest: Digest, words: OwnWords) -> Iterator[Block]:
    yield _block(Role.TITLE, digest.title)
    if digest.author is not None:
        yield _block(Role.AUTHOR, digest.author)
    yield from _facts(digest, words)
    if digest.theme is not None:
        yield _block(Role.SECTION, words.theme)
        yield from _paragraphs(Role.THEME, digest.theme)
    if digest.points:
        yield _block(Role.SECTION, words.points)
        yield from _points(digest.points, words)
    if digest.commitments:
        yield _block(Role.SECTION, words.commitments)
        for commitment in digest.commitments:
            yield from _paragraphs(Role.COMMITMENT, commitment.text)
    if digest.judgement is not None:
        yield _block(Role.SECTION, words.judgement)
        yield from _paragraphs(Role.JUDGEMENT, digest.judgement)
    if digest.quotations:
        yield _block(Role.SECTION, words.quotations)
        yield from _quotations(digest.quotations, words)


def _facts(digest: Digest, words: OwnWords) -> Iterator[Block]:
    day = None if digest.finished_on is None else digest.finished_on.isoformat()
    for label, value in (
        (words.edition, digest.edition),
        (words.isbn, digest.isbn),
        (words.pages, digest.pages),
        (words.finished, day),
    ):
        if value is not None:
            yield _block(Role.FACT, f"{label}: {value}")


def _points(points: Iterable[Point], words: OwnWords) -> Iterator[Block]:
    for point in points:
        yield from _paragraphs(Role.POINT, point.text)
        if point.locator is not None or natural_point(point.text) != point:
            yield _block(Role.POINT_PLACE, place_line(point.locator, None, words))


def _quotations(quotations: Iterable[Quotation], words: OwnWords) -> Iterator[Block]:
    for quotation in quotations:
        yield from _paragraphs(Role.QUOTATION, quotation.text)
        placed = quotation.locator is not None or quotation.after is not None
        if placed or natural_quotation(quotation.text) != quotation:
            line = place_line(quotation.locator, quotation.after, words)
            yield _block(Role.QUOTATION_PLACE, line)


def _paragraphs(role: Role, text: str) -> Iterator[Block]:
    first, *others = text.split(PARAGRAPHS)
    yield _block(role, first)
    for paragraph in others:
        yield _block(MORE.get(role, role), paragraph)


def _block(role: Role, text: str) -> Block:
    shape = Shape.HEADING if role in {Role.TITLE, Role.SECTION} else Shape.PARAGRAPH
    level = {Role.TITLE: 1, Role.SECTION: 2}.get(role, 0)
    return Block(shape, text, level=level, style=role.value)
