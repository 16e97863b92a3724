"""A reader tells another person about a book: the sheet, and what came of the talk."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from uuid import UUID

from cards.digest import Commitment, Digest, folded, hold_text
from cards.errors import Invalid, TalkMissing
from cards.parts import KeptDigest
from cards.talk import Agenda, Length, Talk, agenda_for
from service.use_cases.facts import hold_come, said_otherwise, take_back
from service.use_cases.keeping import opened, opened_to_change
from service.use_cases.mend_digest import change_digest
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import Cause
from service.use_cases.standing import stands_on

MOST_RESOLVED = 20
"""New commitments one talk brings: ten minutes of it are theirs."""
MOST_TALKS = 1_000
"""Talks about one book: more is no record but a mistake."""


@dataclass(frozen=True, slots=True)
class HeldTalk:
    """A talk as it is reported.

    Attributes:
        id: made by whoever recorded it.
        day: the reader's day it took place on, or None for today.
        listener: with whom, in the reader's words; may be empty.
        minutes: how long it took, or None.
        note: what came of it; may be empty.
        resolved: what the book is to ask from now on, each in words; added to the digest.
        judgement: what the reader makes of the book now, or None to leave it as it is.
        revision: the revision the digest was read at, or None for whatever it is.
    """

    id: UUID
    digest_id: UUID
    day: date | None = None
    listener: str = ""
    minutes: int | None = None
    note: str = ""
    resolved: tuple[str, ...] = ()
    judgement: str | None = None
    revision: int | None = None


@dataclass(frozen=True, slots=True)
class Recorded:
    """What recording a talk came to.

    Attributes:
        talk: the fact.
        kept: the digest as it is now.
        added: how many commitments the talk added to it.
        fresh: whether it was not kept before.
    """

    talk: Talk
    kept: KeptDigest
    added: int
    fresh: bool


def talk_sheet(desk: Desk, digest_id: UUID, length: Length) -> Agenda:
    """Lay out a talk about a book.

    On paper and on screen it is the same until the book was talked over; then another is drawn.

    Raises:
        DigestMissing: this reader has no such digest.
    """
    with desk.store.reading() as work:
        kept = opened(desk, work, digest_id, None)
        today = work.readers.get(desk.reader).days.of(desk.now())
        asked = work.commitments.of_digests(desk.reader, [digest_id])
        stands = stands_on(work, desk.reader, asked, today)
        held = len(work.talks.of_digest(desk.reader, digest_id))
    return agenda_for(kept, stands, length, f"{digest_id} {held}")


def talks_of(desk: Desk, digest_id: UUID) -> list[Talk]:
    """Return the talks about a book that were not taken back, the latest first.

    Raises:
        DigestMissing: this reader has no such digest.
    """
    with desk.store.reading() as work:
        opened(desk, work, digest_id, None)
        return work.talks.of_digest(desk.reader, digest_id)


def record_talk(desk: Desk, held: HeldTalk) -> Recorded:
    """Record that a book was talked over, and take what was resolved into its digest.

    The very same talk again changes nothing, the digest neither.

    Raises:
        DigestMissing: this reader has no such digest.
        DigestChanged: it was changed since the revision named.
        Invalid: the talk's day has not come yet, a text of it is too long, or there are too
            many of something.
        InvalidDigest: what was resolved cannot be added to the digest.
        Conflict: another talk already bears its id.
    """
    now = desk.now()
    with desk.store.writing() as work:
        today = work.readers.lock(desk.reader).days.of(now)
        known = work.talks.get(desk.reader, held.id)
        if known is not None:
            kept = opened(desk, work, held.digest_id, None)
            return Recorded(_the_same(known, held), kept, 0, fresh=False)
        fact = Talk(
            held.id,
            held.digest_id,
            held.day or today,
            now,
            today,
            held.listener,
            held.minutes,
            held.note,
        )
        kept = opened_to_change(desk, work, held.digest_id, held.revision)
        _hold(desk, work, fact, held, today)
        work.talks.add(desk.reader, fact)
        before = kept.digest()
        after = _resolved(before, held)
        kept = change_digest(desk, work, kept, after, Cause.MENDED)
        work.commit()
    return Recorded(fact, kept, len(after.commitments) - len(before.commitments), fresh=True)


def withdraw_talk(desk: Desk, digest_id: UUID, talk_id: UUID) -> Talk:
    """Take a talk back: it stays on record. What was resolved stays in the digest.

    Raises:
        TalkMissing: this reader has recorded no such talk about this book.
    """
    now = desk.now()
    with desk.store.writing() as work:
        today = work.readers.lock(desk.reader).days.of(now)
        talk = work.talks.get(desk.reader, talk_id)
        if talk is None or talk.digest_id != digest_id:
            raise TalkMissing(talk_id)
        if talk.withdrawn_on is None:
            talk = take_back(desk, work, talk, now, today)
            work.commit()
    return talk


def _the_same(known: Talk, held: HeldTalk) -> Talk:
    """Return the talk that is kept. What names no day is of the day it was first sent on."""
    sent = replace(
        known,
        digest_id=held.digest_id,
        day=held.day or known.day,
        listener=held.listener,
        minutes=held.minutes,
        note=held.note,
    )
    if known != sent:
        raise said_otherwise("Talk", known)
    return known


def _hold(desk: Desk, work: UnitOfWork, fact: Talk, held: HeldTalk, today: date) -> None:
    hold_text(fact.note, "note")
    hold_text(fact.listener, "listener")
    hold_come(fact.day, today)
    if len(held.resolved) > MOST_RESOLVED:
        raise Invalid(
            f"At most {MOST_RESOLVED} commitments are taken from one talk, not "
            f"{len(held.resolved)}.",
            where="resolved",
        )
    if len(work.talks.of_digest(desk.reader, held.digest_id)) >= MOST_TALKS:
        raise Invalid(f"{MOST_TALKS} talks about one book are kept already.", where="id")


def _resolved(digest: Digest, held: HeldTalk) -> Digest:
    """Return a digest with what was resolved; what it asks already is not added twice."""
    asked = _unlike([each.text for each in digest.commitments], held.resolved)
    changed = replace(
        digest, commitments=(*digest.commitments, *(Commitment(text) for text in asked))
    )
    if held.judgement is None or not held.judgement.strip():
        return changed
    return replace(changed, judgement=held.judgement.strip())


def _unlike(known: Sequence[str], new: Sequence[str]) -> list[str]:
    seen = set(map(folded, known))
    found = []
    for text in (each.strip() for each in new):
        if text and folded(text) not in seen:
            seen.add(folded(text))
            found.append(text)
    return found
