"""One commitment as a year of the reader's life has it."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from uuid import UUID

from cards.cautions import caution
from cards.commitments import (
    LIVE,
    Act,
    CheckIn,
    Commitment,
    Decision,
    Offer,
    Outcome,
    Pace,
    Stand,
    offer_for,
)
from cards.talk.recorded import recorded
from cards.yearly.changes import Change, changes_of


@dataclass(frozen=True, slots=True)
class Facts:
    """What is known of one commitment, for a year.

    Attributes:
        commitment: as it came into the library.
        digest_id, title, author: of its book.
        text: its words as the digest says them now.
        before: how it stood on the day before the year, or None when it came in later.
        after: how it stands on the last day looked at.
        decisions: about it, in any order.
        check_ins: on it, in any order.
    """

    commitment: Commitment
    digest_id: UUID
    title: str
    author: str | None
    text: str
    before: Stand | None
    after: Stand
    decisions: tuple[Decision, ...] = ()
    check_ins: tuple[CheckIn, ...] = ()


@dataclass(frozen=True, slots=True)
class Promise:
    """One commitment in a year.

    Attributes:
        id: of the part of the digest.
        digest_id, title: of its book.
        text: its words on the last day looked at.
        caution: the caution it carries, or None.
        made_on: the day it counts from.
        new: whether it came in during the year.
        counts: the check-ins about days of the year, by what came of it; none left at 0.
        deeds: how many deeds those report.
        before: what was recorded of it when the year began, or None.
        after: what is on the last day looked at.
        stand: the same, whole.
        changes: what was decided in the year, in order.
        renewing: what it is met with where the reader is asked what next, or None.
    """

    id: UUID
    digest_id: UUID
    title: str
    text: str
    caution: str | None
    made_on: date
    new: bool
    counts: Mapping[Outcome, int]
    deeds: int
    before: str | None
    after: str
    stand: Stand
    changes: tuple[Change, ...]
    renewing: Offer | None

    @property
    def live(self) -> bool:
        """Whether it is still asked on the last day looked at."""
        return self.stand.pace in LIVE


def promise_in(facts: Facts, first: date, last: date) -> Promise | None:
    """Return a commitment as the days from `first` to `last` have it.

    None when it was settled before them, and nothing was said or decided of it since, or when
    it came in after them.
    """
    if facts.commitment.entered_on > last:
        return None
    said = [
        each for each in facts.check_ins if first <= each.day <= last and each.withdrawn_on is None
    ]
    text = _words_on(facts, last)
    changes = changes_of(facts.commitment, facts.decisions, first, last)
    if facts.before is not None and _settled(facts.before) and not said and not changes:
        return None
    counts = Counter(each.outcome for each in said)
    return Promise(
        id=facts.commitment.id,
        digest_id=facts.digest_id,
        title=facts.title,
        text=text,
        caution=caution(text),
        made_on=facts.commitment.made_on,
        new=facts.before is None,
        counts={outcome: counts[outcome] for outcome in Outcome if counts[outcome]},
        deeds=sum(each.deeds for each in said),
        before=None if facts.before is None else recorded(facts.before),
        after=recorded(facts.after),
        stand=facts.after,
        changes=changes,
        renewing=_renewing(facts),
    )


def _words_on(facts: Facts, last: date) -> str:
    """Return the words as they were on a day: the digest's, unless they were reworded since."""
    reworded = any(
        each.act is Act.REWORD and each.day > last and each.withdrawn_on is None
        for each in facts.decisions
    )
    return facts.after.life.text if reworded else facts.text


def _settled(stand: Stand) -> bool:
    return stand.settled or stand.pace is Pace.RELEASED


def _renewing(facts: Facts) -> Offer | None:
    """Return what a commitment is met with, where it is over, stalled or never judged."""
    return None if facts.after.pace is Pace.SLIPPING else offer_for(facts.after, facts.text)
