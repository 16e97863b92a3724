"""Places in the text of a book: chapters, pages, and what a locator says of them."""

import re
from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from cards.locators import Place, Unit, place_of, roman, steps_of
from cards.proving.text import BookText, Chapter

NEAR = 0.02
"""Share of the book a locator in per cent may be out by (design.md: placing, `vivid`)."""
_LABEL = r"(?:\d{1,5}|[ivxlcdm]{1,9})"
_PAGES = re.compile(
    r"(?<!\w)(?:pp?|pgs?|pages?|s|seiten?|p[áa]gs?|p[áa]ginas?|pagine|blz)\.?\s*"
    rf"(?P<first>{_LABEL})(?:\s?[-–—]\s?(?P<last>{_LABEL}))?(?!\w)",
    re.IGNORECASE,
)
_LEADING = re.compile(r"\s*(\d{1,4}(?=[.:)\s]|$)|[IVXLCDM]{1,9}(?=\s*[.:)—–]|\s*$))")
"""The number a heading begins with: `190 A Four-Leaved Clover`, `XIII.`; `I` may be a word."""
_OUTER = frozenset({Unit.VOLUME, Unit.BOOK, Unit.PART, Unit.ACT})
_COUNTED = frozenset({Unit.CHAPTER, Unit.LETTER, Unit.CANTO, Unit.ESSAY, Unit.SCENE, Unit.LECTURE})


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a stretch of a book stands.

    Attributes:
        chapter: the one it begins in, or None.
        pages: labels of the pages it stands on, in order; empty where none are known.
        fraction: how far into the book it begins, 0 to 1.
    """

    chapter: Chapter | None
    pages: tuple[str, ...]
    fraction: float


def chapter_at(book: BookText, offset: int) -> Chapter | None:
    """Return the chapter that holds an offset, or None."""
    index = bisect_right(book.chapters, offset, key=lambda chapter: chapter.start) - 1
    if index < 0 or offset >= book.chapters[index].end:
        return None
    return book.chapters[index]


def pages_at(book: BookText, start: int, end: int) -> tuple[str, ...]:
    """Return the labels of the pages a stretch stands on, in order; empty before the first."""
    first = bisect_right(book.pages, start, key=lambda page: page.start) - 1
    last = bisect_right(book.pages, max(start, end - 1), key=lambda page: page.start)
    return tuple(page.label for page in book.pages[max(0, first) : last])


def page_range(locator: str) -> tuple[str, str] | None:
    """Return the first and last page a locator names, as written, or None: `pp. 34-5`, `p. ix`."""
    found = _PAGES.search(locator)
    if found is None:
        return None
    first, last = found["first"].lower(), (found["last"] or found["first"]).lower()
    if first.isdecimal() and last.isdecimal() and len(last) < len(first):
        last = first[: len(first) - len(last)] + last
    return first, last


def numbers_of(chapter: Chapter) -> frozenset[int]:
    """Return the numbers a chapter goes by: through the book, and as its heading has it."""
    printed = {place.number for place in _steps(chapter) if place.unit in _COUNTED}
    leading = _LEADING.match(chapter.title)
    if leading is not None and (number := _page_number(leading[1].lower())) is not None:
        printed.add(number)
    return frozenset({chapter.number} | printed)


def suggested_locator(spot: Spot) -> str | None:
    """Return a locator for a spot, by page or else by chapter, or None where neither is known."""
    if spot.pages:
        first, last = spot.pages[0], spot.pages[-1]
        return f"p. {first}" if first == last else f"pp. {first}-{last}"
    return None if spot.chapter is None else f"ch. {spot.chapter.number}"


def says(locator: str | None, spot: Spot, book: BookText) -> str | None:
    """Return a sentence where a locator contradicts the text, or None where it does not.

    What the text cannot tell (a page, where the edition gives none) contradicts nothing.
    """
    if locator is None:
        return None
    wrong = next(_contradictions(locator, spot, book), None)
    if wrong is None:
        return None
    said, found = wrong
    return f"The locator says {said}, but in the book's text these words stand {found}."


def confirms(locator: str | None, spot: Spot, book: BookText) -> bool:
    """Tell whether a locator names a page or chapter this text has, and the spot is there."""
    if locator is None or says(locator, spot, book) is not None:
        return False
    pages = page_range(locator)
    if pages is not None and spot.pages and _sort(pages[0]) == _sort(spot.pages[0]):
        return True
    counted = any(step.unit in _COUNTED for step in steps_of(locator))
    return counted and spot.chapter is not None and len(book.chapters) > 1


def _contradictions(locator: str, spot: Spot, book: BookText) -> Iterator[tuple[str, str]]:
    pages = page_range(locator)
    if pages is not None and spot.pages and _contradicts(pages, spot.pages, book):
        first, last = pages
        yield (f"p. {first}" if first == last else f"pp. {first}-{last}"), _on(spot.pages)
    steps = steps_of(locator)
    chapter = spot.chapter
    if chapter is not None:
        printed = {place.unit: place.number for place in _steps(chapter)}
        for step in steps:
            differs = (
                step.unit in _OUTER and printed.get(step.unit, step.number) != step.number
            ) or (step.unit in _COUNTED and not _is_chapter(step, steps, chapter))
            if differs:
                yield f"{step.unit} {step.number}", _in(chapter)
    for step in steps:
        if step.unit is Unit.PERCENT and abs(step.number / 100 - spot.fraction) > NEAR:
            yield f"{step.number}%", f"at {spot.fraction:.0%} of it"


def _contradicts(said: tuple[str, str], found: tuple[str, ...], book: BookText) -> bool:
    """Tell whether pages named share none with those found; only labels of one sort compare."""
    numbers = [_page_number(label) for label in said]
    others = [_page_number(found[0]), _page_number(found[-1])]
    if None not in numbers and None not in others and _sort(said[0]) == _sort(found[0]):
        first, last = (number or 0 for number in numbers)
        begin, end = (number or 0 for number in others)
        return last < begin or end < first
    return any(page.label.lower() == said[0] for page in book.pages)


def _is_chapter(step: Place, steps: Sequence[Place], chapter: Chapter) -> bool:
    printed = [place.number for place in _steps(chapter) if place.unit is step.unit]
    if step.unit is Unit.CHAPTER and not (printed and _within(steps, chapter)):
        return step.number in numbers_of(chapter)
    return not printed or step.number in printed


def _within(steps: Sequence[Place], chapter: Chapter) -> bool:
    """Tell whether steps count within a volume, book or part that the chapter's heading names."""
    named = {place.unit for place in _steps(chapter)} & _OUTER
    return any(step.unit in named for step in steps)


def _steps(chapter: Chapter) -> tuple[Place, ...]:
    """Return what the heading of a chapter counts: `VOLUME III, CHAPTER XIII. A Walk`."""
    units = (place_of(chapter.title, unit) for unit in (*sorted(_OUTER), *sorted(_COUNTED)))
    return tuple(place for place in units if place is not None)


def _page_number(label: str) -> int | None:
    return int(label) if label.isdecimal() else roman(label)


def _sort(label: str) -> bool:
    return label.isdecimal()


def _on(pages: Sequence[str]) -> str:
    return f"on p. {pages[0]}" if len(pages) == 1 else f"on pp. {pages[0]}-{pages[-1]}"


def _in(chapter: Chapter) -> str:
    title = f" (“{chapter.title}”)" if chapter.title else ""
    return f"in chapter {chapter.number}{title}"


def point_after(offset: int, locators: Sequence[str | None], book: BookText) -> int | None:
    """Return the number of the point that words at an offset stand after, or None.

    A point stands where its own locator's page or chapter stands in this text; never
    where nothing says so. A point on the page of the words counts as before them, as it
    does without the text; one that is only known to stand in the same chapter settles
    nothing. Words before the first point stand after 0.

    Args:
        offset: of the words in the text.
        locators: of the points, in the order of the digest; None where not given.
        book: the text.
    """
    stretches = [_stretch(locator, book) for locator in locators]
    known = [stretch for stretch in stretches if stretch is not None]
    if not known or any(one > other for one, other in pairwise(known)):
        return None
    before = [
        number
        for number, stretch in enumerate(stretches, 1)
        if stretch is not None and stretch[1] <= offset
    ]
    last = max(before, default=0)
    following = stretches[last : last + 1]
    if not following:
        return last
    ahead = following[0]
    return last if ahead is not None and offset < ahead[0] else None


def _stretch(locator: str | None, book: BookText) -> tuple[int, int] | None:
    """Return between which offsets a point stands: from its first possible place to its last."""
    if locator is None:
        return None
    pages = page_range(locator)
    if pages is not None:
        starts = [page.start for page in book.pages if page.label.lower() == pages[0]]
        if len(starts) == 1:
            return starts[0], starts[0]
    steps = steps_of(locator)
    fitting = [chapter for chapter in book.chapters if steps and _fits(steps, chapter)]
    if len(fitting) != 1:
        return None
    return fitting[0].start, fitting[0].end


def _fits(steps: Sequence[Place], chapter: Chapter) -> bool:
    """Tell whether a chapter is the one some steps lead to, all of them counted by its heading.

    A bare chapter number is the one counted through the book, unless headings count from
    one again, when it may be either and so leads to several.
    """
    printed = {(place.unit, place.number) for place in _steps(chapter)}
    for step in steps:
        through = step.unit is Unit.CHAPTER and not _within(steps, chapter)
        if through and step.number == chapter.number:
            continue
        if (step.unit, step.number) not in printed:
            return False
    return any(step.unit in _COUNTED for step in steps)
