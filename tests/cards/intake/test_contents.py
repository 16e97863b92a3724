"""A table of contents says only what parts follow, and begins none of them."""

import pytest

from tests.cards.intake.blocks_of import understood

DIGEST = """
## Theme
He went to the woods and came back with an account of them.
## Points
- A house costs what life one gives for it.
- Spring melts the pond.
## Quotations
- “Simplify.” (p. 12)
"""


@pytest.mark.parametrize(
    "contents",
    [
        "Contents: Theme · Points · Quotations",
        "Theme | Points | Quotations",
        "Contents / Theme / Points / Quotations",
        "## Contents\n- Theme\n- Points\n- Quotations",
        "Inhalt\nTheme .... 1\nPoints .... 1\nQuotations .... 2",
    ],
)
def test_a_table_of_contents_begins_no_part(contents: str):
    """A line or a list that names the parts leaves the digest as it is without it."""
    digest = understood(f"# Walden\n{contents}\n{DIGEST}").digest
    assert digest == understood(f"# Walden\n{DIGEST}").digest


def test_a_table_of_contents_is_told_to_arrange_the_document():
    """Its words came into no part, and are no words that were left out."""
    found = understood(f"# Walden\nContents: Theme · Points · Quotations\n{DIGEST}")
    arranging = next(source.words for source in found.sources if source.part == "document")
    assert "Theme · Points · Quotations" in arranging
    assert found.left == ()


def test_two_names_are_no_table_of_contents():
    """A heading that names two parts is read as a heading."""
    digest = understood("# Walden\n## Points and lessons\n- Spring melts the pond.").digest
    assert [point.text for point in digest.points] == ["Spring melts the pond."]
