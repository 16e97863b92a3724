"""A reader looks at their settings, and changes them."""

from dataclasses import dataclass, replace

from cards.errors import ReaderChanged
from service.use_cases.ports import Desk
from service.use_cases.records import Reader


@dataclass(frozen=True, slots=True)
class Preferences:
    """What a reader may set; None leaves a setting as it is."""

    time_zone: str | None = None
    turns_at: int | None = None
    target: float | None = None
    unasked_a_day: int | None = None
    minutes: int | None = None


def show_reader(desk: Desk) -> Reader:
    """Return the reader with their settings."""
    with desk.store.reading() as work:
        return work.readers.get(desk.reader)


def set_preferences(desk: Desk, wanted: Preferences, revision: int | None = None) -> Reader:
    """Change a reader's settings and return them.

    Days already fixed stay as they are: an answer keeps the day it was given on, an
    item the day it is due. What is set holds from the next answer on.

    Args:
        desk: the door's desk.
        wanted: the settings to change.
        revision: the revision they were read at, or None to change them as they are.

    Raises:
        InvalidPreference: a setting is outside its range.
        ReaderChanged: the settings were changed since that revision.
    """
    with desk.store.writing() as work:
        reader = work.readers.lock(desk.reader)
        if revision is not None and revision != reader.revision:
            raise ReaderChanged
        changed = replace(
            reader,
            time_zone=reader.time_zone if wanted.time_zone is None else wanted.time_zone,
            turns_at=reader.turns_at if wanted.turns_at is None else wanted.turns_at,
            target=reader.target if wanted.target is None else wanted.target,
            unasked_a_day=(
                reader.unasked_a_day if wanted.unasked_a_day is None else wanted.unasked_a_day
            ),
            minutes=reader.minutes if wanted.minutes is None else wanted.minutes,
        )
        if changed == reader:
            return reader
        changed = replace(changed, revision=reader.revision + 1)
        work.readers.put(changed)
        work.commit()
    return changed
