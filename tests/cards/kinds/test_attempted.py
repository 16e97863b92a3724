"""Looking words of a commitment up in an attempt."""

import pytest

from cards.kinds.attempted import Attempted, alike_in, found_in


@pytest.mark.parametrize(
    ("attempt", "word", "is_there"),
    [
        ("I wrote to her", "write", True),
        ("jot it down", "write", True),
        ("memorise the poem", "learn", True),
        ("my granmother", "grandmother", True),
        ("three kids", "children", True),
        ("the books in which I write", "cookbooks", True),
        ("give up sugar", "abandon", True),
        ("go home", "walk", False),
        ("the road", "reads", False),
        ("", "write", False),
    ],
)
def test_a_word_is_found_in_other_forms_and_words(attempt, word, is_there):
    """By its stem, another word for the same deed, or a slip in a long word; not by "go"."""
    assert Attempted(attempt).holds(word) is is_there


def test_a_contrary_is_seen():
    """To spend is not to save."""
    assert Attempted("spend ten pounds").opposes("save")
    assert not Attempted("save ten pounds").opposes("save")


def test_a_turn_is_told_by_another_turn_or_word():
    """Its words all belong to it; other words of the text do not."""
    assert Attempted("he fled").told_in_turns("run away early") == {"run", "away"}
    assert Attempted("he sang").told_in_turns("run away early") == frozenset()


def test_what_two_texts_share_is_marked():
    """Each content word found or not; in the attempt, what was found, joined."""
    text, other = "Read psalms aloud", "aloud I read nothing"
    assert [(text[a.start : a.end], a.hit) for a in alike_in(text, other)] == [
        ("Read", True),
        ("psalms", False),
        ("aloud", True),
    ]
    assert [other[a.start : a.end] for a in found_in(other, text)] == ["aloud I read"]
