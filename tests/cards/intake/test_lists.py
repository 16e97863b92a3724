"""Points and commitments in every layout."""

import pytest

from tests.cards.intake.blocks_of import understood


@pytest.mark.parametrize(
    "section",
    [
        "- One (p. 4)\n- Two",
        "1. One (p. 4)\n2. Two",
        "One (p. 4)\nTwo",
        "a) One (p. 4)\nb) Two",
        "i. One (p. 4)\nii. Two",
        "(1) One (p. 4)\n(2) Two",
        "• One (p. 4)\n• Two",
        "– One (p. 4)\n– Two",
        "1. One (p. 4) / 2. Two",
        "1) One (p. 4) / 2) Two",
        "### 1. One (p. 4)\n### 2. Two",
        "### Chapter 1\n- One (p. 4)\n- Two",
        "| 1 | One | p. 4\n| 2 | Two |",
        "| No. | Idea | Page\n| 1 | One | 4\n| 2 | Two |",
        "- One\n-- p. 4\n- Two",
        "p. 4: One\nTwo",
        "One (p. 4) / Two",
        "One\n(p. 4)\nTwo",
    ],
)
def test_points_however_listed(section: str):
    """Lists, paragraphs, typed numbers and letters, headings and rows give the same points."""
    points = understood(f"# W\n## Points\n{section}").digest.points
    assert [point.text for point in points] == ["One", "Two"]
    assert points[0].locator == "p. 4"


def test_initials_are_not_letters_of_a_list():
    """A paragraph that begins with someone's initial keeps it."""
    points = understood("# W\n## Points\nV. Woolf is praised\nI. Murdoch is not").digest.points
    assert [point.text for point in points] == ["V. Woolf is praised", "I. Murdoch is not"]


def test_what_stands_under_a_point_belongs_to_it():
    """Inner items and paragraphs after a point are part of its words, and give its locator."""
    digest = understood("# W\n## Points\n- One\n-- why so\n- Two\nmore of it (p. 9)").digest
    assert [(point.text, point.locator) for point in digest.points] == [
        ("One\nwhy so", None),
        ("Two\nmore of it", "p. 9"),
    ]


def test_bold_lines_over_paragraphs_are_points():
    """A bold line and the paragraph under it are one point."""
    digest = understood("# W\n## Points\n** One (p. 4)\nSo he says.\n** Two.\nAnd so.").digest
    assert [(point.text, point.locator) for point in digest.points] == [
        ("One: So he says.", "p. 4"),
        ("Two. And so.", None),
    ]


def test_chapters_over_points_are_their_locators():
    """An inner heading that names a chapter locates the points beneath it."""
    digest = understood(
        "# W\n## Points\n### Chapter 3: The Pond\n- One\n- Two (p. 9)\n### Asides\n- Three"
    )
    assert [point.locator for point in digest.digest.points] == ["ch. 3", "p. 9", None]
    assert any("Asides" in notice.message for notice in digest.notices)


@pytest.mark.parametrize(
    "section",
    [
        "- Walk daily.\n- Give one thing away.",
        "1. Walk daily.\n2. Give one thing away.",
        "- [ ] Walk daily.\n- [x] Give one thing away.",
        "☐ Walk daily.\n☒ Give one thing away.",
        "[ ] Walk daily. / [x] Give one thing away.",
        "[ ] Walk daily. [x] Give one thing away.",
        "1. [ ] Walk daily.\n2. [ ] Give one thing away.",
        "Walk daily.\nGive one thing away.",
        "I will:\n- Walk daily.\n- Give one thing away.",
        "| 1 | Walk daily.\n| 2 | Give one thing away.",
    ],
)
def test_commitments_however_listed(section: str):
    """Numbers and boxes in front of commitments come off in every layout."""
    commitments = understood(f"# W\n## What I will do\n{section}").digest.commitments
    assert [commitment.text for commitment in commitments] == [
        "Walk daily.",
        "Give one thing away.",
    ]


def test_what_stands_under_a_commitment_belongs_to_it():
    """An inner item is part of the commitment above it."""
    digest = understood("# W\n## Commitments\n- Walk daily\n-- at noon").digest
    assert [commitment.text for commitment in digest.commitments] == ["Walk daily\nat noon"]


@pytest.mark.parametrize(
    "section",
    [
        "- One / “Kept words” (p. 4)\n- Two",
        "One\n“Kept words” (p. 4)\nTwo",
        "1. One / “Kept words” (p. 4) / 2. Two",
        "- One\n> Kept words (p. 4)\n- Two",
        "- One\n-- “Kept words” (p. 4)\n- Two",
    ],
)
def test_quotations_under_points_are_parted_from_them(section: str):
    """Words in quotation marks under a point, on a line of any kind, are the point's quotation."""
    digest = understood(f"# W\n## Points\n{section}").digest
    assert [point.text for point in digest.points] == ["One", "Two"]
    assert [(q.text, q.locator, q.after) for q in digest.quotations] == [("Kept words", "p. 4", 1)]
