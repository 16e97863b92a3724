"""What considering a reader's own weights came to, in one plain sentence."""

from datetime import date

from cards.commitments.day_words import day_in_words
from cards.fitting.records import Comparison
from cards.kinds.base import KindName


def too_few(kind: KindName | None, later: tuple[int, int, int], needed: tuple[int, int]) -> str:
    """Say that there are too few later answers to judge by.

    Args:
        kind: whose answers; None for all.
        later: the answers held out, and of how many items and on how many days they are.
        needed: the fewest answers, and the fewest items and days.
    """
    answers, items, days = later
    fewest, apart = needed
    return (
        f"There are too few answers{_of(kind)} yet to fit weights of your own to: later ones to "
        f"judge by are {answers:,}, of {_counted(items, 'item')} on {_counted(days, 'day')}, where "
        f"{fewest} are needed, of {apart} items on {apart} days."
    )


def judged(kind: KindName | None, held_out: int, comparison: Comparison, *, adopted: bool) -> str:
    """Say how the weights compared, and which are in force now."""
    since = day_in_words(date.fromordinal(comparison.from_day))
    figures = (
        f"log loss {comparison.proposed:.4f} against {comparison.in_force:.4f}, "
        f"a difference of {comparison.gain:.4f} give or take {comparison.error:.4f}"
    )
    if adopted:
        return (
            f"Weights fitted to your earlier answers{_of(kind)} foresaw the {held_out:,} since "
            f"{since} better than those in force until now ({figures}): yours are in force now."
        )
    return (
        f"Weights fitted to your earlier answers{_of(kind)} did not foresee the {held_out:,} since "
        f"{since} better beyond doubt than those in force ({figures}): these stay."
    )


def _of(kind: KindName | None) -> str:
    return "" if kind is None else f" of the kind “{kind}”"


def _counted(number: int, noun: str) -> str:
    return f"{number:,} {noun}{'' if number == 1 else 's'}"
