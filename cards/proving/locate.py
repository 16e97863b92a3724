"""A quotation located in the text of its book."""

import re
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from cards.proving.folding import Folded
from cards.proving.pieces import ELLIPSIS_GAP, Piece, masked, pieces, whole
from cards.proving.places import Spot, chapter_at, confirms, pages_at, says
from cards.proving.seeking import MOST_PLACES, Hit, exact, likest, weight
from cards.proving.slips import Compared, Slip, SlipKind, mend
from cards.proving.words import Word, words_of

CONTEXT = 40
"""Characters kept before and after the words, to the end of a word: at least 32 where there are."""
_LIMITS = ((0, 97.0), (30, 94.0), (45, 90.0), (60, 79.0), (100, 71.0), (200, 65.0), (400, 62.0))
_LIMITS_WHERE_ALL_WORDS_ANSWER = ((0, 97.0), (20, 93.0), (30, 89.0), (45, 86.0), (60, 79.0))
"""Folded characters of a quotation, and the likeness from which a stretch is taken for it.

Measured on the seven novels of tests/reference/novels, between these lengths falling evenly.
Words of one were never more like another than 88 (at 40 to 50 characters), 77 (50 to 80), 66
(80 to 100) and 57 (beyond); in their own, with one character in twenty wrong, never less like
than 88, in ten 85. Shorter than that, one novel's turns of phrase are in the next ("I have the
highest opinion in the world"), and likeness alone does not tell: they differ in whole words,
where errors of copying leave every word with one that answers to it. So these two limits.
"""
_FARTHEST = 2 * ELLIPSIS_GAP
"""Folded characters over which a piece is looked for where those between were not found."""
_CONFIRMED = 68.0
"""Likeness from which a stretch is taken that stands where the reader's own locator says: the
likest of a whole novel, if wrong, stands in the chapter named once in as many as it has."""
_SPACE = re.compile(r"\s")
_SURELY = 8.0
"""Likeness by which one inexact place must exceed the next not to be called ambiguous."""


@dataclass(frozen=True, slots=True)
class Found:
    """Where a quotation stands in a book, and how it differs from it.

    Attributes:
        start, end: offsets in characters of the book's text, what an ellipsis stands for included.
        spans: offsets of each piece, where the quotation leaves something out; else one.
        score: likeness of the words, 0 to 100; 100 where no word differs.
        exact: the book's own words from start to end, as they stand there.
        prefix, suffix: what stands right before and after them, at least 32 characters.
        spot: chapter, pages and share of the book.
        places: how many places fit as well; more than 1 where nothing told them apart.
        slips: what differs, word by word, in order.
        mended: the quotation with the book's words in place of its slips.
    """

    start: int
    end: int
    spans: tuple[tuple[int, int], ...]
    score: float
    exact: str
    prefix: str
    suffix: str
    spot: Spot
    places: int
    slips: tuple[Slip, ...]
    mended: str

    @property
    def ambiguous(self) -> bool:
        """Whether the words stand in several places and nothing says which is meant."""
        return self.places > 1

    @property
    def fraction(self) -> float:
        """How far into the book it begins, 0 to 1, white space collapsed."""
        return self.spot.fraction


@dataclass(frozen=True, slots=True)
class _Fit:
    """Where each piece would stand; None for one that is not there."""

    hits: tuple[Hit | None, ...]
    score: float

    @property
    def start(self) -> int:
        return min(hit.start for hit in self.hits if hit is not None)

    @property
    def end(self) -> int:
        return max(hit.end for hit in self.hits if hit is not None)


def locate(quotation: str, book: Folded, locator: str | None = None) -> Found | None:
    """Return where a quotation stands in a book, or None where it does not.

    Words that stand there exactly are found first; then pieces parted by the reader's
    ellipses and brackets, in order; then what is like enough for its length.

    Args:
        quotation: the reader's words.
        book: the folded text.
        locator: where the reader says it stands; it chooses among places that fit alike, and
            where it names a page or chapter of this text less likeness is asked for there.
    """
    one = whole(quotation)
    if not one.words:
        return None
    cut: tuple[Piece, ...] = (one,)
    fits = [_Fit((hit,), hit.score) for hit in exact(one.words, book.folded.text)]
    if not fits:
        cut = pieces(quotation)
        if not cut:
            return None
        fits = _fits(quotation, cut, book, locator)
    if not fits:
        return None
    chosen, places = _chosen(fits, book, locator)
    return _found(quotation, cut, chosen, places, book)


def cut_off(length: int) -> float:
    """Return the likeness from which words of a folded length are taken for found."""
    return _between(_LIMITS, length)


def _between(limits: Sequence[tuple[int, float]], length: int) -> float:
    index = min(bisect_right(limits, length, key=lambda pair: pair[0]), len(limits) - 1)
    (low, at_low), (high, at_high) = limits[index - 1], limits[index]
    share = min(1.0, (length - low) / (high - low))
    return at_low + share * (at_high - at_low)


def _fits(quotation: str, cut: Sequence[Piece], book: Folded, locator: str | None) -> list[_Fit]:
    """Return the ways the pieces fit, best first, those alone that are like enough."""
    pivot = max(range(len(cut)), key=lambda number: len(cut[number].words))
    words, text = cut[pivot].words, book.folded.text
    hits = exact(words, text) or likest(words, text)
    fits = [_around(cut, pivot, hit, text) for hit in hits]
    length = sum(weight(piece.words) for piece in cut)
    sure = cut_off(length)
    least = min(sure, _between(_LIMITS_WHERE_ALL_WORDS_ANSWER, length))
    sound = [
        fit
        for fit in fits
        if fit.score >= sure
        or (fit.score >= least and _all_answer(quotation, cut, fit, book))
        or (fit.score >= _CONFIRMED and confirms(locator, _spot(fit, book), book.book))
    ]
    return sorted(sound, key=lambda fit: (-fit.score, fit.end - fit.start, fit.start))


def _all_answer(quotation: str, cut: Sequence[Piece], fit: _Fit, book: Folded) -> bool:
    """Tell whether every word has one that answers to it, however spelt, on both sides."""
    return all(
        slip.kind in {SlipKind.SPELLING, SlipKind.MARKS}
        for slip in _slips(quotation, cut, fit, book)
    )


def _around(cut: Sequence[Piece], pivot: int, hit: Hit, text: str) -> _Fit:
    """Place the other pieces before and after the one that is found."""
    hits: list[Hit | None] = [None] * len(cut)
    hits[pivot] = hit
    at, room = hit.end, 0
    for number in range(pivot + 1, len(cut)):
        room = min(room + cut[number].gap, _FARTHEST)
        high = at + room + len(cut[number].words) + 1
        placed = _nearest(cut[number].words, text, at, high, forwards=True)
        if placed is not None:
            hits[number], at, room = placed, placed.end, 0
    at, room = hit.start, 0
    for number in range(pivot - 1, -1, -1):
        room = min(room + cut[number + 1].gap, _FARTHEST)
        low = max(0, at - room - len(cut[number].words) - 1)
        placed = _nearest(cut[number].words, text, low, at, forwards=False)
        if placed is not None:
            hits[number], at, room = placed, placed.start, 0
    weights = [len(piece.words) for piece in cut]
    score = sum(
        weight * (0.0 if placed is None else placed.score)
        for weight, placed in zip(weights, hits, strict=True)
    )
    return _Fit(tuple(hits), score / sum(weights))


def _nearest(words: str, text: str, low: int, high: int, *, forwards: bool) -> Hit | None:
    found = exact(words, text, low, high)
    if found:
        return found[0] if forwards else found[-1]
    alike = likest(words, text, low, high)
    return alike[0] if alike and alike[0].score >= cut_off(weight(words)) else None


def _chosen(fits: Sequence[_Fit], book: Folded, locator: str | None) -> tuple[_Fit, int]:
    """Return the fit that is meant, and how many fit as well where nothing says which."""
    best = fits[0]
    equal = [fit for fit in fits if fit.score > best.score - _SURELY or fit.score == best.score]
    if best.score == 100.0:
        equal = [fit for fit in equal if fit.score == 100.0]
    if len(equal) == 1:
        return best, 1
    if locator is not None and len(equal) <= MOST_PLACES:
        agreeing = [fit for fit in equal if says(locator, _spot(fit, book), book.book) is None]
        if agreeing and len(agreeing) < len(equal):
            return agreeing[0], len(agreeing)
    return best, len(equal)


def _spot(fit: _Fit, book: Folded) -> Spot:
    start, end = book.folded.span(fit.start, fit.end)
    return spot_of(book, start, end)


def spot_of(book: Folded, start: int, end: int) -> Spot:
    """Return where a stretch of the text stands."""
    text = book.book
    return Spot(chapter_at(text, start), pages_at(text, start, end), book.fraction(start))


def _found(quotation: str, cut: Sequence[Piece], fit: _Fit, places: int, book: Folded) -> Found:
    start, end = book.folded.span(fit.start, fit.end)
    slips = _slips(quotation, cut, fit, book)
    placed = [hit for hit in fit.hits if hit is not None]
    prefix, suffix = context(book.book.text, start, end)
    return Found(
        start=start,
        end=end,
        spans=tuple(book.folded.span(hit.start, hit.end) for hit in placed),
        score=fit.score,
        exact=book.book.text[start:end],
        prefix=prefix,
        suffix=suffix,
        spot=spot_of(book, start, end),
        places=places,
        slips=slips,
        mended=mend(quotation, slips),
    )


def context(text: str, start: int, end: int) -> tuple[str, str]:
    """Return what stands before and after a stretch, cut at the end of a word."""
    low, high = max(0, start - CONTEXT), min(len(text), end + CONTEXT)
    before, after = text[low:start], text[end:high]
    spare = CONTEXT - 32
    if low and (space := _SPACE.search(before, 0, spare)) is not None:
        before = before[space.end() :]
    if high < len(text) and (space := _SPACE.search(after, 32)) is not None:
        after = after[: space.start()]
    return before, after


def _slips(quotation: str, cut: Sequence[Piece], fit: _Fit, book: Folded) -> tuple[Slip, ...]:
    slips: list[Slip] = []
    plain = masked(quotation)
    for piece, hit in zip(cut, fit.hits, strict=True):
        quoted = [
            Word(word.folded, word.start + piece.start, word.end + piece.start)
            for word in words_of(piece.folded)
        ]
        if hit is None:
            start, end = quoted[0].start, quoted[-1].end
            slips.append(Slip(SlipKind.ADDED, quotation[start:end], "", start, end))
            continue
        found = words_of(book.folded, hit.start, hit.end)
        slips += Compared(quotation, plain, quoted, book.book.text, found).slips()
    assert all(one.end <= other.start for one, other in pairwise(slips))
    return tuple(slips)
