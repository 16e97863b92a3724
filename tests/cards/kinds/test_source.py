"""The kind `source`: which books stand to choose, and what is said of the one chosen."""

from datetime import date
from uuid import UUID

import pytest

from cards.answers import Grade
from cards.digest import Digest, Quotation
from cards.kinds.base import Asked, Attempt, Occasion, Shelved, place_of
from cards.kinds.source import SOURCE
from cards.parts import KeptDigest, PartKind
from tests.cards.digests import kept

WALDEN = Digest(
    "Walden",
    author="Henry David Thoreau",
    finished_on=date(2024, 5, 1),
    quotations=(Quotation("The mass of men lead lives of quiet desperation", "p. 8"),),
)


def shelved(number: int, title: str, author: str | None = None, on: date | None = None) -> Shelved:
    """Return a book on the shelf."""
    return Shelved(UUID(int=1_000 + number), title, author, on)


CAPE = shelved(1, "Cape Cod", "Thoreau, Henry David", date(2020, 1, 1))
TWO = shelved(2, "Walden Two", "B. F. Skinner", date(2019, 1, 1))
NEAR = shelved(3, "Middlemarch", "George Eliot", date(2024, 5, 20))
NEXT = shelved(4, "Emma", "Jane Austen", date(2024, 3, 1))
FAR = shelved(5, "Moby-Dick", "Herman Melville", date(2022, 1, 1))
UNDATED = shelved(6, "Persuasion", "Jane Austen")
SHELF = (UNDATED, FAR, NEXT, NEAR, TWO, CAPE)


def occasion(
    shelf: tuple[Shelved, ...] = SHELF, asked: int = 0, digest: KeptDigest | None = None
) -> Occasion:
    """Return one asking of whose words a quotation is."""
    digest = digest or kept(WALDEN)
    own = Shelved(digest.id, digest.title, digest.author, digest.finished_on)
    return Occasion(digest, digest.held(PartKind.QUOTATION)[0], asked, shelf=(*shelf, own))


def test_the_nearest_confusable_books_stand_to_choose():
    """The author’s other first, then a title like it, then those finished about the same time."""
    books = {book.title for book in SOURCE.cue(occasion()).choices}
    assert books == {"Walden", "Cape Cod", "Walden Two", "Middlemarch", "Emma"}


def test_the_right_book_stands_in_another_place_each_time():
    """So that no place is ever the likelier."""
    places = {
        [book.title for book in SOURCE.cue(occasion(asked=asked)).choices].index("Walden")
        for asked in range(20)
    }
    assert places == {0, 1, 2, 3, 4}


@pytest.mark.parametrize("shelf", [(), (FAR,), (FAR, shelved(7, "WALDEN", "Henry David Thoreau"))])
def test_with_too_few_other_books_it_is_asked_in_words(shelf):
    """Between two, luck alone is right every other time; the same book twice is one."""
    cue = SOURCE.cue(occasion(shelf))
    assert cue.asked == (Asked.WORDS,)
    assert cue.choices == ()
    assert "Name it" in cue.question


@pytest.mark.parametrize(
    ("book", "grade", "said"),
    [
        (CAPE.id, Grade.HAZY, "The author is right, the book is not Cape Cod."),
        (FAR.id, Grade.BLANK, "Not Moby-Dick."),
        (UUID(int=4), Grade.BLANK, "Another book than the right one."),
    ],
)
def test_a_wrong_book_is_blank_but_hazy_by_the_same_author(book, grade, said):
    """The mark says how near it was."""
    marked = SOURCE.mark(occasion(), Attempt(book=book))
    assert (marked.grade, marked.reason) == (grade, said)


def test_the_right_book_is_clear_and_never_vivid():
    """Chance is right one time in five, and the mark says so."""
    asked = occasion()
    marked = SOURCE.mark(asked, Attempt(book=SOURCE.answer(asked).book))
    assert marked.grade is Grade.CLEAR
    assert "one time in 5" in marked.reason


def test_another_copy_of_the_right_book_is_right():
    """Read twice, it has two digests."""
    copy = shelved(8, "Walden", "Thoreau, Henry David")
    asked = occasion((*SHELF, copy))
    assert copy not in SOURCE.cue(asked).choices
    assert SOURCE.mark(asked, Attempt(book=copy.id)).grade is Grade.CLEAR


@pytest.mark.parametrize(
    ("words", "grade"),
    [
        ("Walden, by Thoreau", Grade.VIVID),
        ("waldn", Grade.CLEAR),
        ("It is Walden, I think", Grade.CLEAR),
        ("Thoreau, that one in the woods", Grade.HAZY),
        ("It is not Walden", Grade.HAZY),
        ("Walden or Moby-Dick", Grade.HAZY),
        ("Walden or Silence", Grade.HAZY),
        ("Walden, where there is silence", Grade.CLEAR),
        ("Middlemarch", Grade.BLANK),
        ("", Grade.BLANK),
    ],
)
def test_named_in_words_title_and_author_are_vivid(words, grade):
    """The title alone is clear, the author alone or several titles at a guess hazy."""
    assert SOURCE.mark(occasion((FAR, shelved(9, "Silence"))), Attempt(words=words)).grade is grade


@pytest.mark.parametrize(
    ("text", "items"),
    [
        ("The mass of men lead lives of quiet desperation", 1),
        ("Walden was old, Walden was young", 1),
        ("Walden Pond, Concord, Massachusetts", 0),
        ("To be or not to be", 0),
        ("Simplify", 0),
    ],
)
def test_a_quotation_that_veiling_leaves_unreadable_makes_no_item(text, items):
    """Half of its content words must stay, and two at the least."""
    digest = kept(Digest("Walden", quotations=(Quotation(text),)))
    assert len(list(SOURCE.sources(digest))) == items


def test_the_answer_is_the_book_and_the_place():
    """Title, author, and where in it the words stand; the cue had none of it."""
    asked = occasion()
    answer = SOURCE.answer(asked)
    assert answer.words == "Walden, by Henry David Thoreau"
    assert (answer.book, answer.locator, answer.page) == (asked.digest.id, "p. 8", 8)
    assert SOURCE.asks(asked) == {asked.part.id}
    assert SOURCE.shows(asked) == {asked.part.id, place_of(asked.part)}
    assert not SOURCE.secret(asked)
