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
_MARK = re.compile(rf"{OPENING}(\d+){CLOSING}")


@dataclass(frozen=True, slots=True)
class Mark:
    """What a paragraph's style says: its name, and whether it sets the words bold."""

    style: str
    bold: bool = False


def written(index: int) -> str:
    """Return the mark that stands for the mark of that index."""
    return f"{OPENING}{index}{CLOSING}"


def taken(runs: Sequence[Run], marks: Sequence[Mark]) -> tuple[list[Run], Mark | None]:
    """Return the runs without their mark, and what it stands for."""
    found = _MARK.search(plain(runs)) if marks else None
    if found is None:
        return list(runs), None
    left = [Run(_MARK.sub("", run.text), run.strong) for run in runs]
    return left, marks[int(found[1])]
