"""What a book asks of its reader: how it is worded, its measure, and what came of it."""

from datetime import date

from cards.commitments.check_ins import MAX_NOTE, CheckIn, Outcome
from cards.commitments.measure import Measure, Period
from cards.commitments.wording import Wording

__all__ = ["MAX_NOTE", "CheckIn", "Measure", "Outcome", "Period", "Wording", "check"]


def check(text: str, on: date) -> Wording:
    """Check how a commitment is worded on a day; see `cards.commitments.checking`."""
    # The patterns of the check take a tenth of a second to compile: only who checks pays.
    from cards.commitments.checking import wording_of  # noqa: PLC0415 - as above

    return wording_of(text, on)
