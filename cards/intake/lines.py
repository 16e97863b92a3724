"""The lines of a document: its blocks tidied, and taken apart where breaks were only typed."""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import pairwise

from cards.intake.blocks import Block, Shape
from cards.intake.columns import heads_details
from cards.intake.fact_lines import only_facts
from cards.intake.heading_words import BUILT_IN, HeadingWords
from cards.intake.headings import part_named
from cards.intake.labels import fact_label, label_split
from cards.intake.locating import locator_in
from cards.intake.quotation_text import looks_quoted
from cards.intake.traces import lines_apart, together
from cards.intake.wording import OPENING_MARKS, Marker, marker_of, tidied, unboxed

_BARE = ("bare", "o")
_MAX_QUOTED = 12
"""Lines of a quotation looked back on from the line that says whose it is."""


def lines_of(blocks: Iterable[Block], words: HeadingWords = BUILT_IN) -> list[Block]:
    """Return blocks as lines, each one heading, paragraph, item, quotation or row.

    A paragraph that opens with a typed marker is an item. The reader's own heading
    `words` count as the built-in ones do.
    """
    return _typed_items(list(_tidied(blocks, words)), words)


def _tidied(blocks: Iterable[Block], words: HeadingWords) -> Iterator[Block]:
    """Yield the blocks tidied, with paragraphs and items of several lines taken apart.

    They are taken apart where a line is a heading, opens with a label or
    with an item's marker; other breaks are the writer's own and stay.
    """
    for block in blocks:
        if block.shape is Shape.ROW:
            if block.text.strip():
                yield block
            continue
        lines = [
            replace(line, text=text)
            for line in lines_apart(block)
            if (text := tidied(_untabbed(line.text)))
        ]
        if block.shape is Shape.ITEM and lines:
            lines[0] = replace(lines[0], text=unboxed(lines[0].text))
        if not any(_has_words(line) for line in lines):
            continue
        if block.shape is Shape.QUOTE or len(lines) == 1:
            yield together(lines)
            continue
        shape = block.shape
        for stretch in _stretches(lines, words):
            if any(_has_words(line) for line in stretch):
                part = together(stretch)
                yield part if shape is block.shape else _paragraph(part)
            if block.shape is Shape.ITEM:
                shape = Shape.PARAGRAPH


def _paragraph(block: Block) -> Block:
    return Block(Shape.PARAGRAPH, block.text, style=block.style, origins=block.origins)


def _has_words(block: Block) -> bool:
    return any(letter.isalnum() for letter in block.text)


def _untabbed(line: str) -> str:
    """Return a line with spaces for tabs, and in brackets a place set behind the last of them.

    Behind the name of a fact, a tab stands for a colon.
    """
    words, _, last = line.rpartition("\t")
    if fact_label(words.strip(" :")) is not None:
        return f"{words.strip(' :')}: {last}"
    if words.strip() and locator_in(words) is None and locator_in(last) is not None:
        line = f"{words} ({last.strip(' ()[]')})"
    return line.replace("\t", " ")


def _stretches(lines: list[Block], words: HeadingWords) -> list[list[Block]]:
    stretches: list[list[Block]] = []
    alone = False
    rows = _bare_rows(lines)
    for line, below in zip(lines, [*lines[1:], None], strict=True):
        heading = _heading_line(line.text, words) or _heads_facts(line.text, below)
        before = stretches[-1][-_MAX_QUOTED:] if stretches else []
        said = "\n".join(one.text for one in before)
        item = _opens_item(line.text, rows) and not _says_whose(line.text, said)
        opens = heading or item or _opens_label(line.text, words)
        if opens or alone or not stretches:
            stretches.append([line])
        else:
            stretches[-1].append(line)
        alone = heading
    return stretches


def _heading_line(line: str, words: HeadingWords) -> bool:
    found = part_named(line.rstrip(":"), words)
    return found is not None and found.sure


def _heads_facts(line: str, below: Block | None) -> bool:
    """Tell whether a line is the heading over a line of facts: `EDITION`, `Details`."""
    return below is not None and heads_details(line) and line[-1] != ":" and only_facts(below.text)


def _says_whose(line: str, before: str) -> bool:
    """Tell whether a dash opens no item, but a line on whose the words before it are, or where."""
    words = line.lstrip("–—-~ ")
    return line[:1] in {"–", "—"} and words[:1] not in OPENING_MARKS and looks_quoted(before)


def _opens_item(line: str, rows: frozenset[int]) -> bool:
    marker = marker_of(line)
    if marker is None or locator_in(line) is not None:
        return False
    bare = next((marker.readings[kind] for kind in _BARE if kind in marker.readings), None)
    return bare is None or bare in rows


def _bare_rows(lines: list[Block]) -> frozenset[int]:
    """Return the figures without a sign behind them that stand beside their neighbours."""
    found = Counter(
        number
        for line in lines
        if (marker := marker_of(line.text)) is not None
        for kind, number in marker.readings.items()
        if kind in _BARE
    )
    return frozenset(
        number
        for number, count in found.items()
        if (count > 1 if number == 0 else bool(found[number - 1] or found[number + 1]))
    )


def _opens_label(line: str, words: HeadingWords) -> bool:
    return any(
        fact_label(label) is not None or (_heading_line(label, words) and not locator_in(label))
        for label, _ in label_split(line)
    ) or only_facts(line)


def _typed_items(lines: list[Block], words: HeadingWords) -> list[Block]:
    """Return the lines with paragraphs that open with a typed marker turned to items.

    A letter or a Roman numeral is a marker only beside its neighbour in the
    row (*a* beside *b*): else it is someone's initial.
    """
    markers = [
        None if before is not None and _attributed(line, before) else _marker(line, words)
        for before, line in zip([None, *lines], lines, strict=False)
    ]
    rows = [(index, m) for index, m in enumerate(markers) if m is not None]
    confirmed: set[int] = set()
    for (left, one), (right, other) in pairwise(rows):
        if one.precedes(other):
            confirmed |= {left, right}
    result = []
    lines = _counted_items(lines)
    for index, (line, marker) in enumerate(zip(lines, markers, strict=True)):
        if marker is None or not (marker.sure or index in confirmed):
            result.append(line)
        else:
            number = next(iter(marker.readings.values()), None)
            result.append(replace(line, shape=Shape.ITEM, text=marker.rest, level=1, number=number))
    return result


def _counted_items(lines: list[Block]) -> list[Block]:
    """Return the lines with the numbers typed inside the items of a list taken off them."""
    found = [
        (index, marker)
        for index, line in enumerate(lines)
        if line.shape is Shape.ITEM
        and locator_in(line.text) is None
        and (marker := marker_of(line.text)) is not None
        and not {"digit", "bare"}.isdisjoint(marker.readings)
    ]
    confirmed: dict[int, Marker] = {}
    for (left, one), (right, other) in pairwise(found):
        if lines[left].level == lines[right].level and one.precedes(other):
            confirmed |= {left: one, right: other}
    return [
        replace(
            line, text=confirmed[index].rest, number=next(iter(confirmed[index].readings.values()))
        )
        if index in confirmed
        else line
        for index, line in enumerate(lines)
    ]


def _attributed(line: Block, before: Block) -> bool:
    return _says_whose(
        line.text, f"“{before.text}”" if before.shape is Shape.QUOTE else before.text
    )


def _marker(line: Block, words: HeadingWords) -> Marker | None:
    if line.shape is not Shape.PARAGRAPH or locator_in(line.text) is not None:
        return None
    found = part_named(line.text.rstrip(":"), words)
    if found is not None and found.sure:
        return None
    marker = marker_of(line.text)
    return marker if marker is not None and marker.rest else None
