"""Marks that carry a paragraph's style through pandoc, which drops it from OpenDocument files.

A mark is a number between two private-use characters at the start of a
paragraph. Such characters of the document's own are taken out beforehand, so a
document can not forge one.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from service.documents.inlines import Run, plain

OPENING = "\ue000"
CLOSING = "\ue001"
TAB = "\ue002"
"""Stands for a tab, of which pandoc makes a space; a page number often stands behind one."""
PAGE = "\ue003"
"""Stands for a page break, which pandoc drops; another digest often begins behind one."""
FORGERIES = str.maketrans("", "", OPENING + CLOSING + TAB + PAGE)
"""Translation table that takes a document's own private-use characters out."""
_MARK = re.compile(rf"{OPENING}(\d{{1,6}}){CLOSING}")


@dataclass(frozen=True, slots=True)
class Mark:
    """What a paragraph's style says: its name, and whether it sets the words bold."""

    style: str
    bold: bool = False


def written(index: int) -> str:
    """Return the mark that stands for the mark of that index."""
    return f"{OPENING}{index}{CLOSING}"


def taken(runs: Sequence[Run], marks: Sequence[Mark]) -> tuple[list[Run], Mark | None]:
    """Return the runs without marks, each of which may lie in several, and what the first means.

    A mark that stands for nothing, as RTF can forge one, is left out as well.
    """
    found = list(_MARK.finditer(plain(runs))) if marks else []
    if not found:
        return list(runs), None
    spans = [mark.span() for mark in found]
    left: list[Run] = []
    at = 0
    for run in runs:
        end = at + len(run.text)
        marked = [(max(a, at), min(b, end)) for a, b in spans if a < end and b > at]
        cuts = [at, *(place for span in marked for place in span), end]
        kept = (run.text[a - at : b - at] for a, b in zip(cuts[::2], cuts[1::2], strict=True))
        left.append(Run("".join(kept), run.strong))
        at = end
    first = int(found[0][1])
    return left, marks[first] if first < len(marks) else None
