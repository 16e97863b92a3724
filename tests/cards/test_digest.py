"""What makes a digest valid."""

from dataclasses import replace

import pytest

from cards.digest import (
    MAX_LOCATOR,
    MAX_PAGES,
    MAX_PARTS,
    MAX_TEXT,
    MAX_TITLE,
    MAX_WHOLE,
    Commitment,
    Digest,
    Point,
    Quotation,
    folded,
)
from cards.errors import InvalidDigest
from tests.cards.digests import WHOLE


@pytest.mark.parametrize(
    ("parts", "where"),
    [
        ({"title": ""}, "title"),
        ({"title": " \n"}, "title"),
        ({"title": "x" * (MAX_TITLE + 1)}, "title"),
        ({"author": "  "}, "author"),
        ({"author": "x" * (MAX_TITLE + 1)}, "author"),
        ({"theme": ""}, "theme"),
        ({"theme": "x" * (MAX_TEXT + 1)}, "theme"),
        ({"theme": "a\x00b"}, "theme"),
        ({"judgement": " "}, "judgement"),
        ({"points": (Point("One"), Point(" "))}, "points 2"),
        ({"commitments": (Commitment(""),)}, "commitments 1"),
        ({"quotations": (Quotation("x" * (MAX_TEXT + 1)),)}, "quotations 1"),
        ({"points": (Point("One", "x" * (MAX_LOCATOR + 1)),)}, "points 1"),
        ({"quotations": (Quotation("One", " "),)}, "quotations 1"),
        ({"points": (Point("One"),) * (MAX_PARTS + 1)}, "points"),
        ({"commitments": (Commitment("x" * MAX_TEXT),) * 10, "theme": "x"}, "document"),
        ({"pages": 0}, "pages"),
        ({"pages": MAX_PAGES + 1}, "pages"),
        ({"quotations": (Quotation("One", after=6),)}, "quotations 1"),
        ({"quotations": (Quotation("One", after=-1),)}, "quotations 1"),
    ],
)
def test_a_digest_beyond_a_bound_is_refused_and_the_part_is_named(parts, where):
    """Every bound holds, and the refusal says which part breaks it."""
    with pytest.raises(InvalidDigest) as refusal:
        replace(WHOLE, **parts)
    assert refusal.value.where == where


def test_a_digest_at_its_bounds_is_valid():
    """The longest parts, the most parts and the most pages are kept."""
    assert MAX_TEXT * 10 == MAX_WHOLE
    Digest("x" * MAX_TITLE, pages=MAX_PAGES, points=(Point("x" * MAX_TEXT),) * 10)
    Digest("A Book", pages=1, points=(Point("x" * 10, "p. 3"),) * MAX_PARTS)


def test_a_digest_keeps_at_least_one_part():
    """A title page alone is no digest, nor with a judgement."""
    with pytest.raises(InvalidDigest) as refusal:
        Digest("A Book", author="Somebody", judgement="Agree")
    assert refusal.value.where == "theme"


def test_a_place_is_read_from_its_locator():
    """The page is the locator's, and unknown where it names none."""
    assert Point("One", "p. 54").page == 54
    assert Quotation("One", "pp. 34-35").page == 34
    assert Quotation("One", "Finale").page is None
    assert Quotation("One").page is None


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Walden; or, Life in the Woods", "WALDEN, or: life in the woods"),
        ("Les Misérables", "les miserables"),
        ("  On   Liberty ", "On Liberty"),
        ("Straße", "STRASSE"),
    ],
)
def test_title_pages_are_compared_without_case_accents_and_punctuation(one, other):
    """Two writings of one title fold to the same."""
    assert folded(one) == folded(other) != ""


def test_different_titles_fold_differently():
    """Folding keeps what tells two books apart; nothing is left of None."""
    assert folded("Emma") != folded("Persuasion")
    assert folded(None) == folded("—!") == ""
