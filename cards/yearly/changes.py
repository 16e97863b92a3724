"""What was decided about a commitment in a year, each in one sentence."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from cards.commitments import Act, Commitment, Decision, Measure

_MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)


@dataclass(frozen=True, slots=True)
class Change:
    """One decision, told.

    Attributes:
        act: what was decided.
        day: the reader's day it holds from.
        told: a sentence: of a rewording with the former words, of a release with its reason.
    """

    act: Act
    day: date
    told: str


def changes_of(
    commitment: Commitment, decisions: Iterable[Decision], first: date, last: date
) -> tuple[Change, ...]:
    """Return what was decided from `first` to `last`, in order; taken back decisions left out."""
    standing = (each for each in decisions if each.withdrawn_on is None)
    text, measure, found = commitment.text, commitment.measure, []
    for each in sorted(standing, key=lambda each: (each.day, each.decided_at, each.id)):
        if first <= each.day <= last:
            found.append(Change(each.act, each.day, _told(each, text, measure)))
        if each.act is Act.REWORD:
            text = each.words
        measure = each.measure or measure
    return tuple(found)


def _told(decision: Decision, text: str, measure: Measure | None) -> str:
    """Return a decision as a sentence, with the words or the measure it found."""
    match decision.act:
        case Act.REWORD:
            return f"Reworded. Before: “{text}”"
        case Act.RELEASE:
            return f"Released: {decision.words}"
        case Act.HALVE:
            said = f"Halved{_less(measure, decision.measure)}"
        case Act.MOVE | Act.PAUSE:
            until = "" if decision.until is None else f" until {_day(decision.until)}"
            said = f"Moved on{until}" if decision.act is Act.MOVE else f"Paused{until}"
        case Act.CLOSE:
            said = f"Closed as {decision.outcome}"
        case _:
            said = _PLAIN[decision.act]
    return f"{said}. {decision.words}".rstrip()


_PLAIN = {
    Act.START: "Its beginning was corrected",
    Act.MEASURE: "Its measure was corrected",
    Act.RESUME: "Taken up again",
    Act.RENEW: "Renewed",
}


def _less(before: Measure | None, now: Measure | None) -> str:
    """Return what became less, in figures, or "" where that cannot be told in a few words."""
    if before is None or now is None:
        return ""
    if before.minutes is not None and now.minutes is not None and before.minutes != now.minutes:
        return f" from {before.minutes} to {now.minutes} minutes"
    if before.times != now.times:
        return f" from {before.times} to {now.times} times"
    return ", asked half as often" if now.every == 2 * before.every else ""


def _day(day: date) -> str:
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"
