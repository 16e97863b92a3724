"""Anchors of quotations, and finding them again in a second edition."""

from cards.proving import Anchor, BookText, anchor_of, fold_book, locate, reanchor
from tests.cards.proving.books import TEXT, folded

OLD, NEW = "a" * 64, "b" * 64
SECOND = TEXT.replace("“", '"').replace("”", '"').replace("—", " - ").replace("\n", " ")


def anchor(words: str, locator: str | None = None) -> Anchor:
    """Return the anchor of words in the first edition."""
    found = locate(words, folded(), locator)
    assert found is not None
    return anchor_of(found, OLD)


def second(text: str) -> Anchor | None:
    """Return where the letter on the sill stands in another text."""
    return reanchor(
        anchor("A letter lay unopened on the sill"),
        fold_book(BookText(None, None, None, text)),
        NEW,
    )


def test_an_anchor_holds_what_was_found():
    """The anchor of a quotation has the book's words, place, chapter and page, and which file."""
    made = anchor("a leter lay unopened on the sill")
    assert made.exact == TEXT[made.start : made.end] == "A letter lay unopened on the sill"
    assert (made.chapter, made.page, made.source) == (2, "4", OLD)
    assert 0.73 < made.fraction < 0.74


def test_another_edition_anchors_by_text():
    """Set otherwise and with a longer preface, the words are found again, at their new place."""
    made = second("A new preface, by another hand. " * 9 + SECOND)
    assert made is not None
    assert made.exact == "A letter lay unopened on the sill"
    assert made.source == NEW
    assert made.start > anchor("A letter lay unopened on the sill").start
    assert (made.chapter, made.page) == (None, None)


def test_revised_words_are_found_by_likeness():
    """A word the second edition changed costs nothing but its exactness."""
    made = second(SECOND.replace("unopened on", "unopen'd upon"))
    assert made is not None
    assert made.exact == "A letter lay unopen'd upon the sill"


def test_what_was_cut_is_not_found():
    """Words the second edition left out are in no place of it."""
    assert second(SECOND.replace("A letter lay unopened on the sill", "Nothing came")) is None


def test_of_several_places_the_surroundings_tell():
    """Words that stand three times are found again where what stands around them is the same."""
    for locator in ("p. 2", "p. 3", "p. 5"):
        made = anchor("She sat by the window", locator)
        again = reanchor(made, fold_book(BookText(None, None, None, SECOND)), NEW)
        assert again is not None
        assert abs(again.fraction - made.fraction) < 0.02


def test_an_anchor_without_letters_is_nowhere():
    """What holds no letter cannot be looked for."""
    nothing = Anchor("…", "", "", 0, 1, 0.0, None, None, OLD)
    assert reanchor(nothing, folded(), NEW) is None
