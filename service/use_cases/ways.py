"""Whether an attempt is given in a way its cue asks for, within what the cue shows."""

from collections.abc import Iterator

from cards.errors import InvalidAnswer
from cards.kinds.base import Asked, Attempt, Cue

_IN_WORDS = {
    Asked.WORDS: "in words",
    Asked.GAP: "by a place among landmarks",
    Asked.PAGE: "by a page",
    Asked.CHAPTER: "by a chapter",
    Asked.ORDER: "by an order",
    Asked.BLANKS: "by words for blanks",
    Asked.BOOK: "by a book chosen",
}


def held_to(cue: Cue, attempt: Attempt) -> Attempt:
    """Return an attempt that answers what a cue asks; where nothing came back it always does.

    What was never asked has no mark worth keeping: a title typed where it is to be chosen
    among books would count as recalled.

    Raises:
        InvalidAnswer: it is given in another way, or names what the cue does not show.
    """
    if given := [way for way in _ways(attempt) if way not in cue.asked]:
        asked = " or ".join(_IN_WORDS[way] for way in cue.asked)
        raise _refusal(f"This is asked {asked}, and the attempt is given {_IN_WORDS[given[0]]}.")
    shown = {landmark.number for landmark in cue.landmarks}
    if attempt.gap is not None and not 0 <= attempt.gap <= len(shown):
        raise _refusal(f"There is no place {attempt.gap} among {len(shown)} landmarks.")
    if len(set(attempt.order)) != len(attempt.order) or not shown.issuperset(attempt.order):
        raise _refusal(f"An order names numbers from 1 to {len(shown)}, each once at the most.")
    if attempt.blanks and len(attempt.blanks) >= len(cue.pieces):
        raise _refusal(f"{len(attempt.blanks)} words are given for {len(cue.pieces) - 1} blanks.")
    if attempt.book is not None and all(book.id != attempt.book for book in cue.choices):
        raise _refusal("The book chosen is none of those to choose among.")
    return attempt


def _ways(attempt: Attempt) -> Iterator[Asked]:
    given = {
        Asked.WORDS: bool(attempt.words.strip()),
        Asked.GAP: attempt.gap is not None,
        Asked.PAGE: attempt.page is not None,
        Asked.CHAPTER: attempt.chapter is not None,
        Asked.ORDER: bool(attempt.order),
        Asked.BLANKS: bool(attempt.blanks),
        Asked.BOOK: attempt.book is not None,
    }
    yield from (way for way, there in given.items() if there)


def _refusal(what: str) -> InvalidAnswer:
    return InvalidAnswer(
        f"{what} Look at the item as it is asked now; or give the grade alone.", where="attempt"
    )
