"""Days, spans of days and numbers in words, as a sentence about a commitment says them."""

from collections.abc import Iterable, Sequence
from datetime import date, timedelta

from cards.commitments.cutting import Span

_MONTHS = (
    "January February March April May June July August September October November December"
).split()
_NUMBERS = "no one two three four five six seven eight nine ten eleven twelve".split()


def in_letters(number: int) -> str:
    """Return a number in letters up to twelve, in digits after that."""
    return _NUMBERS[number] if 0 <= number < len(_NUMBERS) else str(number)


def times_in_words(number: int) -> str:
    """Return how often: once, twice, three times, 20 times."""
    return {1: "once", 2: "twice"}.get(number) or f"{in_letters(number)} times"


def day_in_words(day: date) -> str:
    """Return a day as 9 March 2026."""
    return f"{_of_year(day)} {day.year}"


def span_in_words(span: Span, *, year: bool = True) -> str:
    """Return a span of days: 5 to 11 January 2026, January to March 2026, 2026.

    Without its year only where that is one year, and other words are left.
    """
    first, last = span.first, span.last
    if first.year != last.year:
        return f"{day_in_words(first)} to {day_in_words(last)}"
    if _whole(first, last) and (first.month, last.month) == (1, 12):
        return str(first.year)
    if first == last:
        said = _of_year(first)
    elif _whole(first, last):
        months = _MONTHS[first.month - 1], _MONTHS[last.month - 1]
        said = months[0] if first.month == last.month else " to ".join(months)
    elif first.month == last.month:
        said = f"{first.day} to {_of_year(last)}"
    else:
        said = f"{_of_year(first)} to {_of_year(last)}"
    return f"{said} {first.year}" if year else said


def spans_in_words(spans: Sequence[Span]) -> str:
    """Return spans as a list, a year they share said once: 2 March and 9 March 2026."""
    years = {day.year for span in spans for day in (span.first, span.last)}
    shared = len(years) == 1
    ends = len(spans) - 1
    return listed(
        span_in_words(span, year=not shared or place == ends) for place, span in enumerate(spans)
    )


def listed(words: Iterable[str]) -> str:
    """Return words as a list in a sentence: a, b and c."""
    *most, last = list(words) or [""]
    return f"{', '.join(most)} and {last}" if most else last


def _of_year(day: date) -> str:
    return f"{day.day} {_MONTHS[day.month - 1]}"


def _whole(first: date, last: date) -> bool:
    """Tell whether a span is of whole calendar months."""
    return first.day == 1 and (last == date.max or (last + timedelta(days=1)).day == 1)
