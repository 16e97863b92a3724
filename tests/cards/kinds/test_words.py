"""What two texts have in common: idea units, stems, negations, numbers."""

import pytest

from cards.kinds.words import compare, content_words, ideas, numbers, spans_of, stems

PAGE = 20_000


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


def test_content_words_leave_out_words_without_an_idea():
    """Articles and pronouns carry no idea; the rest is known by its stem, with its place."""
    words = content_words("The reader's vanities were humbled")
    assert [word.stem for word in words] == ["reader", "vaniti", "humbl"]
    assert (words[0].start, words[0].end) == (4, 12)


def test_a_paraphrase_in_the_same_words_has_the_same_stems():
    """Inflection and order make no difference."""
    assert stems("Reading humbles the proud") == stems("the proud, humbled, read")


@pytest.mark.parametrize(
    ("source", "attempt", "turned"),
    [
        ("Virtue is rewarded", "Virtue is not rewarded", True),
        ("Virtue is not rewarded", "Virtue is rewarded", True),
        ("Virtue is not rewarded", "Virtue isn’t rewarded", False),
        ("Virtue is rewarded", "Virtue is rewarded. Vice is not punished", False),
        ("Nobody is rewarded for virtue", "Virtue is never rewarded", False),
    ],
)
def test_a_negation_turned_round_is_seen(source, attempt, turned):
    """A negation on one side alone is flagged, in the sentence closest to the idea."""
    assert compare(source, attempt)[0].turned is turned


def test_one_sentence_for_several_ideas_is_not_called_turned_round():
    """A “not” in a long sentence may belong to any of the ideas it holds."""
    source = "Virtue is rewarded. Vice is not punished."
    said = "virtue is rewarded and vice is not punished"
    assert [each.turned for each in compare(source, said)] == [False, False]


@pytest.mark.parametrize("text", ["To be or not to be", "It is what it is.", "…!", "如", "?"])
def test_a_text_without_content_words_is_one_idea_all_the_same(text):
    """Where no word carries an idea, all its words do: the same words are found, others not."""
    (same,) = compare(text, text)
    (other,) = compare(text, "whales")
    assert same.span.hit
    assert not other.span.hit


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("twice a week", ["2"]),
        ("Twice! And (thrice).", ["2", "3"]),
        ("four times", ["4"]),
        ("twenty-one days", ["21"]),
        ("the first Saturday", ["1"]),
        ("on the 3rd", ["3"]),
        ("10,000 pounds", ["10000"]),
        ("ten thousand pounds", ["10000"]),
        ("1,234,567.50", ["1234567.5"]),
        ("2,5 litres", ["2.5"]),
        ("2.50 litres", ["2.5"]),
        ("07:00", ["7", "0"]),
        ("a walk", []),
    ],
)
def test_numbers_are_read_in_digits_and_words(text, expected):
    """However a number is written, it reads the same."""
    assert numbers(text) == expected


def test_spans_join_neighbours():
    """Neighbouring words that were found are one stretch, a missed word parts them."""
    text = "proud vain foolish man"
    spans = spans_of(text, stems("proud vain man"))
    assert [text[span.start : span.end] for span in spans] == ["proud vain", "man"]
