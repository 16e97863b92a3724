"""The words of a text: content words, stems, numbers."""

import pytest

from cards.kinds.words import content_words, numbers, spans_of, stems


def test_content_words_leave_out_words_without_an_idea():
    """Articles and pronouns carry no idea; the rest is known by its stem, with its place."""
    words = content_words("The reader's vanities were humbled")
    assert [word.stem for word in words] == ["reader", "vaniti", "humbl"]
    assert (words[0].start, words[0].end) == (4, 12)


def test_a_paraphrase_in_the_same_words_has_the_same_stems():
    """Inflection and order make no difference."""
    assert stems("Reading humbles the proud") == stems("the proud, humbled, read")


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
