"""How a commitment is worded: concrete, specific, measurable; the measure read from its words."""

from datetime import date

from cards.commitments.measure import Measure
from cards.wording.verdict import Wording

__all__ = ["Wording", "check", "measure_in"]


def check(text: str, on: date) -> Wording:
    """Check how a commitment is worded on a day; see `cards.wording.checking`."""
    # The patterns of the check take a tenth of a second to compile: only who checks pays.
    from cards.wording.checking import wording_of  # noqa: PLC0415 - as above

    return wording_of(text, on)


def measure_in(text: str, on: date) -> Measure | None:
    """Return what a commitment asks, read on a day, as `check` reads it; None without a measure."""
    from cards.wording.checking import measured  # noqa: PLC0415 - as above

    return measured(text, on)
