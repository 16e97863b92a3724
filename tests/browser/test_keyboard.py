"""A whole sitting by the keyboard alone, with the script and without it."""

import pytest
from playwright.sync_api import Page, expect

from service.use_cases.items import item_history, list_items
from tests.browser.conftest import Live, Opened

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
    """Every item is answered by Tab, letters, arrows and Enter; each answer is kept as graded."""
    page = opened(java_script_enabled=script)
    page.goto(live.address)
    for left in range(6, 0, -1):
        head = f"{left} left in this sitting" if left > 1 else "the last of this sitting"
        expect(page.locator("#left")).to_have_text(head)
        if page.locator("#words").count():
            if not page.locator("#words:focus").count():
                tab_to(page, "#words")
            page.keyboard.type("The theft of his gold empties the hearth")
        else:
            tab_to(page, "[name=gap]")
            page.keyboard.press("ArrowDown")
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
        expect(page.locator(".last strong")).to_have_text("clear")
    expect(page.get_by_role("heading", level=1)).to_have_text("That is all for today")
    for item in list_items(live.desk).items:
        (kept,) = item_history(live.desk, item.kept.item.id).answers
        assert kept.answer.grade == "clear"


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
