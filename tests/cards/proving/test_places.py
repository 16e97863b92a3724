"""Chapters and pages of a text, what contradicts them, and after which point words stand."""

import pytest

from cards.errors import Invalid
from cards.proving import (
    BookText,
    Chapter,
    PageMark,
    locate,
    point_after,
    says,
    suggested_locator,
)
from cards.proving.places import chapter_at, page_range, pages_at
from tests.cards.proving.books import TEXT, book, folded

BOOK = book()
WORDS = "A letter lay unopened on the sill"


def test_a_chapter_holds_its_start_and_not_its_end():
    """An offset is in the chapter that begins at or before it, and in none before the first."""
    first, second, third = BOOK.chapters
    assert chapter_at(BOOK, first.start - 1) is None
    assert chapter_at(BOOK, first.start) == first
    assert chapter_at(BOOK, first.end) == second
    assert chapter_at(BOOK, len(TEXT)) is None
    assert chapter_at(BOOK, len(TEXT) - 1) == third


def test_pages_a_stretch_stands_on():
    """A stretch over the end of a page stands on both, and before the first mark on none."""
    second = BOOK.pages[2].start
    assert pages_at(BOOK, second, second + 5) == ("2",)
    assert pages_at(BOOK, second - 3, second + 5) == ("1", "2")
    assert pages_at(BOOK, second - 3, second) == ("1",)
    later = BookText(None, None, None, "abc", pages=(PageMark("7", 2),))
    assert pages_at(later, 0, 1) == ()


@pytest.mark.parametrize(
    ("locator", "pages"),
    [
        ("p. 54", ("54", "54")),
        ("pp. 34-35", ("34", "35")),
        ("pp. 134-5", ("134", "135")),
        ("p. IX", ("ix", "ix")),
        ("S. 45", ("45", "45")),
        ("ch. 2, p. 7", ("7", "7")),
        ("ch. 20", None),
        ("Finale", None),
    ],
)
def test_pages_a_locator_names(locator: str, pages: tuple[str, str] | None):
    """Pages are read as written, Roman ones too, the second half of a range filled up."""
    assert page_range(locator) == pages


@pytest.mark.parametrize(
    "locator",
    [
        None,
        "p. 4",
        "pp. 3-4",
        "pp. 4-9",
        "ch. 2",
        "ch. 1",
        "vol. II, ch. 1",
        "Book I",
        "72%",
        "Finale",
        "§5",
        "p. 4, ch. 2",
    ],
)
def test_what_agrees_is_not_said(locator: str | None):
    """A locator that agrees, or counts what the text cannot tell, contradicts nothing."""
    found = locate(WORDS, folded())
    assert found is not None
    assert says(locator, found.spot, BOOK) is None


@pytest.mark.parametrize(
    ("locator", "said", "stands"),
    [
        ("p. 3", "p. 3", "on p. 4"),
        ("pp. 5-6", "pp. 5-6", "on p. 4"),
        ("p. ix", "p. ix", "on p. 4"),
        ("p. 412", "p. 412", "on p. 4"),
        ("ch. 3", "chapter 3", "in chapter 2 (“VOLUME II, CHAPTER I”)"),
        ("ch. 70", "chapter 70", "in chapter 2 (“VOLUME II, CHAPTER I”)"),
        ("vol. I, ch. 1", "volume 1", "in chapter 2 (“VOLUME II, CHAPTER I”)"),
        ("20%", "20%", "at 73% of it"),
    ],
)
def test_what_contradicts_is_said(locator: str, said: str, stands: str):
    """A page, chapter, volume or share that is not where the words stand is told, with both."""
    found = locate(WORDS, folded())
    assert found is not None
    sentence = says(locator, found.spot, BOOK)
    assert sentence == (
        f"The locator says {said}, but in the book's text these words stand {stands}."
    )


def test_a_text_without_pages_contradicts_none():
    """Where the edition gives no pages a page is neither right nor wrong."""
    bare = BookText(None, None, None, TEXT, BOOK.chapters)
    found = locate(WORDS, folded())
    assert found is not None
    spot = type(found.spot)(found.spot.chapter, (), found.fraction)
    assert says("p. 900", spot, bare) is None
    assert suggested_locator(spot) == "ch. 2"


@pytest.mark.parametrize(
    ("words", "locator"),
    [
        (WORDS, "p. 4"),
        ("A word before", "p. ix"),
        ("very little to distress or vex her. It was badly done", "pp. 1-2"),
    ],
)
def test_a_locator_is_suggested(words: str, locator: str):
    """The page list gives the locator, in Roman numerals where it has them."""
    found = locate(words, folded())
    assert found is not None
    assert suggested_locator(found.spot) == locator


def test_nothing_known_suggests_nothing():
    """Without chapters and pages there is no locator to suggest."""
    bare = type(locate(WORDS, folded()).spot)(None, (), 0.5)  # type: ignore[union-attr]
    assert suggested_locator(bare) is None


@pytest.mark.parametrize(
    ("points", "after"),
    [
        (["p. 1", "p. 3", "p. 5"], 2),
        (["p. 5"], 0),
        (["p. 1", "p. 4"], 2),
        (["vol. I, ch. 1", "vol. II, ch. 2"], 1),
        (["ch. 1", "ch. 3"], None),
        (["vol. I, ch. 1", "vol. II, ch. 1"], None),
        (["p. 1", None, "p. 5"], None),
        (["p. 1", None], None),
        ([None, None], None),
        ([], None),
        (["p. 5", "p. 1"], None),
        (["p. 77"], None),
        (["Finale"], None),
    ],
)
def test_after_which_point_words_stand(points: list[str | None], after: int | None):
    """The text settles it where points have places in it, in order; else nothing is said."""
    found = locate(WORDS, folded())
    assert found is not None
    assert point_after(found.start, points, BOOK) == after


@pytest.mark.parametrize(
    "marks",
    [
        {"chapters": (Chapter(1, "", 0, 9),)},
        {"chapters": (Chapter(1, "", 2, 3), Chapter(2, "", 1, 2))},
        {"pages": (PageMark("1", 3), PageMark("2", 1))},
        {"pages": (PageMark("1", -1),)},
    ],
)
def test_a_book_out_of_order_is_none(marks: dict[str, tuple[object, ...]]):
    """Chapters and pages stand in order inside the text."""
    with pytest.raises(Invalid, match="in order"):
        BookText(None, None, None, "abcd", **marks)  # type: ignore[arg-type]
