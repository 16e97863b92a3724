"""An invented reader's year: digests are added, sittings held, commitments reported on.

Everything goes through the same use cases as a reader's own library; only the clock
and the answers are simulated, from a seeded source, so that the same day and seed give
the same library.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, time, timedelta
from random import Random
from uuid import UUID

from cards.answers import Grade, graded_first
from cards.kinds.base import Attempt
from cards.parts import PartKind
from service.use_cases.add_digest import add_digest, read_digest
from service.use_cases.answer import compare, record_answer
from service.use_cases.demo_answers import invented
from service.use_cases.demo_links import link_demo
from service.use_cases.demo_promises import Promises
from service.use_cases.items import ItemView
from service.use_cases.learning import learn
from service.use_cases.mend_digest import mend_digest
from service.use_cases.ports import Desk
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.recording import GivenAnswer
from service.use_cases.sit import todays_sitting
from service.use_cases.tallying import bring_on

YEAR = 365
"""Days of the simulated year."""
NEWEST = 2
"""Days before the end on which the last digest is added: all of it is unasked yet."""
AWAY = 4
"""Days at the end on which the invented reader did not sit down, so that some items are due."""
_SITS = 0.86
"""Share of days on which the invented reader sits down."""
_MOST_A_DAY = 12
"""Items answered on one day at the most: some ten minutes."""


@dataclass(frozen=True, slots=True)
class DemoFile:
    """A digest of the demo library as it ships: its file's name and its bytes."""

    name: str
    content: bytes


@dataclass
class _Life:
    """The simulated reader: their clock, their chance, and how they keep what they promise."""

    chance: Random
    now: datetime
    promises: Promises

    def new_id(self) -> UUID:
        return UUID(int=self.chance.getrandbits(128), version=4)


def found_demo(
    desk: Desk,
    files: Sequence[DemoFile],
    seed: int,
    progress: Callable[[float], None] = lambda _: None,
) -> None:
    """Fill an empty library with an invented reader's year, up to yesterday.

    Args:
        desk: of the empty library; its clock says when the year ends.
        files: the digests, in any order; they arrive in the order they were finished.
        seed: of the simulated answers and check-ins.
        progress: told the share of the year that is done, 0 to 1.
    """
    end = desk.now().date()
    chance = Random(seed)  # noqa: S311 - a simulated reader, no secret
    life = _Life(chance, desk.now(), Promises(chance))
    own = replace(desk, now=lambda: life.now, new_id=life.new_id)
    arrivals = _arrivals(_by_finish(desk, files), end)
    for offset in range(YEAR, 0, -1):
        day = end - timedelta(days=offset)
        life.now = datetime.combine(day, time(18, life.chance.randrange(60)), UTC)
        for file in arrivals.get(day, ()):
            _finish(own, life, file, day)
        if offset == YEAR // 2:
            link_demo(own)
        ill = life.promises.is_ill(day, end)
        if offset > AWAY and not ill and life.chance.random() < _SITS:
            _sit(own, life)
        if offset > AWAY:
            life.promises.live_through(own, day, end)
        progress(1 - (offset - 1) / YEAR)
    life.now = desk.now()
    set_preferences(own, Preferences(unasked_a_day=4))
    bring_on(own)
    learn(own)


def _by_finish(desk: Desk, files: Sequence[DemoFile]) -> list[DemoFile]:
    def finished(file: DemoFile) -> tuple[date, str]:
        digest = read_digest(desk, file.name, file.content).digest
        return digest.finished_on or date.max, file.name

    return sorted(files, key=finished)


def _arrivals(files: Sequence[DemoFile], end: date) -> dict[date, list[DemoFile]]:
    """Spread the digests evenly over the year; the first two stand at its beginning."""
    arrivals: dict[date, list[DemoFile]] = {}
    gaps = max(1, len(files) - 2)
    for index, file in enumerate(files):
        share = max(0, index - 1) / gaps
        before_end = round(YEAR - share * (YEAR - NEWEST))
        arrivals.setdefault(end - timedelta(days=before_end), []).append(file)
    return arrivals


def _finish(desk: Desk, life: _Life, file: DemoFile, day: date) -> None:
    kept = add_digest(desk, file.name, file.content).kept
    finished = replace(kept.digest(), finished_on=day - timedelta(days=life.chance.randrange(1, 9)))
    kept = mend_digest(desk, kept.id, finished)
    for part in kept.held(PartKind.COMMITMENT):
        life.promises.make(part.id, day)


def _sit(desk: Desk, life: _Life) -> None:
    """Hold a sitting: what is asked, then once more what came back blank."""
    left = _MOST_A_DAY
    for _ in range(2):
        for item in todays_sitting(desk).items[:left]:
            _answer(desk, life, item)
            left -= 1


def _answer(desk: Desk, life: _Life, item: ItemView) -> None:
    seconds = life.chance.randrange(10, 60)
    life.now += timedelta(seconds=seconds + life.chance.randrange(4, 12))
    grade = _grade(life.chance, item)
    compared = compare(desk, item.kept.item.id, Attempt())
    attempt = invented(life.chance, item, compared.answered, grade)
    first = not attempt.empty and graded_first(item.kept.item.id, compared.asked)
    given = GivenAnswer(
        life.new_id(),
        item.kept.item.id,
        grade,
        attempt=attempt,
        seconds=seconds,
        graded_first=first,
    )
    record_answer(desk, given)


def _grade(chance: Random, item: ItemView) -> Grade:
    """Draw a grade: what the memory model predicts, a little worse for quotations."""
    recall = 0.72 if item.recall is None else item.recall
    if item.kept.item.kind.value == "place":
        recall -= 0.06
    if chance.random() > recall:
        return Grade.BLANK if chance.random() < 0.6 else Grade.HAZY
    return Grade.VIVID if chance.random() < 0.15 else Grade.CLEAR
