"""What the script adds, and that nothing depends on it."""

import re

import pytest
from playwright.sync_api import Page, Route, expect

from cards.kinds.base import KindName
from service.use_cases.items import item_history, list_items
from tests.browser.conftest import Live, Opened
from tests.browser.watching import SHIFTS, marked, still
from tests.browser.ways import WORDS, go_on
from tests.browser.ways import compare as press_compare
from tests.pages.sittings import only, these


@pytest.fixture(autouse=True)
def words_are_asked(live: Live, monkeypatch: pytest.MonkeyPatch) -> None:
    """Ask for words only, of theme and commitments, unless a test says otherwise.

    Whether a commitment was kept is not asked: every item leads on to the next.
    """
    monkeypatch.setattr("service.pages.answering.wants_word", lambda *_: False)
    these(live.desk, KindName.THEME, KindName.RESTATE)


def compare(page: Page, words: str = WORDS) -> None:
    """Write what comes to mind and compare."""
    page.fill("#words", words)
    press_compare(page)


def say_nothing(page: Page) -> None:
    """Say that nothing comes back, whatever is asked."""
    page.get_by_role("button", name=re.compile("Nothing comes back|I can’t tell")).click()
    expect(page.locator(".grades")).to_be_visible()


def test_pages_turn_without_a_reload(live: Live, opened: Opened) -> None:
    """Comparing and going on keep the document; title, address and focus follow."""
    page = opened()
    page.goto(live.address)
    marked(page)
    compare(page)
    expect(page).to_have_title(re.compile(r": compared · Catchword$"))
    expect(page.locator(".grades :checked")).to_be_focused()
    go_on(page)
    expect(page.locator("#left")).to_contain_text("about")
    expect(page).to_have_title(re.compile(r"^(Recall|Say) [a-z ]+ · Catchword$"))
    expect(page.locator("#words")).to_be_focused()
    assert "/?answered=" in page.url
    assert page.evaluate("document.documentElement.dataset.marked") == "yes"


def test_back_returns_to_what_was_written(live: Live, opened: Opened) -> None:
    """Back leads from the comparison to the cue with the reader's words, forward to it again."""
    page = opened()
    page.goto(live.address)
    compare(page)
    page.go_back()
    expect(page.locator("#words")).to_have_value(WORDS)
    page.go_forward()
    expect(page.locator(".grades")).to_be_visible()
    page.go_back()
    page.fill("#words", "Another thought")
    page.get_by_role("button", name="Compare").click()
    expect(page.locator(".own")).to_have_text("Another thought")


def test_back_after_an_answer_asks_anew(live: Live, opened: Opened) -> None:
    """Back after an answer never shows an item as still open that was answered already."""
    page = opened()
    page.goto(live.address)
    compare(page)
    go_on(page)
    expect(page.locator(".last strong")).to_be_visible()
    asked = page.locator("[data-turn][action*=compare]").get_attribute("action")
    page.go_back()
    expect(page.locator(".last strong")).to_have_count(0)
    again = page.locator("[data-turn][action*=compare]").get_attribute("action")
    assert again.partition("?")[0] == asked.partition("?")[0]


def test_the_skip_link_does_not_disturb_what_is_written(live: Live, opened: Opened) -> None:
    """Following a link within the page keeps what was typed."""
    page = opened()
    page.goto(live.address)
    page.fill("#words", WORDS)
    page.locator(".skip").focus()
    page.keyboard.press("Enter")
    expect(page.locator("#page")).to_be_focused()
    expect(page.locator("#words")).to_have_value(WORDS)


def test_a_failed_fetch_falls_back_to_the_form(live: Live, opened: Opened) -> None:
    """Where fetching fails, the browser sends the form by itself, buttons with names too."""
    page = opened()

    def refuse(route: Route) -> None:
        if route.request.resource_type == "fetch":
            route.abort()
        else:
            route.continue_()

    page.route("**/*", refuse)
    page.goto(live.address)
    page.get_by_role("button", name="Nothing comes back").click()
    expect(page.locator(".grades")).to_be_visible()
    assert "/compare" in page.url
    expect(page.locator(".leaf").first).to_contain_text("Nothing.")
    go_on(page)
    expect(page.locator(".last strong")).to_have_text("clear")
    assert all("ERR_FAILED" in said for said in opened.complaints)
    opened.complaints.clear()


def test_a_double_click_answers_once(live: Live, opened: Opened) -> None:
    """Pressing Next twice at once makes one answer and skips no item."""
    page = opened()
    page.goto(live.address)
    compare(page)
    page.locator("[value=clear]").check(force=True)
    page.get_by_role("button", name="Next").dblclick()
    expect(page.locator(".last strong")).to_have_text("clear")
    histories = [item_history(live.desk, each.kept.item.id) for each in list_items(live.desk).items]
    assert sum(len(each.answers) for each in histories) == 1


def test_taking_back_asks_again(live: Live, opened: Opened) -> None:
    """An answer taken back is said to be so, and its item is asked again."""
    page = opened()
    page.goto(live.address)
    compare(page)
    go_on(page)
    page.get_by_role("button", name="Take it back").click()
    expect(page.locator(".last")).to_contain_text("Taken back")


@pytest.mark.parametrize("kind", list(KindName))
def test_nothing_moves_when_the_pages_turn(shelf: Live, opened: Opened, kind: KindName) -> None:
    """Loading and comparing shift nothing, whatever is asked: neither the cue nor the head."""
    only(shelf.desk, kind)
    page = opened()
    page.add_init_script(SHIFTS)
    page.goto(shelf.address)
    page.evaluate("document.fonts.ready.then(() => null)")
    still(page)
    rooms = page.locator(".head nav").bounding_box()
    before = page.locator("#cue").bounding_box()
    say_nothing(page)
    assert page.locator("#cue").bounding_box() == before
    still(page)
    go_on(page)
    assert page.locator(".head nav").bounding_box() == rooms


def test_what_an_answer_came_to_is_told(live: Live, opened: Opened) -> None:
    """A region that was there before tells a listening reader what the last answer came to."""
    page = opened()
    page.goto(live.address)
    expect(page.locator("#heard")).to_have_attribute("role", "status")
    expect(page.locator("#heard")).to_be_empty()
    compare(page)
    expect(page.locator("#heard")).to_be_empty()
    go_on(page)
    expect(page.locator("#heard")).to_contain_text(
        re.compile(r"Silas Marner, (the theme|a commitment): clear.*\sAsked again on", re.DOTALL)
    )
    page.get_by_role("button", name="Take it back").click()
    expect(page.locator("#heard")).to_contain_text("Taken back: Silas Marner, ")


@pytest.mark.parametrize("script", [True, False], ids=["with script", "without script"])
def test_two_tabs_answer_once(live: Live, opened: Opened, *, script: bool) -> None:
    """An item answered in one tab and again in the other keeps the first answer, and says so."""
    first = opened(java_script_enabled=script)
    first.goto(live.address)
    compare(first)
    second = opened(java_script_enabled=script)
    second.goto(live.address)
    compare(second)
    go_on(first)
    go_on(second)
    expect(second.locator(".last")).to_contain_text("Nothing was added: Silas Marner, ")
    histories = [item_history(live.desk, each.kept.item.id) for each in list_items(live.desk).items]
    assert sum(len(each.answers) for each in histories) == 1
    say_nothing(second)
    go_on(second)
    expect(second.locator(".last strong")).to_have_text("clear")


@pytest.mark.parametrize("motion", ["reduce", "no-preference"])
def test_pages_turn_without_motion_where_none_is_wanted(
    live: Live, opened: Opened, motion: str
) -> None:
    """The right page fades in as it turns, unless the reader asks for less motion."""
    page = opened(reduced_motion=motion)
    page.goto(live.address)
    compare(page)
    name = page.locator(".turning").evaluate("(leaf) => getComputedStyle(leaf).animationName")
    assert name == ("none" if motion == "reduce" else "turn")


def test_nothing_moves_while_a_page_loads(live: Live, opened: Opened) -> None:
    """A page stands still from its first paint: its typeface pushes nothing about."""
    page = opened()
    page.add_init_script(
        """window.shifts = [];
        new PerformanceObserver((list) => {
            for (const entry of list.getEntries()) window.shifts.push(entry.value);
        }).observe({ type: "layout-shift", buffered: true });"""
    )
    for address in ("/", "/books", f"/books/{live.digest_id}", "/commitments", "/reader"):
        page.goto(live.address + address)
        page.evaluate("document.fonts.ready.then(() => null)")
        assert page.evaluate("window.shifts") == []
