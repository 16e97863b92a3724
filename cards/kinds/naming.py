"""How much of a book's title page a reader names in their own words."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from rapidfuzz.distance import Levenshtein

from cards.digest import folded
from cards.kinds.base import Shelved
from cards.kinds.words import stems

_ARTICLES = frozenset(
    """the a an der die das ein eine le la les l un une el los las una il lo gli i o os as
    het een de""".split()
)
_SUBTITLE = re.compile(r"\s*[:;(]|\.\s|,?\s+or,\s+", re.IGNORECASE)
_AUTHORS = re.compile(r"\s*(?:;|&|\band\b|\bund\b|\bet\b)\s*")
_SUFFIXES = frozenset({"jr", "sr", "ii", "iii", "iv", "junior", "senior", "phd", "md"})
_LONGEST = 2_000
"""Characters of an attempt that are read: whoever names a book does it early."""
_LIKE = 0.8
"""Likeness of letters from which a title is named with typing errors: one in five, our own."""
_LONG_WORD = 5
"""Letters from which a single error is let pass in one word: reference, part 4."""
_TURNED = frozenset({"not", "nor", "neither", "isn", "isnt", "wasn", "wasnt"})
_UNTURNED = frozenset({"sure", "certain", "only"})
"""What a negation before a title is of instead: “not sure: Emma”."""
_BEFORE = 3
"""Words before a title in which a negation turns it away: “it is not Emma”."""


@dataclass(frozen=True, slots=True)
class Naming:
    """What of a title page was named.

    Attributes:
        title: the title, typing errors let pass.
        part: half of its content words at the least.
        author: their last name.
        turned: whether the title was named only to say that it is not the one.
    """

    title: bool
    part: bool
    author: bool
    turned: bool = False


def naming(words: str, title: str, author: str | None) -> Naming:
    """Hold a reader's words against a title and its author."""
    words = words[:_LONGEST]
    given = _words(words)
    at = next((at for form in _forms(title) if (at := _find(given, form)) is not None), None)
    before = given[max(0, at - _BEFORE) : at] if at else ()
    wanted = stems(title)
    said = len(wanted & stems(words))
    wordless = not _words(title) and title.strip() in words
    return Naming(
        title=at is not None or wordless,
        part=bool(wanted) and 2 * said >= len(wanted),
        author=any(_has(given, name) for name in _last_names(author)),
        turned=not _TURNED.isdisjoint(before) and _UNTURNED.isdisjoint(before),
    )


def others_named(words: str, shelf: Iterable[Shelved], right: Iterable[str]) -> list[str]:
    """Return the titles of books that words name beside the right ones, letter for letter.

    A title that is part of a right one, or made of empty words, is not told from it; one of a
    single word (*Silence*) counts only as it is written, since it is a word as well.
    """
    given = f" {' '.join(_words(words[:_LONGEST]))} "
    known = " / ".join(f" {' '.join(_words(title))} " for title in right)
    plain = ((book.title, _plain_title(book.title)) for book in shelf)
    return [
        title
        for title, main in plain
        if main
        and f" {main} " in given
        and f" {main} " not in known
        and (" " in main or title in words)
    ]


@lru_cache(maxsize=8192)
def _plain_title(title: str) -> str:
    return " ".join(_words(title)) if stems(title) else ""


def _words(text: str) -> tuple[str, ...]:
    """Return the words of a text, folded, articles left out unless there is nothing else."""
    every = tuple(folded(text).split())
    return tuple(word for word in every if word not in _ARTICLES) or every


@lru_cache(maxsize=256)
def _forms(title: str) -> tuple[tuple[str, ...], ...]:
    """Return a title in full and without its subtitle, as words."""
    main = _SUBTITLE.split(title, maxsplit=1)[0]
    return tuple(dict.fromkeys(form for form in (_words(title), _words(main)) if form))


def _find(given: tuple[str, ...], title: tuple[str, ...]) -> int | None:
    """Return where a title is nearest to be found among words, or None.

    A title of empty words alone (“It”) is one only where it comes first.
    """
    joined, size = "".join(title), len(title)
    starts = range(len(given)) if stems(" ".join(title)) else range(min(1, len(given)))
    windows = (
        (start, "".join(given[start : start + length]))
        for start in starts
        for length in {size, size + 1, max(1, size - 1)}
        if start + length <= len(given)
    )
    near = [
        (errors, at) for at, window in windows if (errors := _errors(window, joined)) is not None
    ]
    return min(near)[1] if near else None


def _errors(given: str, wanted: str) -> int | None:
    """Return how many letters are wrong, or None when they are too many."""
    most = max(1, round((1 - _LIKE) * len(wanted))) if len(wanted) >= _LONG_WORD else 0
    errors = int(Levenshtein.distance(given, wanted, score_cutoff=most))
    return errors if errors <= most else None


def _last_names(author: str | None) -> tuple[str, ...]:
    """Return the last names of the authors on a title page, folded."""
    names = []
    for each in _AUTHORS.split(author or ""):
        last = each.split(",")[0] if "," in each else each
        words = [word for word in folded(last).split() if word not in _SUFFIXES]
        names += words[-1:]
    return tuple(names)


def _has(given: tuple[str, ...], name: str) -> bool:
    return any(word == name for word in given) or (
        len(name) >= _LONG_WORD
        and any(
            word[0] == name[0] and Levenshtein.distance(word, name, score_cutoff=1) <= 1
            for word in given
        )
    )
