"""What the steps of commitments share: what Mira promised, what she says of it, how it stands."""

from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from functools import partial
from uuid import UUID, uuid4

from parse import with_pattern
from pytest_bdd import parsers

from cards.commitments import Act, CheckIn, Decision, Outcome, Pace, Stand
from cards.kinds.base import KindName
from cards.parts import PartKind
from service.use_cases.add_digest import add_digest
from service.use_cases.bringing_up import brought_up
from service.use_cases.check_in import Report, check_in
from service.use_cases.commitments import HeldCommitment, open_commitment
from service.use_cases.decide import Ruling, decide
from service.use_cases.standing import stands_on

DAY = timedelta(days=1)
A_MOMENT = timedelta(seconds=20)
"""What it takes to say a thing: no two are said at one instant."""


@with_pattern(r"\d{1,2} [A-Z][a-z]+(?: \d{4})?")
def day_of(said: str) -> date:
    """Read a day; of 2026 unless it says its year."""
    whole = said if said[-4:].isdigit() else f"{said} 2026"
    return datetime.strptime(whole, "%d %B %Y").date()  # noqa: DTZ007


@with_pattern("|".join(Pace))
def pace_of(said: str) -> Pace:
    """Read how a promise stands."""
    return Pace(said)


@with_pattern("|".join(Outcome))
def outcome_of(said: str) -> Outcome:
    """Read what came of a promise."""
    return Outcome(said)


told = partial(parsers.parse, extra_types={"Day": day_of, "Pace": pace_of, "Outcome": outcome_of})
"""A step in which days, paces and outcomes are read."""


def days_to(first: date, last: date) -> list[date]:
    """Return the days from one to another, both among them."""
    return [first + DAY * number for number in range((last - first).days + 1)]


@dataclass
class Keeping:
    """Mira and what she promised.

    Attributes:
        mira: she, with her clock and her library.
        ids: of what she promised, in the order she did.
        digests: the books that asked it, in the same order.
        books: the number of the last promise of each book, by its title.
        made_on: the day of the last promise.
        reported: what she said of it, the latest last.
        decision: what she decided last.
        noted: what she noted down to compare with later.
    """

    mira: object
    ids: list[UUID] = field(default_factory=list)
    digests: list[UUID] = field(default_factory=list)
    books: dict[str, int] = field(default_factory=dict)
    made_on: date = date.min
    reported: list[CheckIn] = field(default_factory=list)
    decision: Decision | None = None
    noted: object = None

    @property
    def desk(self):
        """What the doors would hand to the use cases."""
        return self.mira.desk

    def promises(self, *words: str, finished: date, title: str = "Silas Marner") -> None:
        """Hand in the digest of a book finished on a day, that asks something of her."""
        asked = "\n".join(f"{number}. {each}" for number, each in enumerate(words, 1))
        text = f"# {title}\n\nFinished: {finished}\n\n## Commitments\n\n{asked}\n"
        kept = add_digest(self.desk, f"{title}.md", text.encode()).kept
        found = kept.held(PartKind.COMMITMENT)
        assert [each.text for each in found] == list(words)
        self.ids += [each.id for each in found]
        self.digests += [kept.id] * len(found)
        self.books[title] = len(self.ids) - 1
        self.made_on = finished

    def says(self, outcome: Outcome, day: date | None = None, which: int = 0, **said) -> CheckIn:
        """Report what came of a promise, today unless a day is said."""
        report = Report(uuid4(), self.ids[which], outcome, day, **said)
        self.reported.append(check_in(self.desk, report))
        self.mira.now += A_MOMENT
        return self.reported[-1]

    def decides(self, act: Act, which: int = 0, **said) -> Decision:
        """Decide about a promise, today unless a day is said."""
        self.decision = decide(self.desk, Ruling(uuid4(), self.ids[which], act, **said))
        self.mira.now += A_MOMENT
        return self.decision

    def held(self, which: int = 0, on: date | None = None) -> HeldCommitment:
        """Look at a promise, today or as it stands on a day."""
        return open_commitment(self.desk, self.ids[which], on=on).held

    def stand(self, on: date | None = None, which: int = 0) -> Stand:
        """Look at how a promise stands, today or on a day."""
        return self.held(which, on).stand

    def paces(self, first: date, last: date, which: int = 0) -> list[Pace]:
        """Look at how a promise stands on each of some days."""
        with self.desk.store.reading() as work:
            kept = work.commitments.get(self.desk.reader, self.ids[which])
            stands = (
                stands_on(work, self.desk.reader, [kept], day) for day in days_to(first, last)
            )
            return [each[self.ids[which]].pace for each in stands]

    def restated(self) -> set[UUID]:
        """Look at which promises today's sitting asks her to restate."""
        kept = [each.kept.item for each in self.mira.sitting().items]
        return {each.part_id for each in kept if each.kind is KindName.RESTATE}

    def brought_up(self) -> UUID | None:
        """Look at which promise today's sitting brings up when it is done."""
        held = brought_up(self.desk)
        return None if held is None else held.id
