"""Argument, Plot, Story: the theme above prose, points above a list."""

import pytest

from tests.cards.intake.blocks_of import understood

PROSE = "Man disobeys, loses the garden, and is shown what will come of it."


@pytest.mark.parametrize("name", ["Argument", "The argument", "Plot", "The story", "Story"])
def test_one_paragraph_is_the_theme(name: str):
    """A paragraph of prose under such a heading, and no other theme, is the theme."""
    for line in (f"## {name}\n{PROSE}", f"** {name}\n{PROSE}", f"{name}: {PROSE}"):
        digest = understood(f"# W\n{line}\n## Quotes\n- “Q.” (p. 5)").digest
        assert (digest.theme, digest.points) == (PROSE, ())


@pytest.mark.parametrize("name", ["Argument", "Plot", "Outline"])
def test_a_list_is_the_points(name: str):
    """A list, or lines of their own, under such a heading are points."""
    for listed in ("- One\n- Two", "1. One\n2. Two", "One\nTwo", "One / Two"):
        digest = understood(f"# W\n## {name}\n{listed}").digest
        assert [point.text for point in digest.points] == ["One", "Two"]
        assert digest.theme is None


def test_prose_beside_other_points_is_the_theme():
    """Where another section holds the points, paragraphs under Plot are the theme or join it."""
    points = "\n## Ideas\n- One"
    assert understood(f"# W\n## Plot\n{PROSE}\nAnd so on.{points}").digest.theme == (
        f"{PROSE}\n\nAnd so on."
    )
    digest = understood(f"# W\n## Summary\nHe went.\n## Plot\n{PROSE}{points}").digest
    assert digest.theme == f"He went.\n\n{PROSE}"
    assert [point.text for point in digest.points] == ["One"]


def test_prose_beside_a_theme_alone_stays_a_point():
    """Where the theme stands elsewhere and no points do, the paragraph is the one point."""
    digest = understood(f"# W\n## Summary\nHe went.\n## Plot\n{PROSE}").digest
    assert (digest.theme, [point.text for point in digest.points]) == ("He went.", [PROSE])
