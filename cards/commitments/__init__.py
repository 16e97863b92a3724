"""What a book asks of its reader: its measure, and what came of it."""

from cards.commitments.check_ins import MAX_NOTE, CheckIn, Outcome
from cards.commitments.measure import Measure, Period

__all__ = ["MAX_NOTE", "CheckIn", "Measure", "Outcome", "Period"]
