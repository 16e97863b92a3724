"""Folding a history of answers against calling the `fsrs` package directly."""

from datetime import UTC, datetime, timedelta
from uuid import UUID

from fsrs import Card, Rating, Scheduler

from cards.answers import GRADES, Answer
from cards.schedule import Schedule
from tests.benchmarks.paired import Ratio, paired

LIMIT = 1.2
LENGTH = 20
"""Answers in the history: about ten years of one item at a target of 0.9."""

ITEM = UUID(int=7)
START = datetime(2026, 1, 5, tzinfo=UTC)
RATINGS = (Rating.Again, Rating.Hard, Rating.Good, Rating.Easy)


def measure(rounds: int = 400) -> Ratio:
    """Measure one fold of a history against the bare calls."""
    days = [START + timedelta(days=step * step) for step in range(LENGTH)]
    choices = [step * 7 % 4 for step in range(LENGTH)]
    answers = [
        Answer(UUID(int=100 + step), ITEM, GRADES[choice], at, at.date())
        for step, (at, choice) in enumerate(zip(days, choices, strict=True))
    ]
    model = Scheduler(learning_steps=(), relearning_steps=(), enable_fuzzing=False)

    def direct() -> Card:
        card = Card(card_id=0)
        for at, choice in zip(days, choices, strict=True):
            card, _ = model.review_card(card, RATINGS[choice], at)
        return card

    def fold() -> object:
        return Schedule().fold(ITEM, answers)

    return paired(fold, direct, rounds)
