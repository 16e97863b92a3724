"""The situation a commitment is for, read from its own words."""

import pytest

from cards.kinds.situations import Situation, situation


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("When I wake, read a psalm", "When I wake, …"),
        ("Before supper, thank the cook", "Before supper, …"),
        ("As soon as an argument begins, ask what they fear", "As soon as an argument begins, …"),
        ("Read a psalm when I wake.", "When I wake, …"),
        ("Say nothing, whenever gossip begins", "Whenever gossip begins, …"),
        ("On Sundays, write letters", "On Sundays, …"),
        ("Write to my sister twice a month", "Concerning my sister"),
        ("Forgive what was said to Jonas at the fair", "Concerning Jonas"),
        ("Telephone Aunt Ruth on Sunday evenings, before I eat", "Concerning Aunt Ruth"),
        ("Visit Mrs Lindqvist on Wednesdays", "Concerning Mrs Lindqvist"),
        ("Apologise to the old neighbour next door", "Concerning the old neighbour"),
    ],
)
def test_when_or_to_whom_is_told(text, words):
    """The phrase that says when, or else to whom, cues the commitment."""
    assert situation(text).words == words


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("Read a psalm each morning", "there is no phrase"),
        ("After 3 failures, ask for help", "it holds a number"),
        ("When I have slept twice on it, decide", "it holds a number in words"),
        ("When nobody listens, stop talking", "it holds a negation"),
        ("When I walk, walk slowly", "it names the act"),
        ("Go to Paris in April to see Paris", "it says the name again"),
        ("On the last evening of each month, write letters", "it says how often"),
        ("On the evening I will write, beside the sums, the hours", "it runs into the promise"),
        ("Come home to Monday's list", "a weekday is nobody"),
        ("When the bell rings", "no act is left to ask for"),
    ],
)
def test_a_phrase_that_would_give_it_away_is_not_told(text, why):
    """No number, no negation, no word of the rest, and something left to ask."""
    assert situation(text) == Situation(), why


def test_the_point_it_came_from_is_read():
    """A commitment may name its point, in brackets."""
    assert situation("Praise a rival (point 4)").point == 4
    assert situation("Praise a rival (from point 12)").point == 12
    assert situation("Praise a rival (page 4)").point is None
