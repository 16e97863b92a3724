"""How the invented reader keeps what the books asked: reports, an illness, decisions."""

from dataclasses import dataclass, field
from datetime import date, timedelta
from random import Random
from uuid import UUID

from cards.commitments import Act, Measure, Outcome, Pace, Period, Pressing, pressing
from service.use_cases.bringing_up import brought_up
from service.use_cases.check_in import Report, check_in
from service.use_cases.commitments import HeldCommitment, all_commitments
from service.use_cases.decide import Ruling, decide
from service.use_cases.ports import Desk

ILL_BEFORE_END, ILL_FOR = 230, 61
"""How many days before the end the invented reader falls ill, and for how many."""
_FORSAKEN = 7
"""One in so many commitments is let lie after some weeks."""
_TOLD_A_DAY = {Period.DAY: 0.8, Period.WEEK: 0.22, Period.MONTH: 0.06, Period.YEAR: 0.01}
"""Chance that what wants a word is told of on a day, by the period of what it asks."""
_LET_LIE = timedelta(days=45)


@dataclass
class Promises:
    """How faithfully the invented reader keeps each commitment.

    Attributes:
        chance: the simulated reader's.
        faith: by commitment, the chance that what was asked was kept.
        lapsed: from which day nothing is told any more of those that are let lie.
    """

    chance: Random
    faith: dict[UUID, float] = field(default_factory=dict)
    lapsed: dict[UUID, date] = field(default_factory=dict)

    def make(self, commitment_id: UUID, day: date) -> None:
        """Take a commitment up."""
        self.faith[commitment_id] = self.chance.uniform(0.6, 0.97)
        if len(self.faith) % _FORSAKEN == 0:
            self.lapsed[commitment_id] = day + _LET_LIE

    def live_through(self, desk: Desk, day: date, end: date) -> None:
        """Report, fall ill, get well and decide, as the day has it."""
        ill_from = end - timedelta(days=ILL_BEFORE_END)
        well_on = ill_from + timedelta(days=ILL_FOR)
        if ill_from <= day < well_on:
            return
        if day == well_on:
            self._get_well(desk, ill_from, day)
        for held in self._wanting(desk):
            self._report(desk, held, day)
        if self.chance.random() < 0.2:
            self._decide(desk)

    def is_ill(self, day: date, end: date) -> bool:
        """Tell whether the invented reader is ill on a day."""
        ill_from = end - timedelta(days=ILL_BEFORE_END)
        return ill_from <= day < ill_from + timedelta(days=ILL_FOR)

    def _get_well(self, desk: Desk, ill_from: date, day: date) -> None:
        """Say afterwards that what ran was paused: who is ill pauses nothing."""
        for held in all_commitments(desk).by_pace.values():
            for each in held:
                first = max(ill_from, each.kept.commitment.made_on)
                last = day - timedelta(days=1)
                if each.stand is not None and each.stand.asked and first <= last:
                    paused = Ruling(
                        desk.new_id(), each.id, Act.PAUSE, first, until=last, words="Ill."
                    )
                    decide(desk, paused)

    def _wanting(self, desk: Desk) -> list[HeldCommitment]:
        return [
            each
            for those in all_commitments(desk).by_pace.values()
            for each in those
            if each.stand is not None and pressing(each.stand) > Pressing.NOT_AT_ALL
        ]

    def _report(self, desk: Desk, held: HeldCommitment, day: date) -> None:
        lapsed = self.lapsed.get(held.id)
        stand = held.stand
        if stand is None or (lapsed is not None and day >= lapsed):
            return
        if self.chance.random() > _told_a_day(stand.life.term.measure):
            return
        drawn, faith = self.chance.random(), self.faith.get(held.id, 0.8)
        outcome = Outcome.KEPT if drawn < faith else Outcome.PARTLY
        if drawn > (1 + faith) / 2:
            outcome = Outcome.MISSED
        check_in(desk, Report(desk.new_id(), held.id, outcome))

    def _decide(self, desk: Desk) -> None:
        """Settle what a sitting brings up, as often as not."""
        held = brought_up(desk)
        if held is None or held.stand is None or self.chance.random() < 0.5:
            return
        if held.stand.pace is Pace.UNJUDGED:
            decide(desk, Ruling(desk.new_id(), held.id, Act.CLOSE, outcome=Outcome.PARTLY))
        elif held.stand.pace in {Pace.DONE, Pace.ENDED}:
            again = self.chance.random() < 0.3
            ruling = Ruling(desk.new_id(), held.id, Act.RENEW)
            done = Ruling(desk.new_id(), held.id, Act.CLOSE, outcome=Outcome.KEPT)
            decide(desk, ruling if again and not held.stand.life.term.once else done)


def _told_a_day(measure: Measure | None) -> float:
    return 0.08 if measure is None else _TOLD_A_DAY.get(measure.period, 0.05)
