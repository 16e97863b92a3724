"""A reader looks through what their books asked of them, how it stands, and what came of it."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime, timedelta
from uuid import UUID

from cards.cautions import caution
from cards.commitments import CheckIn, Decision, Offer, Pace, Pressing, Stand, offer_for, pressing
from cards.digest import folded
from cards.errors import CommitmentMissing, Invalid, Missing
from service.use_cases.commitment_records import KeptCommitment
from service.use_cases.library import NAMED_AT_MOST, PAGE
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import Tally
from service.use_cases.standing import stands_on

SHOWN = 200
"""Check-ins of one commitment that are listed, the latest: four years of weeks."""
AHEAD = timedelta(days=366)
"""How far ahead it is told how commitments will stand: a year, as a pause can be laid."""

_SPOKEN = 60
"""Characters of a commitment that are said where several could be meant."""


@dataclass(frozen=True, slots=True)
class HeldCommitment:
    """One commitment a digest holds.

    Attributes:
        kept: its words, as they came in and as they are now, and its book.
        stand: how it stands; None on a day before it came into the library.
        tally: what came of it so far, whatever day is asked about; empty where nobody counted.
    """

    kept: KeptCommitment
    stand: Stand | None
    tally: Tally = field(default_factory=Tally)

    @property
    def id(self) -> UUID:
        """The id of the commitment."""
        return self.kept.commitment.id

    @property
    def caution(self) -> str | None:
        """The caution it carries, or None."""
        return caution(self.kept.text)

    @property
    def offer(self) -> Offer | None:
        """What it is met with as it stands, or None where it needs nothing."""
        return None if self.stand is None else offer_for(self.stand, self.kept.text)


@dataclass(frozen=True, slots=True)
class CommitmentPage:
    """The commitments of one page of the library.

    Attributes:
        day: the reader's day asked about.
        commitments: those of the digest added last first, within it in its own order.
        next: where the following page begins, or None.
    """

    day: date
    commitments: tuple[HeldCommitment, ...]
    next: tuple[datetime, UUID] | None


@dataclass(frozen=True, slots=True)
class AllCommitments:
    """Every commitment the library holds, as they stand on a day.

    Attributes:
        day: the reader's day asked about.
        by_pace: those of each pace, of the digest added last first; a pace without any is left out.
    """

    day: date
    by_pace: dict[Pace, tuple[HeldCommitment, ...]]


@dataclass(frozen=True, slots=True)
class OpenCommitment:
    """One commitment laid open.

    Attributes:
        day: the reader's day asked about.
        held: the commitment, and how it stands.
        check_ins: the latest, taken back ones too, the latest first.
        decisions: all about it, taken back ones too, the latest first.
    """

    day: date
    held: HeldCommitment
    check_ins: tuple[CheckIn, ...]
    decisions: tuple[Decision, ...]


def list_commitments(
    desk: Desk,
    after: tuple[datetime, UUID] | None = None,
    limit: int = PAGE,
    on: date | None = None,
) -> CommitmentPage:
    """Return the commitments of up to `limit` digests, newest first, beyond `after`.

    A page is so many digests, whether they ask for anything or not. How each stands is told for
    the day asked about, as known on it; for today unless given.

    Raises:
        Invalid: the day is more than a year ahead.
    """
    with desk.store.reading() as work:
        day = _day(desk, work, on)
        entries = work.digests.page(desk.reader, after, limit + 1)
        page = [entry.kept.id for entry in entries[:limit]]
        place = {digest_id: number for number, digest_id in enumerate(page)}
        found = sorted(
            (each for each in work.commitments.of_digests(desk.reader, page) if not each.retired),
            key=lambda each: (place[each.digest_id], each.number),
        )
        held = _held(desk, work, found, day, on)
    last = entries[limit - 1] if len(entries) > limit else None
    return CommitmentPage(day, held, None if last is None else (last.added_at, last.kept.id))


def all_commitments(desk: Desk, on: date | None = None) -> AllCommitments:
    """Return every commitment the library holds by its pace, on a day or today.

    What came of them is not counted: `tallied` does that, of those that are shown.

    Raises:
        Invalid: the day is more than a year ahead.
    """
    with desk.store.reading() as work:
        day = _day(desk, work, on)
        found = work.commitments.all(desk.reader)
        stands = _stands(desk, work, found, day, on)
    held = [HeldCommitment(each, stands.get(each.commitment.id)) for each in found]
    by_pace = {
        pace: tuple(each for each in held if each.stand is not None and each.stand.pace is pace)
        for pace in Pace
    }
    return AllCommitments(day, {pace: those for pace, those in by_pace.items() if those})


def tallied(desk: Desk, held: Sequence[HeldCommitment]) -> list[HeldCommitment]:
    """Return commitments with what came of each so far, in the same order."""
    with desk.store.reading() as work:
        tallies = work.check_ins.tallies(desk.reader, [each.id for each in held])
    return [replace(each, tally=tallies.get(each.id, Tally())) for each in held]


def open_commitment(desk: Desk, commitment_id: UUID, on: date | None = None) -> OpenCommitment:
    """Return one commitment with its facts, as it stands on a day or today.

    Raises:
        CommitmentMissing: no digest of this reader's library holds such a commitment.
        Invalid: the day is more than a year ahead.
    """
    with desk.store.reading() as work:
        day = _day(desk, work, on)
        found = work.commitments.get(desk.reader, commitment_id)
        if found is None or found.retired:
            raise CommitmentMissing(commitment_id)
        (held,) = _held(desk, work, [found], day, on)
        check_ins = work.check_ins.of_commitment(desk.reader, commitment_id, SHOWN)
        decisions = work.decisions.of(desk.reader, [commitment_id]).get(commitment_id, [])
    latest = sorted(decisions, key=lambda each: (each.day, each.decided_at, each.id), reverse=True)
    return OpenCommitment(day, held, tuple(check_ins), tuple(latest))


def wants_word(desk: Desk, commitment_id: UUID) -> bool:
    """Tell whether a commitment wants to be checked in on today."""
    with desk.store.reading() as work:
        day = _day(desk, work, None)
        found = work.commitments.get(desk.reader, commitment_id)
        if found is None or found.retired:
            return False
        stand = _stands(desk, work, [found], day, None).get(commitment_id)
    return stand is not None and pressing(stand) > Pressing.NOT_AT_ALL


def commitment_called(desk: Desk, words: str) -> HeldCommitment:
    """Return the one commitment a reader means by its id, or by words of it or of its book.

    Words of the commitment itself win over those of its book.

    Raises:
        Missing: none is meant, or several could be.
    """
    with desk.store.reading() as work:
        day = _day(desk, work, None)
        every = work.commitments.all(desk.reader)
        wanted = folded(words)
        found = [each for each in every if words.lower() == str(each.commitment.id)]
        for said in (_own_words, _book_words):
            found = found or [each for each in every if wanted and wanted in folded(said(each))]
        if len(found) != 1:
            raise Missing(_unnamed(words, found), where="commitment")
        (held,) = _held(desk, work, found, day, None)
    return held


def _own_words(kept: KeptCommitment) -> str:
    return kept.text


def _book_words(kept: KeptCommitment) -> str:
    return f"{kept.title} {kept.author or ''}"


def _unnamed(words: str, found: Sequence[KeptCommitment]) -> str:
    said = words if len(words) <= _SPOKEN else f"{words[:_SPOKEN]}…"
    if not found:
        return f"No commitment is called “{said}”. Give words of it or of its book, or its id."
    several = "; ".join(
        f"{each.title} {each.number}, “{each.text[:_SPOKEN]}” ({each.commitment.id})"
        for each in found[:NAMED_AT_MOST]
    )
    return f"Several commitments could be meant by “{said}”: {several}. Give more words, or the id."


def _day(desk: Desk, work: UnitOfWork, on: date | None) -> date:
    today = work.readers.get(desk.reader).days.of(desk.now())
    if on is not None and on > today + AHEAD:
        raise Invalid(
            f"{on.isoformat()} is too far ahead; how a commitment will stand is told for at most a "
            "year.",
            where="on",
        )
    return on or today


def _stands(
    desk: Desk, work: UnitOfWork, found: Sequence[KeptCommitment], day: date, on: date | None
) -> dict[UUID, Stand]:
    stands = stands_on(work, desk.reader, found, day)
    if on is None:
        # Where the reader moved to a zone in which it is still the day before, or a clock was set
        # back, what came in later stands today as it stood when it came in.
        for each in found:
            entered_on = each.commitment.entered_on
            if entered_on > day:
                stands |= stands_on(work, desk.reader, [each], entered_on)
    return stands


def _held(
    desk: Desk, work: UnitOfWork, found: Sequence[KeptCommitment], day: date, on: date | None
) -> tuple[HeldCommitment, ...]:
    stands = _stands(desk, work, found, day, on)
    tallies = work.check_ins.tallies(desk.reader, [each.commitment.id for each in found])
    return tuple(
        HeldCommitment(
            each, stands.get(each.commitment.id), tallies.get(each.commitment.id, Tally())
        )
        for each in found
    )
