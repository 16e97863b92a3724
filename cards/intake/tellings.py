"""Headings that announce the course of a book: its points above a list, its theme above prose.

`Argument` over a paragraph, as Milton set it over each book of *Paradise Lost*, says what
the book comes to; over a list it announces points. `Plot` and `Story` are used both ways.
"""

from collections.abc import Sequence

from cards.intake.blocks import Shape
from cards.intake.headings import Part, unfilled
from cards.intake.labels import label_split
from cards.intake.sections import Section

_TELLING = frozenset(
    "argument plot story storyline outline handlung intrigue histoire trama argumento enredo "
    "verhaallijn verhaal".split()
)


def settle_tellings(sections: Sequence[Section]) -> None:
    """Make the tellings that are prose the theme, where something else holds the points or theme.

    One paragraph is the theme unless the theme stands elsewhere and the points do not; several
    paragraphs are, where the theme stands nowhere else and the points do.
    """
    prose = [section for section in sections if _is_prose(section)]
    others = [section for section in sections if section.blocks and not _is_prose(section)]
    has_theme = any(section.part is Part.THEME for section in others)
    has_points = any(section.part is Part.POINTS for section in others)
    for section in prose:
        single = len(section.blocks) == 1
        if (single and (has_points or not has_theme)) or (has_points and not has_theme):
            section.part = Part.THEME


def _is_prose(section: Section) -> bool:
    return (
        section.part is Part.POINTS
        and any(map(_is_telling, _heads(section.name)))
        and bool(section.blocks)
        and all(
            block.shape is Shape.PARAGRAPH and not block.strong and "\n" not in block.text
            for block in section.blocks
        )
    )


def _heads(name: str) -> list[str]:
    return [name, *(label for label, _ in label_split(name))]


def _is_telling(name: str) -> bool:
    words = unfilled(name)
    return bool(words) and words <= _TELLING
