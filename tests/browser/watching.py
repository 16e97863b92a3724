"""Watching a page: whether it was loaded anew, and whether anything on it moved."""

from playwright.sync_api import Page

SHIFTS = """window.shifts = [];
new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) window.shifts.push(entry.value);
}).observe({ type: "layout-shift", buffered: true });"""
"""Counts what the browser itself takes for a shift of the layout."""


def still(page: Page) -> None:
    """Wait until the page is painted, and hold that nothing on it has moved."""
    page.evaluate("() => new Promise((done) => requestAnimationFrame(() => setTimeout(done)))")
    assert page.evaluate("window.shifts") == []


def marked(page: Page) -> None:
    """Leave a mark on the document that a full reload would lose."""
    page.evaluate("document.documentElement.dataset.marked = 'yes'")
