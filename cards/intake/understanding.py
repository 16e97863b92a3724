"""A document understood as a digest: the sections read, the facts gathered, the rest told."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import takewhile

from cards.digest import Digest, Notice
from cards.errors import NothingRecognised
from cards.intake.blocks import Block, Document, Shape
from cards.intake.digests_apart import Stretch, digests_apart
from cards.intake.fact_sections import take_section_facts
from cards.intake.facts import Facts
from cards.intake.guessed_parts import guessed_parts
from cards.intake.heading_words import BUILT_IN, HeadingWords, Part
from cards.intake.language import writes_day_first
from cards.intake.letters import without_letter
from cards.intake.lines import lines_of
from cards.intake.outline import outline
from cards.intake.own_form import own_form
from cards.intake.prose import prose_of
from cards.intake.reading import Reading
from cards.intake.sections import Outline
from cards.intake.telling import asked, bare_headings, left_out, unplaced
from cards.intake.tellings import settle_tellings
from cards.intake.title_page import TitlePage
from cards.intake.title_settled import settle
from cards.intake.traces import Line, Trace, lines_apart, origins_of, together, traced
from cards.intake.wording import excerpt, folded

_MIN_SENTENCE = 5
"""Words of a sentence at the top that may be the theme."""

_MAX_HEAD = 5
"""Words of a line over prose that is no line of it."""

__all__ = ["Source", "Understood", "understand", "understand_all", "unplaced"]


@dataclass(frozen=True, slots=True)
class Source:
    """Words of the document one part of a digest was read from.

    Attributes:
        part: as in `Notice`: `title`, `theme`, `points 3`, `quotations 2`, ...; `points`,
            `commitments` and `quotations` alone for the headings that announce them, and
            `document` for words that only arrange it.
        words: as they stood, the marker of a list item and the locator included; blocks
            are parted by a new line, the cells of a row by a tab.
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


def understand(document: Document, words: HeadingWords = BUILT_IN) -> Understood:
    """Return the digest a document holds; of several, the first, and the reader is told so.

    Words that were not taken in are listed, never dropped in silence.

    Args:
        document: as blocks.
        words: the reader's own heading words, which win over the built-in ones.

    Raises:
        NothingRecognised: no part of a digest was found in it.
        InvalidDigest: what was found breaks a bound of a digest.
    """
    first, *others = understand_all(document, words)
    if not others:
        return first
    titles = ", ".join(f"“{other.digest.title}”" for other in others[:5])
    more = f" and {len(others) - 5} more" if len(others) > 5 else ""
    said = f"The document holds {len(others) + 1} digests; the others are {titles}{more}."
    return replace(first, notices=(*first.notices, Notice("document", said)))


def understand_all(document: Document, words: HeadingWords = BUILT_IN) -> tuple[Understood, ...]:
    """Return every digest a document holds, in order; one, as a rule.

    A digest begins with its title page; see `digests_apart`.

    Raises:
        NothingRecognised: no part of a digest was found in it.
        InvalidDigest: what was found breaks a bound of a digest.
    """
    if (own := own_form(document)) is not None:
        sources = tuple(Source(part, words_of) for part, words_of in own.sources)
        return (Understood(own.digest, own.notices, sources, own.left),)
    blocks, raw = traced(document.blocks)
    stretches = digests_apart(lines_of(blocks, words), document, words)
    return tuple(_understand(stretch, raw, words) for stretch in stretches)


def _understand(stretch: Stretch, raw: Sequence[Line], words: HeadingWords) -> Understood:
    document = stretch.document
    letter = without_letter(stretch.lines)
    found = outline(letter.lines, words)
    guessed = guessed_parts(letter.lines, found.sections, words)
    if guessed is not None:
        words = guessed.words
        found = outline(lines_of(letter.lines, words), words)
    settle_tellings(found.sections)
    day_first = writes_day_first(line.text for line in stretch.lines)
    page = TitlePage(Facts(day_first=day_first))
    levels = [section.level for section in found.sections if section.part is not None]
    page.read(found.front, document, min(filter(None, levels), default=0))
    take_section_facts(found.sections, page.facts)
    bare = bare_headings(found.sections)
    trace = Trace(raw)
    reading = Reading(_names(page), trace, words)
    for section in found.sections:
        reading.take(section)
    if not reading.holds_something:
        raise NothingRecognised(
            f"No part of a digest was found in “{document.name}”. Put what the book comes to under "
            "a heading such as Summary, its ideas under Points, what you will do under "
            "Commitments, and the words to keep under Quotations.",
            where="document",
        )
    settle(page, document)
    notices = list(page.notices)
    theme = _theme(reading, page, notices)
    digest = Digest(
        title=page.title,
        author=page.facts.author,
        edition=page.facts.edition,
        isbn=page.facts.isbn,
        pages=page.facts.pages,
        finished_on=page.facts.finished_on,
        theme=theme,
        judgement=reading.joined(Part.JUDGEMENT),
        points=tuple(reading.points),
        commitments=tuple(reading.commitments),
        quotations=reading.placed(),
    )
    left = [("", [*letter.left, *page.left]), *reading.left]
    notices += [] if guessed is None else guessed.notices
    notices += reading.notices + bare + asked(digest)
    for name, blocks in left:
        notices += left_out(name, blocks)
    notices += page.facts.told()
    _trace_page(page, found, stretch, trace)
    for _, blocks in left:
        for block in blocks:
            trace.leave_block(block)
    for rest, origins in page.facts.rests:
        trace.leave(rest, origins)
    own = origins_of(stretch.lines)
    return Understood(digest, tuple(notices), _sources(digest, trace), trace.left(own))


def _theme(reading: Reading, page: TitlePage, notices: list[Notice]) -> str | None:
    """Return the theme: under its heading, or else the prose at the top."""
    theme = reading.joined(Part.THEME)
    if theme is None and not page.prose:
        heading, page.prose = _headed_prose(page.left)
        taken = {id(block) for block in [*heading, *page.prose]}
        page.left = [block for block in page.left if id(block) not in taken]
        reading.trace.read(Part.THEME.value, origins_of(heading))
        if heading:
            said = (
                f"The words under “{excerpt(heading[0].text)}” were taken as the theme. Put "
                "Summary over them to say so."
            )
            notices.append(Notice("theme", said))
            reading.trace.read(Part.THEME.value, origins_of(page.prose))
            return prose_of(page.prose)
    if theme is not None:
        page.left += page.prose
        return theme
    if not page.prose:
        said = "There is no theme. Say what the book comes to under Summary."
        notices.append(Notice("theme", said))
        return None
    reading.trace.read(Part.THEME.value, origins_of(page.prose))
    said = (
        "The words at the top stand under no heading and were taken as the theme. Put "
        "Summary over them to say so."
    )
    notices.append(Notice("theme", said))
    return prose_of(_unheaded(page.prose))


def _unheaded(prose: Sequence[Block]) -> list[Block]:
    """Return prose without a short line right over it that is a heading of unknown words."""
    head, *below = lines_apart(prose[0])
    short = len(head.text.split()) <= _MAX_HEAD and head.text[-1].isalnum()
    if short and below and len(below[0].text.split()) > _MAX_HEAD:
        return [together(below), *prose[1:]]
    return list(prose)


def _headed_prose(left: Sequence[Block]) -> tuple[list[Block], list[Block]]:
    """Return the first heading at the top that announces nothing known, and prose below it."""
    for at, block in enumerate(left):
        dressed = block.shape is Shape.HEADING or block.strong or block.text.endswith(":")
        below = list(takewhile(_is_sentence, left[at + 1 :]))
        if dressed and below and block.shape in {Shape.HEADING, Shape.PARAGRAPH}:
            return [block], below
    return [], []


def _is_sentence(block: Block) -> bool:
    return (
        block.shape is Shape.PARAGRAPH
        and not block.strong
        and len(block.text.split()) >= _MIN_SENTENCE
        and block.text.endswith((".", "!", "?", "”", "…"))
    )


def _trace_page(page: TitlePage, found: Outline, stretch: Stretch, trace: Trace) -> None:
    for fact, origins in page.facts.found.items():
        trace.read(fact.value, origins)
    for fact, words in page.facts.outside.items():
        for said in words:
            trace.read_outside(fact.value, said)
    arranging = [*stretch.before, *page.generic, *found.columns]
    trace.read("document", origins_of(arranging))
    for section in found.sections:
        if section.part is None and (section.origins and section.blocks == []):
            trace.leave(section.name, section.origins)
        elif section.part is None:
            trace.read("document", section.origins)
    for block in page.dated:
        trace.leave_block(block)


def _sources(digest: Digest, trace: Trace) -> tuple[Source, ...]:
    parts = ["title", "author", "edition", "isbn", "pages", "finished_on", "theme"]
    for name, count in (
        ("points", len(digest.points)),
        ("commitments", len(digest.commitments)),
        ("quotations", len(digest.quotations)),
    ):
        parts += [name, *(f"{name} {number}" for number in range(1, count + 1))]
    parts += ["judgement", "document"]
    said = ((part, trace.words_of(part)) for part in parts)
    return tuple(Source(part, words) for part, words in said if words)


def _names(page: TitlePage) -> frozenset[str]:
    """Return the folded names of the book and its author that may stand beside a quotation."""
    names = {folded(page.title)}
    if page.facts.author is not None:
        names |= {folded(page.facts.author), folded(page.facts.author.split()[-1])}
    return frozenset(names)
