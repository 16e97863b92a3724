"""A reader has a sitting printed, and enters afterwards what came back."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from uuid import UUID

from cards.answers import Grade
from cards.days import zone
from cards.errors import Invalid, InvalidAnswer, SheetMissing
from cards.items import KeptItem, Standing, occasion_of
from cards.kinds import KINDS
from cards.kinds.base import Asked, Attempt, Cue, KindName, Occasion, place_of
from cards.kinds.words import stems
from cards.sitting import Candidate, Pages, pages_of
from service.use_cases.items import shelf_for
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.recording import GivenAnswer, append
from service.use_cases.records import Reader
from service.use_cases.sit import todays_sitting
from service.use_cases.sitting_records import PrintedSheet, Sheet, SheetItem, SheetLine

OPEN_SHEETS = 5
"""Sheets waiting for their answers that are offered, the latest first."""


@dataclass(frozen=True, slots=True)
class Entered:
    """What the reader enters for one item of a sheet.

    Attributes:
        words: what they wrote on paper, where they care to keep it; it is then marked.
    """

    grade: Grade
    words: str = ""


def print_sheet(desk: Desk, minutes: int | None = None) -> PrintedSheet:
    """Compose today's sitting for paper and keep which items are on it.

    Args:
        desk: the door's desk.
        minutes: for the whole day; None for what the reader set.

    Raises:
        Invalid: nothing is asked today.
    """
    printed = compose_sheet(desk, minutes)
    keep_sheet(desk, printed)
    return printed


def compose_sheet(desk: Desk, minutes: int | None = None) -> PrintedSheet:
    """Compose today's sitting for paper and keep nothing of it yet.

    Args:
        desk: the door's desk.
        minutes: for the whole day; None for what the reader set.

    Raises:
        Invalid: nothing is asked today.
    """
    sitting = todays_sitting(desk, minutes)
    if not sitting.items:
        raise Invalid("Nothing is left to be asked today, so there is nothing to print.")
    items = tuple(
        SheetItem(
            item_id=each.kept.item.id,
            asked=each.kept.memory.answers if each.kept.memory else 0,
            held=each.kept.standing is Standing.HELD,
            answer_id=desk.new_id(),
        )
        for each in sitting.items
    )
    sheet = Sheet(desk.new_id(), desk.now(), sitting.minutes, items)
    with desk.store.reading() as work:
        asked = [Candidate(*each) for each in _occasions(desk, work, sheet).values()]
        together = {each.id for each in side_by_side(asked)}
        sheet = replace(sheet, items=tuple(each for each in items if each.item_id in together))
        return _printed(desk, work, sheet)


def keep_sheet(desk: Desk, printed: PrintedSheet) -> None:
    """Keep which items are on a sheet that was composed: from now on it waits for its answers."""
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        work.sheets.put(desk.reader, printed.sheet)
        work.commit()


def side_by_side(candidates: Sequence[Candidate]) -> list[Candidate]:
    """Return those whose cues can stand on one side of paper, in the order given.

    There all cues are in sight at once, and no answer is: so none that stays is given away by
    another that stays, before it or after it. What no cue gives away always stays; of the rest
    what the fewest cues give away is tried first, and what finds no room is left out.
    What counts as showing: `cards.sitting.Pages.give_away`.
    """
    asked = {each.id: pages_of(each) for each in candidates}
    cues = {each.id: _cue_side(each, asked[each.id]) for each in candidates}
    givers = {
        each: {other for other in cues if other != each and cues[other].give_away(asked[each])}
        for each in asked
    }
    kept: set[UUID] = set()
    for each in sorted(givers, key=lambda one: len(givers[one])):
        if givers[each].isdisjoint(kept) and not any(each in givers[other] for other in kept):
            kept.add(each)
    return [each for each in candidates if each.id in kept]


def _cue_side(candidate: Candidate, pages: Pages) -> Pages:
    """Return the pages of an item as far as its cue shows them, its book named.

    What it asks is not on it, nor is a place, which only answers name. A quotation with words
    left out still says whose it is. The book of words whose source is asked is not named.
    """
    occasion, kind = candidate.occasion, candidate.kept.item.kind
    part, digest, cue = occasion.part, occasion.digest, KINDS[kind].cue(occasion)
    shown = pages.shows - pages.asks - {place_of(part)}
    named = "" if kind is KindName.SOURCE else f"{digest.title} {digest.author or ''}"
    choices = (f"{book.title} {book.author or ''}" for book in cue.choices)
    landmarks = (mark.text for mark in cue.landmarks)
    return replace(
        pages,
        shows=shown | {part.id} if kind is KindName.COMPLETE else shown,
        words=stems("\n".join((named, cue.words, *cue.pieces, *landmarks, *choices))),
    )


def open_sheet(desk: Desk, sheet_id: UUID) -> PrintedSheet:
    """Return a sheet as it was printed; what the library no longer holds is left off.

    Raises:
        SheetMissing: this reader has had no such sheet printed.
    """
    with desk.store.reading() as work:
        sheet = work.sheets.get(desk.reader, sheet_id)
        if sheet is None:
            raise SheetMissing(sheet_id)
        return _printed(desk, work, sheet)


def open_sheets(desk: Desk) -> list[Sheet]:
    """Return the latest sheets whose answers were not entered yet, newest first."""
    with desk.store.reading() as work:
        return work.sheets.open(desk.reader, OPEN_SHEETS)


def enter_sheet(
    desk: Desk, sheet_id: UUID, entered: Mapping[UUID, Entered], on: date | None = None
) -> int:
    """Record what came back, item by item, in one go; return how many answers were fresh.

    Items without a grade are left as they are. The same form sent twice records once. With
    nothing entered the sheet goes on waiting, unless the library holds none of its items now.

    Args:
        desk: the door's desk.
        sheet_id: which sheet.
        entered: by the ids of its items.
        on: the reader's day on which they sat with it; None for today.

    Raises:
        SheetMissing: this reader has had no such sheet printed.
        InvalidAnswer: the day has not come yet or lies before the sheet, or an item is not
            on it.
    """
    now = desk.now()
    with desk.store.writing() as work:
        reader = work.readers.lock(desk.reader)
        sheet = work.sheets.get(desk.reader, sheet_id)
        if sheet is None:
            raise SheetMissing(sheet_id)
        at = _instant(reader, sheet, now, on)
        printed = _occasions(desk, work, sheet)
        if unknown := entered.keys() - printed.keys():
            raise InvalidAnswer(
                f"{len(unknown)} of the items entered are not on this sheet.", where="entries"
            )
        fresh = 0
        for number, line in enumerate(sheet.items):
            what = entered.get(line.item_id)
            if what is not None:
                item, occasion = printed[line.item_id]
                given = GivenAnswer(
                    id=line.answer_id,
                    item_id=line.item_id,
                    grade=what.grade,
                    answered_at=None
                    if _known(desk, work, line)
                    else at + timedelta(seconds=number),
                    attempt=_attempt(KINDS[item.item.kind].cue(occasion), what),
                )
                fresh += append(desk, work, given, occasion).fresh
        if entered or not printed:
            work.sheets.put(desk.reader, replace(sheet, entered_at=now))
        work.commit()
    return fresh


def _known(desk: Desk, work: UnitOfWork, line: SheetItem) -> bool:
    """Tell whether the answer of a line was entered before; its time is then what it was."""
    return work.answers.get(desk.reader, line.answer_id) is not None


def _attempt(cue: Cue, what: Entered) -> Attempt | None:
    written = what.words.strip()
    return Attempt(words=written) if written and Asked.WORDS in cue.asked else None


def _instant(reader: Reader, sheet: Sheet, now: datetime, on: date | None) -> datetime:
    """Return when a sheet was answered: now, or at noon of an earlier day of the reader's."""
    today = reader.days.of(now)
    if on is None or on == today:
        return now
    first = reader.days.of(sheet.made_at)
    if not first <= on < today:
        raise InvalidAnswer(
            f"A sheet printed on {first.isoformat()} is answered on that day or later, and not "
            f"after today, {today.isoformat()}.",
            where="on",
        )
    noon = datetime.combine(on, time(12), zone(reader.time_zone))
    return noon + timedelta(hours=reader.turns_at)


def _printed(desk: Desk, work: UnitOfWork, sheet: Sheet) -> PrintedSheet:
    asked = _occasions(desk, work, sheet)
    lines = (
        _line(number, *asked[each.item_id], each)
        for number, each in enumerate(sheet.items, 1)
        if each.item_id in asked
    )
    day = work.readers.get(desk.reader).days.of(sheet.made_at)
    return PrintedSheet(sheet, day, tuple(lines))


def _occasions(desk: Desk, work: UnitOfWork, sheet: Sheet) -> dict[UUID, tuple[KeptItem, Occasion]]:
    """Return the items of a sheet that the library still holds, as they were asked on it."""
    kept = work.items.many(desk.reader, [each.item_id for each in sheet.items])
    digests = work.digests.many(desk.reader, {each.item.digest_id for each in kept.values()})
    shelf = shelf_for(desk, work, kept.values())
    found = {}
    for each in sheet.items:
        item = kept.get(each.item_id)
        digest = None if item is None else digests.get(item.item.digest_id)
        if item is not None and digest is not None and not item.item.retired:
            occasion = replace(occasion_of(item, digest, shelf), asked=each.asked, held=each.held)
            found[each.item_id] = (item, occasion)
    return found


def _line(number: int, kept: KeptItem, occasion: Occasion, of_sheet: SheetItem) -> SheetLine:
    kind = KINDS[kept.item.kind]
    return SheetLine(
        number=number,
        item_id=kept.item.id,
        kind=kept.item.kind,
        title=occasion.digest.title,
        author=occasion.digest.author,
        cue=kind.cue(occasion),
        answered=kind.answer(occasion),
        answered_since=(kept.memory.answers if kept.memory else 0) > of_sheet.asked,
    )
