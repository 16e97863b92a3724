"""After which point a quotation stands: design.md, "Positions are never invented"."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cards.intake.places import Places, point_before
from tests.cards.intake.blocks_of import understood

PAGES = st.one_of(st.none(), st.integers(1, 60))


@pytest.mark.parametrize(
    ("page", "pages", "after"),
    [
        (12, [8, 40], 1),
        (8, [8, 40], 1),
        (50, [8, 40], 2),
        (3, [8, 40], 0),
        (12, [8, None, 40], None),
        (50, [8, None, 40], 3),
        (12, [8, 40, None], 1),
        (50, [8, 40, None], None),
        (12, [None, 8, 40], 2),
        (3, [None, 8, 40], None),
        (12, [40, 8], None),
        (12, [None, None], None),
        (12, [], None),
        (None, [8, 40], None),
        (12, [8, 8, 40], 2),
    ],
)
def test_the_pages_settle_it_or_nothing_does(
    page: int | None, pages: list[int | None], after: int | None
):
    """The last point up to the page, if the next is known to be later; else no place at all."""
    assert point_before(page, pages) == after


@given(page=st.integers(1, 60), pages=st.lists(PAGES, max_size=8))
def test_a_place_holds_whatever_the_unknown_pages_are(page: int, pages: list[int | None]):
    """A place that is given contradicts no known page on either side of it."""
    after = point_before(page, pages)
    if after is not None:
        assert all(at is None or at <= page for at in pages[:after])
        assert all(at is None or at > page for at in pages[after:])
        assert after == len(pages) or pages[after] is not None


@pytest.mark.parametrize(
    ("locator", "points", "after"),
    [
        ("ch. 9", ["ch. 3", "ch. 43"], 1),
        ("ch. 43", ["ch. 3", "ch. 43"], None),
        ("ch. 49", ["ch. 3", "ch. 43"], 2),
        ("ch. 1", ["ch. 3", "ch. 43"], 0),
        ("ch. 9", ["ch. 3", None], None),
        ("ch. 9", ["Book I, ch. 3", "Book II, ch. 12"], None),
        ("Part 2, ch. 9", ["ch. 3", "ch. 12"], None),
        ("ch. 42", ["ch. 41-42", "ch. 50"], None),
        ("ch. 9, p. 100", ["p. 40, ch. 9", "p. 200, ch. 9"], 1),
        (None, ["ch. 3"], None),
    ],
)
def test_chapters_settle_what_pages_do_not(
    locator: str | None, points: list[str | None], after: int | None
):
    """A chapter strictly between those of two points places a quotation; a shared one does not."""
    assert Places(points).point_before(locator) == after


def test_the_document_overrules_the_pages():
    """What the digest says in words counts before what its pages suggest."""
    digest = understood(
        "# W\n## Points\n- One (p. 8)\n- Two (p. 40)\n## Quotes\n- “Q.” (p. 12)\n"
        "- “R.” (p. 12, after point 2)"
    ).digest
    assert [quotation.after for quotation in digest.quotations] == [1, 2]
