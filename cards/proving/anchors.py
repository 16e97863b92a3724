"""Where the words of a quotation were found in the text of its book, and again in another."""

from dataclasses import dataclass

from rapidfuzz.distance import Indel

from cards.proving.folding import Folded, fold
from cards.proving.locate import CONTEXT, Found, context, cut_off, spot_of
from cards.proving.seeking import Hit, exact, likest, weight


@dataclass(frozen=True, slots=True)
class Anchor:
    """A quotation's place in one text of its book, and enough of it to find it in another.

    Attributes:
        exact: the book's own words, as they stand there.
        prefix, suffix: what stands right before and after them.
        start, end: offsets in characters of the text.
        fraction: how far into the book they stand, 0 to 1, of the text with its white
            space collapsed.
        chapter: number of the chapter, counted through the book, or None.
        page: the number of the page as printed, or None.
        source: sha256 of the file the text was read from, 64 hexadecimal digits.
    """

    exact: str
    prefix: str
    suffix: str
    start: int
    end: int
    fraction: float
    chapter: int | None
    page: str | None
    source: str


def anchor_of(found: Found, source: str) -> Anchor:
    """Return the anchor of a quotation that was found, in the file of this sha256."""
    chapter, pages = found.spot.chapter, found.spot.pages
    return Anchor(
        exact=found.exact,
        prefix=found.prefix,
        suffix=found.suffix,
        start=found.start,
        end=found.end,
        fraction=found.fraction,
        chapter=None if chapter is None else chapter.number,
        page=pages[0] if pages else None,
        source=source,
    )


def reanchor(anchor: Anchor, book: Folded, source: str) -> Anchor | None:
    """Return an anchor's place in another text of its book, or None where it is not there.

    Its own words are looked for, exactly and then by likeness; of several places the one
    whose surroundings are most like those the anchor remembers is taken, and of equal ones
    the one nearest in the book.

    Args:
        anchor: from the other text.
        book: this text, folded.
        source: sha256 of the file this text was read from.
    """
    words = fold(anchor.exact).text.strip()
    if not words:
        return None
    text = book.folded.text
    least = cut_off(weight(words))
    hits = exact(words, text) or [hit for hit in likest(words, text) if hit.score >= least]
    if not hits:
        return None
    best = max(hits, key=lambda hit: (*_surroundings(anchor, hit, text), -_far(anchor, hit, book)))
    start, end = book.folded.span(best.start, best.end)
    before, after = context(book.book.text, start, end)
    spot = spot_of(book, start, end)
    return Anchor(
        exact=book.book.text[start:end],
        prefix=before,
        suffix=after,
        start=start,
        end=end,
        fraction=spot.fraction,
        chapter=None if spot.chapter is None else spot.chapter.number,
        page=spot.pages[0] if spot.pages else None,
        source=source,
    )


def _surroundings(anchor: Anchor, hit: Hit, text: str) -> tuple[float, float]:
    """Return how like a place's surroundings are to the anchor's, then how like its words are."""
    before, after = fold(anchor.prefix).text.strip(), fold(anchor.suffix).text.strip()
    near = text[max(0, hit.start - CONTEXT) : hit.start], text[hit.end : hit.end + CONTEXT]
    alike = Indel.normalized_similarity(before, near[0].strip()[-len(before) :] if before else "")
    alike += Indel.normalized_similarity(after, near[1].strip()[: len(after)])
    return round(alike, 2), hit.score


def _far(anchor: Anchor, hit: Hit, book: Folded) -> float:
    return abs(book.fraction(book.folded.offset(hit.start)) - anchor.fraction)
