"""`place`: put a quotation where it belongs in the plot.

By gap of the plot where its point is known; else by its page, else its chapter, else
in the order of the quotations. A place is never invented: a quotation of which nothing
says where it stands, and too few others to stand among, makes no item.
"""

from collections.abc import Iterator
from uuid import UUID

from cards.answers import Grade
from cards.kinds.base import (
    Answered,
    Asked,
    Attempt,
    Cue,
    KindName,
    Landmark,
    Mark,
    Occasion,
    order_of,
    place_of,
)
from cards.locators import chapter_of, steps_of
from cards.parts import KeptDigest, Part, PartKind

# Errors as shares of the book: reference, part 4, "place a quotation, by page". By gap:
# design, "Positions are never invented".
_VIVID, _CLEAR, _HAZY = 0.02, 0.05, 0.15

FEWEST_OTHERS = 2
"""Other quotations needed to ask for the order: among fewer, chance alone is right too often."""


class _Place:
    name = KindName.PLACE

    def sources(self, digest: KeptDigest) -> Iterator[Part]:
        """Yield the quotations of which something says where they stand."""
        for part in digest.held(PartKind.QUOTATION):
            if _ways(digest, part):
                yield part

    def cue(self, occasion: Occasion) -> Cue:
        """Show the quotation, ask for its place."""
        digest, part = occasion.digest, occasion.part
        ways = _ways(digest, part)
        return Cue(
            heading="Place this in the plot",
            words=f"“{part.text}”",
            question=_question(ways, by_points=_by_points(digest, part)),
            asked=ways,
            landmarks=_landmarks(digest, part) if Asked.GAP in ways else (),
            pages=digest.pages if Asked.PAGE in ways else None,
        )

    def answer(self, occasion: Occasion) -> Answered:
        """Return where it stands, in words and as a gap, a page or a chapter."""
        digest, part = occasion.digest, occasion.part
        gap = _gap(digest, part)
        return Answered(
            words=_where(digest, part, gap),
            gap=gap,
            page=part.page,
            chapter=chapter_of(part.locator),
            locator=part.locator,
        )

    def mark(self, occasion: Occasion, attempt: Attempt) -> Mark:
        """Suggest a grade by how far off the place is."""
        digest, part = occasion.digest, occasion.part
        if attempt.page is not None and part.page is not None:
            return _by_page(digest, part, attempt)
        chapter = chapter_of(part.locator)
        if attempt.chapter is not None and chapter is not None:
            return _by_distance(abs(attempt.chapter - chapter), "chapter")
        gap = _gap(digest, part)
        if attempt.gap is not None and gap is not None:
            return _by_distance(abs(attempt.gap - gap), "place")
        return Mark(Grade.BLANK, "No place was given.")

    def asks(self, occasion: Occasion) -> frozenset[UUID]:
        """Nothing in words: the quotation is shown, its place is asked."""
        return frozenset({place_of(occasion.part)})

    def shows(self, occasion: Occasion) -> frozenset[UUID]:
        """The quotation, its place, and everything its gaps lie between, in its order."""
        digest, part = occasion.digest, occasion.part
        seen = {part.id, place_of(part), *(each.id for each in _among(digest, part))}
        return frozenset(seen | {order_of(digest)} if _by_points(digest, part) else seen)

    def secret(self, occasion: Occasion) -> str:  # noqa: ARG002
        """None: a place is no words."""
        return ""


def _question(ways: tuple[Asked, ...], *, by_points: bool) -> str:
    match ways:
        case (Asked.PAGE, *_):
            return "On which page does it stand?"
        case (Asked.CHAPTER, *_):
            return "In which chapter does it stand?"
        case (Asked.GAP, Asked.PAGE):
            return "Where does it stand? Choose the place on the line, or give the page if you can."
        case _ if by_points:
            return "Where does it stand? Choose the place on the line."
        case _:
            return "After which of your other quotations does it stand in the book?"


def _by_points(digest: KeptDigest, part: Part) -> bool:
    return part.after is not None and bool(digest.held(PartKind.POINT))


def _ways(digest: KeptDigest, part: Part) -> tuple[Asked, ...]:
    page = (Asked.PAGE,) if part.page is not None else ()
    if _by_points(digest, part):
        return (Asked.GAP, *page)
    if page:
        return page
    if chapter_of(part.locator) is not None:
        return (Asked.CHAPTER,)
    others = len(digest.held(PartKind.QUOTATION)) - 1
    return (Asked.GAP,) if others >= FEWEST_OTHERS else ()


def _among(digest: KeptDigest, part: Part) -> tuple[Part, ...]:
    """Return what its gaps lie between: the points, or the other quotations."""
    ways = _ways(digest, part)
    if Asked.GAP not in ways:
        return ()
    if _by_points(digest, part):
        return digest.held(PartKind.POINT)
    return tuple(each for each in digest.held(PartKind.QUOTATION) if each.id != part.id)


def _landmarks(digest: KeptDigest, part: Part) -> tuple[Landmark, ...]:
    return tuple(
        Landmark(number, each.text, each.page)
        for number, each in enumerate(_among(digest, part), 1)
    )


def _gap(digest: KeptDigest, part: Part) -> int | None:
    if Asked.GAP not in _ways(digest, part):
        return None
    return part.after if _by_points(digest, part) else part.number - 1


def _where(digest: KeptDigest, part: Part, gap: int | None) -> str:
    among = _among(digest, part)
    located = f"{part.locator}" if part.locator else ""
    if gap is None:
        return located
    what = "point" if _by_points(digest, part) else "quotation"
    if gap == 0:
        where = f"before the first {what}"
    elif gap >= len(among):
        where = f"after the last {what}: {among[-1].text}"
    else:
        where = f"after {what} {gap}: {among[gap - 1].text}"
    return f"{located}, {where}" if located else where[0].upper() + where[1:]


def _scale(digest: KeptDigest, page: int) -> tuple[int, str]:
    if digest.pages is not None:
        return max(digest.pages, page), "of the book"
    known = [part.page for part in digest.parts if part.page is not None and not part.retired]
    return max([page, *known]), "of the pages your digest names"


def _by_page(digest: KeptDigest, part: Part, attempt: Attempt) -> Mark:
    page, guess = part.page or 0, attempt.page or 0
    scale, of_what = _scale(digest, page)
    off = abs(guess - page)
    # Ten times the book is as far off as any number may be; beyond lies what no float holds.
    share = min(off, 10 * scale) / scale
    if off == 0:
        reason = f"Page {page}, exactly."
    else:
        reason = f"{off} {'page' if off == 1 else 'pages'} off, {share:.0%} {of_what}."
    if share <= _VIVID:
        return Mark(Grade.CLEAR if attempt.landmarks_seen else Grade.VIVID, reason)
    if share <= _CLEAR:
        return Mark(Grade.CLEAR, reason)
    if _same_chapter(digest, part, attempt):
        return Mark(Grade.CLEAR, f"The right chapter; {reason}")
    return Mark(Grade.HAZY if share <= _HAZY else Grade.BLANK, reason)


def _same_chapter(digest: KeptDigest, part: Part, attempt: Attempt) -> bool:
    """Tell whether a guess is known to lie in the quotation's chapter.

    It is when the reader names the chapter, or when the page lies between two of the same
    chapter that the digest knows, none of another between them: a chapter has no gaps, but
    how far it reaches beyond them nothing says.
    """
    chapter, guess = steps_of(part.locator), attempt.page
    if chapter_of(part.locator) is None or guess is None:
        return False
    if attempt.chapter == chapter_of(part.locator):
        return True
    known = [
        (each.page, steps_of(each.locator))
        for each in digest.parts
        if not each.retired and each.page is not None and steps_of(each.locator)
    ]
    pages = [page for page, steps in known if steps == chapter]
    between = {steps for page, steps in known if min(pages) <= page <= max(pages)}
    return between == {chapter} and min(pages) <= guess <= max(pages)


def _by_distance(distance: int, what: str) -> Mark:
    if distance == 0:
        return Mark(Grade.CLEAR, f"The right {what}.")
    if distance == 1:
        return Mark(Grade.HAZY, f"One {what} off.")
    return Mark(Grade.BLANK, f"{distance} {what}s off.")


PLACE = _Place()
"""The kind `place`."""
