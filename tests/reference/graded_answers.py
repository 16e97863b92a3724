"""The corpus of graded answers, and the marks this code suggests for them."""

import json
import re
from collections.abc import Sequence
from pathlib import Path
from typing import Any
from unittest.mock import patch
from uuid import UUID

from cards.answers import Grade
from cards.digest import Digest, Point, Quotation
from cards.kinds.base import Attempt, Occasion, Shelved
from cards.kinds.blanks import LeftOut
from cards.kinds.complete import COMPLETE
from cards.kinds.next import NEXT
from cards.kinds.order import ORDER
from cards.kinds.place import PLACE
from cards.kinds.restate import RESTATE
from cards.kinds.source import SOURCE
from cards.kinds.theme import THEME
from cards.parts import PartKind
from tests.cards.digests import commitment, kept, only, quotation, theme

CORPUS = Path(__file__).parents[1] / "corpus_of_answers"
HELD_BACK = CORPUS / "held_back"
THIRD = CORPUS / "third"
SECOND_HAND = CORPUS / "second_hand"
FIFTH_HAND = CORPUS / "fifth_hand"
IN_WORDS = ("theme", "next", "restate", "complete", "recite")
BY_ARITHMETIC = ("place", "order", "source")
"""Kinds whose grade is arithmetic or a choice: agreement there comes of itself."""
SCALE = tuple(Grade)
_ANOTHER_BOOK = UUID(int=999)

Entry = dict[str, Any]


def entries(folder: Path, kind: str) -> list[Entry]:
    """Return the graded answers of one kind; of a kind a folder does not hold, none."""
    file = folder / f"{kind}.json"
    return json.loads(file.read_text("utf-8")) if file.exists() else []


def suggested(kind: str, entry: Entry) -> Grade:
    """Return the grade this code suggests for an answer."""
    return _MARKED[kind](entry)


def _theme(entry: Entry) -> Grade:
    digest, part = theme(entry["source"])
    return THEME.mark(Occasion(digest, part), Attempt(words=entry["answer"])).grade


def _next(entry: Entry) -> Grade:
    points = (Point(entry["before"]), Point(entry["source"]))
    digest, part = only(PartKind.POINT, Digest("A Book", points=points), 2)
    return NEXT.mark(Occasion(digest, part), Attempt(words=entry["answer"])).grade


def _restate(entry: Entry) -> Grade:
    digest, part = commitment(entry["source"])
    return RESTATE.mark(Occasion(digest, part), Attempt(words=entry["answer"])).grade


def _complete(entry: Entry) -> Grade:
    """Mark the blanks the corpus leaves out, which this code would have drawn by lot."""
    text, words, start = entry["quotation"], [], 0
    for blank in entry["blanks"]:
        found = re.compile(rf"\b{re.escape(blank)}\b").search(text, start)
        assert found, f"{entry['id']}: {blank} is not in its quotation"
        words.append(found.span())
        start = found.end()
    digest, part = only(PartKind.QUOTATION, Digest("A Book", quotations=(Quotation(text, None),)))
    attempt = Attempt(blanks=tuple(entry["answers"]))
    with patch("cards.kinds.complete.left_out", return_value=LeftOut(tuple(words), ())):
        return COMPLETE.mark(Occasion(digest, part), attempt).grade


def _recite(entry: Entry) -> Grade:
    given = Quotation(entry["source"], None)
    digest, part = only(PartKind.QUOTATION, Digest("A Book", quotations=(given,)))
    occasion = Occasion(digest, part, asked=9, held=True)
    return COMPLETE.mark(occasion, Attempt(words=entry["answer"])).grade


def _place(entry: Entry) -> Grade:
    digest, part = quotation(f"p. {entry['true_page']}", pages=entry["pages_in_book"])
    attempt = Attempt(page=entry["guess"], landmarks_seen=False)
    return PLACE.mark(Occasion(digest, part), attempt).grade


def _order(entry: Entry) -> Grade:
    points = tuple(Point(f"Stage {number}") for number in range(1, entry["n"] + 1))
    digest = kept(Digest("A Book", points=points))
    occasion = Occasion(digest, next(iter(ORDER.sources(digest))))
    right = ORDER.answer(occasion).order
    attempt = Attempt(order=tuple(right[number - 1] for number in entry["given"]))
    return ORDER.mark(occasion, attempt).grade


def _source(entry: Entry) -> Grade:
    given = Quotation(entry["quotation"], None)
    digest, part = only(PartKind.QUOTATION, Digest(entry["source"], quotations=(given,)))
    shelf = (Shelved(digest.id, digest.title), Shelved(_ANOTHER_BOOK, entry["answer"]))
    chosen = digest.id if entry["right"] else _ANOTHER_BOOK
    return SOURCE.mark(Occasion(digest, part, shelf=shelf), Attempt(book=chosen)).grade


_MARKED = {
    "theme": _theme,
    "next": _next,
    "restate": _restate,
    "complete": _complete,
    "recite": _recite,
    "place": _place,
    "order": _order,
    "source": _source,
}


def weighted_kappa(ours: Sequence[int], theirs: Sequence[int], categories: int = 4) -> float:
    """Return Cohen's kappa of two gradings from 1 up, a difference weighed by its square.

    Cohen 1968, Psychological Bulletin 70(4), 213-220 (recalled, not seen again).
    """
    scale = range(1, categories + 1)
    pairs = list(zip(ours, theirs, strict=True))
    seen = sum((a - b) ** 2 for a, b in pairs)
    by_chance = sum(
        (a - b) ** 2 * ours.count(a) * theirs.count(b) / len(pairs) for a in scale for b in scale
    )
    return 1 - seen / by_chance
