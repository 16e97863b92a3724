"""Locators found beside words and tidied. Forms are common practice, no published source."""

import time

import pytest

from cards.intake.locating import locator_in, split_end, split_start

WHOLE = {
    "p. 54": "p. 54",
    "p 54": "p. 54",
    "p.54": "p. 54",
    "P. 54": "p. 54",
    "pg 12": "p. 12",
    "pg. 12": "p. 12",
    "page 12": "p. 12",
    "pp. 34-35": "pp. 34-35",
    "pp 34–35": "pp. 34-35",
    "pages 34 to 35": "pp. 34-35",
    "p. ix": "p. ix",
    "S. 45": "S. 45",
    "s. 45": "S. 45",
    "Seite 45": "Seite 45",
    "ch. 20": "ch. 20",
    "chapter 20": "ch. 20",
    "Chap. XX": "ch. XX",
    "§5": "§5",
    "§ 5": "§5",
    "Book II": "Book II",
    "Part 3, line 120": "Part 3, line 120",
    "54%": "54%",
    "327a": "327a",
    "1094a1": "1094a1",
    "Finale": "Finale",
    "(54)": "p. 54",
    "[54]": "p. 54",
    "34-35": "pp. 34-35",
    "— p. 54": "p. 54",
    "(ch. 3, p. 54)": "ch. 3, p. 54",
    "Act 3, scene 2": "Act 3, scene 2",
    "III": None,
    "1854": None,
    "as he says": None,
    "p.": None,
    "lid": None,
    "mix": None,
    "": None,
    "page of history": None,
}


@pytest.mark.parametrize("written", WHOLE)
def test_a_stretch_that_is_only_a_locator(written: str):
    """A locator alone is known and tidied; other words, and years, are none."""
    found = locator_in(written)
    assert (found.locator if found else None) == WHOLE[written]


@pytest.mark.parametrize(
    ("text", "words", "locator"),
    [
        ("One idea (p. 40)", "One idea", "p. 40"),
        ("One idea (p. 40).", "One idea.", "p. 40"),
        ("One idea. (p. 40)", "One idea.", "p. 40"),
        ("One idea [40]", "One idea", "p. 40"),
        ("One idea — p. 40", "One idea", "p. 40"),
        ("One idea, p. 40", "One idea", "p. 40"),
        ("“Words.” p. 40", "“Words.”", "p. 40"),
        ("“Words”, ch. 3, p. 40", "“Words”", "ch. 3, p. 40"),
        ("The town was founded (1854)", "The town was founded (1854)", None),
        ("As we saw on p. 40", "As we saw on p. 40", None),
        ("He had 3 rules", "He had 3 rules", None),
        ("I live on the canal, No. 37", "I live on the canal, No. 37", None),
        ("A point (and an aside)", "A point (and an aside)", None),
        ("(p. 40)", "(p. 40)", None),
    ],
)
def test_locators_at_the_end(text: str, words: str, locator: str | None):
    """A locator is taken off the end of words, and only a locator."""
    located = split_end(text)
    assert (located.text, located.locator) == (words, locator)


@pytest.mark.parametrize(
    ("text", "words", "locator"),
    [
        ("p. 54: “Words”", "“Words”", "p. 54"),
        ("(p. 54) Words", "Words", "p. 54"),
        ("[54] Words", "Words", "p. 54"),
        ("p. 54 – Words", "Words", "p. 54"),
        ("p. 54 “Words”", "“Words”", "p. 54"),
        ("Chapter 3: The Pond", "The Pond", "ch. 3"),
        ("Part of it is true", "Part of it is true", None),
        ("(aside) Words", "(aside) Words", None),
    ],
)
def test_locators_at_the_beginning(text: str, words: str, locator: str | None):
    """A locator is taken off the beginning of words, and only a locator."""
    located = split_start(text)
    assert (located.text, located.locator) == (words, locator)


@pytest.mark.parametrize(
    ("written", "locator", "after"),
    [
        ("(after point 3)", None, 3),
        ("(p. 54, after point 3)", "p. 54", 3),
        ("(p. 54; stands after point 3)", "p. 54", 3),
        ("after 3", None, 3),
        ("before point 3", None, 2),
        ("before all points", None, 0),
        ("(nach Punkt 2)", None, 2),
    ],
)
def test_a_point_named_in_so_many_words(written: str, locator: str | None, after: int):
    """The point a quotation is said to stand after is read with its locator."""
    found = locator_in(written)
    assert found is not None
    assert (found.locator, found.after) == (locator, after)


@pytest.mark.parametrize(
    "text",
    [
        "(" * 50_000,
        "p. 1, " * 20_000,
        "i" * 50_000,
        "a - " * 20_000,
        " " * 50_000 + "(p. 5",
        "“" * 50_000,
        "ch. ch. ch. " * 10_000,
        "1.1.1.1." * 10_000,
        "after point " * 10_000,
    ],
)
def test_hostile_text_takes_no_time(text: str):
    """Tens of thousands of half-made locators are passed over at once."""
    started = time.process_time()
    split_end(text, free=True)
    split_start(text)
    locator_in(text)
    assert time.process_time() - started < 1
