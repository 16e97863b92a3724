"""Giving an attempt in whatever way it is asked, and walking through every kind of item."""

from collections.abc import Iterator

from playwright.sync_api import Page, expect

from cards.kinds.base import KindName
from tests.browser.conftest import Live
from tests.pages.sittings import only

WORDS = "The theft of his gold empties the hearth"


def compare(page: Page) -> None:
    """Press Compare, and wait for the comparison."""
    page.get_by_role("button", name="Compare").click()
    expect(page.locator(".grades")).to_be_visible()


def go_on(page: Page) -> None:
    """Grade it clear, whatever was suggested, and go on; what a commitment came to, too."""
    page.locator("[value=clear]").check(force=True)
    page.get_by_role("button", name="Next").click()
    expect(page.locator(".grades")).to_have_count(0)
    say_kept(page)


def say_kept(page: Page) -> None:
    """Where a restated commitment is asked about, say that it was kept."""
    if page.locator("fieldset.came").count():
        page.get_by_role("button", name="kept").click()
        expect(page.locator("fieldset.came")).to_have_count(0)


def attempt(page: Page, words: str = WORDS) -> str:
    """Give an attempt by the pointer, and return the way it was asked."""
    if page.locator("#words").count():
        page.fill("#words", words)
        return "words"
    if page.locator(".blank").count():
        for blank in page.locator(".blank").all():
            blank.fill("came")
        return "blanks"
    if page.locator(".order").count():
        if page.locator(".order.live").count():
            for _ in range(2):
                page.locator(".order li:not(.placed) .put").first.click()
        else:
            for place, field in enumerate(page.locator(".order select").all()[:2], 1):
                field.select_option(str(place))
        return "order"
    if page.locator("[name=book]").count():
        page.locator("[name=book]").first.check()
        return "book"
    if page.locator("[name=gap]").count():
        page.locator("[name=gap]").nth(1).check(force=True)
        return "gap"
    way = "page" if page.locator("[name=page]").count() else "chapter"
    page.fill(f"[name={way}]", "40")
    return way


def every_kind(page: Page, live: Live, words: str = WORDS) -> Iterator[str]:
    """Ask one item of every kind, and name each page of it: asked, compared."""
    for kind in KindName:
        only(live.desk, kind)
        page.goto(live.address)
        yield f"{kind} asked"
        attempt(page, words)
        compare(page)
        yield f"{kind} compared"
