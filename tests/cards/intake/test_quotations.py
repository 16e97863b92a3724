"""Quotations and their locators in every layout."""

import pytest

from cards.intake.quotation_text import read_quotation
from cards.intake.quotations import quotations_of
from tests.cards.intake.blocks_of import blocks_of, understood

NAMES = frozenset({"walden", "henry david thoreau", "thoreau"})


def found(text: str) -> list[tuple[str, str | None]]:
    """Return words and locators of a section's quotations."""
    return [(q.text, q.locator) for q in quotations_of(blocks_of(text), NAMES).quotations]


@pytest.mark.parametrize(
    "text",
    [
        "“Simplify.” (p. 54)",
        '"Simplify." (p. 54)',
        "«Simplify.» p. 54",
        "„Simplify.“ (p. 54)",
        "»Simplify.« – p. 54",
        "‘Simplify.’ [p. 54]",
        "'Simplify.' — p. 54",
        "“Simplify.” (54)",
        "“Simplify.” 54",
        "p. 54: “Simplify.”",
        "(p. 54) Simplify.",
        "Simplify. (pg 54)",
        "“Simplify.”\n(p. 54)",
        "“Simplify.”\n— p. 54",
        "p. 54\n“Simplify.”",
        "“Simplify.” — Thoreau, p. 54",
        "“Simplify.” (Thoreau, Walden, p. 54)",
        "“Simplify.”\n— Henry David Thoreau, Walden, p. 54",
        "“Simplify” (p. 54).",
    ],
)
def test_one_quotation_however_written(text: str):
    """Marks of every style come off, and the locator is found wherever it stands."""
    quotation = read_quotation(text, NAMES)
    assert quotation is not None
    assert quotation.text.rstrip(".") == "Simplify"
    assert quotation.locator == "p. 54"


@pytest.mark.parametrize(
    ("text", "words", "locator"),
    [
        ("“The growing good.” (Finale)", "The growing good.", "Finale"),
        ("“We change.” (Conclusion)", "We change.", "Conclusion"),
        ("“We change.” — Conclusion", "We change.", "Conclusion"),
        ("“We change.” (The Bean-Field)", "We change.", "The Bean-Field"),
        ("She said “yes” and “no”. (p. 12)", "She said “yes” and “no”.", "p. 12"),
        ("“Who?” asked Mr. Knightley. (p. 3)", "“Who?” asked Mr. Knightley.", "p. 3"),
        ("’Tis the gift (p. 13)", "’Tis the gift", "p. 13"),
        ("'Tis the dogs' bone (p. 13)", "'Tis the dogs' bone", "p. 13"),
        ("“Half open (p. 3)", "“Half open", "p. 3"),
        ("No locator at all", "No locator at all", None),
        ("“It was founded (1854)”", "It was founded (1854)", None),
        ("“One.” “Two.” (p. 5)", "“One.” “Two.”", "p. 5"),
    ],
)
def test_words_and_places_that_are_easily_confused(text: str, words: str, locator: str | None):
    """Names of chapters are locators; quotation marks inside the words stay."""
    quotation = read_quotation(text)
    assert quotation is not None
    assert (quotation.text, quotation.locator) == (words, locator)


@pytest.mark.parametrize(
    "section",
    [
        "- “One.” (p. 1)\n- “Two.” (p. 2)",
        "1. “One.” (p. 1)\n2. “Two.” (p. 2)",
        "> “One.” (p. 1)\n> “Two.” (p. 2)",
        "> “One.”\n> — p. 1\n> “Two.”\n> — p. 2",
        "> “One.”\np. 1\n> “Two.”\np. 2",
        "“One.” (p. 1)\n“Two.” (p. 2)",
        "“One.”\n(p. 1)\n“Two.”\n(p. 2)",
        "p. 1\n“One.”\np. 2\n“Two.”",
        "p. 1:\n> One.\np. 2:\n> Two.",
        "“One.” (p. 1) / “Two.” (p. 2)",
        "- p. 1\n-- “One.”\n- p. 2\n-- “Two.”",
        "- “One.”\n-- p. 1\n- “Two.”\n-- p. 2",
        "| “One.” | p. 1\n| “Two.” | p. 2",
        "| p. 1 | “One.”\n| p. 2 | “Two.”",
        "| Quote | Page\n| One. | 1\n| Two. | 2",
        "| No. | Quotation | Page\n| 1 | One. | 1\n| 2 | Two. | 2",
        "### p. 1\n> One.\n### p. 2\n> Two.",
        "** p. 1\n- One.\n** p. 2\n- Two.",
        "- “One.” (p. 1)\np. 2\n- “Two.”",
        "One. (p. 1)\nTwo. (p. 2)",
    ],
)
def test_sections_of_quotations(section: str):
    """Items, block quotations, paragraphs, rows and inner headings give the same quotations."""
    assert found(section) == [("One.", "p. 1"), ("Two.", "p. 2")]


def test_a_locator_of_its_own_overrules_the_heading():
    """An inner heading's place holds only for quotations without one."""
    section = "### Chapter 3\n> “One.”\n> “Two.” (p. 9)\n> “Three.”\n> — p. 11"
    assert found(section) == [("One.", "ch. 3"), ("Two.", "p. 9"), ("Three.", "p. 11")]


def test_a_quotation_over_several_paragraphs():
    """From an opening mark to the closing one is one quotation."""
    assert found("> “One\n> and two.” (p. 5)\n> “Three.” (p. 6)") == [
        ("One\nand two.", "p. 5"),
        ("Three.", "p. 6"),
    ]


def test_verse_keeps_its_lines():
    """Line breaks inside a quotation stay."""
    assert found("> The mind is its own place, / and in itself / (Book I, line 254)") == [
        ("The mind is its own place,\nand in itself", "Book I, line 254")
    ]


def test_what_is_no_quotation_is_handed_back():
    """An introduction among quotations is not taken for one."""
    section = quotations_of(blocks_of("These I keep:\n- “One.” (p. 1)\n-- I smiled at this"))
    assert [quotation.text for quotation in section.quotations] == ["One."]
    assert [block.text for block in section.stray] == ["These I keep:", "I smiled at this"]


def test_points_are_named_in_tables_and_headings():
    """A column or a heading can say after which point a quotation stands."""
    section = "| Quote | Page | After\n| One. | 1 | 2\n| Two. | 2 |"
    assert [q.after for q in quotations_of(blocks_of(section)).quotations] == [2, None]
    section = "### After point 2\n> “One.” (p. 1)\n### Before all points\n> “Two.” (p. 2)"
    assert [q.after for q in quotations_of(blocks_of(section)).quotations] == [2, 0]


def test_a_quotation_under_a_point_stands_after_it():
    """A quotation nested under a point, or right beneath it, stands after that point."""
    digest = understood(
        "# W\n## Points\n1. One\n-- “Nested.” (p. 5)\n2. Two\n> Beneath. (p. 9)\n3. Three\n"
        "## Quotes\n- “Unknown.”"
    ).digest
    assert [point.text for point in digest.points] == ["One", "Two", "Three"]
    assert [(q.text, q.after) for q in digest.quotations] == [
        ("Nested.", 1),
        ("Beneath.", 2),
        ("Unknown.", None),
    ]


def test_a_point_that_does_not_exist_is_told_of():
    """A quotation said to stand after a point beyond the last has no place, and a notice."""
    found = understood("# W\n## Points\n- One\n## Quotes\n- “Q.” (p. 5, after point 4)")
    assert found.digest.quotations[0].after is None
    assert any("after point 4" in notice.message for notice in found.notices)
