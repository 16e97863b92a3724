"""The mail a reader gets in the morning: what it holds, and when it is due."""

from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from cards.cautions import caution
from cards.commitments import Pressing, pressing
from cards.commitments.telling import progress, told
from service.use_cases.commitments import HeldCommitment, all_commitments
from service.use_cases.letter_records import Letter, NamedCommitment
from service.use_cases.ports import Desk
from service.use_cases.records import Reader
from service.use_cases.sit import todays_sitting

MOST = 5
"""Commitments named in one mail: as many as fit on a page."""


def due_at(reader: Reader, day: date, hour: int) -> datetime:
    """Return the instant from which the mail of a reader's day is due, aware.

    An hour before the day turns over is that of the night that ends it.
    """
    zone = ZoneInfo(reader.time_zone)
    on = day if hour >= reader.turns_at else day + timedelta(days=1)
    return datetime(on.year, on.month, on.day, hour, tzinfo=zone)


def letter(desk: Desk, reader: Reader, to: str, number: str, stop: str | None) -> Letter | None:
    """Return today's mail, or None when there is nothing to say."""
    sitting = todays_sitting(desk)
    found = all_commitments(desk)
    wanting = sorted(
        (each for those in found.by_pace.values() for each in those if _pressing(each)),
        key=lambda each: (-_pressing(each), each.id),
    )
    if not sitting.items and not wanting:
        return None
    named = [
        each for each in wanting if _pressing(each) > Pressing.OPEN or _runs_out(each, found.day)
    ]
    named = (named or wanting)[:MOST]
    return Letter(
        to=to,
        day=sitting.day,
        number=number,
        written_at=desk.now().astimezone(ZoneInfo(reader.time_zone)),
        minutes=max(1, round(sitting.seconds / 60)) if sitting.items else 0,
        items=len(sitting.items),
        address=desk.address,
        commitments=tuple(_named(desk, each) for each in named),
        more=len(wanting) - len(named),
        stop=stop,
    )


def _pressing(held: HeldCommitment) -> Pressing:
    return Pressing.NOT_AT_ALL if held.stand is None else pressing(held.stand)


def _runs_out(held: HeldCommitment, day: date) -> bool:
    """Tell whether the period that runs ends today."""
    now = None if held.stand is None else held.stand.now
    return now is not None and now.span.last == day


def _named(desk: Desk, held: HeldCommitment) -> NamedCommitment:
    stand = held.stand
    if stand is None:
        raise AssertionError(held.id)
    address = None if desk.address is None else f"{desk.address}commitments/{held.id}/check-in"
    said, done = told(stand), progress(stand)
    return NamedCommitment(
        text=held.kept.text,
        title=held.kept.title,
        pace=stand.pace,
        said=said,
        progress=None if done is None or done in said else done,
        caution=caution(held.kept.text),
        address=address,
    )
