"""The kind `across`: which other book speaks to a point, named and not chosen."""

from dataclasses import replace
from uuid import UUID

import pytest

from cards.answers import Grade
from cards.digest import Digest, Point
from cards.kinds.across import ACROSS
from cards.kinds.base import Asked, Attempt, Occasion, Shelved, link_of
from cards.parts import Link, PartKind
from tests.cards.digests import kept

POINTS = (
    Point("Whoever owns little is free to walk away at sunrise"),
    Point("A letter can unmake a year of certainty, as Elinor Dashwood’s restraint could not"),
)
BOOK = kept(Digest("Walden", author="Henry David Thoreau", points=POINTS))
SENSE = Shelved(UUID(int=901), "Sense and Sensibility", "Jane Austen")
GREAT = Shelved(UUID(int=902), "Great Expectations", "Charles Dickens")
MOBY = Shelved(UUID(int=903), "Moby-Dick; or, The Whale", "Herman Melville")
WALDEN = Shelved(UUID(int=904), "Walden Two", "B. F. Skinner")
SHELF = (SENSE, GREAT, MOBY, WALDEN, Shelved(BOOK.id, BOOK.title, BOOK.author))
WHY = "Marianne learns restraint when fortune is gone"


def occasion(*books: Shelved, why: str = "", point: int = 0, digest=BOOK) -> Occasion:
    """Return an asking of a point linked to some books."""
    part = digest.held(PartKind.POINT)[point]
    links = tuple(
        Link(UUID(int=70 + number), part.id, book.id, book.title, book.author, why)
        for number, book in enumerate(books)
    )
    return Occasion(replace(digest, links=links), part, shelf=SHELF)


def test_only_linked_points_make_items():
    """One a point, however many books it is linked to."""
    asked = occasion(SENSE, GREAT, point=1)
    assert list(ACROSS.sources(asked.digest)) == [asked.part]
    assert list(ACROSS.sources(BOOK)) == []


def test_a_link_of_a_point_no_longer_held_makes_none():
    """Its history waits with it."""
    asked = occasion(SENSE)
    parts = tuple(replace(part, retired=True) for part in asked.digest.parts)
    assert list(ACROSS.sources(replace(asked.digest, parts=parts))) == []


@pytest.mark.parametrize(
    ("words", "grade"),
    [
        ("Sense and Sensibility, by Jane Austen", Grade.VIVID),
        ("Austen’s Sense & Sensibility", Grade.VIVID),
        ("sense and sensibility", Grade.CLEAR),
        ("It must be Sence and Sensiblity", Grade.CLEAR),
        ("The Sense and Sensibility", Grade.CLEAR),
        ("Sense and Sensibility: Marianne learns restraint", Grade.VIVID),
        ("Something by Austen", Grade.HAZY),
        ("Something by Austin", Grade.HAZY),
        ("the one about sensibility", Grade.HAZY),
        ("Sense and Sensibility or Great Expectations", Grade.HAZY),
        ("It is not Sense and Sensibility", Grade.HAZY),
        ("Not sure: Sense and Sensibility?", Grade.CLEAR),
        ("restraint is learnt once a fortune is gone, I forget where", Grade.HAZY),
        ("Great Expectations", Grade.BLANK),
        ("no idea", Grade.BLANK),
        ("", Grade.BLANK),
    ],
)
def test_a_book_is_graded_by_how_much_of_it_is_named(words, grade):
    """Title clear; author or what it says as well vivid; less, or several at a guess, hazy."""
    assert ACROSS.mark(occasion(SENSE, why=WHY), Attempt(words=words)).grade is grade


@pytest.mark.parametrize("words", ["Moby Dick", "The Whale", "moby-dick", "Moby Dik or the whale"])
def test_a_subtitle_may_be_left_out(words):
    """The title before it is enough; the subtitle alone is part of the title."""
    grade = ACROSS.mark(occasion(MOBY), Attempt(words=words)).grade
    assert grade is (Grade.BLANK if words == "The Whale" else Grade.CLEAR)


def test_another_book_of_the_shelf_is_said_not_to_be_linked():
    """And the reader may link it."""
    marked = ACROSS.mark(occasion(SENSE), Attempt(words="Great Expectations, I believe"))
    assert marked.reason == "Great Expectations is not linked to this point yet; you can link it."


def test_any_one_of_several_is_enough_and_the_others_are_told():
    """The reason names them."""
    marked = ACROSS.mark(occasion(SENSE, GREAT), Attempt(words="Great Expectations"))
    assert marked.grade is Grade.CLEAR
    assert marked.reason == "Great Expectations. Also: Sense and Sensibility."
    assert [span.hit for span in marked.answer_spans] == [False, True]


def test_two_linked_books_named_together_are_no_guess():
    """Both are right."""
    words = "Great Expectations, and Sense and Sensibility"
    assert ACROSS.mark(occasion(SENSE, GREAT), Attempt(words=words)).grade is Grade.CLEAR


def test_the_cue_shows_the_point_and_its_book():
    """The answer tells the other books, with what they say."""
    asked = occasion(SENSE, why=WHY)
    cue, answer = ACROSS.cue(asked), ACROSS.answer(asked)
    assert cue.words == f"{POINTS[0].text}\nWalden, by Henry David Thoreau"
    assert cue.asked == (Asked.WORDS,)
    assert answer.words == f"Sense and Sensibility, by Jane Austen: {WHY}"
    assert answer.book == SENSE.id


@pytest.mark.parametrize(
    ("linked", "text", "shown"),
    [
        (SENSE, "What Sense and Sensibility says of it", "What ——— and ——— says of it"),
        (SENSE, "As Jane Austen has it, letters lie", "As ——— has it, letters lie"),
        (SENSE, "Good sense lies", "Good ——— lies"),
        (GREAT, "A great house burns", "A ——— house burns"),
        (MOBY, "A whale answers nobody", "A whale answers nobody"),
    ],
)
def test_a_point_that_names_the_linked_book_is_veiled(linked, text, shown):
    """Half of its title’s words or more, and its author’s names."""
    digest = kept(Digest("Walden", author="Henry David Thoreau", points=(Point(text),)))
    cue = ACROSS.cue(occasion(linked, digest=digest))
    assert cue.words == f"{shown}\nWalden, by Henry David Thoreau"


def test_a_book_whose_title_tells_the_linked_one_is_veiled_too():
    """*Walden* is half of *Walden Two*."""
    assert "Walden" not in ACROSS.cue(occasion(WALDEN)).words


def test_it_asks_its_links_and_shows_the_point():
    """So it comes after what asks the point."""
    asked = occasion(SENSE, GREAT)
    assert ACROSS.asks(asked) == {link_of(asked.part)}
    assert ACROSS.shows(asked) == {asked.part.id, link_of(asked.part)}
    assert ACROSS.secret(asked) == "Sense and Sensibility\nGreat Expectations"
