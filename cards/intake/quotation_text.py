"""One quotation in its own text: the words, where they stand, and whose they are said to be."""

import re
from collections.abc import Collection
from dataclasses import replace

from cards.digest import MAX_LOCATOR, Quotation
from cards.intake.locating import Located, joined, locator_in, split_end, split_start
from cards.intake.wording import OPENING_MARKS, closing_of, folded, unquoted

MAX_TAIL = 80
"""Characters after a closing mark that may say whose words they are."""
DASHED = re.compile(r"^[-–—~]+\s*")
"""The dash in front of whose words they are."""


def looks_quoted(text: str) -> bool:
    """Tell whether a text is words in quotation marks, with at most a locator beside them."""
    if not text or text[0] not in OPENING_MARKS:
        located = split_start(text)
        if located.locator is None or not located.text or located.text[0] not in OPENING_MARKS:
            return False
        text = located.text
    closing = closing_of(text)
    return closing is not None and closing > 1 and len(text) - closing <= MAX_TAIL


def read_quotation(text: str, names: Collection[str] = ()) -> Quotation | None:
    """Return the quotation a text holds, or None when no words of one are left.

    Args:
        text: words, locator, and perhaps whose words they are, in any usual order.
        names: folded names of the book and its author, which say nothing of a place.
    """
    located = _peeled(text)
    words, locator = _without_attribution(located.text, located.locator, names)
    words = unquoted(words).strip()
    if not any(letter.isalnum() for letter in words):
        return None
    return Quotation(words, without_names(locator, names), located.after)


def _peeled(text: str) -> Located:
    """Take locators off a text: lines of their own first, then its end, then its beginning."""
    lines = text.split("\n")
    if len(lines) > 1:
        for own, rest in ((lines[-1], lines[:-1]), (lines[0], lines[1:])):
            said = locator_in(own)
            if said is not None:
                inner = split_end("\n".join(rest), free=True)
                return Located(
                    inner.text,
                    joined((inner.locator, said.locator)),
                    said.after if said.after is not None else inner.after,
                )
    located = split_end(text, free=True)
    if located.locator is None and located.after is None:
        return split_start(text)
    if located.locator is None:
        start = split_start(located.text)
        return replace(start, after=located.after)
    start = split_start(located.text)
    if start.text == located.text:
        return located
    after = located.after if located.after is not None else start.after
    return Located(start.text, joined((start.locator, located.locator)), after)


def _without_attribution(
    text: str, locator: str | None, names: Collection[str]
) -> tuple[str, str | None]:
    """Take off what follows the closing mark, or a last line behind a dash.

    What is not the name of the book or its author is part of where the words stand.
    """
    closing = closing_of(text)
    tail = ""
    behind = "" if closing is None else text[closing + 1 :]
    if behind and closing is not None and _is_attribution(behind):
        tail, text = behind, text[: closing + 1]
    elif "\n" in text:
        last = text.rsplit("\n", 1)[1]
        if DASHED.match(last) and len(last) <= MAX_TAIL:
            tail, text = last, text.rsplit("\n", 1)[0]
    tail = DASHED.sub("", tail.strip(" \n.,;:([)]")).strip(" .,;:([)]")
    if not any(letter.isalnum() for letter in tail):
        return text, locator
    said = locator_in(tail)
    kept = without_names(tail if said is None or said.locator is None else said.locator, names)
    if kept is None:
        return text, locator
    return text, joined((kept, locator))


def _is_attribution(behind: str) -> bool:
    """Tell whether what follows a closing mark says whose words they were, or where they stand."""
    words = behind.strip()
    placed = words[:1] in {"—", "–"} and locator_in(words.partition(",")[0]) is not None
    marked = any(mark in words for mark in '“„«"') and not placed
    if len(words) > MAX_TAIL or "\n" in words or marked:
        return False
    return (
        not any(letter.isalnum() for letter in words)
        or words[0] in "-–—~(["
        or locator_in(words) is not None
    )


def without_names(locator: str | None, names: Collection[str]) -> str | None:
    """Return a locator without the names of the book and its author, or None."""
    if locator is None:
        return None
    pieces = [piece.strip() for piece in locator.split(",")]
    kept = [piece for piece in pieces if piece and folded(piece) not in names]
    return ", ".join(kept)[:MAX_LOCATOR] or None
