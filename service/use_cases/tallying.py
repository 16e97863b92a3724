"""What the answers add up to is kept, so that retention costs the same however many there are.

The tallies hold every answer through some day and are brought on from day to day; an answer
that arrives later for a day they hold already, or is taken back, changes them in its own
transaction. They stay two days behind the reader's today, so that whoever records an answer for
today or yesterday need not wait: no transaction lasts so long.
"""

from collections.abc import Iterable
from datetime import date, timedelta

from cards.answers import Answer
from cards.items import KeptItem
from cards.retention.tally import Tally, TallyKey, difference, merged
from cards.retention.tallying import Counted, Tallying
from service.use_cases.learning_records import ItemAnswers
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import ReaderId

_BEHIND = timedelta(days=2)
_SETTLED = timedelta(days=1)
"""Answers given longer ago than so many days may be in the tallies already."""


def bring_on(desk: Desk) -> None:
    """Add to the tallies what was answered since, unless they hold it.

    What was answered is read before anything is locked, as that can take long the first time.
    Facts are only ever added, so their number tells whether any came in meanwhile.
    """
    with desk.store.reading() as work:
        day = work.readers.get(desk.reader).days.of(desk.now()) - _BEHIND
        through = work.tallies.through(desk.reader)
        if through is not None and through >= day:
            return
        facts = work.tallies.facts(desk.reader, day)
        since = _since(work, desk.reader, through, day)
    if through is None:
        through = _begin(desk)
    with desk.store.writing() as work:
        reached = work.tallies.lock(desk.reader)
        if reached is None or reached >= day:
            return
        if reached != through or work.tallies.facts(desk.reader, day) != facts:
            since = _since(work, desk.reader, reached, day)
        work.tallies.add(desk.reader, since)
        work.tallies.reach(desk.reader, day)
        work.commit()


def _begin(desk: Desk) -> date:
    """Have tallies that hold nothing yet: whoever changes them has a row to wait for."""
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        if work.tallies.through(desk.reader) is None:
            work.tallies.reach(desk.reader, date.min)
            work.commit()
    return date.min


def tallied(work: UnitOfWork, reader: ReaderId) -> dict[TallyKey, Tally]:
    """Return what all answers add up to: those in the tallies, and those since."""
    through = work.tallies.through(reader)
    return merged(work.tallies.all(reader), _since(work, reader, through, None))


def settle(
    work: UnitOfWork,
    reader: ReaderId,
    item: KeptItem,
    before: Iterable[Answer],
    after: Iterable[Answer],
    *,
    day: date,
    today: date,
) -> None:
    """Change the tallies where an answer of a day they may hold was added or taken back.

    Args:
        work: the transaction the answer changes in.
        reader: whose.
        item: it was given to.
        before: the item's answers without the change, in the order they happened.
        after: with it.
        day: of the answer that makes the difference.
        today: the reader's.
    """
    if day >= today - _SETTLED and not _told_already(work, reader, day):
        return
    through = work.tallies.lock(reader)
    if through is None or day > through:
        return
    kind, digest_id = item.item.kind, item.item.digest_id
    old, new = (
        _added_up([ItemAnswers(kind, digest_id, _counted(answers))], through)
        for answers in (before, after)
    )
    work.tallies.add(reader, difference(old, new))


def _told_already(work: UnitOfWork, reader: ReaderId, day: date) -> bool:
    """Tell, without waiting for anybody, whether the tallies hold a day that has hardly begun.

    They do where the clock ran ahead and was set right, or the reader flew over the date line.
    """
    through = work.tallies.through(reader)
    return through is not None and day <= through


def _since(
    work: UnitOfWork, reader: ReaderId, after: date | None, through: date | None
) -> dict[TallyKey, Tally]:
    """Return what answers after a day and through another change in the tallies."""
    if after is None or after == date.min:
        return _added_up(work.tallies.answers(reader, None, through), through)
    old, new = Tallying(), Tallying()
    for kind, digest_id, answers in work.tallies.answers(reader, after, through):
        old.add(kind, digest_id, answers, after)
        new.add(kind, digest_id, answers, through)
    return difference(old.tallies(), new.tallies())


def _added_up(every: Iterable[ItemAnswers], through: date | None) -> dict[TallyKey, Tally]:
    tallying = Tallying()
    for kind, digest_id, answers in every:
        tallying.add(kind, digest_id, answers, through)
    return tallying.tallies()


def _counted(answers: Iterable[Answer]) -> list[Counted]:
    return [
        Counted(each.day, each.grade, each.predicted, each.suggested, each.graded_first)
        for each in answers
    ]
