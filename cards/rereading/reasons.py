"""Why a book is worth opening again, from what came back of it and what it asked."""

from collections.abc import Iterator, Sequence
from datetime import date
from itertools import chain
from uuid import UUID

from cards.answers import Grade
from cards.commitments.day_words import day_in_words
from cards.items import KeptItem
from cards.kinds.base import KindName
from cards.parts import Care, Part, PartKind
from cards.rereading.because import WORTH, Because, Reason
from cards.rereading.confusing import confusions
from cards.rereading.promised import stalled
from cards.rereading.record import BookRecord, answers_tell
from cards.retention.wilson import wilson
from cards.schedule import aimed

TWICE = 2
"""So often running the theme comes back blank before the book is to be opened (design)."""
FEWEST_ITEMS = 10
"""Items of a book asked before its retention is judged; of fewer nothing can be said."""
WELL_UNDER = 0.05
"""How far under the target the upper bound of the retention must lie.

Our own convention, after reference, part 2: what is claimed of a retention is claimed by its
Wilson bounds, never by the share alone."""


def reasons_of(record: BookRecord, day: date, target: float) -> tuple[Because, ...]:
    """Return the reasons to open a book again, what weighs most first; none, no book.

    Args:
        record: what is known of the book.
        day: the reader's day it is.
        target: the retention the reader aims for, before the care of the book.
    """
    if record.digest.removed:
        return ()
    found = chain(
        stalled(record, day),
        _theme_gone(record),
        _confused(record),
        _under_target(record, target),
        _a_year_since(record, day),
    )
    return tuple(found)


def may_have_reasons(items: Sequence[KeptItem], target: float) -> bool:
    """Tell by its items alone whether a book never read again can have a reason to be.

    Of its commitments they say nothing; for the rest a cheap look before all is read.
    """
    asked = [each for each in items if each.memory is not None and not each.item.retired]
    recalled = sum(not _is_blank(each) for each in asked)
    _, upper = wilson(recalled, len(asked))
    return any(
        answers_tell(each)
        or each.care is Care.CLOSE
        or _well_under(len(asked), upper, aimed(target, each.care))
        for each in items
    )


def _theme_gone(record: BookRecord) -> Iterator[Because]:
    for kept in record.asked:
        if kept.item.kind is not KindName.THEME:
            continue
        last = record.since_reread(kept.item)[-TWICE:]
        if len(last) == TWICE and all(answer.grade is Grade.BLANK for answer in last):
            yield Because(
                Reason.THEME,
                f"The theme came back blank twice running, on {day_in_words(last[0].day)} and on "
                f"{day_in_words(last[1].day)}.",
                parts=(kept.item.part_id,),
                items=(kept.item.id, *_faded(record, KindName.NEXT)),
                around=_all_that_stands(record),
                threads=_broken_threads(record),
                worth=WORTH[Reason.THEME],
            )


def _confused(record: BookRecord) -> Iterator[Because]:
    found = confusions(record)
    if found:
        parts = tuple(part.id for each in found for part in each.parts)
        yield Because(
            Reason.PLACES,
            " ".join(each.sentence for each in found),
            parts=parts,
            items=tuple(item for each in found for item in each.items),
            around=parts,
            worth=WORTH[Reason.PLACES] * len(parts),
        )


def _under_target(record: BookRecord, target: float) -> Iterator[Because]:
    asked = [each for each in record.asked if _asked_since(record, each)]
    blank = [each for each in asked if _is_blank(each)]
    recalled = len(asked) - len(blank)
    _, upper = wilson(recalled, len(asked))
    wanted = aimed(target, record.digest.care)
    if not _well_under(len(asked), upper, wanted):
        return
    faded = {each.item.part_id for each in blank}
    standing = _all_that_stands(record)
    yield Because(
        Reason.RETENTION,
        f"Of its {len(asked)} items {recalled} came back when last asked, "
        f"{recalled / len(asked):.0%}: at the very best {upper:.0%} (Wilson, 95%), where "
        f"{wanted:.0%} is aimed for.",
        parts=tuple(dict.fromkeys(each.item.part_id for each in blank)),
        items=tuple(each.item.id for each in blank),
        around=tuple(part for part in standing if part in faded) or standing,
        threads=_broken_threads(record),
        worth=WORTH[Reason.RETENTION] * len(blank),
    )


def _well_under(asked: int, upper: float, wanted: float) -> bool:
    return asked >= FEWEST_ITEMS and upper < wanted - WELL_UNDER


def _a_year_since(record: BookRecord, day: date) -> Iterator[Because]:
    read = record.last_reread
    known = [record.digest.finished_on, None if read is None else read.day]
    since = max((each for each in known if each is not None), default=None)
    if record.digest.care is not Care.CLOSE or since is None or _year_after(since) > day:
        return
    again = read is not None and read.day == since
    yield Because(
        Reason.YEAR,
        f"It is kept close, and it is {(day - since).days} days since it was "
        f"{'read again' if again else 'finished'}, on {day_in_words(since)}.",
        around=_all_that_stands(record),
        worth=WORTH[Reason.YEAR],
    )


def _year_after(day: date) -> date:
    """Return the day a year later, 1 March after 29 February; the last day where there is none."""
    if day.year == date.max.year:
        return date.max
    leap = (day.month, day.day) == (2, 29)
    return date(day.year + 1, 3, 1) if leap else day.replace(year=day.year + 1)


def _asked_since(record: BookRecord, kept: KeptItem) -> bool:
    """Tell whether an item was asked after the book was read again, if it was."""
    read = record.last_reread
    if kept.memory is None:
        return False
    return read is None or kept.memory.last_day > read.day


def _is_blank(kept: KeptItem) -> bool:
    return kept.memory is not None and kept.memory.last_grade is Grade.BLANK


def _faded(record: BookRecord, kind: KindName) -> tuple[UUID, ...]:
    return tuple(
        each.item.id for each in record.asked if each.item.kind is kind and _is_blank(each)
    )


def _broken_threads(record: BookRecord) -> tuple[UUID, ...]:
    """Return the points that did not come back from the one before."""
    return tuple(
        each.item.part_id
        for each in record.asked
        if each.item.kind is KindName.NEXT and _is_blank(each) and _asked_since(record, each)
    )


def _all_that_stands(record: BookRecord) -> tuple[UUID, ...]:
    parts: tuple[Part, ...] = (
        *record.digest.held(PartKind.POINT),
        *record.digest.held(PartKind.QUOTATION),
    )
    return tuple(part.id for part in parts)
