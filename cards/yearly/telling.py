"""A year, and a commitment in it, told in one line with the figures."""

from collections.abc import Mapping

from cards.commitments import Outcome, Pace
from cards.yearly.promises import Promise
from cards.yearly.review import Review


def figures(review: Review) -> str:
    """Return a whole year in one line."""
    counts = _counted(review.counts)
    said = [
        f"{_so_many(len(review.promises), 'commitment')} of {_so_many(len(review.books), 'book')}",
        f"check-ins: {counts}" if counts else "no check-ins",
    ]
    if review.done:
        said.append(f"{review.done} done")
    if review.released:
        said.append(f"{review.released} released")
    return "; ".join(said)


def standing(one: Promise) -> str:
    """Return how a commitment stands, what was said of it in the year, and how it stood before."""
    # Why it was released stands among the changes of the year.
    after = "released" if one.stand.pace is Pace.RELEASED else one.after
    after = after[:1].upper() + after[1:]
    said = f"{after}. Check-ins: {_counted(one.counts) or 'none'}."
    return said if one.before is None else f"{said} When the year began: {one.before}."


def _counted(counts: Mapping[Outcome, int]) -> str:
    return ", ".join(f"{count} {outcome}" for outcome, count in counts.items())


def _so_many(count: int, name: str) -> str:
    return f"{count} {name}{'' if count == 1 else 's'}"
