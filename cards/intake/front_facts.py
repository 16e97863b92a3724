"""The facts of a book taken out of blocks that are in no part of its digest."""

from collections.abc import Sequence
from dataclasses import replace

from cards.intake.blocks import Block, Shape
from cards.intake.fact_lines import opens_with_fact
from cards.intake.facts import Facts
from cards.intake.title import is_prose
from cards.intake.traces import lines_apart
from cards.intake.values import fact_leads, finished_off, isbn_off, pages_off


def without_facts(block: Block, facts: Facts) -> list[Block]:
    """Take the facts out of a block that is in no part, and return what is left of it.

    A paragraph that gave facts is parted into its lines.
    """
    facts.at = block.origins
    match block.shape:
        case Shape.QUOTE:
            return [block]
        case Shape.ROW | Shape.ITEM:
            text = facts.take_row(block.text)
            return [replace(block, text=text)] if text else []
        case _:
            lines = lines_apart(block)
            texts = [line.text for line in lines]
            prose = len(lines) > 1 and is_prose(block.text) and not _is_title_page(texts)
            kept: list[Block] = []
            for line in lines:
                facts.at = line.origins
                whole = prose and not opens_with_fact(line.text)
                left = line.text if whole else facts.take_line(line.text)
                kept += [replace(line, text=text) for text in left.split("\n") if text]
            return [block] if [line.text for line in kept] == texts else kept


def _is_title_page(lines: Sequence[str]) -> bool:
    """Tell whether short lines, one of which gives a fact, are a title page and no prose."""
    short = not any(map(is_prose, lines))
    opening = not any(line[0].islower() and not line.startswith("by ") for line in lines)
    return short and opening and any(map(_gives_figures, lines))


def _gives_figures(line: str) -> bool:
    if opens_with_fact(line) or fact_leads(line):
        return True
    return any(off(line) is not None for off in (isbn_off, finished_off, pages_off))
