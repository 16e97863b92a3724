"""After which point a quotation stands: design.md, "Positions are never invented"."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cards.intake.places import Places, point_before
from cards.locators import steps_of
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


@pytest.mark.parametrize(
    ("locator", "points", "after"),
    [
        ("Book III", ["Book I", "Book V, §16"], 1),
        ("Book V, §9", ["Book I", "Book V, §3", "Book V, §16"], 2),
        ("Book V", ["Book I", "Book V, §16"], None),
        ("Book V, §16", ["Book I", "Book V"], None),
        ("Book IV, line 75", ["Book IV, line 10", "Book IV, line 120", "Book IX"], 1),
        ("Part 3, line 120", ["Part 1, line 400", "Part 3, line 300"], 1),
        ("Act II, scene 1", ["Act I, scene 5", "Act II, scene 2"], 1),
        ("Act II, scene 1", ["Act I", "Act II, scene 1"], None),
        ("Book II, ch. 5", ["Book I, ch. 30", "Book II, ch. 12"], 1),
        ("54%", ["12%", "60 %"], 1),
        ("54%", ["54%", "60%"], None),
        ("12%", ["p. 4", "p. 40"], None),
        ("Book III", ["Part 1", "Part 5"], None),
        ("line 75", ["Book I, line 10", "Book I, line 120"], None),
        ("Book I, line 75", ["line 10", "line 120"], None),
        ("ch. 9", ["ch. 3", "ch. 12", "Part 2, ch. 1"], None),
        ("Book III", ["Book V", "Book I"], None),
        ("Book III, 75", ["Book I", "Book V"], None),
        ("Book III-IV", ["Book I", "Book V"], 1),
        ("p. 5, Book III", ["Book I", "Book V"], 1),
        ("canto ii", ["Canto I", "Canto III"], 1),
    ],
)
def test_books_acts_and_lines_settle_what_pages_do_not(
    locator: str, points: list[str | None], after: int | None
):
    """Places that count in the same units are compared from the outermost in; ties say nothing."""
    assert Places(points).point_before(locator) == after


STEPS = st.one_of(
    st.none(),
    st.tuples(st.integers(1, 4), st.integers(1, 9), st.booleans()).map(
        lambda step: f"Book {step[0]}, line {step[1]}" if step[2] else f"Book {step[0]}"
    ),
)


@given(locator=STEPS, points=st.lists(STEPS, max_size=6))
def test_a_place_among_books_contradicts_none(locator: str | None, points: list[str | None]):
    """A place that is given lies strictly between the books and lines of the points about it."""
    after = Places(points).point_before(locator)
    if after is None:
        return
    own = [step.number for step in steps_of(locator)]
    for number, point in enumerate(points, 1):
        steps = [step.number for step in steps_of(point)]
        shared = min(len(own), len(steps))
        if own[:shared] != steps[:shared]:
            assert (steps < own) == (number <= after)
        else:
            assert number not in {after, after + 1} or not steps


def test_the_document_overrules_the_pages():
    """What the digest says in words counts before what its pages suggest."""
    digest = understood(
        "# W\n## Points\n- One (p. 8)\n- Two (p. 40)\n## Quotes\n- “Q.” (p. 12)\n"
        "- “R.” (p. 12, after point 2)"
    ).digest
    assert [quotation.after for quotation in digest.quotations] == [1, 2]
