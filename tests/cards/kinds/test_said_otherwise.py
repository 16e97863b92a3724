"""What of a text may have been said in words that nothing knows to mean the same.

How readers retell, in the order of the text, is common practice, no published source.
"""

import pytest

from cards.kinds.ideas import ideas, sentences
from cards.kinds.meeting import meet, read
from cards.kinds.said_otherwise import said_otherwise, tells_of

TEXT = "Crusoe saves tools from the wreck. Goats give him milk. Cannibals land with Friday."


def held(text, attempt):
    """Return the words of both, met, and how many ideas the text has."""
    units = ideas(text)
    wanted, given = read(text, units), read(attempt, sentences(attempt))
    meet(wanted, given)
    return wanted, given, len(units)


@pytest.mark.parametrize(
    ("attempt", "told"),
    [
        ("Crusoe saves tools from the wreck. Zib zab zub. Cannibals land with Friday.", True),
        ("Crusoe saves tools from the wreck. Cannibals land with Friday.", False),
        ("Zib zab zub. Crusoe saves tools from the wreck. Cannibals land with Friday.", False),
    ],
)
def test_other_words_count_where_an_idea_would_stand(attempt, told):
    """Between what came back of the idea before and of the idea after, nowhere else."""
    first, second, third = said_otherwise(*held(TEXT, attempt))
    assert (second > 0) == told
    assert (first, third) == (0, 0)


def test_denied_words_count_for_nothing():
    """Who denies something in its place may say the opposite."""
    denying = "Crusoe saves tools from the wreck. Never zib zab zub. Cannibals land with Friday."
    assert said_otherwise(*held(TEXT, denying)) == [0, 0, 0]


def test_half_of_a_contrast_leaves_nothing_to_other_words():
    """Who has one of two contraries alone may say the opposite of both."""
    wanted = "When able to attack, seem unable; make him believe that the camp is distant."
    assert set(said_otherwise(*held(wanted, "Attack when able, zib zab zub zob."))) == {0}


@pytest.mark.parametrize(
    ("attempt", "least", "most"),
    [(TEXT, 1, 1), ("Zib zab zub.", 0, 0), ("", 0, 0), ("Crusoe has goats", 0.5, 1)],
)
def test_an_attempt_tells_of_a_text_by_what_is_known_again(attempt, least, most):
    """Surely with all its words, not at all with none."""
    wanted, given, _ = held(TEXT, attempt or "-")
    assert least <= tells_of(wanted, given) <= most
