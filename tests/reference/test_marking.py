"""The suggested grades against the thresholds and the arithmetic of chance they stand on.

Sources, beside each check: the share of idea units from which a theme is graded and the
error by which a placing is graded are the project's own proposal, with the chance of a
blind guess, P(|U-V| <= e) = 2e - e^2 for two uniform numbers, elementary probability.
"""

from random import Random

import pytest

from cards.answers import Grade
from cards.kinds.base import Attempt, Occasion
from cards.kinds.place import PLACE
from cards.kinds.theme import THEME
from tests.cards.digests import quotation, theme

BOOK = 1_000
TRUE = 500


def placed(guess: int, *, page: int = TRUE, pages: int = BOOK, seen: bool = False) -> Grade:
    """Return the grade suggested for a page, the points out of sight unless `seen`."""
    digest, part = quotation(f"p. {page}", pages=pages)
    return PLACE.mark(Occasion(digest, part), Attempt(page=guess, landmarks_seen=seen)).grade


@pytest.mark.parametrize(
    ("off", "grade"),
    [
        (0, Grade.VIVID),
        (20, Grade.VIVID),  # .02
        (21, Grade.CLEAR),
        (50, Grade.CLEAR),  # .05
        (51, Grade.HAZY),
        (150, Grade.HAZY),  # .15
        (151, Grade.BLANK),
        (500, Grade.BLANK),
    ],
)
def test_a_page_is_graded_by_its_share_of_the_book(off, grade):
    """Within .02 unhinted vivid, within .05 clear, within .15 hazy, on either side of the page."""
    assert placed(TRUE + off) is grade
    assert placed(TRUE - off) is grade


def test_with_the_points_in_sight_a_page_is_never_vivid():
    """Vivid only by page and with the points out of sight."""
    assert placed(TRUE, seen=True) is Grade.CLEAR


CHANCES = [(0.02, 0.0396), (0.03, 0.0591), (0.05, 0.0975), (0.15, 0.2775)]


@pytest.mark.parametrize(("error", "chance"), CHANCES)
def test_two_blind_guesses_meet_as_often_as_published(error, chance):
    """The share of 200,000 seeded pairs within e of each other is 2e - e^2, to .003."""
    random = Random(7)
    pairs = 200_000
    met = sum(abs(random.random() - random.random()) <= error for _ in range(pairs))
    assert 2 * error - error**2 == pytest.approx(chance, abs=1e-4)
    assert met / pairs == pytest.approx(chance, abs=0.003)


def test_blind_guessing_earns_each_grade_as_rarely_as_chance_says():
    """Of 20,000 blind placings in a long book each grade and better has the chance of its e."""
    random = Random(11)
    pages = 20_000
    guesses = 20_000
    earned = [
        placed(random.randint(1, pages), page=random.randint(1, pages), pages=pages)
        for _ in range(guesses)
    ]
    for grades, chance in (
        ({Grade.VIVID}, 0.0396),
        ({Grade.VIVID, Grade.CLEAR}, 0.0975),
        ({Grade.VIVID, Grade.CLEAR, Grade.HAZY}, 0.2775),
    ):
        share = sum(grade in grades for grade in earned) / guesses
        assert share == pytest.approx(chance, abs=0.01)


@pytest.mark.parametrize(
    ("true", "guess", "grade"),
    [(20, 20, Grade.CLEAR), (20, 21, Grade.HAZY), (20, 19, Grade.HAZY), (20, 22, Grade.BLANK)],
)
def test_a_chapter_is_graded_by_its_distance(true, guess, grade):
    """The same chapter is clear, the next hazy."""
    digest, part = quotation(f"ch. {true}")
    assert PLACE.mark(Occasion(digest, part), Attempt(chapter=guess)).grade is grade


IDEAS = (
    "Whales swim. Sailors gamble. Captains rage. Harpoons fly. Ropes tangle. Storms gather. "
    "Lanterns swing. Coffins creak. Orphans survive. Prophets warn. Cooks whistle. Clerks count. "
    "Candles burn. Owners calculate. Ports empty. Widows pray. Tides turn. Gulls circle. "
    "Barrels leak."
).split(". ")
"""Nineteen idea units of two content words each; with the first counted double, twenty."""


def recalled(*, main: bool, others: int) -> Grade:
    """Return the grade for recalling the main idea or not, and so many of the eighteen others."""
    digest, part = theme(". ".join(IDEAS))
    first = 0 if main else 1
    said = [*IDEAS[:1], *IDEAS[1 : 1 + others]][first:]
    return THEME.mark(Occasion(digest, part), Attempt(words=". ".join(said))).grade


@pytest.mark.parametrize(
    ("others", "share", "grade"),
    [
        (0, 0.10, Grade.BLANK),
        (4, 0.30, Grade.BLANK),
        (5, 0.35, Grade.HAZY),
        (9, 0.55, Grade.HAZY),
        (10, 0.60, Grade.CLEAR),
        (15, 0.85, Grade.CLEAR),
        (16, 0.90, Grade.VIVID),
        (18, 1.00, Grade.VIVID),
    ],
)
def test_a_theme_is_graded_by_the_share_of_its_ideas(others, share, grade):
    """Below .35 blank, below .60 hazy, below .90 clear, else vivid; the main idea weighs two."""
    assert (2 + others) / 20 == pytest.approx(share)
    assert recalled(main=True, others=others) is grade


def test_without_its_main_idea_a_theme_is_blank():
    """With eighteen of twenty shares recalled but the main idea missing, nothing better."""
    assert recalled(main=False, others=18) is Grade.BLANK


def test_half_the_content_words_of_an_idea_are_enough():
    """An idea is found with half its stemmed content words, and not with fewer."""
    digest, part = theme("Vanity blinds clever people")
    half = THEME.mark(Occasion(digest, part), Attempt(words="clever vanities"))
    fewer = THEME.mark(Occasion(digest, part), Attempt(words="something about vanity"))
    assert half.ideas[0].found
    assert not fewer.ideas[0].found
