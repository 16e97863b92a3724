"""A reader's own heading words: checked when they are given, and first when they are read."""

import pytest

from cards.errors import Invalid
from cards.intake import BUILT_IN, Part, heading_words, understand, understand_all
from cards.intake.blocks import Document
from cards.intake.heading_words import MAX_WORDS
from cards.intake.headings import part_named
from tests.cards.intake.blocks_of import blocks_of

WORDS = heading_words(
    {"Lifelines": Part.QUOTATIONS, "Summary": Part.JUDGEMENT, "Le fil d’Ariane": "points"}
)
TEXT = """
    # Walden
    ## Gist
    He went.
    ## Le fil d'Ariane
    - One
    ## LIFELINES:
    - “Simplify.” (p. 5)
    ## Summary
    It is true.
    """


def test_own_words_announce_their_parts():
    """Words of the reader's own are known in any case and accents, as headings and in lines."""
    digest = understand(Document("x.docx", blocks_of(TEXT)), WORDS).digest
    assert digest.theme == "He went."
    assert [point.text for point in digest.points] == ["One"]
    assert [(one.text, one.locator) for one in digest.quotations] == [("Simplify.", "p. 5")]
    assert digest.judgement == "It is true."


@pytest.mark.parametrize(
    "line", ["** Lifelines", "Lifelines:", "# 3. Lifelines", "- Lifelines:", "| Lifelines | Page"]
)
def test_own_words_in_any_dress(line: str):
    """A bold line, a label, a numbered heading, an item or a row of columns announces as well."""
    row = "| “Simplify.” | 5" if line.startswith("|") else "-- “Simplify.” (p. 5)"
    text = f"Title: Walden\nGist: He went.\n{line}\n{row}"
    digest = understand(Document("x.docx", blocks_of(text)), WORDS).digest
    assert [(one.text, one.locator) for one in digest.quotations] == [("Simplify.", "p. 5")]


def test_own_words_win_over_the_built_in_ones():
    """The same heading announces what the reader says, and else what it usually does."""
    assert getattr(part_named("Summary", WORDS), "part", None) is Part.JUDGEMENT
    assert getattr(part_named("Summary", BUILT_IN), "part", None) is Part.THEME
    assert part_named("Lifelines") is None


def test_own_words_part_digests_too():
    """Several digests are told apart by the reader's own words as by the usual ones."""
    one = "\n# {0} by Jane Austen\n## Lifelines\n- “Words of it.” (p. 5)"
    text = one.format("Emma") + one.format("Persuasion")
    found = understand_all(Document("x.docx", blocks_of(text)), WORDS)
    assert [each.digest.title for each in found] == ["Emma", "Persuasion"]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ({"": Part.THEME}, "has no letters"),
        ({"12.": Part.THEME}, "has no letters"),
        ({"x" * 81: Part.THEME}, "too long for a heading"),
        ({"One\nTwo": Part.THEME}, "too long for a heading"),
        ({"Lifelines": "chapter"}, "no part of a digest. Choose one of theme, points"),
        ({"Éclat": Part.THEME, "eclat": Part.POINTS}, "given for theme and for points"),
        ({f"Word {number}x": Part.THEME for number in range(MAX_WORDS + 1)}, "At most"),
    ],
)
def test_bad_words_are_refused(words: dict[str, Part | str], said: str):
    """Each fault of a set of words is refused in a sentence that names it."""
    with pytest.raises(Invalid, match=said) as refused:
        heading_words(words)
    assert refused.value.where == "heading_words"


def test_words_are_a_value():
    """The same words are equal and may stand as a key, whatever order they were given in."""
    one = heading_words({"A": Part.THEME, "B": Part.POINTS})
    other = heading_words({"b": Part.POINTS, "a": "theme"})
    assert one == other
    assert hash(one) == hash(other)
