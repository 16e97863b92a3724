"""What the steps of retention share: the books Mira kept for a winter, and the doors she uses."""

from contextlib import ExitStack, contextmanager, nullcontext
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, time, timedelta
from functools import cache
from importlib import resources
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from typing import Any
from uuid import UUID

from click.testing import CliRunner, Result
from werkzeug.test import TestResponse

from cards.answers import GRADES, Answer, Grade
from cards.commitments import Outcome
from cards.parts import PartKind
from cards.schedule import Schedule
from service.cli import Tools, catchword
from service.main import desk_on
from service.store.sql_store import SqlStore
from service.use_cases.add_digest import add_digest
from service.use_cases.check_in import Report, check_in
from service.use_cases.items import list_items
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.records import ReaderId
from tests.standing import application_on, lay_empty_library

READER = ReaderId(UUID("00000000-0000-4000-8000-00000000abcd"))
BOOKS = ("franklin", "on-liberty", "great-expectations", "paradise-lost")
"""Digests that come with Catchword, of books in the public domain."""
FIRST = date(2026, 1, 5)
LAST = date(2026, 4, 5)
WINTER_MINUTES = 20
AS_FORETOLD = 1.0, 1869
MUCH_FASTER = 2.0, 4
"""The power to which what is foretold is taken, so that of ten that are to come back eight do; and
a seed of chance."""


@dataclass
class _Life:
    """The winter of a reader whose memory is known: what was foretold, to a power."""

    power: float
    chance: Random
    now: datetime

    def new_id(self) -> UUID:
        return UUID(int=self.chance.getrandbits(128), version=4)

    def grade(self, foretold: float) -> Grade:
        if self.chance.random() > foretold**self.power:
            return Grade.BLANK
        return self.chance.choices((Grade.HAZY, Grade.CLEAR, Grade.VIVID), (2, 7, 1))[0]


@contextmanager
def library_in(file: Path, now, reader=READER, **ids):
    """Open a reader's library in a file."""
    store = SqlStore(f"sqlite:///{file}")
    try:
        with desk_on(store, now, reader=reader, **ids) as desk:
            yield desk
    finally:
        store.close()


@cache
def a_winter(power: float, seed: int) -> bytes:
    """Return the library of a reader who kept four books for a winter."""
    life = _Life(power, Random(seed), datetime.combine(FIRST, time(8), UTC))
    with TemporaryDirectory() as folder:
        file = Path(folder) / "library.sqlite3"
        lay_empty_library(file)
        with library_in(file, lambda: life.now, new_id=life.new_id) as desk:
            set_preferences(desk, Preferences(time_zone="Europe/London", minutes=WINTER_MINUTES))
            _live(desk, life)
        return file.read_bytes()


def _live(desk, life: _Life) -> None:
    kept = []
    for name in BOOKS:
        text = resources.files("service.documents") / "demo_library" / f"{name}.md"
        kept.append(add_digest(desk, f"{name}.md", text.read_bytes()).kept)
    items = [view.kept.item for view in list_items(desk, limit=500).items]
    with desk.store.writing() as work:
        for number, item in enumerate(items):
            given = _answered(life, item.id, FIRST + timedelta(days=number % 30), number)
            for each in given:
                work.answers.add(desk.reader, each, each.answered_at)
            work.items.remember(desk.reader, item.id, Schedule().fold(item.id, given))
        work.commit()
    for week in range(1, 13):
        life.now = datetime.combine(FIRST, time(20), UTC) + timedelta(weeks=week)
        for each in kept:
            promise = each.held(PartKind.COMMITMENT)[0].id
            outcome = life.chance.choice((Outcome.KEPT, Outcome.PARTLY, Outcome.MISSED))
            check_in(desk, Report(life.new_id(), promise, outcome))


def _answered(life: _Life, item: UUID, day: date, minute: int) -> list[Answer]:
    """Answer an item on every day it is due, as the use cases would record it."""
    given, schedule = [], Schedule()
    while day < LAST:
        at = datetime.combine(day, time(18), UTC) + timedelta(minutes=minute)
        grade, mark = life.grade(0.8), life.chance.choice((None, *GRADES))
        answer = Answer(life.new_id(), item, grade, at, day, suggested=mark, seconds=30)
        foretold = schedule.predict(answer, given)
        if foretold is not None:
            answer = replace(answer, predicted=foretold, grade=life.grade(foretold))
        given.append(answer)
        day = schedule.fold(item, given).due_on
    return given


@dataclass
class Doors:
    """The doors of a library: pages in a browser without scripts, the API, the terminal.

    Attributes:
        mira: she, with her clock and her library.
        opened: what is to be shut at the end.
        seen: what came back last.
        noted: what she noted down to compare with later.
    """

    mira: Any
    opened: ExitStack
    seen: Any = None
    noted: Any = None

    @property
    def desk(self):
        """What the doors hand to the use cases."""
        return self.mira.desk

    def keeps_for_a_winter(self, memory: tuple[float, int]) -> None:
        """Put the library of a winter before her, on its last evening."""
        self.mira.on(LAST)
        file = self.mira.folder / "winter.sqlite3"
        file.write_bytes(a_winter(*memory))
        self.mira.desk = self.opened.enter_context(library_in(file, lambda: self.mira.now))

    def get(self, address: str) -> TestResponse:
        """Ask for an address."""
        with application_on(self.desk) as app:
            answer = app.test_client().get(address)
            answer.get_data()
            answer.close()
        return answer

    def post(self, address: str, form: dict[str, Any]) -> TestResponse:
        """Send a form as a page of hers would."""
        with application_on(self.desk) as app:
            answer = app.test_client().post(address, data=form)
            answer.get_data()
            answer.close()
        return answer

    def page(self, address: str) -> str:
        """Open a page."""
        answer = self.get(address)
        assert answer.status_code == 200, answer.text
        return answer.text

    def api(self, address: str) -> Any:
        """Ask the API."""
        answer = self.get(f"/api/{address}")
        assert answer.status_code == 200, answer.text
        return answer.json

    def terminal(self, *words: str) -> Result:
        """Run a command on the library."""
        tools = Tools(lambda: nullcontext(self.desk), no_tool, no_tool, no_tool)
        return CliRunner().invoke(catchword, list(words), obj=tools, env={"NO_COLOR": "1"})

    def says(self, *words: str) -> str:
        """Run a command that must succeed, and return what it prints."""
        result = self.terminal(*words)
        assert result.exit_code == 0, result.output
        return result.stdout


def no_tool(*_: Any) -> Any:
    """Stand for what no scenario of these needs."""
    raise AssertionError
