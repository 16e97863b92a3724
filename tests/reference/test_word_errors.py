"""Distances between words and wordings against published values.

Sources: Levenshtein distances and word error rates of the project's reference values, part 4,
computed there and confirmed by rapidfuzz and jiwer; jiwer itself is no dependency. The word
error rate is (S + D + I) / N, as speech recognition counts it.
"""

import pytest
from rapidfuzz.distance import Levenshtein

from cards.kinds.wording import recite, same_word


@pytest.mark.parametrize(
    ("one", "other", "distance"), [("kitten", "sitting", 3), ("Saturday", "Sunday", 3)]
)
def test_distances_between_words_are_as_published(one, other, distance):
    """The library that compares words counts as the published examples do."""
    assert Levenshtein.distance(one, other) == distance


def plain_distance(one: list[str], other: list[str]) -> int:
    """Return the edit distance by the recurrence of Wagner and Fischer (1974, from memory)."""
    row = list(range(len(other) + 1))
    for number, word in enumerate(one, 1):
        before, row[0] = row[0], number
        for place, each in enumerate(other, 1):
            before, row[place] = (
                row[place],
                min(row[place] + 1, row[place - 1] + 1, before + (word != each)),
            )
    return row[-1]


@pytest.mark.parametrize(
    ("text", "given", "rate"),
    [
        ("hello world", "hello duck", 0.5),
        ("it is a truth universally acknowledged", "it is truth universally known", 0.333333),
        ("the quick brown fox", "the quick brown fox jumps", 0.25),
        ("the quick brown fox", "the quick brown fox", 0.0),
        ("hello", "one two three", 1.0),  # 3, capped
    ],
)
def test_word_error_rates_are_as_published(text, given, rate):
    """Substitutions, deletions and insertions over the words of the text, capped at one."""
    assert recite(text, given).rate == pytest.approx(rate, abs=1e-6)


@pytest.mark.parametrize(
    ("text", "given"),
    [
        ("a b c d e f", "b a d c f e"),
        ("a b c d e f", "a a a b b b c"),
        ("so we beat on boats against the current", "so we beat boats on towards a current"),
        ("one", ""),
        ("x y x y x y x y", "y x y x y x"),
    ],
)
def test_word_errors_are_the_fewest_there_can_be(text, given):
    """An independent recurrence comes to the same number."""
    assert recite(text, given).errors == plain_distance(text.split(), given.split())


@pytest.mark.parametrize(
    ("given", "wanted", "same"),
    [
        ("Truth", "truth", True),
        ("  truth ", "truth", True),
        ("“truth”", "truth", True),
        ("hells", "hell’s", True),
        ("hell's", "hell’s", True),
        ("naive", "naïve", True),
        ("to-day", "today", True),
        ("trutth", "truth", True),
        ("truht", "truth", False),  # two errors by Levenshtein's count
        ("trut", "truth", True),
        ("lov", "love", False),  # four letters: exact
        ("amoral", "moral", False),
        ("20000", "10000", False),
        ("10001", "10000", False),
        ("", "truth", False),
        ("truth universally", "truth", False),
    ],
)
def test_a_word_is_the_same_after_folding_and_one_error_if_long(given, wanted, same):
    """Exact after folding case, accents, quotes, dashes, spaces; one edit from five letters."""
    assert same_word(given, wanted) is same
