"""What a line of a title page may be, beside title and author: a second title, an imprint."""

import re

from cards.intake.blocks import Block, Shape
from cards.intake.imprint import is_imprint, is_imprint_name, is_publisher, names_makers
from cards.intake.labels import fact_label, label_split
from cards.intake.title import MAX_TITLE_LINE, is_full_name, is_prose, named_in
from cards.intake.wording import folded

SUBTITLE_STYLES = frozenset({"subtitle", "untertitel"})
"""Paragraph styles of word processors for a subtitle, in lower case."""
LAST_BRACKET = re.compile(r"\s*\(([^()]*)\)\s*$")
"""The last brackets of a line."""


def may_title(block: Block) -> bool:
    """Tell whether a line under another may be a title: short, and no mere detail."""
    short = len(block.text) <= MAX_TITLE_LINE and "\n" not in block.text
    subtitle = block.style.lower() in SUBTITLE_STYLES
    shaped = block.shape in {Shape.HEADING, Shape.PARAGRAPH}
    return shaped and short and not subtitle and not is_prose(block.text)


def is_of_edition(inside: str, before: str) -> bool:
    """Tell whether brackets behind a title line hold what is said of the edition."""
    named = named_in(before).author is not None
    if not named and is_full_name(inside.rpartition(",")[0]):
        return False
    return names_makers(inside) or is_imprint(inside) or (named and is_imprint_name(inside))


def same_title(one: str, other: str) -> bool:
    """Tell whether two titles are the same, or one of them is the other's beginning."""
    first, second = sorted((folded(one), folded(other)), key=len)
    return bool(first) and (second == first or second.startswith(f"{first} "))


def made_behind(text: str, *, beside: bool = False) -> tuple[str, str] | None:
    """Return a line without the edition behind it, and that: `Mill, Hackett`; `Mill (Dover)`.

    One word behind a full name is a publisher's where facts stood `beside` it.
    """
    bracket = LAST_BRACKET.search(text)
    if bracket is not None and bracket.start() and is_of_edition(bracket[1], text):
        return text[: bracket.start()], bracket[1]
    name, found, maker = text.rpartition(", ")
    made = is_publisher(maker) or (beside and len(maker.split()) == 1)
    return (name, maker) if found and made and is_full_name(name) else None


def labelled(text: str) -> bool:
    """Tell whether a line opens with the label of a fact and a colon."""
    return any(
        fact_label(label) is not None and text[len(label) :].lstrip()[:1] == ":"
        for label, _ in label_split(text)
    )
