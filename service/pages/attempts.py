"""From the fields of the sitting's form to an attempt, and back to fields that carry it on."""

import re
from collections.abc import Iterator, Mapping
from uuid import UUID

from cards.answers import MAX_ATTEMPT
from cards.digest import MAX_PAGES
from cards.kinds.base import Asked, Attempt, Cue
from service.pages import fields
from service.pages.fields import Fault
from service.pages.orders import read_order
from service.pages.ticks import read_ticks

MOST_CHAPTERS = 10_000
"""Beyond the chapters of any book."""
LONGEST_BLANK = 200
"""Characters of one blank: longer than any word."""

_LINE_END = re.compile(r"\n+")


def read_attempt(form: Mapping[str, str], cue: Cue) -> Attempt:
    """Return what the reader gave, by any of the ways the cue asks for.

    Raises:
        Fault: a field cannot be taken, or a place, an order or a book was asked for and
            none was given.
    """
    hidden = form.get("plot") == "hidden"
    seen = Asked.GAP in cue.asked and not hidden
    if form.get("nothing"):
        return Attempt(landmarks_seen=seen)
    ways = set(cue.asked) - ({Asked.GAP} if hidden else set())
    attempt = Attempt(
        words=_words(form) if Asked.WORDS in ways else "",
        gap=_number(form, "gap", "A place on the line", 0, len(cue.landmarks), Asked.GAP in ways),
        page=_number(form, "page", "A page", 1, MAX_PAGES, Asked.PAGE in ways),
        chapter=_number(form, "chapter", "A chapter", 1, MOST_CHAPTERS, Asked.CHAPTER in ways),
        order=read_order(form, len(cue.landmarks)) if Asked.ORDER in ways else (),
        blanks=tuple(_blanks(form, len(cue.pieces) - 1)) if Asked.BLANKS in ways else (),
        book=_book(form, cue) if Asked.BOOK in ways else None,
        landmarks_seen=seen,
        ticked=read_ticks(form),
    )
    if attempt.empty and not ways & {Asked.WORDS, Asked.BLANKS}:
        raise _nothing_given(ways)
    return attempt


def carried(attempt: Attempt) -> Iterator[tuple[str, str]]:
    """Yield the fields, names with values, that say an attempt again, but for its words."""
    numbers = {"gap": attempt.gap, "page": attempt.page, "chapter": attempt.chapter}
    yield from ((name, str(number)) for name, number in numbers.items() if number is not None)
    for place, number in enumerate(attempt.order, 1):
        yield f"place-{number}", str(place)
    for number, word in enumerate(attempt.blanks, 1):
        yield f"blank-{number}", word
    if attempt.book is not None:
        yield "book", str(attempt.book)
    if not attempt.landmarks_seen:
        yield "plot", "hidden"
    if attempt.empty:
        yield "nothing", "yes"


def _words(form: Mapping[str, str]) -> str:
    words = fields.text(form, "words")
    if len(words) > MAX_ATTEMPT:
        raise Fault(
            "words",
            f"This is {len(words)} characters long; at most {MAX_ATTEMPT} can be compared.",
        )
    return words


def _number(
    form: Mapping[str, str], name: str, what: str, least: int, most: int, asked: bool
) -> int | None:
    return fields.whole(form, name, what, least, most) if asked else None


def _blanks(form: Mapping[str, str], number: int) -> Iterator[str]:
    for blank in range(1, number + 1):
        word = _LINE_END.sub(" ", fields.text(form, f"blank-{blank}")).strip()
        if len(word) > LONGEST_BLANK:
            raise Fault(
                f"blank-{blank}",
                f"Blank {blank} holds {len(word)} characters; one word stood there, "
                f"and at most {LONGEST_BLANK} can be compared.",
            )
        yield word


def _book(form: Mapping[str, str], cue: Cue) -> UUID | None:
    chosen = fields.identity(form, "book")
    if chosen is not None and all(each.id != chosen for each in cue.choices):
        raise Fault("book", "That book is none of these. Choose one of them.")
    return chosen


def _nothing_given(ways: set[Asked]) -> Fault:
    if Asked.GAP in ways:
        what = "Choose a place on the line" + (" or give the page" if Asked.PAGE in ways else "")
        return Fault("gap", f"{what}; or say that you can’t tell.")
    if Asked.ORDER in ways:
        return Fault("order", "Give at least one point its place; or say that you can’t tell.")
    if Asked.BOOK in ways:
        return Fault("book", "Choose one of the books; or say that you can’t tell.")
    if Asked.PAGE in ways:
        return Fault("page", "Give a page; or say that you can’t tell.")
    return Fault("chapter", "Give a chapter; or say that you can’t tell.")
