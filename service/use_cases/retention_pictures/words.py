"""How figures of retention are said in sentences and named in pictures."""

from collections.abc import Iterable
from datetime import date
from uuid import UUID

from cards.kinds.base import KindName
from cards.retention.shares import Share
from service.use_cases.picture_records import Share as DrawnShare
from service.use_cases.retaining import Retained

KINDS = {
    KindName.THEME: "Themes",
    KindName.PLACE: "Places of quotations",
    KindName.RESTATE: "Commitments",
    KindName.NEXT: "What comes next",
    KindName.ORDER: "Orders of points",
    KindName.COMPLETE: "Words of quotations",
    KindName.SOURCE: "Sources of quotations",
    KindName.ACROSS: "Books that speak to them",
}
"""What is asked, by the kinds of items."""
_LONGEST = 80
"""Letters of a name in a picture."""
_MONTHS = (
    "January February March April May June July August September October November December"
).split()


def counted(number: int, one: str, several: str | None = None) -> str:
    """Return a number with its noun: 1 answer, 1,204 answers."""
    return f"{number:,} {one if number == 1 else several or one + 's'}"


def percent(share: float) -> str:
    """Return a share of 1 in whole hundredths; all and nothing only where they are exact."""
    hundredths = round(100 * share)
    if hundredths == 100 and share < 1:
        return "over 99%"
    if hundredths == 0 and share > 0:
        return "under 1%"
    return f"{hundredths}%"


def between(share: Share) -> str:
    """Return the bounds of a share: between 88% and 92%."""
    return f"between {percent(share.low)} and {percent(share.high)}"


def came_back(share: Share) -> str:
    """Return what came back of what was asked: 1,083 of 1,204 came back, 90%."""
    if share.share is None:
        return "nothing was asked"
    told = f"{share.recalled:,} of {share.asked:,} came back"
    return f"{told}, {percent(share.share)}"


def title_of(retained: Retained, book: UUID) -> str:
    """Return a book's title, cut where it is too long for a picture."""
    title = " ".join(retained.books[book].title.split()) if book in retained.books else ""
    return title if len(title) <= _LONGEST else title[: _LONGEST - 1].rstrip() + "…"


def listed(words: Iterable[str]) -> str:
    """Return words as a list in a sentence: a, b and c."""
    *most, last = list(words) or [""]
    return f"{', '.join(most)} and {last}" if most else last


def minutes_in_words(minutes: float) -> str:
    """Return minutes as one says them: 1.4 minutes, 20 seconds, no time."""
    seconds = round(60 * minutes)
    if seconds >= 60:
        return f"{minutes:.1f} minutes"
    return counted(seconds, "second") if seconds else "no time"


def month_in_words(month: str) -> str:
    """Return `2026-03` as March 2026."""
    year, number = month.split("-")
    return f"{_MONTHS[int(number) - 1]} {int(year)}"


def day_of(month: str) -> date:
    """Return the first day of `2026-03`."""
    return date.fromisoformat(f"{month}-01")


def drawn(label: str, share: Share) -> DrawnShare:
    """Return a share as it is drawn; never of nothing."""
    low, high = share.bounds
    return DrawnShare(label, share.recalled / share.asked, low, high, share.asked)
