"""A table of contents at the top of a digest, which only says what parts follow."""

import re
from collections.abc import Sequence

from cards.intake.blocks import Block, Shape
from cards.intake.heading_words import MAX_HEADING, HeadingWords
from cards.intake.headings import part_named
from cards.intake.labels import label_split
from cards.intake.wording import folded

_LEAST = 3
"""Parts of a digest that a table of contents names."""
_SIGNS = re.compile(r"\s*(?:[·•|/;,>\t\n]|\s[–—-]\s)\s*")
_PAGE = re.compile(r"[\s.…·_]*\d{1,2}$")
_HEADS = frozenset(
    folded(name)
    for name in (
        "contents|table of contents|in this digest|in this document|on this page|index|inhalt|"
        "inhaltsverzeichnis|sommaire|table des matières|contenido|índice|tabla de contenidos|"
        "indice|sommario|conteúdo|sumário|inhoud|inhoudsopgave"
    ).split("|")
)


def contents_in(lines: Sequence[Block], words: HeadingWords) -> frozenset[int]:
    """Return the numbers of the lines that are a table of contents, its heading included."""
    found: set[int] = set()
    for at, block in enumerate(lines):
        if block.shape in {Shape.PARAGRAPH, Shape.ITEM} and _names_parts(block.text, words):
            found.add(at)
    at = 0
    while at < len(lines):
        if folded(lines[at].text[:MAX_HEADING].rstrip(":")) not in _HEADS:
            at += 1
            continue
        end = at + 1
        while end < len(lines) and _is_entry(lines[end], words):
            end += 1
        if end - at > _LEAST:
            found.update(range(at, end))
        elif end < len(lines) and end == at + 1 and end in found:
            found.add(at)
        at = end
    return frozenset(found)


def _names_parts(text: str, words: HeadingWords) -> bool:
    """Tell whether one line names part after part, and says nothing else."""
    if len(text) > 2 * MAX_HEADING:
        return False
    rests = [rest for label, rest in label_split(text) if folded(label) in _HEADS]
    names = [_PAGE.sub("", name) for name in _SIGNS.split(rests[0] if rests else text) if name]
    parts = {_part(name, words) for name in names}
    return len(names) >= _LEAST and None not in parts and len(parts) >= _LEAST


def _is_entry(block: Block, words: HeadingWords) -> bool:
    listed = block.shape in {Shape.PARAGRAPH, Shape.ITEM} and "\n" not in block.text
    return listed and _part(_PAGE.sub("", block.text), words) is not None


def _part(name: str, words: HeadingWords) -> object:
    found = part_named(name, words)
    return found.part if found is not None and found.sure else None
