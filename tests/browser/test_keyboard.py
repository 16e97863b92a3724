"""A whole sitting by the keyboard alone, with the script and without it."""

import pytest
from playwright.sync_api import Page, expect

from service.use_cases.add_digest import add_digest
from service.use_cases.items import item_history, list_items
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.records import MOST_UNASKED_A_DAY
from tests.browser.conftest import Live, Opened
from tests.pages.house import WITHOUT_POINTS

TWO = "[name=gap][value='2']:checked"
MOST_TABS = 40
"""Steps of the Tab key within which everything on a page of the sitting must be reached."""


def tab_to(page: Page, selector: str) -> None:
    """Press Tab until an element that fits has the focus, and it can be seen that it has."""
    for _ in range(MOST_TABS):
        page.keyboard.press("Tab")
        if page.locator(f":is({selector}):focus").count():
            return
    raise AssertionError(f"{selector} is not reached by the Tab key")


@pytest.mark.parametrize("script", [True, False], ids=["with script", "without script"])
def test_a_sitting_by_the_keyboard_alone(live: Live, opened: Opened, *, script: bool) -> None:
    """Whatever way an item is asked, Tab, letters, arrows and Enter answer it as graded."""
    add_digest(live.desk, "essays.md", WITHOUT_POINTS.encode())
    set_preferences(live.desk, Preferences(unasked_a_day=MOST_UNASKED_A_DAY))
    page = opened(java_script_enabled=script)
    page.goto(live.address)
    items = list_items(live.desk).items
    ways: set[str] = set()
    for answered in range(len(items)):
        if answered:
            expect(page.locator(".last strong")).to_have_text("clear")
        ways.add(attempt(page, hide="page, out of sight" not in ways))
        tab_to(page, "button:not(.quiet)")
        page.keyboard.press("Enter")
        expect(page.locator(".grades")).to_be_visible()
        if script:
            expect(page.locator(".grades :checked")).to_be_focused()
            page.keyboard.press("c")
        else:
            tab_to(page, ".grades input")
            for _ in range(4):
                page.keyboard.press("ArrowRight")
                if page.locator("[value=clear]:checked").count():
                    break
        expect(page.locator("[value=clear]")).to_be_checked()
        page.keyboard.press("Enter")
        expect(page.locator(".grades")).to_have_count(0)
    assert ways == {"words", "gap", "page", "page, out of sight", "chapter"}
    expect(page.get_by_role("heading", level=1)).to_have_text("That is all for today")
    for item in items:
        (kept,) = item_history(live.desk, item.kept.item.id).answers
        assert kept.answer.grade == "clear"


def attempt(page: Page, *, hide: bool) -> str:
    """Give an attempt by the keyboard, with the plot out of sight where wanted; return its way."""
    if page.locator("#words").count():
        if not page.locator("#words:focus").count():
            tab_to(page, "#words")
        page.keyboard.type("The theft of his gold empties the hearth")
        return "words"
    hidden = hide and page.get_by_role("link", name="Hide the plot").count() > 0
    if hidden:
        tab_to(page, "[href*='plot=hidden']")
        with page.expect_navigation():
            page.keyboard.press("Enter")
    if page.locator("[name=gap]").count():
        tab_to(page, "[name=gap]")
        for gap in (1, 2, 1):
            page.keyboard.press("ArrowUp" if gap < 2 and page.locator(TWO).count() else "ArrowDown")
            expect(page.locator(f"[name=gap][value='{gap}']")).to_be_checked()
            expect(page.locator(f"[name=gap][value='{gap}']")).to_be_focused()
        return "gap"
    way = "page" if page.locator("[name=page]").count() else "chapter"
    tab_to(page, f"[name={way}]")
    page.keyboard.type("40")
    return "page, out of sight" if hidden else way


def test_the_skip_link_leads_to_the_page(live: Live, opened: Opened) -> None:
    """The first step of the Tab key offers to skip the head, and Enter does so."""
    page = opened()
    page.goto(live.address)
    page.keyboard.press("Tab")
    expect(page.get_by_role("link", name="Skip to the page")).to_be_focused()
    expect(page.get_by_role("link", name="Skip to the page")).to_be_in_viewport()
    page.keyboard.press("Enter")
    expect(page.locator("#page")).to_be_focused()
    tab_to(page, "#words")


def test_the_focus_can_be_seen(live: Live, opened: Opened) -> None:
    """Whatever the Tab key reaches is outlined by at least two pixels (WCAG 2.2, 2.4.7, 2.4.13)."""
    page = opened()
    page.goto(live.address)
    page.fill("#words", "gold")
    page.get_by_role("button", name="Compare").click()
    expect(page.locator(".grades")).to_be_visible()
    for _ in range(12):
        page.keyboard.press("Tab")
        width = page.evaluate(
            """() => {
                const at = document.activeElement;
                const shown = at.closest(".grades label") ?? at;
                return parseFloat(getComputedStyle(shown).outlineWidth);
            }"""
        )
        assert width >= 2


def test_what_leads_on_stays_in_sight_and_covers_nothing(live: Live, opened: Opened) -> None:
    """Compare is in sight beside a long plot, and never over the gap with the focus (WCAG 2.4.11).

    The window is as low as a phone's held sideways.
    """
    page = opened(viewport={"width": 600, "height": 320})
    page.goto(live.address)
    while not page.locator("[name=gap]").count():
        page.get_by_role("button", name="Nothing comes back").click()
        page.locator("[value=clear]").check(force=True)
        page.get_by_role("button", name="Next").click()
        expect(page.locator(".grades")).to_have_count(0)
    tab_to(page, "[name=gap]")
    for _ in range(3):
        page.keyboard.press("ArrowDown")
        expect(page.get_by_role("button", name="Compare")).to_be_in_viewport(ratio=1)
        gap = page.locator("[name=gap]:focus").bounding_box()
        foot = page.locator(".gaps + .foot").bounding_box()
        assert gap is not None
        assert foot is not None
        assert 0 <= gap["y"] <= gap["y"] + gap["height"] <= foot["y"]


def test_letters_grade_only_where_the_grades_have_the_focus(live: Live, opened: Opened) -> None:
    """Initials choose a grade inside its group and nowhere else (WCAG 2.2, 2.1.4)."""
    page = opened()
    page.goto(live.address)
    page.fill("#words", "")
    page.locator("#words").press_sequentially("bhcv")
    expect(page.locator("#words")).to_have_value("bhcv")
    page.get_by_role("button", name="Compare").click()
    expect(page.locator(".grades :checked")).to_be_focused()
    for letter, grade in (("v", "vivid"), ("h", "hazy"), ("C", "clear"), ("b", "blank")):
        page.keyboard.press(letter)
        expect(page.locator(f"[value={grade}]")).to_be_checked()
        expect(page.locator(f"[value={grade}]")).to_be_focused()
        expect(page.locator("#due")).to_contain_text(grade.capitalize())
    page.get_by_role("link", name="Mend it").focus()
    page.keyboard.press("v")
    expect(page.locator("[value=blank]")).to_be_checked()
