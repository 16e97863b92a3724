"""The ideas of a digest's words, and the reader's word on which of them came back."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cards.kinds.base import Idea, Span
from service.pages.ticks import found_by_comparison, idea_lines, read_ticks
from service.pages.wording import Stretch

WORDS = "He leaves the town; he comes home."
IDEAS = (Idea(0, 18, 2, found=True), Idea(20, 33, 1, found=False, turned=True))


def test_the_words_are_cut_at_their_ideas() -> None:
    """Each idea is a line with its marks; what stands between them is kept."""
    first, second = idea_lines(WORDS, IDEAS, [Span(3, 9, hit=True), Span(24, 28, hit=False)])
    assert first.words == (Stretch("He "), Stretch("leaves", True), Stretch(" the town"))
    assert (first.after, first.main, first.ticked, first.turned) == (";", True, True, False)
    assert second.words == (Stretch("he comes home"),)
    assert (second.after, second.main, second.ticked, second.turned) == (".", False, False, True)


@given(st.text(max_size=60), st.data())
def test_no_word_of_the_digest_is_lost(words: str, data: st.DataObject) -> None:
    """However a text is cut into ideas, the lines together hold all of it but space."""
    cuts = sorted(data.draw(st.sets(st.integers(0, len(words)), max_size=8)))
    ideas = [Idea(a, b, 1, found=False) for a, b in zip(cuts[::2], cuts[1::2], strict=False)]
    lines = idea_lines(words, ideas, [])
    told = "".join(
        line.before + "".join(piece.text for piece in line.words) + line.after for line in lines
    )
    if ideas:
        assert "".join(told.split()) == "".join(words.split())


@pytest.mark.parametrize(
    ("form", "ticked"),
    [
        ({}, None),
        ({"idea-1": "yes"}, None),
        ({"ticks": "1", "idea-1": "yes"}, None),
        ({"ticks": "1 2", "idea-1": "yes"}, frozenset({1})),
        ({"ticks": "1"}, frozenset()),
        ({"ticks": "", "idea-2": "yes"}, frozenset({2})),
        ({"ticks": "", "idea-x": "yes", "idea-": "yes", "idea-9999": "yes"}, None),
        ({"ticks": "²", "idea-²": "yes"}, None),
    ],
)
def test_ticks_count_where_they_correct_what_was_found(
    form: dict[str, str], ticked: frozenset[int] | None
) -> None:
    """Ticks left as the comparison set them are no correction; others are the reader's word."""
    assert read_ticks(form) == ticked


def test_what_was_found_is_carried_by_number() -> None:
    """The form carries the numbers of the ideas that the comparison found."""
    assert found_by_comparison(IDEAS) == "1"
    assert found_by_comparison(()) == ""
