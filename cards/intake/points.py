"""The points of a digest, with the locators and the quotations that stand with them."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from cards.digest import Point
from cards.intake.blocks import Block, Shape
from cards.intake.columns import PLACE_COLUMNS
from cards.intake.entries import Entry, entries_of, placed_in_column
from cards.intake.heading_words import BUILT_IN, HeadingWords
from cards.intake.locating import Located, joined, locator_in, split_end, split_start
from cards.intake.quotation_text import looks_quoted
from cards.intake.traces import lines_apart, origins_of, together
from cards.intake.wording import flowing, folded, marker_of, uncounted

_PAGED = re.compile(r"(?:(?<=[.!?…”\"’)])\s+|\s[–—-]\s)(\d{1,4}(?:\s?[-–]\s?\d{1,4})?)$")
"""A bare number behind the end of a sentence, or a dash."""


@dataclass(slots=True)
class PointsFound:
    """What a section of points holds.

    Attributes:
        points: in order.
        origins: of each point, the lines of the document it came from.
        quoted: blocks that are quotations, each with the number of the point it
            stands under, counted from 1 within this section, or None.
        stray: blocks that are neither.
        places: inner headings that only say where the points below them stand.
        columns: rows that only name the columns of a table.
    """

    points: list[Point] = field(default_factory=list)
    origins: list[tuple[int, ...]] = field(default_factory=list)
    quoted: list[tuple[Block, int | None]] = field(default_factory=list)
    stray: list[Block] = field(default_factory=list)
    places: list[Block] = field(default_factory=list)
    columns: list[Block] = field(default_factory=list)


def points_of(blocks: Sequence[Block], words: HeadingWords = BUILT_IN) -> PointsFound:
    """Return the points of a section."""
    listed = entries_of(blocks, words)
    found = PointsFound(places=listed.places, columns=listed.columns)
    heads = listed.columns[-1].text.split("\t") if listed.columns else []
    columns = [folded(name) for name in heads]
    for block in listed.stray:
        if _is_quotation(block):
            found.quoted.append((block, None))
        else:
            found.stray.append(block)
    paged = _all_paged(listed.entries)
    for entry in listed.entries:
        if found.points and entry.block.shape is Shape.PARAGRAPH and _is_quotation(entry.block):
            found.quoted.append((entry.block, len(found.points)))
            found.quoted.extend((block, len(found.points)) for block in entry.under)
            continue
        parted = _parted(_with_page(entry) if paged else entry)
        point, quoted = _point(parted, columns)
        if point is None:
            found.stray.append(entry.block)
        else:
            found.points.append(point)
            found.origins.append(_origins(parted, point, quoted))
        number = len(found.points) or None
        found.quoted.extend((block, number) for block in quoted)
    return found


def _all_paged(entries: Sequence[Entry]) -> bool:
    """Tell whether every one of several points has a bare number behind its last full stop."""
    texts = [flowing(one.block.text) for one in entries]
    bare = (_PAGED.search(text) and _own_locator(text)[1] is None for text in texts)
    return len(texts) > 1 and all(bare)


def _with_page(entry: Entry) -> Entry:
    """Return an entry with the bare number behind it written as the page it is."""
    text = _PAGED.sub(r" (\1)", flowing(entry.block.text))
    return replace(entry, block=replace(entry.block, text=text))


def _origins(entry: Entry, point: Point, quoted: Sequence[Block]) -> tuple[int, ...]:
    """Return the lines a point came from: its own, and the heading that gives its place."""
    apart = {id(block) for block in quoted}
    own = origins_of([entry.block, *(one for one in entry.under if id(one) not in apart)])
    by = entry.placed_by
    given = entry.place is not None and point.locator == entry.place.locator
    return own if by is None or not given else by.origins + own


def _point(entry: Entry, columns: Sequence[str]) -> tuple[Point | None, list[Block]]:
    located = (
        _row(entry.block, columns) if entry.block.shape is Shape.ROW else Located(entry.block.text)
    )
    lines = [flowing(located.text)]
    locator = located.locator
    if entry.block.shape is Shape.HEADING or entry.block.strong:
        lines[0], locator = _own_locator(lines[0])
    quoted: list[Block] = []
    for block in entry.under:
        if _is_quotation(block):
            quoted.append(block)
        elif locator is None and (only := locator_in(block.text)) is not None and only.locator:
            locator = only.locator
        else:
            lines.append(flowing(block.text.replace("\t", ", ")))
    if entry.block.shape is Shape.HEADING or entry.block.strong:
        lines = _titled(lines)
    text = "\n".join(line for line in lines if line)
    if locator is None:
        text, locator = _own_locator(text)
    if locator is None and len(lines) > 1 and lines[0]:
        lines[0], locator = _own_locator(lines[0])
        text = "\n".join(line for line in lines if line)
    if locator is None and entry.place is not None:
        locator = entry.place.locator
    words = any(letter.isalnum() for letter in text)
    return (Point(text, locator) if words else None), quoted


def _parted(entry: Entry) -> Entry:
    """Part the lines typed into an entry from the first that is a quotation on."""
    lines = lines_apart(entry.block)
    at = next((n for n, line in enumerate(lines) if n and looks_quoted(line.text)), None)
    if at is None or entry.block.shape is Shape.ROW:
        return entry
    quoted = [Block(Shape.QUOTE, line.text, origins=line.origins) for line in lines[at:]]
    return replace(entry, block=together(lines[:at]), under=[*quoted, *entry.under])


def _own_locator(text: str) -> tuple[str, str | None]:
    for split in (split_end, split_start):
        located = split(text)
        if located.locator is not None:
            return located.text.strip(), located.locator
    return text.strip(), None


def _titled(lines: list[str]) -> list[str]:
    """Join a point's own heading to the words under it."""
    marker = marker_of(lines[0])
    title = marker.rest if marker is not None and marker.sure and marker.rest else lines[0]
    if len(lines) == 1:
        return [title]
    joint = " " if title.endswith((".", "!", "?", ":", "…")) else ": "
    return [title + joint + lines[1], *lines[2:]]


def _row(block: Block, columns: Sequence[str]) -> Located:
    """Return a table row as a text and a locator; a cell that only counts the rows is left out."""
    written = block.text.split("\t")
    names = dict(zip(written, columns, strict=False))
    cells = [cell for cell in written if cell] if _places(columns) else uncounted(written)
    words = [cell for cell in cells if locator_in(cell) is None]
    said = [
        placed_in_column(place, cell, names.get(cell, ""))
        for cell in cells
        if (place := locator_in(cell)) is not None and place.locator
    ]
    if not words:
        return Located("")
    return Located(": ".join(words), joined(place.locator for place in said))


def _places(columns: Sequence[str]) -> bool:
    """Tell whether the first column is headed as one of places, and so counts no rows."""
    return bool(columns) and columns[0] in PLACE_COLUMNS


def _is_quotation(block: Block) -> bool:
    return block.shape is Shape.QUOTE or (
        block.shape in {Shape.ITEM, Shape.PARAGRAPH} and looks_quoted(block.text)
    )
