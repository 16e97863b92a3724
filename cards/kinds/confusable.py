"""Which of a reader's books are nearest to be taken for one of them."""

from dataclasses import dataclass
from functools import lru_cache
from heapq import nsmallest

from cards.digest import folded
from cards.kinds.base import Occasion, Shelved
from cards.kinds.lots import lot
from cards.kinds.veiling import title_stems

FEWEST_OTHERS = 2
"""Other books needed to choose among: between two, chance alone is right every other time."""
MOST_OTHERS = 4
"""Other books shown beside the right one."""
_NEVER = 10**9
"""Days between books of which one has no day: further than any."""


def choices(occasion: Occasion) -> tuple[Shelved, ...]:
    """Return the right book and those nearest to be taken for it, in an order drawn by lot.

    By the same author first, then with words of the title in common, then those finished
    nearest in time: what is learnt close together interferes most. Ties are drawn by lot.
    None are returned when the shelf has too few others.
    """
    digest = occasion.digest
    right = Shelved(digest.id, digest.title, digest.author, digest.finished_on)
    own = _face(right.title, right.author)
    faces = ((_face(book.title, book.author), book) for book in occasion.shelf)
    others = [
        (_distance(own, right, face, book), book)
        for face, book in faces
        if book.id != right.id and not own.is_of(face)
    ]
    if len(others) < FEWEST_OTHERS:
        return ()
    shown = (right, *_nearest(occasion, others))
    return tuple(sorted(shown, key=lambda book: lot(occasion, book.id)))


def same_author(one: Shelved, other: Shelved) -> bool:
    """Tell whether two books name the same author, whichever name comes first."""
    mine, theirs = _face(one.title, one.author), _face(other.title, other.author)
    return bool(mine.author) and mine.author == theirs.author


def same_book(one: Shelved, other: Shelved) -> bool:
    """Tell whether two are one book, read twice perhaps: either choice would be right."""
    mine, theirs = _face(one.title, one.author), _face(other.title, other.author)
    return one.id == other.id or mine.is_of(theirs)


_Distance = tuple[bool, int, int]


def _nearest(occasion: Occasion, graded: list[tuple[_Distance, Shelved]]) -> list[Shelved]:
    furthest = nsmallest(MOST_OTHERS, (each for each, _ in graded))[-1]
    # Lots are drawn among those that can be chosen alone: a shelf holds thousands.
    within = [(each, lot(occasion, book.id), book) for each, book in graded if each <= furthest]
    return [book for _, _, book in nsmallest(MOST_OTHERS, within, key=lambda each: each[:2])]


def _distance(own: "_Face", right: Shelved, face: "_Face", book: Shelved) -> _Distance:
    another = not own.author or face.author != own.author
    return another, -len(own.stems & face.stems), _days_between(book, right)


def _days_between(one: Shelved, other: Shelved) -> int:
    if one.finished_on is None or other.finished_on is None:
        return _NEVER
    return abs((one.finished_on - other.finished_on).days)


@dataclass(frozen=True, slots=True)
class _Face:
    """A title page as it is compared.

    Attributes:
        title: folded.
        stems: of the title's words.
        author: the words of the name, folded; empty when there is none.
    """

    title: str
    stems: frozenset[str]
    author: frozenset[str]

    def is_of(self, other: "_Face") -> bool:
        """Tell whether the two can be of one book; an author left out tells nothing."""
        authors = self.author == other.author or not self.author or not other.author
        return self.title == other.title and authors


@lru_cache(maxsize=8192)
def _face(title: str, author: str | None) -> _Face:
    return _Face(folded(title), title_stems(title), frozenset(folded(author).split()))
