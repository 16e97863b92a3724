"""What the script adds, and that nothing depends on it."""

import re

import pytest
from playwright.sync_api import Page, Route, expect

from cards.kinds.base import KindName
from service.use_cases.items import item_history, list_items
from tests.browser.conftest import Live, Opened
from tests.browser.ways import WORDS, go_on
from tests.browser.ways import compare as press_compare
from tests.pages.sittings import only, these


@pytest.fixture(autouse=True)
def words_are_asked(live: Live) -> None:
    """Ask for words only, of theme and commitments, unless a test says otherwise."""
    these(live.desk, KindName.THEME, KindName.RESTATE)


def compare(page: Page, words: str = WORDS) -> None:
    """Write what comes to mind and compare."""
    page.fill("#words", words)
    press_compare(page)


def say_nothing(page: Page) -> None:
    """Say that nothing comes back, whatever is asked."""
    page.get_by_role("button", name=re.compile("Nothing comes back|I can’t tell")).click()
    expect(page.locator(".grades")).to_be_visible()


def marked(page: Page) -> None:
    """Leave a mark on the document that a full reload would lose."""
    page.evaluate("document.documentElement.dataset.marked = 'yes'")


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


SHIFTS = """window.shifts = [];
new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) window.shifts.push(entry.value);
}).observe({ type: "layout-shift", buffered: true });"""
"""Counts what the browser itself takes for a shift of the layout."""


def still(page: Page) -> None:
    """Wait until the page is painted, and hold that nothing on it has moved."""
    page.evaluate("() => new Promise((done) => requestAnimationFrame(() => setTimeout(done)))")
    assert page.evaluate("window.shifts") == []


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


def test_ticks_are_marked_as_they_are_set(live: Live, opened: Opened) -> None:
    """Ticking every idea suggests vivid at once, moves nothing, and is kept with the grade."""
    only(live.desk, KindName.THEME)
    page = opened()
    page.add_init_script(SHIFTS)
    page.goto(live.address)
    compare(page, "Dunstan stole the gold")
    marked(page)
    before = page.locator(".grades").bounding_box()
    for idea in page.locator("[data-idea]").all():
        idea.check()
    expect(page.locator("#suggestion")).to_contain_text("Vivid is suggested")
    expect(page.locator("[value=vivid]")).to_be_checked()
    expect(page.locator("#due")).to_contain_text("Vivid: asked again")
    expect(page.get_by_role("button", name="Mark again")).to_be_hidden()
    assert page.locator(".grades").bounding_box() == before
    still(page)
    page.get_by_role("button", name="Next").click()
    expect(page.locator(".last strong")).to_have_text("vivid")
    assert page.evaluate("document.documentElement.dataset.marked") == "yes"
    (item,) = [e for e in list_items(live.desk, limit=200).items if e.kept.memory]
    (kept,) = item_history(live.desk, item.kept.item.id).answers
    assert kept.answer.ticked
    assert kept.answer.suggested == "vivid"


def test_a_grade_chosen_by_hand_stays(live: Live, opened: Opened) -> None:
    """Once the reader has chosen a grade, corrected ticks change the suggestion and not it."""
    only(live.desk, KindName.THEME)
    page = opened()
    page.goto(live.address)
    compare(page, "Dunstan stole the gold")
    page.keyboard.press("h")
    for idea in page.locator("[data-idea]").all():
        idea.check()
    expect(page.locator("#suggestion")).to_contain_text("Vivid is suggested")
    expect(page.locator("[value=hazy]")).to_be_checked()


def test_ticks_are_marked_again_without_a_script(live: Live, opened: Opened) -> None:
    """Without the script a button marks the ticks again."""
    only(live.desk, KindName.THEME)
    page = opened(java_script_enabled=False)
    page.goto(live.address)
    compare(page, "Dunstan stole the gold")
    for idea in page.locator("[data-idea]").all():
        idea.check()
    page.get_by_role("button", name="Mark again").click()
    expect(page.locator("#suggestion")).to_contain_text("Vivid is suggested")
    expect(page.locator("[value=vivid]")).to_be_checked()


def test_leaving_out_and_taking_in_turn_the_page(live: Live, opened: Opened) -> None:
    """Leaving an item out shows the next one without a reload, and taking it in asks it again."""
    page = opened()
    page.goto(live.address)
    marked(page)
    first = page.locator("[action*=compare]").get_attribute("action")
    page.get_by_role("button", name="Leave out for today").click()
    expect(page.locator(".last")).to_contain_text("Left out for today")
    assert page.locator("[action*=compare]").get_attribute("action") != first
    page.get_by_role("button", name="Take it in again").click()
    expect(page.locator(".last p")).to_have_count(0)
    assert page.locator("[action*=compare]").get_attribute("action") == first
    assert page.evaluate("document.documentElement.dataset.marked") == "yes"


def test_the_strip_and_the_number_are_one(live: Live, opened: Opened) -> None:
    """Pointing at the strip writes the page, and typing the page moves the handle."""
    only(live.desk, KindName.PLACE)
    page = opened()
    page.goto(f"{live.address}/?plot=hidden")
    slider, number = page.locator("[type=range]"), page.locator("[name=page]")
    box = slider.bounding_box()
    assert box is not None
    page.mouse.click(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    assert 92 <= int(number.input_value()) <= 95
    number.fill("140")
    expect(slider).to_have_value("140")
    number.fill("")
    expect(slider).to_have_attribute("aria-valuetext", "no page yet")
    page.mouse.click(box["x"] + 3, box["y"] + box["height"] / 2)
    expect(number).to_have_value("1")


def test_points_are_put_in_order_by_pressing_and_dragging(live: Live, opened: Opened) -> None:
    """Pressing gives the next place; dragging, keys and buttons move; the fields follow."""
    only(live.desk, KindName.ORDER)
    page = opened()
    page.goto(live.address)
    rest = page.locator(".order li:not(.placed) .put")
    shown = page.locator(".order .text").all_inner_texts()
    for _ in range(3):
        rest.first.click()
    expect(page.locator(".order .placed")).to_have_count(3)
    texts = page.locator(".order .placed .text")
    assert texts.all_inner_texts() == shown
    first, last = (page.locator(".order .placed").nth(n).bounding_box() for n in (0, 2))
    assert first is not None
    assert last is not None
    page.mouse.move(first["x"] + 80, first["y"] + 15)
    page.mouse.down()
    page.mouse.move(first["x"] + 80, first["y"] + 40)
    page.mouse.move(last["x"] + 80, last["y"] + last["height"] - 4)
    page.mouse.up()
    assert texts.all_inner_texts() == [shown[1], shown[2], shown[0]]
    page.locator(".order .placed .put").nth(2).focus()
    page.keyboard.press("ArrowUp")
    assert texts.all_inner_texts() == [shown[1], shown[0], shown[2]]
    page.keyboard.press("Delete")
    assert texts.all_inner_texts() == [shown[1], shown[2]]
    assert page.locator("#place-1").input_value() == ""
    assert page.locator("#place-2").input_value() == "1"
    press_compare(page)
    expect(page.locator("ol.own li")).to_have_text([shown[1], shown[2]])


def test_the_digest_is_one_key_away(live: Live, opened: Opened) -> None:
    """The letter d opens the digest beside the sitting, only while the grades have the focus."""
    page = opened()
    page.goto(live.address)
    compare(page)
    with page.context.expect_page() as beside:
        page.keyboard.press("d")
    expect(beside.value).to_have_url(re.compile(r"/books/"))
    page.get_by_role("link", name="Mend it").focus()
    page.keyboard.press("d")
    assert len(page.context.pages) == 2
    expect(page.locator(".own")).to_have_text(WORDS)
