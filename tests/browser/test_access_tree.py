"""A whole sitting done through the accessibility tree alone: by roles and names."""

import re

import pytest
from playwright.sync_api import Locator, Page, expect

from cards.kinds.base import KindName
from service.use_cases.items import list_items
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.records import MOST_MINUTES, MOST_UNASKED_A_DAY
from tests.browser.conftest import Live, Opened
from tests.pages.sittings import only

HEADINGS = {
    "Recall the theme": KindName.THEME,
    "Say the commitment again": KindName.RESTATE,
    "Recall the point": KindName.NEXT,
    "Recall the next point": KindName.NEXT,
    "Put the points in order": KindName.ORDER,
    "Complete the quotation": KindName.COMPLETE,
    "Whose words are these?": KindName.SOURCE,
    "Place this in the plot": KindName.PLACE,
    "Across your books": KindName.ACROSS,
}
"""What each kind of item says it is, at its first asking."""


def shown(found: Locator) -> bool:
    """Tell whether anything fits."""
    return found.count() > 0


def attempt(page: Page) -> str:
    """Give an attempt by what a listener is told of, and return the way it was asked."""
    main = page.get_by_role("main")
    for give in (_write, _put_in_order, _give_places, _choose, _number):
        way = give(page, main)
        if way:
            return way
    raise AssertionError(f"no way to answer is told of:\n{main.aria_snapshot()}")


def _write(_: Page, main: Locator) -> str:
    for way, name in (
        ("words", "What you remember"),
        ("blanks", re.compile(r"^Blank \d+ of \d+$")),
    ):
        fields = main.get_by_role("textbox", name=name)
        for field in fields.all():
            field.fill("The theft of his gold")
        if shown(fields):
            return way
    return ""


def _put_in_order(page: Page, main: Locator) -> str:
    put = main.get_by_role("button", name=re.compile("^Put next: "))
    if not shown(put):
        return ""
    number = put.count()
    for _ in range(number):
        put.first.click()
    expect(main.get_by_role("button", name=re.compile(r"^Place \d+: "))).to_have_count(number)
    main.get_by_role("button", name=re.compile("^up: ")).last.click()
    expect(page.get_by_role("status").first).to_contain_text(f"Place {number - 1} of {number}")
    main.get_by_role("button", name=re.compile("^out: ")).last.click()
    return "order"


def _give_places(_: Page, main: Locator) -> str:
    places = main.get_by_role("combobox", name=re.compile("^Place of: "))
    if not shown(places):
        return ""
    places.nth(1).select_option("1")
    places.nth(0).select_option("2")
    return "order"


def _choose(_: Page, main: Locator) -> str:
    for way, name in (("book", "Which of your books?"), ("gap", "Where does it stand?")):
        radios = main.get_by_role("group", name=name).get_by_role("radio")
        if shown(radios):
            radios.first.check(force=True)
            return way
    return ""


def _number(_: Page, main: Locator) -> str:
    for way in ("Page", "Chapter"):
        field = main.get_by_role("textbox", name=way, exact=True)
        if shown(field):
            field.fill("40")
            return way.lower()
    return ""


@pytest.mark.parametrize("script", [True, False], ids=["with script", "without script"])
def test_a_sitting_through_the_accessibility_tree(
    shelf: Live, opened: Opened, *, script: bool
) -> None:
    """Every kind of item is asked, answered and graded by roles and names alone."""
    minutes, unasked = MOST_MINUTES, MOST_UNASKED_A_DAY
    set_preferences(shelf.desk, Preferences(unasked_a_day=unasked, minutes=minutes))
    kinds: set[KindName] = set()
    ways: set[str] = set()
    page = opened(java_script_enabled=script)
    # What one item shows of another is asked on another day.
    for _ in range(8):
        page.goto(shelf.address)
        while not shown(page.get_by_role("heading", name="That is all for today")):
            heading = page.get_by_role("heading", level=1)
            kinds.add(HEADINGS[heading.inner_text()])
            ways.add(attempt(page))
            page.get_by_role("button", name="Compare").click()
            expect(page.get_by_role("heading", name="What your digest says")).to_be_visible()
            page.get_by_role("radio", name="hazy").check(force=True)
            expect(page.get_by_role("radio", name="hazy")).to_be_checked()
            page.get_by_role("button", name="Next").click()
            expect(page.get_by_role("radio", name="hazy")).to_have_count(0)
            if shown(page.get_by_role("heading", name="What you promised")):
                page.get_by_role("main").get_by_role("button", name="kept").click()
                expect(page.get_by_role("heading", name="What you promised")).to_have_count(0)
        shelf.clock.next_day()
        if kinds == set(KindName):
            break
    assert kinds == set(KindName)
    assert ways >= {"words", "blanks", "order", "gap", "book"}
    assert any(each.kept.memory for each in list_items(shelf.desk, limit=200).items)


def test_a_page_is_given_by_the_slider(shelf: Live, opened: Opened) -> None:
    """A listener may give the page by a slider, which says where it stands in words."""
    only(shelf.desk, KindName.PLACE)
    page = opened()
    page.goto(f"{shelf.address}/?plot=hidden")
    slider = page.get_by_role("slider", name="The page, along the book")
    expect(slider).to_have_attribute("aria-valuetext", "no page yet")
    slider.focus()
    for _ in range(3):
        page.keyboard.press("ArrowRight")
    expect(slider).to_have_attribute("aria-valuetext", "page 4")
    expect(page.get_by_role("textbox", name="Page", exact=True)).to_have_value("4")
