"""Completing quotations against the cloze procedure and the suggested grades.

Sources: Taylor 1953, Journalism Quarterly 30, 415-433 (every fifth word left out, the exact
word counts); every seventh and ninth are in use as well. The limits of the grades are the
project's own proposal, reference values part 4.
"""

import pytest

from cards.answers import Grade
from cards.digest import Digest, Quotation
from cards.kinds.base import Asked, Attempt, Occasion
from cards.kinds.complete import COMPLETE
from cards.parts import PartKind
from tests.cards.digests import only

WORDS = (
    "candles gutter where marble stairs descend, lanterns swing beneath bridges, "
    "merchants weigh saffron against silver, orphans whistle hymns beside harbours"
)
"""Twenty words, all but a few of them content words, no two alike."""


def asking(text: str, asked: int = 0, *, held: bool = False) -> Occasion:
    """Return one asking of a quotation."""
    digest, part = only(PartKind.QUOTATION, Digest("A Book", quotations=(Quotation(text),)))
    return Occasion(digest, part, asked, held)


@pytest.mark.parametrize(("asked", "one_in"), [(0, 7), (1, 7), (2, 5), (3, 5), (4, 3), (9, 3)])
def test_one_word_in_seven_is_left_out_then_one_in_five_then_one_in_three(asked, one_in):
    """Taylor's every fifth word, gentler at first and harder later."""
    text = " ".join(f"word{number}" for number in range(35))
    assert len(COMPLETE.answer(asking(text, asked)).blanks) == 35 // one_in


LONG = ", ".join(f"{word}{n}ing" for n in "abc" for word in WORDS.replace(",", "").split())
"""Sixty words, so that twenty are left out."""


@pytest.mark.parametrize(
    ("wrong", "grade"),
    [
        (0, Grade.VIVID),
        (2, Grade.CLEAR),  # .10
        (3, Grade.HAZY),
        (7, Grade.HAZY),  # .35
        (8, Grade.BLANK),
        (20, Grade.BLANK),
    ],
)
def test_blanks_are_graded_by_the_share_that_is_wrong(wrong, grade):
    """Above .35 blank, up to .35 hazy, up to .10 clear, none vivid."""
    occasion = asking(LONG, 4)
    right = COMPLETE.answer(occasion).blanks
    assert len(right) == 20
    given = ("zebra",) * wrong + right[wrong:]
    assert COMPLETE.mark(occasion, Attempt(blanks=given)).grade is grade


@pytest.mark.parametrize(
    ("wrong", "grade", "sense"),
    [
        (0, Grade.VIVID, False),
        (2, Grade.CLEAR, False),
        (3, Grade.HAZY, False),
        (7, Grade.HAZY, False),
        (8, Grade.HAZY, True),
        (13, Grade.BLANK, False),
    ],
)
def test_a_recital_is_graded_by_its_word_error_rate(wrong, grade, sense):
    """By the same limits; above .35 with half the content words it is sense, not words."""
    occasion = asking(WORDS, 6, held=True)
    words = WORDS.split()
    assert len(words) == 20
    given = " ".join(words[: len(words) - wrong] + ["zebra"] * wrong)
    marked = COMPLETE.mark(occasion, Attempt(words=given))
    assert COMPLETE.cue(occasion).asked == (Asked.WORDS,)
    assert marked.grade is grade
    assert marked.reason.startswith("Sense, not words") is sense
