"""An invented reader's year, walked: ten books, some thirty commitments, two months of illness."""

import re
from collections.abc import Iterator
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from uuid import UUID

import pytest
from playwright.sync_api import expect

from cards.commitments import Pace
from service.use_cases import found_demo
from service.use_cases.commitments import all_commitments
from service.use_cases.demo_promises import ILL_BEFORE_END, ILL_FOR
from service.use_cases.found_demo import DemoFile
from service.use_cases.ports import Desk
from service.use_cases.rereading import list_rereading
from tests.browser.conftest import Opened, served
from tests.pages.house import library

DEMO = Path(found_demo.__file__).parent.parent / "documents" / "demo_library"
NOW = datetime(2026, 11, 24, 20, tzinfo=UTC)
END = NOW.date()
WELL = END - timedelta(days=ILL_BEFORE_END - ILL_FOR)
SEED = 1869


@pytest.fixture(scope="module")
def year(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Desk]:
    """The year as it was lived, up to today, with few sittings: it is about what was promised."""
    files = [
        DemoFile(file.name, file.read_bytes()) for file in DEMO.iterdir() if file.suffix != ".txt"
    ]
    with (
        library(tmp_path_factory.mktemp("year"), lambda: NOW) as desk,
        pytest.MonkeyPatch.context() as patched,
    ):
        patched.setattr(found_demo, "_SITS", 0.1)
        found_demo.found_demo(desk, files, SEED)
        yield desk


def test_an_illness_stalls_nothing(year: Desk) -> None:
    """When the reader is well again, what recurs does not stall for the months of illness."""
    before = stalled(year, WELL - timedelta(days=ILL_FOR))
    for days in range(10):
        assert stalled(year, WELL + timedelta(days=days)) <= before
    held = all_commitments(year, WELL).by_pace.values()
    assert sum(len(those) for those in held) >= 12


def stalled(desk: Desk, day: date) -> set[UUID]:
    """Return what recurs and is stalled on a day."""
    found = all_commitments(desk, day).by_pace.get(Pace.STALLED, ())
    return {each.id for each in found if each.stand and not each.stand.life.term.once}


def test_the_year_can_be_walked(year: Desk, opened: Opened) -> None:
    """What wants a word stands first, the list names few books and says why, a word is one tap."""
    listed = list_rereading(year)
    assert 1 <= len(listed.books) <= 5
    with served(year) as address:
        page = opened()
        page.goto(f"{address}/commitments")
        promises = page.locator("li.promise")
        assert promises.count() >= 20
        first = promises.first
        expect(first).to_contain_text(re.compile("Stalled|Slipping"))
        first.get_by_role("button", name="kept").click()
        expect(page.get_by_role("status").filter(has_text="kept")).to_be_visible()
        page.get_by_role("button", name="Take it back").click()
        expect(page.locator(".last-said[role=status]")).to_have_count(0)
        page.get_by_role("link", name="Re-reading").click()
        expect(page.get_by_role("heading", level=1)).to_have_text("Books to open again")
        for book in listed.books:
            expect(page.get_by_role("link", name=book.title)).to_be_visible()
        page.goto(f"{address}/review/{END.year}")
        expect(page.get_by_role("main")).to_contain_text(re.compile(r"3\d commitments of 10 books"))
