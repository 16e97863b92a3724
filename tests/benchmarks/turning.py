"""How soon the next page of a sitting is shown once the server has answered, in a browser.

From the last byte of the answer, by the browser's own resource timing, to the frame after
the one in which the page was put in place: reading, parsing, putting and painting it.
"""

import re
from statistics import median

from playwright.sync_api import Page, expect

from tests.browser.ways import say_kept

LIMIT = 50.0
"""Milliseconds at the median over a whole sitting: the capability's own bound."""

_WATCH = """window.shown = [];
document.addEventListener("turned", () =>
    requestAnimationFrame(() => setTimeout(() => window.shown.push(performance.now()))));"""
_ANSWERED = """performance.getEntriesByType("resource")
    .filter((entry) => entry.initiatorType === "fetch")
    .map((entry) => entry.responseEnd)"""


def measure(page: Page, address: str) -> float:
    """Walk today's sitting to its end; return the median milliseconds from answer to page."""
    page.add_init_script(_WATCH)
    page.goto(address)
    while not page.locator(".closing").count():
        page.get_by_role("button", name=re.compile("Nothing comes back|I can’t tell")).click()
        expect(page.locator(".grades")).to_be_visible()
        page.locator("[value=clear]").check(force=True)
        page.get_by_role("button", name="Next").click()
        expect(page.locator(".grades")).to_have_count(0)
        say_kept(page)
    page.wait_for_function(f"window.shown.length === {_ANSWERED}.length")
    answered, shown = sorted(page.evaluate(_ANSWERED)), page.evaluate("window.shown")
    return median(later - earlier for earlier, later in zip(answered, shown, strict=True))
