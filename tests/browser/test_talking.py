"""The talk and the yearly review in the browser: accessible, and whole at 320 pixels."""

from collections.abc import Iterator
from uuid import UUID, uuid4

from playwright.sync_api import Page

from cards.commitments import Act, Outcome
from cards.parts import PartKind
from service.use_cases.add_digest import add_digest
from service.use_cases.check_in import Report, check_in
from service.use_cases.decide import Ruling, decide
from service.use_cases.library import open_digest
from service.use_cases.talking import HeldTalk, record_talk
from tests.browser.accessible import NARROW, faults
from tests.browser.conftest import Live, Opened
from tests.browser.test_looks import LONG, forgive_refusals, press
from tests.pages.house import DIGEST


def walk(page: Page, live: Live) -> Iterator[str]:
    """Go through the talk of a book with long words, and the review of its year."""
    digest_id = UUID(live.digest_id)
    first, second = open_digest(live.desk, digest_id).kept.held(PartKind.COMMITMENT)
    check_in(live.desk, Report(uuid4(), first.id, Outcome.KEPT))
    decide(live.desk, Ruling(uuid4(), second.id, Act.RELEASE, words=LONG))
    other = DIGEST.replace("Silas Marner", LONG).replace("ask Hanne", "never ask Hanne")
    add_digest(live.desk, "other.md", other.encode())
    record_talk(live.desk, HeldTalk(uuid4(), digest_id, listener=LONG[:200], minutes=75, note=LONG))
    for minutes in (15, 80):
        page.goto(f"{live.address}/books/{digest_id}/talk?minutes={minutes}")
        for summary in page.locator("summary").all():
            summary.click()
        yield f"talk of {minutes} minutes"
    page.fill("#minutes", "many")
    page.fill("#resolved", LONG)
    press(page, "button", "Keep the talk")
    yield "talk, refused"
    page.fill("#minutes", "75")
    press(page, "button", "Keep the talk")
    yield "talk, kept"
    for year in (2026, 2025):
        page.goto(f"{live.address}/review/{year}")
        yield f"review of {year}"


def test_they_are_accessible_and_fit(live: Live, opened: Opened) -> None:
    """Axe-core finds nothing (WCAG 2.2 AA), and at 320 pixels nothing scrolls sideways (1.4.10)."""
    page = opened(bypass_csp=True, viewport=NARROW)
    found = {}
    for name in walk(page, live):
        if wrong := faults(page):
            found[name] = wrong
    forgive_refusals(opened)
    assert found == {}
