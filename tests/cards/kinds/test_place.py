"""The kind `place`: how a place is asked, and how near a guess must come.

The shares of the book by which a page is graded are checked in `tests/reference`.
"""

import pytest

from cards.answers import Grade
from cards.digest import Digest, Point, Quotation
from cards.kinds.base import Asked, Attempt, Occasion, order_of, place_of
from cards.kinds.place import PLACE
from cards.parts import PartKind
from tests.cards.digests import kept, only, quotation

POINTS = tuple(Point(f"Stage {name}") for name in ("one", "two", "three", "four"))


@pytest.mark.parametrize(
    ("locator", "after", "asked"),
    [
        ("p. 54", 2, (Asked.GAP, Asked.PAGE)),
        ("p. 54", None, (Asked.PAGE,)),
        ("ch. 20", 2, (Asked.GAP,)),
        ("ch. 20", None, (Asked.CHAPTER,)),
        (None, 0, (Asked.GAP,)),
    ],
)
def test_a_place_is_asked_by_what_is_known_of_it(locator, after, asked):
    """By the gap where its point is known, and by page or chapter where that is."""
    digest, part = quotation(locator, after, points=POINTS)
    assert PLACE.cue(Occasion(digest, part)).asked == asked


@pytest.mark.parametrize("locator", [None, "Finale", "p. ix", "§5"])
def test_a_place_that_nothing_says_makes_no_item(locator):
    """Positions are never invented: one quotation alone, without a page or a point."""
    digest, _ = quotation(locator)
    assert list(PLACE.sources(digest)) == []


def test_without_points_or_pages_the_order_of_the_quotations_is_asked():
    """Among two others or more a quotation is placed between them."""
    three = Digest("A Book", quotations=tuple(Quotation(word) for word in ("One", "Two", "Three")))
    digest, second = only(PartKind.QUOTATION, three, 2)
    cue = PLACE.cue(Occasion(digest, second))
    assert [landmark.text for landmark in cue.landmarks] == ["One", "Three"]
    assert "your other quotations" in cue.question
    assert PLACE.answer(Occasion(digest, second)).gap == 1
    assert PLACE.answer(Occasion(digest, second)).words == "After quotation 1: One"
    assert PLACE.mark(Occasion(digest, second), Attempt(gap=1)).grade is Grade.CLEAR
    two = kept(Digest("A Book", quotations=(Quotation("One"), Quotation("Two"))))
    assert list(PLACE.sources(two)) == []


@pytest.mark.parametrize(
    ("gap", "grade"),
    [(2, Grade.CLEAR), (1, Grade.HAZY), (3, Grade.HAZY), (0, Grade.BLANK), (4, Grade.BLANK)],
)
def test_the_right_gap_is_clear_and_the_next_hazy(gap, grade):
    """Design: by gap never vivid."""
    digest, part = quotation(None, 2, points=POINTS)
    assert PLACE.mark(Occasion(digest, part), Attempt(gap=gap)).grade is grade


@pytest.mark.parametrize(
    ("after", "words"),
    [
        (0, "p. 54, before the first point"),
        (2, "p. 54, after point 2: Stage two"),
        (4, "p. 54, after the last point: Stage four"),
    ],
)
def test_the_answer_says_the_place_in_words(after, words):
    """Locator and gap, with the words of the point before it."""
    digest, part = quotation("p. 54", after, points=POINTS)
    answer = PLACE.answer(Occasion(digest, part))
    assert (answer.words, answer.gap, answer.page) == (words, after, 54)


def test_without_the_number_of_pages_the_scale_is_what_the_digest_names():
    """The known pages serve as the scale, and the reason says so."""
    digest, part = quotation("p. 100", points=(Point("Late", "p. 200"),))
    marked = PLACE.mark(Occasion(digest, part), Attempt(page=110, landmarks_seen=False))
    assert marked.grade is Grade.CLEAR
    assert marked.reason == "10 pages off, 5% of the pages your digest names."


@pytest.mark.parametrize(
    "attempt", [Attempt(), Attempt(words="in the middle"), Attempt(chapter=3), Attempt(gap=1)]
)
def test_an_attempt_that_names_no_place_is_blank(attempt):
    """Words, or a way that was not asked, place nothing."""
    digest, part = quotation("p. 54")
    assert PLACE.mark(Occasion(digest, part), attempt).grade is Grade.BLANK


@pytest.mark.parametrize("page", [-1, 0, 10**9, 10**400])
def test_a_page_no_book_has_is_far_off_and_no_error(page):
    """Any number is marked."""
    digest, part = quotation("p. 300", pages=400)
    marked = PLACE.mark(Occasion(digest, part), Attempt(page=page, landmarks_seen=False))
    assert marked.grade is Grade.BLANK


def test_a_placing_shows_the_points_in_order_and_asks_no_words():
    """So it comes after whatever asks the points or their order, and asks its place alone."""
    digest, part = quotation("p. 54", 2, points=POINTS)
    occasion = Occasion(digest, part)
    assert PLACE.asks(occasion) == {place_of(part)}
    assert PLACE.shows(occasion) == {
        part.id,
        place_of(part),
        order_of(digest),
        *(p.id for p in digest.held(PartKind.POINT)),
    }
    assert not PLACE.secret(occasion)


CHAPTERS = (
    Point("Early", "ch. 3, p. 40"),
    Point("Within", "ch. 4, p. 60"),
    Point("Late", "ch. 4, p. 120"),
)


@pytest.mark.parametrize(
    ("page", "grade"),
    [(120, Grade.CLEAR), (70, Grade.CLEAR), (130, Grade.HAZY), (45, Grade.HAZY)],
)
def test_a_page_off_but_known_to_lie_in_the_same_chapter_is_clear(page, grade):
    """Reference, part 4: within .05 or the same chapter, where the digest knows its pages."""
    digest, part = quotation("ch. 4, p. 100", pages=400, points=CHAPTERS)
    marked = PLACE.mark(Occasion(digest, part), Attempt(page=page, landmarks_seen=False))
    assert marked.grade is grade
    far = PLACE.mark(Occasion(digest, part), Attempt(page=page, chapter=4, landmarks_seen=False))
    assert far.grade is Grade.CLEAR


def test_a_chapter_counted_anew_in_another_volume_is_not_the_same():
    """Two chapters of one number with others between them are two chapters."""
    points = (*CHAPTERS, Point("Second volume", "ch. 1, p. 200"), Point("End", "ch. 4, p. 300"))
    digest, part = quotation("ch. 4, p. 100", pages=400, points=points)
    marked = PLACE.mark(Occasion(digest, part), Attempt(page=130, landmarks_seen=False))
    assert marked.grade is Grade.HAZY
