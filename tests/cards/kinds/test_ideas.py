"""A text cut into idea units."""

import pytest

from cards.kinds.ideas import ideas, sentences


def units(text):
    """Return the idea units of a text as words."""
    return [text[start:end] for start, end in ideas(text)]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Pride blinds. Love corrects.", ["Pride blinds.", "Love corrects."]),
        ("Pride blinds; love corrects!", ["Pride blinds;", "love corrects!"]),
        ("One lesson: pride blinds", ["One lesson:", "pride blinds"]),
        ("Pride blinds – love corrects", ["Pride blinds –", "love corrects"]),
        ("Pride blinds\nLove corrects", ["Pride blinds", "Love corrects"]),
        ("He met Mr. Darcy on p. 54.", ["He met Mr. Darcy on p. 54."]),
        ("“Pride blinds.” Love corrects.", ["“Pride blinds.”", "Love corrects."]),
        ("It is. Pride blinds.", ["Pride blinds."]),
        ("To be or not to be.", []),
        ("", []),
    ],
)
def test_a_text_is_cut_into_ideas(text, expected):
    """Sentences and clauses set apart are ideas; abbreviations do not end one."""
    assert units(text) == expected


@pytest.mark.parametrize(
    "text",
    [
        "They go to sleep. Dreams follow.",
        "The curates preach. Nobody listens.",
        "He lost the ship. Pride remained.",
        "It ended in March. Snow fell.",
    ],
)
def test_a_word_that_ends_like_an_abbreviation_ends_its_sentence(text):
    """“sleep.” is not “p.” and “preach.” is not “ch.”."""
    assert len(ideas(text)) == 2


def test_offsets_are_those_of_the_text():
    """An idea's offsets cut it out of the text without spare spaces."""
    text = "  Pride blinds.   Love corrects.  "
    assert units(text) == ["Pride blinds.", "Love corrects."]


def test_a_line_broken_to_fit_a_page_is_no_end():
    """A line that goes on in a small letter belongs to the sentence before it."""
    text = "One winter night a small child is\nfound asleep on the hearth\nThe gold is gone"
    assert [text[a:b] for a, b in sentences(text)] == [
        "One winter night a small child is\nfound asleep on the hearth",
        "The gold is gone",
    ]
