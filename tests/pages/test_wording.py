"""How days, numbers and marked texts are put on a page."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cards.kinds.base import Landmark, Span
from service.pages import wording
from service.pages.gaps import Step, told
from service.pages.wording import Stretch, part_in_words, stretches


def test_days_are_written_out() -> None:
    """A day is written day, month, year, without leading zeros."""
    assert wording.day_in_words(date(2026, 3, 9)) == "9\u00a0March\u00a02026"


@pytest.mark.parametrize(
    ("day", "said"),
    [(8, "yesterday"), (9, "today"), (10, "tomorrow"), (11, "in 2 days"), (6, "3 days ago")],
)
def test_distances_are_said(day: int, said: str) -> None:
    """Near days have names, the others a number of days."""
    assert wording.distance(date(2026, 3, day), date(2026, 3, 9)) == said


@pytest.mark.parametrize(
    ("number", "said"),
    [
        (0, "no points"),
        (1, "one point"),
        (7, "seven points"),
        (12, "twelve points"),
        (13, "13 points"),
    ],
)
def test_numbers_up_to_twelve_are_words(number: int, said: str) -> None:
    """Small numbers are words, larger ones figures."""
    assert wording.counted(number, "point") == said


def test_lists_read_as_sentences() -> None:
    """The last of several is joined by and."""
    assert wording.listed([]) == ""
    assert wording.listed(["a"]) == "a"
    assert wording.listed(["a", "b", "c"]) == "a, b and c"


def test_a_sentence_goes_on_after_a_colon() -> None:
    """A sentence continued loses its capital, an abbreviation does not."""
    assert wording.continued("The right place.") == "the right place."
    assert wording.continued("ISBN wrong.") == "ISBN wrong."
    assert wording.continued("") == ""


def test_marked_words_side_by_side_are_one_phrase() -> None:
    """Words found that only a space parts are marked together; a line's end parts them."""
    spans = [Span(0, 3, True), Span(4, 7, True), Span(8, 11, False), Span(12, 15, True)]
    assert stretches("the old man\nsea", spans) == [
        Stretch("the old", True),
        Stretch(" "),
        Stretch("man", False),
        Stretch("\n"),
        Stretch("sea", True),
    ]


@given(
    st.text(max_size=60),
    st.lists(st.builds(Span, st.integers(-5, 80), st.integers(-5, 80), st.booleans()), max_size=8),
)
def test_nothing_of_a_marked_text_is_lost(text: str, spans: list[Span]) -> None:
    """However the spans lie, the pieces together are the whole text."""
    assert "".join(piece.text for piece in stretches(text, spans)) == text


@given(st.integers(1, 12), st.data())
def test_the_told_plot_counts_every_landmark(number: int, data: st.DataObject) -> None:
    """Landmarks shown and passed over are all there are; the right gap is shown once."""
    right = data.draw(st.integers(0, number))
    guess = data.draw(st.none() | st.integers(0, number))
    landmarks = [Landmark(each, f"point {each}") for each in range(1, number + 1)]
    steps = told(landmarks, right, guess)
    assert sum(1 if step.landmark else step.passed for step in steps) == number
    assert [step for step in steps if step.right] == [
        Step(gap="here it stands" + (", as you said" if guess == right else ""), right=True)
    ]


@pytest.mark.parametrize(
    ("part", "said"),
    [("quotations 3", "quotation 3"), ("points", "points"), ("theme", "theme")],
)
def test_what_a_notice_is_about_is_said_as_one_says_it(part: str, said: str) -> None:
    """One of several parts is named in the singular, with its number."""
    assert part_in_words(part) == said
