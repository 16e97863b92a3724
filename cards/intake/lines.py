"""The lines of a document: its blocks tidied, and taken apart where breaks were only typed."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import pairwise

from cards.intake.blocks import Block, Shape
from cards.intake.headings import part_named
from cards.intake.labels import fact_label, label_split
from cards.intake.locating import locator_in
from cards.intake.quotation_text import looks_quoted
from cards.intake.wording import OPENING_MARKS, Marker, boxes_apart, marker_of, tidied, unboxed

_MAX_QUOTED = 12
"""Lines of a quotation looked back on from the line that says whose it is."""


def lines_of(blocks: Iterable[Block]) -> list[Block]:
    """Return blocks as lines, each one heading, paragraph, item, quotation or row.

    A paragraph that opens with a typed marker is an item.
    """
    return _typed_items(list(_tidied(blocks)))


def _tidied(blocks: Iterable[Block]) -> Iterator[Block]:
    """Yield the blocks tidied, with paragraphs and items of several lines taken apart.

    They are taken apart where a line is a heading, opens with a label or
    with an item's marker; other breaks are the writer's own and stay.
    """
    for block in blocks:
        if block.shape is Shape.ROW:
            cells = "\t".join(tidied(cell) for cell in block.text.split("\t"))
            if cells.strip():
                yield replace(block, text=cells)
            continue
        text = boxes_apart(tidied("\n".join(map(_untabbed, block.text.split("\n")))))
        if block.shape is Shape.ITEM:
            text = unboxed(text)
        if not any(letter.isalnum() for letter in text):
            continue
        if block.shape is Shape.QUOTE or "\n" not in text:
            yield replace(block, text=text)
            continue
        part = block
        for stretch in _stretches(text.split("\n")):
            if any(letter.isalnum() for letter in stretch):
                yield replace(part, text=stretch)
            if block.shape is Shape.ITEM:
                part = Block(Shape.PARAGRAPH, "", style=block.style)


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


def _stretches(lines: list[str]) -> list[str]:
    stretches: list[list[str]] = []
    alone = False
    for line in lines:
        heading = _heading_line(line)
        before = stretches[-1][-_MAX_QUOTED:] if stretches else []
        item = _opens_item(line) and not _says_whose(line, "\n".join(before))
        opens = heading or item or _opens_label(line)
        if opens or alone or not stretches:
            stretches.append([line])
        else:
            stretches[-1].append(line)
        alone = heading
    return ["\n".join(stretch) for stretch in stretches]


def _heading_line(line: str) -> bool:
    found = part_named(line.rstrip(":"))
    return found is not None and found.sure


def _says_whose(line: str, before: str) -> bool:
    """Tell whether a dash opens no item, but a line on whose the words before it are, or where."""
    words = line.lstrip("–—-~ ")
    return line[:1] in {"–", "—"} and words[:1] not in OPENING_MARKS and looks_quoted(before)


def _opens_item(line: str) -> bool:
    return marker_of(line) is not None and locator_in(line) is None


def _opens_label(line: str) -> bool:
    return any(
        fact_label(label) is not None or _heading_line(label) for label, _ in label_split(line)
    )


def _typed_items(lines: list[Block]) -> list[Block]:
    """Return the lines with paragraphs that open with a typed marker turned to items.

    A letter or a Roman numeral is a marker only beside its neighbour in the
    row (*a* beside *b*): else it is someone's initial.
    """
    markers = [
        None if before is not None and _attributed(line, before) else _marker(line)
        for before, line in zip([None, *lines], lines, strict=False)
    ]
    rows = [(index, m) for index, m in enumerate(markers) if m is not None]
    confirmed: set[int] = set()
    for (left, one), (right, other) in pairwise(rows):
        if one.precedes(other):
            confirmed |= {left, right}
    result = []
    for index, (line, marker) in enumerate(zip(lines, markers, strict=True)):
        if marker is None or not (marker.sure or index in confirmed):
            result.append(line)
        else:
            number = next(iter(marker.readings.values()), None)
            result.append(replace(line, shape=Shape.ITEM, text=marker.rest, level=1, number=number))
    return result


def _attributed(line: Block, before: Block) -> bool:
    return _says_whose(
        line.text, f"“{before.text}”" if before.shape is Shape.QUOTE else before.text
    )


def _marker(line: Block) -> Marker | None:
    if line.shape is not Shape.PARAGRAPH or locator_in(line.text) is not None:
        return None
    found = part_named(line.text.rstrip(":"))
    if found is not None and found.sure:
        return None
    marker = marker_of(line.text)
    return marker if marker is not None and marker.rest else None
