"""Turns of several words, found among the words of a text.

The turns are everyday English: common practice, no published source.
"""

import pytest

from cards.kinds.grouping import groups_of
from cards.kinds.phrases import turns_in


def groups_in(text):
    """Return the groups of every turn in a text."""
    return frozenset().union(*(groups for _, groups in turns_in(text.split())))


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("he passes away", "die"),
        ("she turned him down", "refus"),
        ("she turns the poor old man down", "refus"),
        ("they kicked the bucket", "die"),
        ("she drowned herself", "suicid"),
        ("he got rid of it", "ditch"),
    ],
)
def test_a_turn_means_what_one_word_says(text, word):
    """In any form of its verb, with a few words before its particle, and with articles."""
    assert groups_in(text) & groups_of(word)


@pytest.mark.parametrize(
    "text",
    ["he turned", "down he turned", "he turned at the end of a very long road down", "", "bucket"],
)
def test_words_that_are_no_turn_are_none(text):
    """Half of one, one the wrong way round, or one whose particle is far away."""
    assert not list(turns_in(text.split()))


def test_the_longest_of_two_turns_is_taken():
    """To stand up for is to defend, and not to stand up."""
    (places, groups), *_ = turns_in("they stand up for him".split())
    assert places == range(1, 4)
    assert groups & groups_of("defend")
