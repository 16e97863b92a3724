"""A reader decides about a commitment: starts, corrects, pauses, renews, rewords, releases it."""

from dataclasses import dataclass, replace
from datetime import date, timedelta
from uuid import UUID

from cards.commitments import (
    Act,
    Decision,
    Measure,
    Outcome,
    Pace,
    Stand,
    halved,
    life_of,
)
from cards.commitments.measure import in_week_order
from cards.commitments.measures_held import MOST_YEARS, held
from cards.commitments.offers import touches_health
from cards.digest import hold_text
from cards.errors import CommitmentMissing, DecisionMissing, Invalid
from cards.wording import measure_in
from service.use_cases.commitment_records import KeptCommitment
from service.use_cases.facts import said_otherwise, take_back
from service.use_cases.keeping import opened_to_change, save
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import Cause
from service.use_cases.standing import keep_resting, stands_on

AHEAD = timedelta(days=366)
"""How far ahead a pause can be laid: a year."""
_MEASURED = frozenset({Act.MEASURE, Act.RENEW, Act.HALVE, Act.REWORD})


@dataclass(frozen=True, slots=True)
class Ruling:
    """A decision as it arrives; see `cards.commitments.Decision` for what each act needs.

    Attributes:
        id: made by whoever recorded it.
        day: the reader's day it holds from, or None for today.
        measure: None for what follows: half for `halve`, what the new words say for `reword`,
            what it was for `renew`.
    """

    id: UUID
    commitment_id: UUID
    act: Act
    day: date | None = None
    measure: Measure | None = None
    until: date | None = None
    outcome: Outcome | None = None
    words: str = ""


def decide(desk: Desk, ruling: Ruling) -> Decision:
    """Append a decision to a commitment's facts; the very same again changes nothing.

    A new wording is written into the digest, which keeps the former one among its versions.

    Raises:
        CommitmentMissing: no digest of this reader's library holds such a commitment.
        Invalid: what the act needs is missing, it cannot be taken as things stand, its words
            are no text, or its day has not come yet.
        InvalidDigest: the new wording is none a digest can hold.
        Conflict: another decision already bears its id.
    """
    now = desk.now()
    with desk.store.writing() as work:
        today = work.readers.lock(desk.reader).days.of(now)
        commitment = work.commitments.get(desk.reader, ruling.commitment_id)
        if commitment is None or commitment.retired:
            raise CommitmentMissing(ruling.commitment_id)
        kept = work.decisions.get(desk.reader, ruling.id)
        if kept is not None:
            return _the_same(kept, ruling)
        # Where the reader moved to a zone in which it is still the day before, it stands as then.
        known_on = max(today, commitment.commitment.entered_on)
        stand = stands_on(work, desk.reader, [commitment], known_on)[ruling.commitment_id]
        hold_text(ruling.words, "words")
        day = ruling.day or today
        _hold_day(ruling.act, commitment, day, today)
        _hold_act(ruling, stand, day, commitment.text)
        decision = Decision(
            id=ruling.id,
            commitment_id=ruling.commitment_id,
            act=ruling.act,
            day=day,
            decided_at=now,
            decided_on=today,
            measure=_measure(ruling, stand, day),
            until=ruling.until,
            outcome=ruling.outcome,
            words=ruling.words.strip(),
        )
        work.decisions.add(desk.reader, decision)
        if ruling.act is Act.REWORD:
            _write(desk, work, commitment, decision.words)
        keep_resting(desk, work, [ruling.commitment_id])
        work.commit()
    return decision


def withdraw_decision(desk: Desk, decision_id: UUID) -> Decision:
    """Take a decision back: it stays on record, and holds no longer. Twice changes nothing.

    Of a new wording the digest says the former one again.

    Raises:
        DecisionMissing: this reader has taken no such decision.
    """
    now = desk.now()
    with desk.store.writing() as work:
        today = work.readers.lock(desk.reader).days.of(now)
        kept = work.decisions.get(desk.reader, decision_id)
        if kept is None:
            raise DecisionMissing(decision_id)
        if kept.withdrawn_on is not None:
            return kept
        gone = take_back(desk, work, kept, now, today)
        commitment = work.commitments.get(desk.reader, kept.commitment_id)
        if kept.act is Act.REWORD and commitment is not None and not commitment.retired:
            decisions = work.decisions.of(desk.reader, [kept.commitment_id])
            life = life_of(commitment.commitment, decisions[kept.commitment_id], today)
            if commitment.text == kept.words:
                _write(desk, work, commitment, life.text)
        keep_resting(desk, work, [kept.commitment_id])
        work.commit()
    return gone


def _the_same(kept: Decision, ruling: Ruling) -> Decision:
    same = (
        kept.commitment_id == ruling.commitment_id
        and kept.act is ruling.act
        and ruling.day in {None, kept.day}
        and (ruling.measure is None or _in_order(ruling.measure) == kept.measure)
        and (kept.until, kept.outcome) == (ruling.until, ruling.outcome)
        and kept.words == ruling.words.strip()
    )
    if not same:
        raise said_otherwise("Decision", kept)
    return kept


def _in_order(measure: Measure) -> Measure:
    return replace(measure, on=in_week_order(set(measure.on)))


def _hold_day(act: Act, commitment: KeptCommitment, day: date, today: date) -> None:
    made_on = commitment.commitment.made_on
    if day < made_on and day != today:
        raise Invalid(
            f"The commitment was made on {made_on.isoformat()}; a decision about it holds from "
            "that day or a later one.",
            where="day",
        )
    latest = today + AHEAD if act is Act.PAUSE else today
    if day > latest:
        raise Invalid(
            "A pause is laid at most a year ahead."
            if act is Act.PAUSE
            else f"{day.isoformat()} has not come yet; decide then.",
            where="day",
        )


def _hold_act(ruling: Ruling, stand: Stand, day: date, text: str) -> None:
    term = stand.life.term
    released = stand.pace is Pace.RELEASED
    if released and ruling.act not in {Act.RENEW, Act.HALVE, Act.REWORD}:
        raise Invalid("It was released. Renew or reword it first.", where="act")
    if ruling.act is Act.RESUME and not stand.life.paused_on(day):
        raise Invalid("It is not paused on that day.", where="act")
    if ruling.act is Act.MOVE:
        if term.last_day() is None:
            raise Invalid("It has no last day that could be moved.", where="act")
        if ruling.until is not None and ruling.until < day:
            raise Invalid("It can only be moved to a day to come.", where="until")
        if ruling.until is not None and ruling.until.year > day.year + MOST_YEARS:
            raise Invalid(
                f"{ruling.until.isoformat()} is more than {MOST_YEARS} years off; move it to a "
                "nearer day.",
                where="until",
            )
    if ruling.act is Act.HALVE and touches_health(stand, text):
        raise Invalid(
            "What touches health or medicine is not halved here: talk to a professional first, "
            "then reword it as agreed.",
            where="act",
        )


def _measure(ruling: Ruling, stand: Stand, day: date) -> Measure | None:
    if ruling.measure is not None:
        if ruling.act not in _MEASURED:
            raise Invalid(f"To {ruling.act} takes no measure.", where="measure")
        return held(ruling.measure, stand.life.term.start if ruling.act is Act.MEASURE else day)
    if ruling.act is Act.REWORD:
        return measure_in(ruling.words, day)
    if ruling.act is Act.HALVE:
        less = halved(stand.life.term.measure)
        if less is None:
            raise Invalid(
                "What half of it would be cannot be said; say the measure it is to have.",
                where="measure",
            )
        return less
    return None


def _write(desk: Desk, work: UnitOfWork, commitment: KeptCommitment, words: str) -> None:
    """Write new words for a commitment into its digest, its identity and memory kept."""
    known = opened_to_change(desk, work, commitment.digest_id, None)
    if commitment.text == words:
        return
    parts = tuple(
        replace(part, text=words) if part.id == commitment.commitment.id else part
        for part in known.parts
    )
    mended = replace(known, parts=parts, revision=known.revision + 1)
    mended.digest()  # refuses what no digest can hold, before anything is written
    save(desk, work, mended, Cause.MENDED, known)
