"""What the script adds to the ways of asking: ticks, the strip, points put in order."""

import re

from playwright.sync_api import Page, expect

from cards.answers import graded_first
from cards.kinds.base import KindName
from service.use_cases.items import item_history, list_items
from tests.browser.conftest import Live, Opened
from tests.browser.watching import SHIFTS, marked, still
from tests.browser.ways import WORDS
from tests.browser.ways import compare as press_compare
from tests.pages.sittings import alone, only, these


def compare(page: Page, words: str = WORDS) -> None:
    """Write what comes to mind and compare."""
    page.fill("#words", words)
    press_compare(page)


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
    these(live.desk, KindName.THEME, KindName.RESTATE)
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
    only(live.desk, KindName.THEME)
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


def test_a_grade_before_the_mark_is_chosen_by_its_initial(shelf: Live, opened: Opened) -> None:
    """Where the mark is kept back no grade is chosen, letters choose one, and then it is told."""
    these(shelf.desk, *KindName)
    words = (KindName.THEME, KindName.NEXT, KindName.RESTATE)
    items = [e for e in list_items(shelf.desk, limit=200).items if e.kept.item.kind in words]
    alone(shelf.desk, next(each for each in items if graded_first(each.kept.item.id, 0)))
    page = opened()
    page.goto(shelf.address)
    compare(page)
    expect(page.locator(".grades")).to_be_focused()
    expect(page.locator(".grades :checked")).to_have_count(0)
    expect(page.locator("mark, .missed, [data-idea], #suggestion")).to_have_count(0)
    page.get_by_role("button", name="Next").click()
    expect(page.locator(".grades")).to_be_visible()
    page.locator(".grades").focus()
    page.keyboard.press("v")
    expect(page.locator("#due")).to_contain_text("Vivid: asked again")
    page.keyboard.press("Enter")
    expect(page.locator(".last")).to_contain_text("where the mark would have been")
