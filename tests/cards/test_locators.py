"""What a locator says of the place in the book. Forms are common practice, no published source."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cards.locators import Place, Unit, chapter_of, page_of, place_of, roman, steps_of


@pytest.mark.parametrize(
    ("locator", "page"),
    [
        ("p. 54", 54),
        ("pp. 34-35", 34),
        ("pg 12", 12),
        ("page 7", 7),
        ("S. 45", 45),
        ("Seite 45", 45),
        ("página 45", 45),
        ("pagina 45", 45),
        ("ch. 3, p. 54", 54),
        ("p. ix", None),
        ("ch. 20", None),
        ("54%", None),
        ("Finale", None),
        ("", None),
        (None, None),
        ("p. 123456", None),
        ("map. 5", None),
    ],
)
def test_pages(locator: str | None, page: int | None):
    """The first page is read; Roman pages stand outside the scale; nothing else is a page."""
    assert page_of(locator) == page


@pytest.mark.parametrize(
    ("locator", "chapter"),
    [
        ("ch. 20", 20),
        ("chapter XX", 20),
        ("Kapitel 3", 3),
        ("chap. iv, p. 9", 4),
        ("p. 9", None),
        ("research 5", None),
    ],
)
def test_chapters(locator: str, chapter: int | None):
    """The first chapter is read, in figures or in a Roman numeral."""
    assert chapter_of(locator) == chapter


def test_other_units():
    """Books, parts, sections and lines are told apart."""
    assert place_of("Book II", Unit.BOOK) == Place(Unit.BOOK, 2)
    assert place_of("Part 3, line 120", Unit.PART) == Place(Unit.PART, 3)
    assert place_of("Part 3, line 120", Unit.LINE) == Place(Unit.LINE, 120)
    assert place_of("§5", Unit.SECTION) == Place(Unit.SECTION, 5)


@pytest.mark.parametrize(
    ("locator", "steps"),
    [
        ("Book V, §16", [(Unit.BOOK, 5), (Unit.SECTION, 16)]),
        ("Part 3, line 120", [(Unit.PART, 3), (Unit.LINE, 120)]),
        ("Act II scene 1", [(Unit.ACT, 2), (Unit.SCENE, 1)]),
        ("vol. 2, ch. iv, pp. 34-35", [(Unit.VOLUME, 2), (Unit.CHAPTER, 4)]),
        ("The Pond, ch. 9", [(Unit.CHAPTER, 9)]),
        ("54 %", [(Unit.PERCENT, 54)]),
        ("Part Two, chapter the third", [(Unit.PART, 2), (Unit.CHAPTER, 3)]),
        ("zweites Buch, Kap. 4", [(Unit.BOOK, 2), (Unit.CHAPTER, 4)]),
        ("V. 1112", [(Unit.LINE, 1112)]),
        ("Brief 23", [(Unit.LETTER, 23)]),
        ("Book IV, 75", []),
        ("Book I, Book II", []),
        ("ch. iiii", []),
        ("p. 54", []),
        ("Finale", []),
        (None, []),
    ],
)
def test_steps(locator: str | None, steps: list[tuple[Unit, int]]):
    """What a locator counts beside pages is read in its own order, whole or not at all."""
    assert steps_of(locator) == tuple(Place(unit, number) for unit, number in steps)


@pytest.mark.parametrize(
    ("locator", "first", "last"),
    [("ch. 41-42", 41, 42), ("Book II, lines 432–433", 432, 433), ("Book III-IV", 3, 4)],
)
def test_ranges(locator: str, first: int, last: int):
    """A range is one place that ends where its second number says."""
    place = steps_of(locator)[-1]
    assert (place.number, place.last, place.end) == (first, last, last)


@given(value=st.integers(1, 4_999))
def test_roman_numerals_read_back(value: int):
    """A numeral written by the usual table reads back as its value, in either case."""
    table = [(1000, "m"), (900, "cm"), (500, "d"), (400, "cd"), (100, "c"), (90, "xc")]
    table += [(50, "l"), (40, "xl"), (10, "x"), (9, "ix"), (5, "v"), (4, "iv"), (1, "i")]
    numeral, left = "", value
    for worth, letters in table:
        numeral += letters * (left // worth)
        left %= worth
    assert roman(numeral) == roman(numeral.upper()) == value


@pytest.mark.parametrize("word", ["", "iiii", "İ", "vx", "mix up", "abc", "ic"])
def test_other_words_are_no_numerals(word: str):
    """What the rules of numerals do not allow has no value."""
    assert roman(word) is None


@given(text=st.text(max_size=200))
def test_any_text_is_read(text: str):
    """Any locator gives a page within five figures or none."""
    steps_of(text)
    page = page_of(text)
    assert page is None or 0 <= page <= 99_999
