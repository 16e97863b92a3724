"""A whole sitting by the keyboard alone, with the script and without it."""

import pytest
from playwright.sync_api import Page, expect

from cards.kinds.base import KindName
from service.use_cases.add_digest import add_digest
from service.use_cases.answer import take_back
from service.use_cases.items import item_history
from tests.browser.conftest import Live, Opened
from tests.pages.house import WITHOUT_POINTS
from tests.pages.sittings import only

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
def test_every_way_by_the_keyboard_alone(shelf: Live, opened: Opened, *, script: bool) -> None:
    """Whatever way an item is asked, Tab, letters, arrows and Enter answer it as graded."""
    add_digest(shelf.desk, "essays.md", WITHOUT_POINTS.encode())
    page = opened(java_script_enabled=script)
    ways: set[str] = set()
    for kind, number, book, hide in (
        *((kind, 1, "Silas Marner", False) for kind in KindName),
        (KindName.PLACE, 1, "Silas Marner", True),
        (KindName.PLACE, 2, "Essays", False),
    ):
        item = only(shelf.desk, kind, number, book)
        page.goto(shelf.address)
        ways.add(attempt(page, hide=hide, script=script))
        tab_to(page, "button:not(.quiet):not(.put)")
        page.keyboard.press("Enter")
        expect(page.locator(".grades")).to_be_visible()
        if script:
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
        expect(page.locator(".last strong")).to_have_text("clear")
        if kind is KindName.RESTATE:
            expect(page.get_by_role("heading", level=1)).to_have_text("What you promised")
            expect(page.locator("button[value=kept]")).to_be_focused()
            if script:
                page.keyboard.press("p")
            else:
                tab_to(page, "button[value=partly]")
                page.keyboard.press("Enter")
            expect(page.locator(".last strong")).to_have_text("partly")
        expect(page.get_by_role("heading", level=1)).to_have_text("That is all for today")
        kept = item_history(shelf.desk, item.kept.item.id).answers[0]
        assert kept.answer.grade == "clear"
        take_back(shelf.desk, kept.answer.id, shelf.desk.new_id())
    assert ways == {*("words", "gap", "page, out of sight", "chapter", "order", "blanks", "book")}


def attempt(page: Page, *, hide: bool, script: bool) -> str:
    """Give an attempt by the keyboard, with the plot out of sight where wanted; return its way."""
    if page.locator("#words").count():
        tab_to(page, "#words")
        page.keyboard.type("The theft of his gold empties the hearth")
        return "words"
    if page.locator(".blank").count():
        tab_to(page, ".blank")
        page.keyboard.type("angels")
        return "blanks"
    if page.locator(".order").count():
        if script:
            tab_to(page, ".put")
            for placed in (1, 2):
                page.keyboard.press("Enter")
                expect(page.locator(".order .placed")).to_have_count(placed)
        else:
            tab_to(page, ".order select")
            page.keyboard.press("1")
        return "order"
    if page.locator("[name=book]").count():
        tab_to(page, "[name=book]")
        page.keyboard.press("Space")
        return "book"
    if hide:
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
    return "page, out of sight" if hide else way


def test_the_skip_link_leads_to_the_page(live: Live, opened: Opened) -> None:
    """The first step of the Tab key offers to skip the head, and Enter does so."""
    only(live.desk, KindName.THEME)
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
    only(live.desk, KindName.THEME)
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
    only(live.desk, KindName.PLACE)
    page = opened(viewport={"width": 600, "height": 320})
    page.goto(live.address)
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
    only(live.desk, KindName.THEME)
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
