"""From the fields of the sitting's form to an attempt, carried on, and back from its kept text."""

from uuid import UUID

import pytest

from cards.kinds.base import Asked, Attempt, Cue, Landmark, Shelved
from service.pages.attempts import LONGEST_BLANK, carried, read_attempt
from service.pages.fields import Fault
from service.pages.kept_attempts import attempt_kept
from service.pages.orders import ordered

EMMA, WALDEN = (UUID(int=number) for number in (1, 2))
LANDMARKS = tuple(Landmark(number, f"point {number}") for number in (1, 2, 3))
ORDER = Cue("h", "w", "q", (Asked.ORDER,), landmarks=LANDMARKS)
BLANKS = Cue("h", "w", "q", (Asked.BLANKS,), pieces=("", " and ", "."))
BOOK = Cue("h", "w", "q", (Asked.BOOK,), choices=(Shelved(EMMA, "Emma"), Shelved(WALDEN, "Walden")))
WORDS = Cue("h", "w", "q")
GAP = Cue("h", "w", "q", (Asked.GAP, Asked.PAGE), landmarks=LANDMARKS, pages=186)
CHAPTER = Cue("h", "w", "q", (Asked.CHAPTER,))


@pytest.mark.parametrize(
    ("cue", "form", "attempt"),
    [
        (WORDS, {"words": "a\r\nb"}, Attempt(words="a\nb", landmarks_seen=False)),
        (WORDS, {"words": ""}, Attempt(landmarks_seen=False)),
        (WORDS, {"words": "x", "nothing": "yes"}, Attempt(landmarks_seen=False)),
        (GAP, {"gap": "2"}, Attempt(gap=2)),
        (GAP, {"gap": "2", "page": "9"}, Attempt(gap=2, page=9)),
        (GAP, {"gap": "2", "page": "9", "plot": "hidden"}, Attempt(page=9, landmarks_seen=False)),
        (CHAPTER, {"chapter": "4", "page": "9"}, Attempt(chapter=4, landmarks_seen=False)),
        (
            ORDER,
            {"place-1": "3", "place-2": "1", "place-3": ""},
            Attempt(order=(2, 1), landmarks_seen=False),
        ),
        (
            BLANKS,
            {"blank-1": " a ", "blank-3": "b"},
            Attempt(blanks=("a", ""), landmarks_seen=False),
        ),
        (BLANKS, {}, Attempt(blanks=("", ""), landmarks_seen=False)),
        (BOOK, {"book": str(WALDEN)}, Attempt(book=WALDEN, landmarks_seen=False)),
    ],
)
def test_an_attempt_is_read_by_the_ways_it_is_asked(
    cue: Cue, form: dict[str, str], attempt: Attempt
) -> None:
    """Each way of asking reads its own fields and no others."""
    assert read_attempt(form, cue) == attempt


@pytest.mark.parametrize(
    ("cue", "form", "field", "said"),
    [
        (ORDER, {}, "order", "Give at least one point its place"),
        (ORDER, {"place-1": "2", "place-3": "2"}, "order", "share place 2. Give each a place"),
        (ORDER, {"place-1": "4"}, "place-1", "A place is a whole number from 1 to 3."),
        (ORDER, {"place-1": "0"}, "place-1", "A place is a whole number from 1 to 3."),
        (BOOK, {}, "book", "Choose one of the books"),
        (BOOK, {"book": "x"}, "book", "Choose one of the books"),
        (BOOK, {"book": str(UUID(int=3))}, "book", "That book is none of these."),
        (BLANKS, {"blank-2": "x" * (LONGEST_BLANK + 1)}, "blank-2", "Blank 2 holds 201 characters"),
        (GAP, {}, "gap", "Choose a place on the line or give the page"),
        (GAP, {"plot": "hidden", "gap": "2"}, "page", "Give a page"),
        (GAP, {"gap": "4"}, "gap", "A place on the line is a whole number from 0 to 3."),
        (CHAPTER, {}, "chapter", "Give a chapter"),
    ],
)
def test_what_cannot_be_taken_is_said_beside_its_field(
    cue: Cue, form: dict[str, str], field: str, said: str
) -> None:
    """A field that cannot be taken is named, with what to do."""
    with pytest.raises(Fault) as refused:
        read_attempt(form, cue)
    assert refused.value.field == field
    assert said in refused.value.message


@pytest.mark.parametrize(
    ("cue", "attempt"),
    [
        (GAP, Attempt(gap=0)),
        (GAP, Attempt(page=9, landmarks_seen=False)),
        (CHAPTER, Attempt(chapter=4, landmarks_seen=False)),
        (ORDER, Attempt(order=(3, 1), landmarks_seen=False)),
        (BLANKS, Attempt(blanks=("a", ""), landmarks_seen=False)),
        (BOOK, Attempt(book=EMMA, landmarks_seen=False)),
        (WORDS, Attempt(landmarks_seen=False)),
    ],
)
def test_an_attempt_is_carried_on_as_it_was(cue: Cue, attempt: Attempt) -> None:
    """The fields that carry an attempt from the comparison to the answer say the same again."""
    assert read_attempt(dict(carried(attempt)), cue) == attempt


@pytest.mark.parametrize(
    ("cue", "attempt"),
    [
        (GAP, Attempt(gap=2)),
        (GAP, Attempt(page=9, landmarks_seen=False)),
        (CHAPTER, Attempt(chapter=4)),
        (ORDER, Attempt(order=(3, 1, 2))),
        (BLANKS, Attempt(blanks=("a", ""))),
        (WORDS, Attempt(words="after 2", ticked=frozenset({1}))),
        (WORDS, Attempt()),
    ],
)
def test_a_kept_attempt_is_read_back(cue: Cue, attempt: Attempt) -> None:
    """What an attempt was kept as stands for the same attempt again."""
    assert attempt_kept(attempt.as_text(), cue, attempt.ticked) == attempt


def test_a_book_is_read_back_by_its_title() -> None:
    """A book chosen is kept by its title; one that is no choice any more is no attempt."""
    assert attempt_kept("Emma", BOOK, None) == Attempt(book=EMMA)
    assert attempt_kept("Cranford", BOOK, None) is None


@pytest.mark.parametrize(
    ("cue", "text"),
    [(BLANKS, "a / b / c"), (ORDER, "order of things"), (GAP, "somewhere"), (CHAPTER, "four")],
)
def test_a_text_that_fits_no_cue_is_no_attempt(cue: Cue, text: str) -> None:
    """A kept text whose cue has changed since is shown as text, not made to fit."""
    assert attempt_kept(text, cue, None) is None


def test_an_order_names_only_what_is_still_there() -> None:
    """Numbers of what is no longer shown are dropped, whatever a form holds."""
    assert ordered(ORDER, (3, 9, 1)) == ["point 3", "point 1"]
