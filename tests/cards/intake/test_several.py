"""Several digests in one document, each under its own title page."""

import pytest

from cards.intake import understand, understand_all
from cards.intake.blocks import Block, Document, Shape
from tests.cards.intake.blocks_of import blocks_of

TWO = ("Walden", "Emma")


def titles(text: str, name: str = "book.docx", **properties: str) -> list[str]:
    """Return the titles of the digests a brief text holds."""
    found = understand_all(Document(name, blocks_of(text), properties))
    return [one.digest.title for one in found]


LAYOUTS = {
    "headings with authors": """
        # Walden by Henry Thoreau
        ## Summary
        He went.
        ## Quotes
        > “Simplify.” (p. 5)
        # Emma by Jane Austen
        ## Summary
        She is wrong.
        ## Quotes
        > “Badly done.” (p. 6)""",
    "headings alone": """
        # Walden
        ## Summary
        He went.
        ## Points
        - One
        # Emma
        ## Summary
        She is wrong.""",
    "under a heading over all": """
        # Digests of 2021
        ## Walden by Henry Thoreau
        ### Summary
        He went.
        ## Emma by Jane Austen
        ### Summary
        She is wrong.""",
    "by-lines under headings of the parts' level": """
        # Walden
        by Henry Thoreau
        # Summary
        He went.
        # Points
        - One
        # Emma
        by Jane Austen
        # Summary
        She is wrong.""",
    "labels": """
        Title: Walden
        Author: Henry Thoreau
        Summary: He went.
        Points:
        - One
        Title: Emma
        Author: Jane Austen
        Summary: She is wrong.""",
    "labels under a generic heading": """
        # Book digest
        Title: Walden
        ## Summary
        He went.
        # Book digest
        Title: Emma
        ## Summary
        She is wrong.""",
    "rows": """
        | Title | Walden
        | Author | Henry Thoreau
        | Summary | He went.
        | Quotes | “Simplify.” (p. 5)
        | Title | Emma
        | Author | Jane Austen
        | Summary | She is wrong.""",
    "capital lines": """
        WALDEN / by Henry Thoreau
        SUMMARY
        He went.
        QUOTES
        “Simplify.” (p. 5)
        EMMA / by Jane Austen
        SUMMARY
        She is wrong.""",
    "bold lines": """
        ** Walden
        by Henry Thoreau
        ** Summary
        He went.
        ** Quotes
        “Simplify.” (p. 5)
        ** Emma
        by Jane Austen
        ISBN 0-306-40615-2
        ** Summary
        She is wrong.""",
    "title lines with authors": """
        Walden, by Henry Thoreau
        Summary
        He went.
        Quotes
        “Simplify.” (p. 5)
        Emma, by Jane Austen
        Summary
        She is wrong.""",
    "other parts in the second": """
        # Walden by Henry Thoreau
        ## Points
        - One
        # Emma by Jane Austen
        ## Summary
        She is wrong.""",
    "German": """
        # Walden
        von Henry Thoreau
        ## Zusammenfassung
        He went.
        # Emma
        von Jane Austen
        ## Zusammenfassung
        She is wrong.""",
}


@pytest.mark.parametrize("layout", LAYOUTS)
def test_two_digests(layout: str):
    """A title page after the parts of one digest begins another."""
    found = understand_all(Document("both.docx", blocks_of(LAYOUTS[layout])))
    titles_found = tuple(one.digest.title.title() for one in found)
    assert titles_found == TWO
    assert found[1].digest.theme == "She is wrong."
    assert "She is wrong" not in repr(found[0])
    if "Jane Austen" in LAYOUTS[layout]:
        assert found[1].digest.author == "Jane Austen"


ONE = {
    "parts on the first level": "# Walden by A. Bell\n# Summary\nHe went.\n# Points\n- One\n"
    "# Quotes\n> “Q.” (p. 5)\n# More quotes\n> “R.” (p. 6)",
    "a part headed twice": "# Walden\n## Quotes\n- “Q.” (p. 5)\n## Summary\nx\n## Quotes\n- “R.”",
    "chapters with parts of their own": "# Walden by A. Bell\n# Economy\n## Summary\nx\n## Quotes\n"
    "- “Q.” (p. 5)\n# Reading\n## Summary\ny\n## Quotes\n- “R.” (p. 6)",
    "parts of the book": "# Walden\n## Summary\nx\n# Part One\n## Points\n- One\n# Part Two\n"
    "## Points\n- Two",
    "a title among points": "# Walden\n## Points\n- Title: a word\n- Two\n## Summary\nx",
    "an unknown section": "# Walden\n## Summary\nx\n## Background\nBorn.\n## Quotes\n- “Q.” (p. 5)",
    "attributions": "Walden\nby A. Bell\nQuotes\n“Q.”\nby A. Bell\n“R.”\nby A. Bell\nSummary\nx",
    "a second author line": "# Walden\nby A. Bell\n## Points\n- One\n## Summary\nx\nby Jane Reader",
}


@pytest.mark.parametrize("layout", ONE)
def test_one_digest(layout: str):
    """Repeated parts, chapters and unknown headings part no digest in two."""
    assert titles(ONE[layout]) == ["Walden"]


def test_properties_are_of_no_digest_among_several():
    """A file's own title stands over none of the digests that have titles of their own."""
    text = LAYOUTS["headings with authors"]
    assert titles(text, "x.md", title="My digests", author="A. Reader") == ["Walden", "Emma"]


def test_styled_titles():
    """Every paragraph in the style for titles begins a digest."""
    blocks = tuple(
        block
        for title in ("Walden", "Emma", "Ethics")
        for block in (
            Block(Shape.PARAGRAPH, title, style="Title"),
            *blocks_of("# Summary\nx\n# Points\n- One"),
        )
    )
    found = understand_all(Document("x.docx", blocks))
    assert [one.digest.title for one in found] == ["Walden", "Emma", "Ethics"]


def test_one_of_several_may_have_no_author():
    """Where other title pages give authors, one that gives none begins a digest too."""
    text = LAYOUTS["headings with authors"] + "\n# Ethics\n## Summary\nGod."
    assert titles(text) == ["Walden", "Emma", "Ethics"]


def test_reading_one_of_several():
    """Where one digest is wanted of several, it is the first, and the others are named."""
    found = understand(Document("x.docx", blocks_of(LAYOUTS["labels"])))
    assert found.digest.title == "Walden"
    assert found.notices[-1].message == "The document holds 2 digests; the others are “Emma”."


def test_a_heading_over_all_is_told_apart():
    """What stands over all digests is part of none, and is not lost."""
    found = understand_all(Document("x.docx", blocks_of(LAYOUTS["under a heading over all"])))
    assert [source.words for source in found[0].sources if source.part == "document"] == [
        "Digests of 2021"
    ]


def test_many_digests_take_no_time():
    """A hundred digests in one document are all told apart."""
    one = "\n# Walden {0} by Henry Thoreau\n## Summary\nHe went.\n## Points\n- One\n- Two"
    text = "".join(one.format(number) for number in range(100))
    assert titles(text) == [f"Walden {number}" for number in range(100)]
