"""The re-reading list in the browser: accessible, and whole at 320 pixels."""

from collections.abc import Iterator
from uuid import UUID, uuid4

from playwright.sync_api import Page

from cards.answers import Grade
from cards.kinds.base import KindName
from service.use_cases.add_digest import add_digest
from service.use_cases.answer import record_answer
from service.use_cases.items import list_items
from service.use_cases.recording import GivenAnswer
from service.use_cases.rereading import ReadAgain, record_rereading
from tests.browser.accessible import NARROW, faults
from tests.browser.conftest import Live, Opened
from tests.browser.test_looks import LONG, forgive_refusals, press
from tests.pages.house import DIGEST


def walk(page: Page, live: Live) -> Iterator[str]:
    """Go through the list of two forgotten books, one read again, one with long words."""
    page.goto(f"{live.address}/re-reading")
    yield "nothing to open"
    other = DIGEST.replace("Silas Marner", LONG).replace("(Finale)", f"({LONG[:150]})")
    long = add_digest(live.desk, "other.md", other.encode())
    for _ in range(2):
        for view in list_items(live.desk, kind=KindName.THEME, limit=10).items:
            record_answer(live.desk, GivenAnswer(uuid4(), view.kept.item.id, Grade.BLANK))
        live.clock.next_day()
    page.goto(f"{live.address}/re-reading")
    for summary in page.locator("summary").all():
        summary.click()
    yield "two books"
    page.fill(f"#minutes-{long.kept.id}", "many")
    page.fill(f"#pages-{long.kept.id}", LONG[:200])
    with page.expect_navigation():
        page.locator(f"#minutes-{long.kept.id}").press("Enter")
    yield "refused"
    page.fill(f"#minutes-{long.kept.id}", "20")
    press(page, "button", "Keep it")
    yield "kept"
    again = ReadAgain(uuid4(), UUID(live.digest_id), pages=LONG[:200], minutes=20, note=LONG)
    record_rereading(live.desk, again)
    page.goto(f"{live.address}/re-reading")
    yield "told of"


def test_it_is_accessible_and_fits(live: Live, opened: Opened) -> None:
    """Axe-core finds nothing (WCAG 2.2 AA), and at 320 pixels nothing scrolls sideways (1.4.10)."""
    page = opened(bypass_csp=True, viewport=NARROW)
    found = {}
    for name in walk(page, live):
        if wrong := faults(page):
            found[name] = wrong
    forgive_refusals(opened)
    assert found == {}
