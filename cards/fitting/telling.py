"""What considering a reader's own weights came to, in one plain sentence."""

from datetime import date

from cards.commitments.day_words import day_in_words
from cards.fitting.records import Comparison
from cards.kinds.base import KindName


def too_few(kind: KindName | None, held_out: int, needed: int) -> str:
    """Say that there are too few later answers to judge by."""
    return (
        f"There are too few answers{_of(kind)} yet to fit weights of your own to: "
        f"{held_out:,} later ones to judge by, where {needed} are needed."
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
