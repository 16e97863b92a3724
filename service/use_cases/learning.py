"""The reader's own weights: considered from time to time, and carried through bit by bit."""

from dataclasses import dataclass
from datetime import date, timedelta

from cards.fitting.considering import consider
from cards.fitting.reviews import KINDS, Reviews
from cards.retention.reading import read
from service.use_cases.learning_records import AnswerColumns, Fitting, FoldedItem, Refolded
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import Reader
from service.use_cases.tallying import tallied

LEAST_NEW, SHARE_NEW = 100, 0.25
"""Answers, and share of those there were, that make it worth considering again: some sixteen
looks in a reading life, as each look is one more chance to be misled by luck."""
MOST_MOVED = 50
"""Due days moved in one of the reader's days: a sitting or two, so that no wave of them comes."""
_A_MOMENT = timedelta(microseconds=1)
"""A fit comes after the one before it, even if the clock ran ahead then and was set right."""
_AT_ONCE = 500
"""Items folded in one transaction: others wait for it."""


@dataclass(frozen=True, slots=True)
class Learned:
    """What learning from the answers came to this time.

    Attributes:
        fitting: the fit, or None where there was too little new to consider it.
        moved: how many due days were moved.
        waiting: how many wait to be moved on the days to come.
    """

    fitting: Fitting | None
    moved: int
    waiting: int


def learn(desk: Desk) -> Learned:
    """Consider the reader's own weights where enough was answered since, and carry them through.

    What was adopted foresees every recall from then on. Every memory is folded again under it
    and no fact is touched; of the due days at most `MOST_MOVED` move in one of the reader's days.
    """
    fitting = _considered(desk)
    with desk.store.reading() as work:
        latest = work.fittings.adopted(desk.reader, 1)
    if not latest:
        return Learned(fitting, 0, 0)
    if not latest[0].refolded:
        _refold_all(desk, latest[0])
    return Learned(fitting, *_move(desk))


def _considered(desk: Desk) -> Fitting | None:
    now = desk.now()
    with desk.store.reading() as work:
        reader, last = work.readers.get(desk.reader), work.fittings.latest(desk.reader)
        answers = read(tallied(work, desk.reader)).whole().n
        before = 0 if last is None else last.answers
        if answers < before + max(LEAST_NEW, SHARE_NEW * before):
            return None
        adopted = work.fittings.adopted(desk.reader, 1)
        columns = work.fittings.columns(desk.reader)
    # What weights were fitted to would praise them; that day's later answers are let go.
    since = adopted[0].fitted_on.toordinal() + 1 if adopted else 0
    found = consider(_reviews(columns), reader.weighting, since)
    fitting = Fitting(
        id=desk.new_id(),
        fitted_at=now if last is None else max(now, last.fitted_at + _A_MOMENT),
        fitted_on=reader.days.of(now),
        answers=answers,
        verdicts=(found.verdict, *found.by_kind),
        weighting=found.weighting,
        refolded=not found.adopted,
    )
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        latest = work.fittings.latest(desk.reader)
        if (latest and latest.id) != (last and last.id):
            return None  # another process considered the same answers meanwhile
        work.fittings.add(desk.reader, fitting)
        if found.adopted:
            work.readers.weigh(desk.reader, found.weighting)
        work.commit()
    return fitting


def _reviews(columns: AnswerColumns) -> Reviews:
    numbers = {kind: number for number, kind in enumerate(KINDS)}
    kinds = [numbers[kind] for kind in columns.kinds]
    return Reviews.of(columns.items, kinds, columns.days, columns.grades)


def _refold_all(desk: Desk, fitting: Fitting) -> None:
    """Fold every memory again, some at a time; broken off, it is begun again the next time."""
    after = None
    while True:
        with desk.store.writing() as work:
            reader = work.readers.get(desk.reader)
            items = work.fittings.folded(desk.reader, after, _AT_ONCE)
            if not items:
                break
            work.fittings.refold(
                desk.reader, [each for item in items if (each := _refolded(work, reader, item))]
            )
            work.commit()
        after = items[-1].item_id
    with desk.store.writing() as work:
        work.fittings.carried(desk.reader, fitting.id, fitting.moved_on)
        work.commit()


def _refolded(work: UnitOfWork, reader: Reader, item: FoldedItem) -> Refolded | None:
    answers = work.answers.of_item(reader.id, item.item_id)
    memory = reader.schedule(item.kind, item.care).fold(item.item_id, answers)
    if memory is None:
        return None
    # What is retired is asked on no day, so that its own moves unnoticed.
    return Refolded(item.item_id, memory, memory.due_on if item.retired else item.due_on)


def _move(desk: Desk) -> tuple[int, int]:
    """Move as many due days as a day allows, once a day; return how many did and how many wait."""
    with desk.store.writing() as work:
        reader = work.readers.lock(desk.reader)
        day = reader.days.of(desk.now())
        fitting = work.fittings.adopted(desk.reader, 1)[0]
        moved = 0
        if _may_move(fitting, day) and work.fittings.moving(desk.reader):
            moved = work.fittings.move(desk.reader, MOST_MOVED)
            work.fittings.carried(desk.reader, fitting.id, day)
            work.commit()
    with desk.store.reading() as work:
        return moved, work.fittings.moving(desk.reader)


def _may_move(fitting: Fitting, day: date) -> bool:
    return fitting.moved_on is None or fitting.moved_on < day
