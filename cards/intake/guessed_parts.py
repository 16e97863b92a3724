"""Parts under headings of unknown words, told by what stands under them.

Only where a part is announced nowhere, and only under a line that looks like the headings of
the other parts: quotations by their marks, else what is missing of points and commitments.
The reader is told of every guess.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from cards.digest import Notice
from cards.intake.blocks import Block, Shape
from cards.intake.columns import heads_details
from cards.intake.entries import place_in_heading
from cards.intake.fact_lines import only_facts, opens_with_fact
from cards.intake.generic_titles import is_generic
from cards.intake.heading_words import MAX_HEADING, HeadingWords, Part
from cards.intake.headings import part_named
from cards.intake.labels import fact_label, is_detail_label, label_split
from cards.intake.locating import locator_in, split_end, split_start
from cards.intake.quotation_text import looks_quoted
from cards.intake.sections import Section
from cards.intake.wording import excerpt, folded

_LISTED = (Part.POINTS, Part.COMMITMENTS, Part.QUOTATIONS)
_MAX_WORDS = 10
"""Words of a heading whose words are not known."""
_MIN_ENTRY = 4
"""Words of an entry of a digest, on the average: names of people in a book have fewer."""
_OTHERS = frozenset(
    folded(
        "characters character people persons cast dramatis vocabulary glossary words links sources "
        "reading bibliography contents map timeline chronology questions personen figuren glossar "
        "personnages vocabulaire personajes vocabulario personaggi personagens personages "
        "woordenlijst fragen preguntas domande perguntas vragen"
    ).split()
)
"""Words of headings over lists that are no part of a digest."""


@dataclass(slots=True)
class Guessed:
    """Heading words with those that were guessed, and what to tell the reader of them."""

    words: HeadingWords
    notices: list[Notice] = field(default_factory=list)


def guessed_parts(
    lines: Sequence[Block], sections: Sequence[Section], words: HeadingWords
) -> Guessed | None:
    """Return the headings whose parts were guessed, or None where nothing had to be, or could.

    Args:
        lines: of one digest.
        sections: as they are announced in known words.
        words: the reader's own heading words.
    """
    announced = [section for section in sections if section.part is not None]
    known = {section.part for section in announced}
    missing = [part for part in _LISTED if part not in known]
    if not missing or not announced:
        return None
    taken = {section.at for section in announced}
    dresses = {_dress(lines[at]) for at in taken}
    heads = [
        at
        for at in range(1, len(lines))
        if at not in taken and _may_head(lines, at, dresses) and at > min(taken)
    ]
    bounds = sorted({*heads, *taken, len(lines)})
    parts: dict[str, Part] = {}
    guessed = Guessed(words)
    for start, end in pairwise(bounds):
        if start not in heads or not missing:
            continue
        heading = lines[start].text.split("\n")[0].rstrip(":").strip()
        named = part_named(heading)
        among = missing if named is None else [part for part in missing if part is named.part]
        part = _part_of(_under(lines, start, end), among)
        if part is None or folded(heading) in parts:
            continue
        missing.remove(part)
        parts[folded(heading)] = part
        guessed.notices.append(
            Notice(
                part.value,
                f"What stands under “{excerpt(heading, 60)}” was taken as {part.value}, which have "
                f"no heading of their own. Put {part.value.capitalize()} over it to say so.",
            )
        )
    if not parts:
        return None
    guessed.words = words.and_also(parts)
    return guessed


def _dress(block: Block) -> tuple[str, int]:
    """Return how a heading looks: a heading of a level, bold, capitals, with a colon, plain."""
    first = block.text.split("\n")[0]
    if block.shape is Shape.HEADING:
        return "heading", block.level
    if block.shape is not Shape.PARAGRAPH:
        return block.shape.value, block.level
    if block.strong:
        return "strong", 0
    if first.isupper():
        return "capital", 0
    return ("colon" if first.endswith(":") else "plain"), 0


def _may_head(lines: Sequence[Block], at: int, dresses: set[tuple[str, int]]) -> bool:
    block = lines[at]
    first, _, rest = block.text.partition("\n")
    if block.shape not in {Shape.HEADING, Shape.PARAGRAPH} or _dress(block) not in dresses:
        return False
    if len(first) > MAX_HEADING or len(first.split()) > _MAX_WORDS or (rest and first[-1] != ":"):
        return False
    if first.endswith((".", "!", ",", ";", "”", "»")) or looks_quoted(first):
        return False
    if _dress(block)[0] == "plain":
        below = lines[at + 1] if at + 1 < len(lines) else block
        if below.shape not in {Shape.ITEM, Shape.QUOTE, Shape.ROW} and not looks_quoted(below.text):
            return False
    return not (_says_otherwise(first) or place_in_heading(first) is not None)


def _says_otherwise(text: str) -> bool:
    """Tell whether words head something that is known to be no list of a digest's."""
    label = text.rstrip(":")
    named = part_named(label)
    if (named is not None and named.sure) or is_generic(label) or heads_details(label):
        return True
    if fact_label(label) is not None or is_detail_label(label):
        return True
    if (
        opens_with_fact(text)
        or only_facts(text)
        or any(fact_label(one) for one, _ in label_split(text))
    ):
        return True
    tokens = folded(text).split()
    other = not _OTHERS.isdisjoint((*tokens[:1], *tokens[-1:])) and "i" not in tokens
    return other or locator_in(text) is not None


def _under(lines: Sequence[Block], start: int, end: int) -> list[str]:
    """Return the entries under a heading: the rest of its own lines, and the blocks below."""
    texts = lines[start].text.split("\n")[1:]
    for block in lines[start + 1 : end]:
        nested = block.shape is Shape.ITEM and block.level > 1
        if not (nested or locator_in(block.text) is not None):
            texts.append(block.text)
    return texts


def _part_of(entries: Sequence[str], missing: Sequence[Part]) -> Part | None:
    if not missing or not entries:
        return None
    quoted = sum(map(looks_quoted, entries))
    if Part.QUOTATIONS in missing and 2 * quoted > len(entries):
        return Part.QUOTATIONS
    short = sum(len(one.split()) for one in entries) < _MIN_ENTRY * len(entries)
    if short or quoted or (len(entries) == 1 and missing[0] is Part.POINTS):
        return None
    placed = 2 * sum(map(_is_placed, entries)) > len(entries)
    for part in missing:
        if part is Part.COMMITMENTS and not placed:
            return part
        if part is not Part.COMMITMENTS and (placed or part is Part.POINTS):
            return part
    return None


def _is_placed(text: str) -> bool:
    return split_end(text).locator is not None or split_start(text).locator is not None
