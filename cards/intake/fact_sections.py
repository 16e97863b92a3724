"""The facts of a book that stand under the parts of its digest, or below them all."""

from collections.abc import Sequence

from cards.intake.blocks import Block, Shape
from cards.intake.columns import heads_details
from cards.intake.fact_lines import MAX_LINE, only_facts, opens_with_fact
from cards.intake.facts import Facts
from cards.intake.front_facts import without_facts
from cards.intake.heading_words import Part
from cards.intake.imprint import is_imprint, is_imprint_name
from cards.intake.labels import Fact, fact_label
from cards.intake.sections import Section
from cards.intake.values import counted_off, finished_off, isbn_off


def take_section_facts(sections: Sequence[Section], facts: Facts) -> None:
    """Take the facts out of the sections of a digest."""
    _take_foot(sections, facts)
    for section in sections:
        _take_headed_fact(section, facts)
        _take_facts(section, facts)


def _take_foot(sections: Sequence[Section], facts: Facts) -> None:
    """Take the lines of facts that stand at the foot of a digest, under whatever part."""
    section = next((section for section in reversed(sections) if section.blocks), None)
    if section is None or section.part is None:
        return
    start = len(section.blocks)
    while start and _is_foot(section.blocks[start - 1]):
        start -= 1
    foot = section.blocks[start:]
    if start and any(map(_gives_figures, foot)):
        section.blocks = section.blocks[:start]
        for left in (left for block in foot for left in without_facts(block, facts)):
            facts.at = left.origins
            facts.beside(left.text)


def _is_foot(block: Block) -> bool:
    return block.shape is Shape.PARAGRAPH and all(map(only_facts, block.text.split("\n")))


def _gives_figures(block: Block) -> bool:
    """Tell whether a line says when the book was finished, or its ISBN, or counts its pages."""
    text = block.text[:MAX_LINE]
    if opens_with_fact(text, Part.QUOTATIONS):
        return True
    return any(off(text) is not None for off in (finished_off, isbn_off, counted_off))


def _take_headed_fact(section: Section, facts: Facts) -> None:
    """Take a fact that stands under a heading of its own: `Finished`, and the day below."""
    fact = None if section.part is not None else fact_label(section.name.rstrip(":"))
    mere = fact is Fact.TITLE and section.blocks and only_facts(section.blocks[0].text)
    if fact is not None and section.blocks and not mere:
        facts.at = (*section.origins, *section.blocks[0].origins)
        if facts.take_labelled(fact, section.name.rstrip(":"), section.blocks[0].text):
            section.blocks = section.blocks[1:]


def _take_facts(section: Section, facts: Facts) -> None:
    """Take the facts that stand in labelled lines among the words of a section."""
    kept: list[Block] = []
    for block in section.blocks:
        if section.part is None:
            left = without_facts(block, facts)
            kept += _without_makers(left, facts) if heads_details(section.name) else left
        elif block.shape is not Shape.PARAGRAPH:
            kept.append(block)
        elif (rest := facts.take_within(block, section.part)) is not None:
            kept.append(rest)
    section.blocks = kept


def _without_makers(blocks: Sequence[Block], facts: Facts) -> list[Block]:
    """Take the lines that name the edition out of a section of details."""
    kept = []
    for block in blocks:
        if is_imprint(block.text) or is_imprint_name(block.text):
            facts.at = block.origins
            facts.beside(block.text)
        else:
            kept.append(block)
    return kept
