"""Folding: what it makes no difference of, and the way back to the offsets."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cards.proving import BookText, fold_book
from cards.proving.folding import fold

MIXED = st.text(
    st.sampled_from(list("aBé ﬁß.-—'’“”_\n\t\u00ad\u200b\u0301…œ人の한ไ่י")) | st.characters(),
    max_size=80,
)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("hell’s heart", "hell's heart"),
        ("“Well,” he said", '"Well," he said'),
        ("»Gut«, sagte er", "„Gut“, sagte er"),
        ("said he—indeed", "said he -- indeed"),
        ("well-\nknown", "well-known"),
        ("to-day", "today"),
        ("exist\u00adence", "existence"),
        ("exist\u00ad\n  ence", "existence"),
        ("it _was_ so", "it was so"),
        ("the ﬁre", "the fire"),
        ("Œuvre, Æsop", "oeuvre aesop"),
        ("Straße", "STRASSE"),
        ("cafe\u0301", "café"),
        ("cafe\u0301", "cafe"),
        ("wait … what", "wait... what"),
        ("a\u00a0b\u2003c\n\nd", "a b c d"),
        ("人の\n本", "人の本"),
        ("zero\u200bwidth", "zerowidth"),
    ],
)
def test_what_a_typist_changes_unnoticed(one: str, other: str):
    """Two ways of setting the same words fold to the same."""
    assert fold(one).text == fold(other).text


@pytest.mark.parametrize(
    ("one", "other"), [("the whale", "the whales"), ("a, b", "a b c"), ("now here", "nowhere")]
)
def test_words_are_left_alone(one: str, other: str):
    """Other words fold to other words."""
    assert fold(one).text != fold(other).text


@given(text=MIXED)
def test_every_place_leads_back(text: str):
    """Each letter left comes from the offset it leads to, and offsets never go back."""
    folded = fold(text)
    offsets = [folded.offset(position) for position in range(len(folded.text))]
    assert offsets == sorted(offsets)
    for position, letter in enumerate(folded.text):
        if letter != " ":
            assert letter in fold(text[offsets[position]]).text


@given(text=MIXED)
def test_folding_twice_changes_nothing(text: str):
    """What is folded is folded: letters, and single spaces between words."""
    once = fold(text).text
    assert fold(once).text == once
    assert "  " not in once


@given(text=MIXED, data=st.data())
def test_a_stretch_leads_back_to_itself(text: str, data: st.DataObject):
    """The original of a stretch of whole words folds to that stretch."""
    folded = fold(text)
    words = folded.text.split()
    if words:
        first = data.draw(st.integers(0, len(words) - 1))
        last = data.draw(st.integers(first, len(words) - 1))
        wanted = " ".join(words[first : last + 1])
        start = len(" ".join(words[:first])) + (first > 0) + folded.text.startswith(" ")
        begin, end = folded.span(start, start + len(wanted))
        assert fold(text[begin:end]).text.strip() == wanted


@given(text=st.text(st.sampled_from(list("ab \n\t\u2003")), max_size=60))
def test_the_share_of_a_book_is_of_its_collapsed_text(text: str):
    """A letter's share of the book is its place in the text with white space collapsed."""
    whole = " ".join(text.split())
    book = fold_book(BookText(None, None, None, text))
    collapsed = 0
    for offset, letter in enumerate(text):
        if not letter.isspace():
            collapsed = whole.index(letter, collapsed)
            assert book.fraction(offset) == pytest.approx(collapsed / len(whole))
            collapsed += 1
