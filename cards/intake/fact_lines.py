"""Which lines are there for the facts of the book they give, and how such a line is parted."""

import re
from itertools import islice

from cards.intake.heading_words import Part
from cards.intake.imprint import is_imprint, is_imprint_name
from cards.intake.labels import Fact, fact_label, is_detail_label, label_split
from cards.intake.title import is_prose
from cards.intake.values import fact_leads, finished_off, idle, isbn_off, pages_off
from cards.intake.wording import folded

MAX_LINE = 400
"""Characters of a line that may give facts."""
_FEW_WORDS = 6
"""Words left of a line of several facts that is no sentence: a name, a publisher's name."""
_DASHES = re.compile(r"\s[–—]\s")
_DASHED = re.compile(r"\s*(?:[|·•;\n\t]|\s//\s|\s[–—]\s)\s*")
_FIGURE = re.compile(r"\d")
_COLON = re.compile(r":\s")
_LAST_WORDS = re.compile(r"(?:\S+\s+){0,3}\S+$")
_WORD_START = re.compile(r"(?<!\S)\S")
_MAX_LABELS = 12
"""Labels of one piece of a line."""
_PIECES = re.compile(r"\s*(?:[|·•;\n\t]|\s//\s)\s*")
_NEXT_LABEL = re.compile(r"[.,]\s+(?=([^\W\d_][\w -]{0,30}):\s)")
_DEEDS = frozenset({"done", "completed", "ended"})
"""Labels that among commitments are of a deed, not of the book."""


def pieces_of(text: str) -> list[str]:
    """Part a line where a sign or another label parts its facts."""
    pieces = []
    dashed = len(_DASHES.findall(text)) > 1 and _FIGURE.search(text) is not None
    for stretch in (_DASHED if dashed else _PIECES).split(text):
        start = 0
        for found in _NEXT_LABEL.finditer(stretch):
            if fact_label(found[1]) is not None or is_detail_label(found[1]):
                pieces.append(stretch[start : found.start()])
                start = found.end()
        pieces.append(stretch[start:])
    return [part for piece in pieces for part in _labels_apart(piece)]


def _labels_apart(piece: str) -> list[str]:
    """Part a piece in front of labels that follow with no sign: `Pages: 720 ISBN: ...`."""
    parts = []
    start = 0
    for colon in islice(_COLON.finditer(piece), _MAX_LABELS):
        words = _LAST_WORDS.search(piece[start : colon.start()])
        at = None if words is None else _label_start(piece, start + words.start(), colon)
        if at is not None and at > start:
            parts.append(piece[start:at].strip(" .,;"))
            start = at
    return [*parts, piece[start:]] if parts else [piece]


def _label_start(piece: str, start: int, colon: re.Match[str]) -> int | None:
    """Return where the longest label before a colon begins that has its fact behind it."""
    for word in _WORD_START.finditer(piece, start, colon.start()):
        label = piece[word.start() : colon.start()].strip()
        fact = fact_label(label)
        if fact in {Fact.PAGES, Fact.FINISHED, Fact.ISBN} and opens_with_fact(
            piece[word.start() :]
        ):
            return word.start()
    return None


def gives_facts(text: str) -> bool:
    """Tell whether a line that is as long as prose is there for its facts."""
    if opens_with_fact(text):
        return True
    left = text
    taken = []
    for off in (isbn_off, finished_off, pages_off):
        found = off(left)
        if found is not None:
            left = found.rest
            taken.append(off)
    leads = isbn_off in taken or fact_leads(text) or len(left.split()) <= _FEW_WORDS
    return leads and len(taken) > 1 and not is_prose(left)


def only_facts(line: str) -> bool:
    """Tell whether a line holds facts of the book, or its edition, and nothing else."""
    if len(line) > MAX_LINE or _FIGURE.search(line) is None:
        return False
    taken = 0
    for piece in pieces_of(line):
        split = list(label_split(piece))
        if any(fact_label(label) is not None for label, _ in split):
            taken += opens_with_fact(piece)
            continue
        left = next((value for label, value in split if is_detail_label(label)), None)
        if left is not None and not any(off(left) for off in (isbn_off, finished_off, pages_off)):
            continue
        left = piece if left is None else left
        for off in (isbn_off, finished_off, pages_off, finished_off):
            if (found := off(left)) is not None:
                left = found.rest
                taken += 1
        if left and not (idle(left) or is_imprint(left) or is_imprint_name(left)):
            return False
    return taken > 0


def opens_with_fact(line: str, part: Part | None = None) -> bool:
    """Tell whether a line is the label of a fact with its value right behind."""
    line = line[:MAX_LINE]
    if _FIGURE.search(line) is None:
        return False
    for label, value in label_split(line):
        fact = fact_label(label)
        if part is Part.COMMITMENTS and folded(label) in _DEEDS:
            continue
        if fact is Fact.FINISHED and (found := finished_off(value, labelled=True)) is not None:
            return idle(value[: found.day.start])
        if fact is Fact.PAGES and part is not Part.QUOTATIONS:
            return pages_off(value[:12], labelled=True) is not None
        if fact is Fact.ISBN:
            return isbn_off(value[:30], labelled=True) is not None
    return False
