"""The kind `next`: a point recalled from the one before it."""

import pytest

from cards.answers import Grade
from cards.digest import Digest, Point
from cards.kinds.base import Attempt, Occasion
from cards.kinds.next import NEXT
from cards.parts import PartKind
from tests.cards.digests import POINTS, kept

DIGEST = kept()


def asked(number, digest=DIGEST):
    """Return an asking of a point, by its number."""
    return Occasion(digest, digest.held(PartKind.POINT)[number - 1])


def test_every_point_makes_one_item():
    """The first and a lone one too: the points are the body of a digest."""
    assert list(NEXT.sources(DIGEST)) == list(DIGEST.held(PartKind.POINT))
    lone = kept(Digest("A Book", points=(Point("Vanity blinds"),)))
    assert len(list(NEXT.sources(lone))) == 1


def test_a_point_is_cued_by_the_one_before_it():
    """With title and author, and it is asked what comes next."""
    cue = NEXT.cue(asked(2))
    assert cue.words == f"{POINTS[0].text}\nPride and Prejudice, by Jane Austen"
    assert cue.question == "What comes next?"


def test_the_first_point_is_cued_by_the_book():
    """Nothing comes before it."""
    cue = NEXT.cue(asked(1))
    assert cue.words == "Pride and Prejudice, by Jane Austen"
    assert cue.question == "What does it begin with?"
    assert NEXT.shows(asked(1)) == {asked(1).part.id}


@pytest.mark.parametrize(
    ("before", "point"),
    [
        ("The whale sinks the ship", "The ship sinks, and the whale swims off"),
        ("He is what he is", "He is what he was"),
    ],
)
def test_a_point_before_that_would_tell_the_next_is_not_shown(before, point):
    """Half of its content words, or of all its words where it has none."""
    digest = kept(Digest("A Book", points=(Point("It begins"), Point(before), Point(point))))
    cue = NEXT.cue(asked(3, digest))
    assert cue.words == "Point 3 of 3\nA Book"
    assert NEXT.shows(asked(3, digest)) == {asked(3, digest).part.id}


def test_it_asks_the_point_and_shows_what_its_pages_show():
    """The one before on the left page, the point itself on the right."""
    first, second = DIGEST.held(PartKind.POINT)[:2]
    assert NEXT.asks(asked(2)) == {second.id}
    assert NEXT.shows(asked(2)) == {first.id, second.id}
    assert NEXT.secret(asked(2)) == second.text


def test_the_answer_is_the_point_with_its_place():
    """As the digest puts it."""
    answer = NEXT.answer(asked(3))
    assert (answer.words, answer.page, answer.locator) == (POINTS[2].text, 189, "p. 189")


@pytest.mark.parametrize(
    ("words", "grade"),
    [
        (POINTS[2].text, Grade.VIVID),
        ("Wickham tells a tale", Grade.BLANK),
        ("", Grade.BLANK),
    ],
)
def test_it_is_marked_by_its_ideas(words, grade):
    """As a theme is."""
    assert NEXT.mark(asked(3), Attempt(words=words)).grade is grade
