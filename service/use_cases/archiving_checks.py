"""What was brought back is read once more, as every page would read it, before it is kept."""

import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import closing, contextmanager
from datetime import UTC, date, datetime
from itertools import islice
from typing import Any, TypeAlias, cast
from uuid import UUID

from cards.answers import Answer, Grade
from cards.commitments import Decision, Measure
from cards.commitments.measures_held import BYDAY
from cards.errors import CatchwordError, InvalidArchive, Refusal
from cards.intake.heading_words import heading_words
from cards.items import occasion_of
from cards.kinds import KINDS
from cards.kinds.base import KindName
from cards.parts import Care, KeptDigest
from cards.rereading import Rereading
from cards.schedule import TARGET
from service.use_cases.archiving_records import Archive, FactTable, Row
from service.use_cases.archiving_types import check_types
from service.use_cases.commitment_records import KeptCommitment
from service.use_cases.learning_records import Fitting
from service.use_cases.records import Draft, Reader, ReaderId
from service.use_cases.sitting_records import Sheet
from service.use_cases.unit_of_work import UnitOfWork

_AT_ONCE = 200
"""Answers read with one statement."""
_MOST_HELD = 500
"""Digests kept at hand for their items."""
_MOST_FITTINGS = 1_000
"""Fits read back with one statement: thirty years of one a fortnight."""
_TOGETHER = frozenset({"heading_words", "fittings"})
"""Read whole, so but once: again for each of them, many would take the square of their number."""
_ANY = UUID(int=0)
_FIRST = (Answer(_ANY, _ANY, Grade.CLEAR, datetime(2000, 1, 1, tzinfo=UTC), date(2000, 1, 1)),)
"""An answer like any other, to try weights on."""
_Keys: TypeAlias = Mapping[str, Any]


class _Checks:
    """Reads back what one reader has, each fact through what is built of it.

    Each check takes the key and the values of one fact, and lets out whatever it raises.
    """

    def __init__(self, work: UnitOfWork, reader: ReaderId) -> None:
        self._work = work
        self._reader = reader
        self._held: dict[UUID, KeptDigest] = {}
        self._day: date | None = None

    def readers(self, _: _Keys) -> None:
        reader = self._work.readers.get(self._reader)
        check_types(reader, Reader)
        for kind in KindName:
            reader.schedule(kind, Care.CLOSE).fold(reader.id, _FIRST)

    def digests(self, row: _Keys) -> None:
        self._digest(row["id"]).digest()
        self._work.books.anchors(self._reader, row["id"])
        self._work.books.name(self._reader, row["id"])

    def versions(self, row: _Keys) -> None:
        version = self._work.versions.get(self._reader, row["digest_id"], row["revision"])
        assert version is not None
        check_types(version.kept, KeptDigest)
        version.kept.digest()
        if (version.kept.id, version.kept.revision) != (row["digest_id"], row["revision"]):
            raise ValueError(version)

    def items(self, row: _Keys) -> None:
        kept = self._work.items.get(self._reader, row["id"])
        assert kept is not None
        occasion = occasion_of(kept, self._digest(kept.item.digest_id), ())
        if not (kept.item.retired or occasion.part.retired):
            KINDS[kept.item.kind].cue(occasion)

    def answers_of(self, item: UUID) -> None:
        after: tuple[datetime, UUID] | None = None
        while page := self._work.answers.history(self._reader, item, after, _AT_ONCE):
            after = (page[-1].answer.answered_at, page[-1].answer.id)

    def answers(self, row: _Keys) -> None:
        self._work.answers.get(self._reader, row["id"])

    def check_ins(self, row: _Keys) -> None:
        self._work.check_ins.get(self._reader, row["id"])

    def commitments(self, row: _Keys) -> None:
        kept = self._work.commitments.get(self._reader, row["id"])
        check_types(kept, KeptCommitment)
        assert kept is not None
        _check_measure(kept.commitment.measure)

    def decisions(self, row: _Keys) -> None:
        decision = self._work.decisions.get(self._reader, row["id"])
        check_types(decision, Decision)
        assert decision is not None
        _check_measure(decision.measure)

    def rereadings(self, row: _Keys) -> None:
        check_types(self._work.rereadings.get(self._reader, row["id"]), Rereading)

    def talks(self, row: _Keys) -> None:
        self._work.talks.get(self._reader, row["id"])

    def links(self, row: _Keys) -> None:
        self._work.links.get(self._reader, row["id"])

    def sheets(self, row: _Keys) -> None:
        check_types(self._work.sheets.get(self._reader, row["id"]), Sheet)

    def sitting_days(self, row: _Keys) -> None:
        self._work.days.minutes(self._reader, row["day"])

    def left_out(self, row: _Keys) -> None:
        if row["day"] != self._day:  # of one day, one reading tells of all that are left out
            self._work.days.left_out(self._reader, row["day"])
            self._day = row["day"]

    def drafts(self, row: _Keys) -> None:
        check_types(self._work.drafts.get(self._reader, row["id"]), Draft)

    def heading_words(self, _: _Keys) -> None:
        heading_words(self._work.headings.all(self._reader))

    def fittings(self, _: _Keys) -> None:
        check_types(self._work.fittings.latest(self._reader), Fitting | None)
        for fitting in self._work.fittings.adopted(self._reader, _MOST_FITTINGS):
            check_types(fitting, Fitting)
            fitting.weighting.schedule(KindName.THEME, TARGET).fold(self._reader, _FIRST)

    def reminders(self, _: _Keys) -> None:
        self._work.reminding.get(self._reader)

    def _digest(self, digest_id: UUID) -> KeptDigest:
        found = self._held.get(digest_id)
        if found is None:
            if len(self._held) >= _MOST_HELD:
                self._held.clear()
            kept = self._work.digests.get(self._reader, digest_id)
            assert kept is not None
            found = self._held[digest_id] = kept
        return found


def _check_measure(measure: Measure | None) -> None:
    """Raise ValueError where periods could not be told apart by a measure, or their days."""
    if measure is None:
        return
    counts = (measure.times, measure.every, measure.periods, measure.minutes)
    if any(count is not None and count < 1 for count in counts):
        raise ValueError(measure)
    if not all(re.fullmatch(BYDAY, day) for day in measure.on):
        raise ValueError(measure)


def check(work: UnitOfWork, reader: ReaderId, archive: Archive) -> None:
    """Read back everything a reader has.

    Raises:
        InvalidArchive: something is not what Catchword could have kept; names its place.
    """
    checks = _Checks(work, reader)
    tables = {table.name: table for table in work.facts.tables}
    for name, table in tables.items():
        look: Callable[[_Keys], None] | None = getattr(checks, name, None)
        if look is None:
            continue
        if name == "answers":
            _check_answers(work, reader, tables, archive, checks)
            continue
        with closing(work.facts.rows(reader, table)) as rows:
            for row in islice(rows, 1) if name in _TOGETHER else rows:
                with _placed(archive, table, row):
                    look(row)


def _check_answers(
    work: UnitOfWork,
    reader: ReaderId,
    tables: Mapping[str, FactTable],
    archive: Archive,
    checks: _Checks,
) -> None:
    """Read the answers item by item, and one by one where something is amiss."""
    for item in work.facts.rows(reader, tables["items"]):
        try:
            checks.answers_of(cast("UUID", item["id"]))
        except Exception:
            for row in work.facts.rows(reader, tables["answers"]):
                if row["item_id"] == item["id"]:
                    with _placed(archive, tables["answers"], row):
                        checks.answers(row)
            raise


@contextmanager
def _placed(archive: Archive, table: FactTable, row: Row) -> Iterator[None]:
    """Refuse whatever cannot be built of a fact, and say where it stands."""
    try:
        yield
    except Exception as error:
        if isinstance(error, CatchwordError) and not isinstance(error, Refusal):
            raise  # the store could not be read: no fault of the archive's
        place = archive.place(table.name, {name: row[name] for name in table.key})
        why = error.message if isinstance(error, Refusal) else "It is not what Catchword keeps."
        # A refusal may say again what it was given, and whoever made the archive gave it.
        plain = "".join(letter if letter.isprintable() else "�" for letter in why)
        raise InvalidArchive(f"{place}, cannot be read back: {plain}", where=place) from error
