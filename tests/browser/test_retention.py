"""The pages of retention in the browser: accessible, whole at 320 pixels, quiet on the console."""

from uuid import uuid4

from cards.answers import Grade
from cards.kinds.base import KindName
from cards.parts import Care
from service.use_cases.add_digest import add_digest
from service.use_cases.answer import record_answer
from service.use_cases.care import set_care
from service.use_cases.items import list_items
from service.use_cases.recording import GivenAnswer
from tests.browser.accessible import faults
from tests.browser.conftest import Live, Opened
from tests.pages.house import DIGEST

LONG = "Llanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogoch" * 3


def test_the_pages_of_retention_stand_well(live: Live, opened: Opened) -> None:
    """With answers, a book of an endless name and one kept close, nothing is wrong with a page."""
    long = DIGEST.replace("title: Silas Marner", f"title: {LONG}")
    other = add_digest(live.desk, "long.md", long.encode())
    set_care(live.desk, other.kept.id, Care.CLOSE)
    for days in range(2):
        for each in list_items(live.desk).items:
            blank = days and each.kept.item.kind is KindName.THEME
            grade = Grade.BLANK if blank else Grade.CLEAR
            record_answer(live.desk, GivenAnswer(uuid4(), each.kept.item.id, grade))
        live.clock.next_day(5)
    page = opened(bypass_csp=True)
    for address in ("/retention", "/retention/predictions", "/retention/target"):
        page.goto(live.address + address)
        for summary in page.locator("main summary").all():
            summary.click()
        assert faults(page) == {}, address
