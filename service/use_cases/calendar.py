"""A reader's calendar is read by the program they gave its address to."""

from service.use_cases.calendar_records import CalendarCommitment, CalendarFacts, DailySitting
from service.use_cases.commitments import HeldCommitment, all_commitments
from service.use_cases.ports import Desk
from service.use_cases.sit import todays_sitting
from service.use_cases.tidy import hashed


def open_calendar(desk: Desk, secret: str) -> bytes | None:
    """Return the calendar an address opens, or None when it opens nothing or was revoked."""
    with desk.store.reading() as work:
        if not work.reminding.opens(desk.reader, hashed(secret)):
            return None
    return calendar_of(desk)


def calendar_of(desk: Desk) -> bytes:
    """Return the reader's calendar, `text/calendar` in UTF-8."""
    return desk.feeds.to_calendar(calendar_facts(desk))


def calendar_facts(desk: Desk) -> CalendarFacts:
    """Return all that the reader's calendar shows, as of now."""
    with desk.store.reading() as work:
        reader, reminders = work.readers.get(desk.reader), work.reminding.get(desk.reader)
    sitting, found = todays_sitting(desk), all_commitments(desk)
    return CalendarFacts(
        reader_id=desk.reader,
        time_zone=reader.time_zone,
        turns_at=reader.turns_at,
        today=sitting.day,
        remind_at=reminders.mail_at,
        sitting=DailySitting(
            minutes=reader.minutes,
            due=max(1, round(sitting.seconds / 60)) if sitting.items else 0,
            items=len(sitting.items),
            address=desk.address,
        ),
        commitments=tuple(
            each
            for those in found.by_pace.values()
            for held in those
            for each in _shown(desk, held)
        ),
        made_at=desk.now(),
    )


def _shown(desk: Desk, held: HeldCommitment) -> tuple[CalendarCommitment, ...]:
    stand = held.stand
    if stand is None:
        return ()
    address = None if desk.address is None else f"{desk.address}commitments/{held.id}/check-in"
    return (
        CalendarCommitment(
            id=held.id,
            text=held.kept.text,
            title=held.kept.title,
            caution=held.caution,
            life=stand.life,
            pace=stand.pace,
            ends_on=stand.ends_on,
            # Words can change in the digest, and days with the day it is: a change too many
            # costs a calendar nothing, one too few leaves it showing what is no more.
            changed_at=desk.now(),
            address=address,
        ),
    )
