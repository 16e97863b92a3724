"""What a book asks of its reader: its measure, the facts about it, and its pace."""

from cards.commitments.check_ins import MAX_NOTE, CheckIn, Outcome
from cards.commitments.cutting import Span
from cards.commitments.decisions import Act, Decision
from cards.commitments.measure import Measure, Period
from cards.commitments.offers import Offer, Question, halved, offer_for
from cards.commitments.owing import Pressing, pressing
from cards.commitments.pace import pace_of
from cards.commitments.periods import Rhythm
from cards.commitments.reach import needed_from
from cards.commitments.resting import rests_from
from cards.commitments.stand import LIVE, Pace, Rule, Stand
from cards.commitments.telling import measure_in_words, progress, told
from cards.commitments.terms import Commitment, Life, Term, life_of

__all__ = [
    "LIVE",
    "MAX_NOTE",
    "Act",
    "CheckIn",
    "Commitment",
    "Decision",
    "Life",
    "Measure",
    "Offer",
    "Outcome",
    "Pace",
    "Period",
    "Pressing",
    "Question",
    "Rhythm",
    "Rule",
    "Span",
    "Stand",
    "Term",
    "halved",
    "life_of",
    "measure_in_words",
    "needed_from",
    "offer_for",
    "pace_of",
    "pressing",
    "progress",
    "rests_from",
    "told",
]
