"""A part under a heading of unknown words is told by what stands under it."""

import pytest

from tests.cards.intake.blocks_of import understood

POINTS = (
    "## Points\n- A house costs what life one gives for it. (p. 3)\n- Spring melts the pond. (p. 9)"
)
QUOTES = "## Quotations\n- “Simplify.” (p. 12)"


@pytest.mark.parametrize(
    "deeds",
    [
        "## Monday morning\n- Walk to work on Tuesdays and Thursdays.\n- Give away ten things.",
        "## Questions I put to myself\n- Have I walked to work?\n- Have I given one thing away?",
    ],
)
def test_a_list_without_places_is_taken_as_the_commitments(deeds: str):
    """Where commitments are announced nowhere, the list that is nothing else is them."""
    found = understood(f"# Walden\n{POINTS}\n{deeds}\n{QUOTES}")
    assert len(found.digest.commitments) == 2
    assert len(found.digest.points) == 2
    said = next(one.message for one in found.notices if one.part == "commitments")
    assert "was taken as commitments" in said


def test_marked_words_are_taken_as_the_quotations():
    """Where quotations are announced nowhere, a list of words in quotation marks is them."""
    found = understood(f"# Walden\n{POINTS}\n## Gold\n- “Simplify.” (p. 12)\n- “Wake.” (p. 20)")
    assert [one.text for one in found.digest.quotations] == ["Simplify.", "Wake."]


def test_a_heading_in_the_dress_of_the_others_ends_a_list():
    """A bold line among bold headings ends the points though its words are unknown."""
    found = understood(
        "** Walden\n** Points\n1. A house costs what life one gives for it.\n"
        "** Monday morning\n1. Walk to work on Tuesdays and Thursdays."
    )
    assert len(found.digest.points) == 1
    assert len(found.digest.commitments) == 1


@pytest.mark.parametrize(
    "other",
    [
        "## Characters\n- Henry Thoreau, who goes to the woods\n- The ice cutters of the pond",
        "## Cover\nGreen cloth",
        "## People\n- Henry\n- Alek",
        "## Details\n- Beacon Press, in green cloth, a gift of Ravi",
    ],
)
def test_what_is_no_part_is_left(other: str):
    """People of the book, its cover and its edition become no commitments."""
    found = understood(f"# Walden\n{POINTS}\n{other}\n{QUOTES}")
    assert found.digest.commitments == ()


def test_nothing_is_guessed_where_every_part_is_announced():
    """A list under an unknown heading is left out, and told of, where nothing is missing."""
    found = understood(
        f"# Walden\n{POINTS}\n## Commitments\n- Walk to work.\n{QUOTES}\n"
        "## Shelf\n- Lend it to Ravi before the winter comes."
    )
    assert [one.text for one in found.digest.commitments] == ["Walk to work."]
    assert any("Lend it to Ravi" in words for words in found.left)
