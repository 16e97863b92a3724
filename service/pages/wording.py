"""How days, numbers, kinds and marked texts are put on a page: the templates' filters."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from cards.cautions import caution
from cards.commitments import Outcome
from cards.commitments.deciding_words import decision_in_words
from cards.commitments.telling import measure_in_words, progress, told
from cards.items import Standing
from cards.kinds.base import KindName, Span
from service.use_cases.records import Cause
from service.use_cases.telling import told_once

_MONTHS = (
    "January February March April May June July August September October November December"
).split()
_NUMBERS = "no one two three four five six seven eight nine ten eleven twelve".split()
_KINDS = {
    KindName.THEME: "the theme",
    KindName.PLACE: "a quotation’s place",
    KindName.RESTATE: "a commitment",
    KindName.NEXT: "what comes next",
    KindName.ORDER: "the order of the points",
    KindName.COMPLETE: "a quotation’s words",
    KindName.SOURCE: "a quotation’s source",
    KindName.ACROSS: "a book that speaks to it",
}

_CAUSES = {
    Cause.ADDED: "added",
    Cause.CHANGED: "corrected by its file",
    Cause.MENDED: "mended",
    Cause.PLACED: "told where quotations stand",
    Cause.PROVED: "mended from the book",
    Cause.OVERRULED: "kept to your word on an edit",
    Cause.RESTORED: "brought back",
    Cause.CARED: "given another care",
    Cause.REMOVED: "taken out",
}


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch of a text: found in the other text (True), missed (False), or neither (None)."""

    text: str
    hit: bool | None = None


def day_in_words(day: date) -> str:
    """Return a day as 9 March 2026, its spaces such that no line breaks at them."""
    return f"{day.day}\u00a0{_MONTHS[day.month - 1]}\u00a0{day.year}"


def distance(day: date, today: date) -> str:
    """Return how far a day is from today: today, tomorrow, in 105 days, 3 days ago."""
    days = (day - today).days
    near = {-1: "yesterday", 0: "today", 1: "tomorrow"}
    if days in near:
        return near[days]
    return f"in {days} days" if days > 0 else f"{-days} days ago"


def counted(number: int, one: str, several: str | None = None) -> str:
    """Return a number with its noun: one point, seven points, 13 points, no points."""
    noun = one if number == 1 else several or one + "s"
    return f"{_NUMBERS[number] if number < len(_NUMBERS) else number} {noun}"


def listed(words: Iterable[str]) -> str:
    """Return words as a list in a sentence: a, b and c."""
    *most, last = list(words) or [""]
    return f"{', '.join(most)} and {last}" if most else last


def capital(words: str) -> str:
    """Return words with their first letter as at the beginning of a sentence."""
    return words[:1].upper() + words[1:]


def continued(sentence: str) -> str:
    """Return a sentence as it reads after a colon: its first letter small, if it is one word's."""
    return sentence[:1].lower() + sentence[1:] if sentence[1:2].islower() else sentence


def minutes_in_words(seconds: float) -> str:
    """Return seconds as whole minutes, one at the least: a minute, seven minutes, 40 minutes."""
    minutes = max(1, round(seconds / 60))
    return "a minute" if minutes == 1 else counted(minutes, "minute")


def minutes_in_figures(seconds: float) -> str:
    """Return seconds as whole minutes, quick to read: a minute, 7 minutes."""
    minutes = max(1, round(seconds / 60))
    return "a minute" if minutes == 1 else f"{minutes} minutes"


def kind_in_words(kind: KindName) -> str:
    """Return what an item of a kind asks for."""
    return _KINDS[kind]


def standings(counts: Mapping[Standing, int]) -> str:
    """Return how many items stand how: 2 held, 1 faded; "" without items."""
    return ", ".join(f"{counts[each]} {each}" for each in Standing if counts.get(each))


def tally(counts: Mapping[Outcome, int]) -> str:
    """Return how often a commitment was kept, partly kept and missed; "" without check-ins."""
    return listed(f"{each} {_times(counts[each])}" for each in Outcome if counts.get(each))


def _times(number: int) -> str:
    return {1: "once", 2: "twice"}.get(number, f"{number} times")


def stretches(text: str, spans: Sequence[Span]) -> list[Stretch]:
    """Cut a text at its spans; the pieces together are the whole text."""
    pieces: list[Stretch] = []
    end = 0
    for span in sorted(spans, key=lambda each: (each.start, each.end)):
        start, stop = max(end, span.start), min(len(text), span.end)
        if start >= stop:
            continue
        if start > end:
            pieces.append(Stretch(text[end:start]))
        pieces.append(Stretch(text[start:stop], span.hit))
        end = stop
    if end < len(text):
        pieces.append(Stretch(text[end:]))
    return _joined(pieces, text)


def _joined(pieces: Sequence[Stretch], text: str) -> list[Stretch]:
    """Join marked words that only spaces part, so that a phrase is marked as one."""
    joined: list[Stretch] = []
    for piece in pieces:
        if (
            len(joined) > 1
            and piece.hit is not None
            and joined[-1].hit is None
            and not joined[-1].text.strip()
            and "\n" not in joined[-1].text
            and joined[-2].hit is piece.hit
        ):
            gap, before = joined.pop(), joined.pop()
            joined.append(Stretch(before.text + gap.text + piece.text, piece.hit))
        else:
            joined.append(piece)
    assert "".join(piece.text for piece in joined) == text
    return joined


def instant_in_words(instant: datetime) -> str:
    """Return an instant as 9 March 2026, 19:04 UTC."""
    return f"{day_in_words(instant.date())}, {instant:%H:%M} UTC"


def part_in_words(part: str) -> str:
    """Return what a notice is about as it is said: quotation 3, for `quotations 3`."""
    name, _, number = part.partition(" ")
    return f"{name.removesuffix('s')} {number}" if number else name


def cause_in_words(cause: Cause) -> str:
    """Return what a version of a digest came of, as it reads after “it was”."""
    return _CAUSES[cause]


def percent(share: float) -> str:
    """Return a share of 1 as a whole number of hundredths: 87%."""
    return f"{share:.0%}"


FILTERS: dict[str, Callable[..., Any]] = {
    "day": day_in_words,
    "distance": distance,
    "counted": counted,
    "listed": listed,
    "capital": capital,
    "continued": continued,
    "kind": kind_in_words,
    "minutes": minutes_in_words,
    "figure_minutes": minutes_in_figures,
    "standings": standings,
    "tally": tally,
    "caution": caution,
    "percent": percent,
    "told_once": lambda notices: told_once(notices)[0],
    "instant": instant_in_words,
    "part": part_in_words,
    "cause": cause_in_words,
    "told": told,
    "progress": progress,
    "measure": measure_in_words,
    "decided": decision_in_words,
}
"""The filters the templates use, by name."""
