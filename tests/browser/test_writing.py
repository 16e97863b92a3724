"""Writing and looking over in the browser: saved as it is typed, reshaped by keys, dragged."""

import re
from uuid import UUID

import pytest
from playwright.sync_api import Page, Route, expect

from service.pages.digest_form import lay
from service.use_cases.drafts import change_draft, list_drafts, look_over, open_draft
from service.use_cases.library import list_digests
from tests.browser.accessible import NARROW, faults
from tests.browser.conftest import PATIENCE, Live, Opened
from tests.browser.test_looks import LONG, forgive_refusals
from tests.pages.house import DIGEST

LIFELINES = DIGEST.replace(
    "## Commitments", "## Lifelines\n\n* Ask Hanne about the loom every Sunday.\n\n## Commitments"
)


def drafted(live: Live, text: str = LIFELINES) -> UUID:
    """Lay a digest out to look it over; the id of its draft."""
    (draft,) = look_over(live.desk, "silas-again.md", text.encode(), lay)
    return draft.id


def typed(live: Live, draft_id: UUID | None = None) -> dict[str, str]:
    """Return what is kept of a draft, the only one unless it is named."""
    if draft_id is None:
        (draft,) = list_drafts(live.desk).drafts
        return dict(draft.typed)
    return dict(open_draft(live.desk, draft_id).typed)


def saved(page: Page) -> None:
    """Wait until what is typed is saved."""
    expect(page.locator("#saved")).to_contain_text("Saved at")


def test_a_digest_is_saved_as_it_is_typed(live: Live, opened: Opened) -> None:
    """A second after the last key a draft is begun, measured and found again under its address."""
    page = opened()
    page.goto(f"{live.address}/write")
    page.fill("#title", "Walden")
    page.fill("#theme", "A man goes to the woods to find out what is enough.")
    saved(page)
    assert typed(live)["theme"] == "A man goes to the woods to find out what is enough."
    expect(page.locator("#measures")).to_contain_text(re.compile(r"Page one: \d+ of \d+ lines"))
    assert re.search(r"/drafts/[0-9a-f-]{36}$", page.url)
    page.reload()
    expect(page.locator("#title")).to_have_value("Walden")
    page.fill("#theme", "Enough is plenty.")
    with page.expect_response(re.compile("/drafts/")):
        pass
    expect(page.locator("#theme-said")).to_contain_text("The theme has 3 words")
    assert typed(live)["theme"] == "Enough is plenty."


MOST_LOOKS = 200
"""How often the drafts are looked at before what a closed tab sent is given up."""


def test_a_closed_tab_survives(live: Live, opened: Opened) -> None:
    """What is typed when the tab is closed, before it was saved, is there the next time."""
    page = opened()
    page.goto(f"{live.address}/write")
    page.fill("#title", "Walden")
    page.fill("#theme", "The last words before the door.")
    other = page.context.new_page()
    page.close(run_before_unload=True)
    look_for_walden(other, live)
    assert typed(live)["theme"] == "The last words before the door."


def look_for_walden(page: Page, live: Live) -> None:
    """Look at the drafts until it is among them.

    What is sent on the way out arrives when it arrives; nobody tells the page after it.
    """
    for _ in range(MOST_LOOKS):
        page.goto(f"{live.address}/drafts")
        if page.get_by_role("link", name="Walden").count():
            break


def test_leaving_by_a_link_survives(live: Live, opened: Opened) -> None:
    """Following a link straight after the last key keeps what was typed."""
    page = opened()
    page.goto(f"{live.address}/write")
    page.fill("#title", "Walden")
    page.get_by_role("link", name="Books").first.click()
    look_for_walden(page, live)
    expect(page.get_by_role("link", name="Walden")).to_be_visible()


def test_typing_on_while_it_saves_loses_nothing(live: Live, opened: Opened) -> None:
    """Keys pressed while a saving is under way are saved after it, without a conflict."""
    page = opened()
    page.goto(f"{live.address}/write")
    page.locator("#theme").press_sequentially("one two three four five six seven ", delay=60)
    page.locator("#theme").press_sequentially("eight nine ten", delay=120)
    with page.expect_response(re.compile("/drafts/")):
        pass
    saved(page)
    expect(page.locator("#contested")).to_be_empty()
    page.reload()
    expect(page.locator("#theme")).to_have_value("one two three four five six seven eight nine ten")


def test_a_library_out_of_reach_is_said_and_tried_again(live: Live, opened: Opened) -> None:
    """Where saving fails the page says so, keeps what was typed, and saves it later."""
    page = opened()
    refused = []

    def refuse(route: Route) -> None:
        if route.request.method == "POST" and len(refused) < 1:
            refused.append(route)
            route.abort()
        else:
            route.continue_()

    page.route("**/drafts/*", refuse)
    page.goto(f"{live.address}/write")
    page.fill("#title", "Walden")
    expect(page.locator("#saved")).to_contain_text("Not saved: the library cannot be reached")
    expect(page.locator("#saved")).to_contain_text("Saved at", timeout=PATIENCE)
    assert typed(live)["title"] == "Walden"
    assert all("ERR_FAILED" in said for said in opened.complaints)
    opened.complaints.clear()


def test_a_draft_changed_elsewhere_offers_both(live: Live, opened: Opened) -> None:
    """A change made elsewhere is told at once; what is typed here stays, and can go on."""
    draft_id = drafted(live)
    page = opened()
    page.goto(f"{live.address}/drafts/{draft_id}")
    elsewhere = open_draft(live.desk, draft_id)
    change_draft(live.desk, draft_id, {**elsewhere.typed, "theme": "Elsewhere."}, 1)
    page.fill("#theme", "Typed here.")
    expect(page.locator("#contested")).to_contain_text("changed elsewhere")
    expect(page.locator("#theme")).to_have_value("Typed here.")
    assert typed(live, draft_id)["theme"] == "Elsewhere."
    with page.expect_navigation():
        page.get_by_role("button", name="Go on with what is typed here").click()
    assert typed(live, draft_id)["theme"] == "Typed here."
    forgive_refusals(opened)


def test_parts_are_reshaped_by_the_keyboard_alone(live: Live, opened: Opened) -> None:
    """Keys move, split and join a part, and the focus stays in it; nothing else is reloaded."""
    draft_id = drafted(live)
    page = opened()
    page.goto(f"{live.address}/drafts/{draft_id}")
    page.evaluate("document.documentElement.dataset.marked = 'yes'")
    first = page.locator("#points-1-text")
    lot = first.input_value()
    first.focus()
    page.keyboard.press("Alt+ArrowDown")
    expect(page.locator("#points-2-text")).to_have_value(lot)
    expect(page.locator("#points-2-text")).to_be_focused()
    page.keyboard.press("Alt+ArrowUp")
    expect(page.locator("#points-1-text")).to_be_focused()
    page.locator("#points-1-text").evaluate(
        "(words) => words.setSelectionRange(words.value.indexOf('he leaves'), 31)"
    )
    cursor = lot.index("he leaves")
    page.locator("#points-1-text").evaluate(
        f"(words) => words.setSelectionRange({cursor}, {cursor})"
    )
    page.keyboard.press("Control+Enter")
    expect(page.locator("#points-2-text")).to_have_value("he leaves Lantern Yard.")
    expect(page.locator("#points-2-text")).to_be_focused()
    expect(page.locator("#quotations-1-after")).to_have_value("4")
    page.locator("#points-1-text").focus()
    page.keyboard.press("Control+j")
    expect(page.locator("#points-1-text")).to_have_value(lot)
    expect(page.locator("#quotations-1-after")).to_have_value("3")
    assert page.evaluate("document.documentElement.dataset.marked") == "yes"
    assert typed(live, draft_id)["points-1-text"] == lot


def test_a_line_is_taken_in_and_undone_without_a_reload(live: Live, opened: Opened) -> None:
    """One button takes a line in as a commitment, another takes it out again."""
    draft_id = drafted(live)
    page = opened()
    page.goto(f"{live.address}/drafts/{draft_id}")
    page.evaluate("document.documentElement.dataset.marked = 'yes'")
    page.locator("button[value='take left-1 commitments']").click()
    line = page.locator("#commitments-3-text")
    expect(line).to_have_value("Ask Hanne about the loom every Sunday.")
    expect(line).to_be_focused()
    expect(page.locator(".leftovers").first).not_to_contain_text("Ask Hanne")
    page.locator("#commitments-3 summary").click()
    page.locator("#commitments-3").get_by_role("button", name="Take it out").click()
    expect(page.locator(".leftovers").first).to_contain_text("Ask Hanne")
    assert page.evaluate("document.documentElement.dataset.marked") == "yes"


def test_a_quotation_is_keyed_along_the_plot_line(live: Live, opened: Opened) -> None:
    """Arrow keys move a quotation from gap to gap, its field follows, and it is said and saved."""
    draft_id = drafted(live)
    page = opened()
    page.goto(f"{live.address}/drafts/{draft_id}")
    dot = page.locator("button.dot[data-quotation='1']")
    dot.focus()
    page.keyboard.press("ArrowUp")
    expect(page.locator("#quotations-1-after")).to_have_value("2")
    expect(dot).to_be_focused()
    expect(page.locator("#heard")).to_have_text("Quotation 1 stands after point 2.")
    page.keyboard.press("Home")
    expect(page.locator("#quotations-1-after")).to_have_value("0")
    page.keyboard.press("ArrowUp")
    expect(page.locator("#quotations-1-after")).to_have_value("0")
    apart = page.locator(".apart button.dot[data-quotation='3']")
    apart.focus()
    page.keyboard.press("ArrowUp")
    expect(page.locator(".standing button.dot[data-quotation='3']")).to_be_focused()
    saved(page)
    expect(page.locator("#quotations-3-said")).not_to_contain_text("Nothing says")
    assert typed(live, draft_id)["quotations-1-after"] == "0"
    assert typed(live, draft_id)["quotations-3-after"]


def test_a_quotation_is_dragged_along_the_plot_line(live: Live, opened: Opened) -> None:
    """A quotation dragged from where it stands to another gap stands there."""
    draft_id = drafted(live)
    page = opened()
    page.goto(f"{live.address}/drafts/{draft_id}")
    dot = page.locator("button.dot[data-quotation='1']")
    dot.scroll_into_view_if_needed()
    page.evaluate("window.scrollBy(0, 200)")
    start = dot.bounding_box()
    gap = page.locator(".standing [data-after='1']").bounding_box()
    assert start is not None
    assert gap is not None
    page.mouse.move(start["x"] + 20, start["y"] + start["height"] / 2)
    page.mouse.down()
    page.mouse.move(start["x"] + 25, start["y"] - 10)
    page.mouse.move(gap["x"] + 25, gap["y"] + gap["height"] / 2)
    expect(page.locator(".standing [data-after='1']")).to_have_class(re.compile("over"))
    page.mouse.up()
    expect(page.locator("#quotations-1-after")).to_have_value("1")
    expect(page.locator(".standing [data-after='1'] .dot[data-quotation='1']")).to_be_visible()
    with page.expect_response(re.compile("/drafts/")):
        pass
    assert typed(live, draft_id)["quotations-1-after"] == "1"


def test_pressing_a_quotation_leads_to_its_field(live: Live, opened: Opened) -> None:
    """A quotation on the line pressed by key leads to the field that says where it stands."""
    page = opened()
    page.goto(f"{live.address}/drafts/{drafted(live)}")
    page.locator("button.dot[data-quotation='1']").focus()
    page.keyboard.press("Enter")
    expect(page.locator("#quotations-1-after")).to_be_focused()


def test_enter_in_a_line_keeps_the_draft(live: Live, opened: Opened) -> None:
    """Enter in the title saves what is typed, and reshapes or keeps nothing."""
    page = opened()
    page.goto(f"{live.address}/write")
    page.fill("#points-1-text", "He builds a house.")
    page.fill("#points-2-text", "He hoes beans.")
    page.fill("#title", "Walden")
    with page.expect_navigation():
        page.locator("#title").press("Enter")
    saved(page)
    assert typed(live)["points-1-text"] == "He builds a house."
    assert [entry.kept.title for entry in list_digests(live.desk).entries] == ["Silas Marner"]


def test_a_part_just_typed_can_be_reshaped(live: Live, opened: Opened) -> None:
    """A row offers to be reshaped as soon as something is typed in it, and not before."""
    page = opened()
    page.goto(f"{live.address}/write")
    expect(page.locator("#points-2 .reshape")).to_be_hidden()
    page.fill("#points-1-text", "He builds a house.")
    page.fill("#points-2-text", "He hoes beans.")
    page.locator("#points-2 summary").click()
    page.locator("#points-2").get_by_role("button", name="Move up").click()
    expect(page.locator("#points-1-text")).to_have_value("He hoes beans.")
    expect(page.locator("#points-1-text")).to_be_focused()


def test_what_is_over_the_two_pages_is_said(live: Live, opened: Opened) -> None:
    """A theme of two pages is drawn and said as over, with what to cut, and a listener hears it."""
    page = opened()
    page.goto(f"{live.address}/write")
    page.fill("#title", "Walden")
    page.fill("#theme", "He plants, builds, reckons and walks, and tells what each cost. " * 90)
    expect(page.locator("#measures")).to_contain_text("too many")
    expect(page.locator(".bar .beyond")).to_be_visible()
    expect(page.locator("#heard")).to_contain_text("Page one is")
    expect(page.locator(".remark.cut").first).to_be_visible()


@pytest.mark.parametrize("script", [True, False], ids=["with script", "without script"])
def test_a_digest_is_written_and_kept(live: Live, opened: Opened, *, script: bool) -> None:
    """With the script or without it, a digest is written, given one more point, and kept."""
    page = opened(java_script_enabled=script)
    page.goto(f"{live.address}/write")
    page.fill("#title", "Walden")
    page.fill("#theme", "A man goes to the woods to find out what is enough, and comes back.")
    for number in (1, 2, 3):
        page.fill(f"#points-{number}-text", f"Winter {number} comes.")
    page.get_by_role("button", name="One more point").click()
    expect(page.locator("#points-4-text")).to_be_focused()
    page.keyboard.type("Spring comes.")
    page.fill("#quotations-1-text", "Simplify, simplify.")
    page.get_by_role("button", name="Keep it in the library").click()
    expect(page.locator("[role=status]").nth(1)).to_have_text("The digest is in your library.")
    walden = next(e.kept for e in list_digests(live.desk).entries if e.kept.title == "Walden")
    assert len(walden.digest().points) == 4
    assert list_drafts(live.desk).drafts == ()


def rooms(page: Page, live: Live):
    """Open every page of writing and looking over, with what they say when something is wrong."""
    draft_id = drafted(live)
    for address in ("/write", f"/drafts/{draft_id}", "/drafts", "/reader"):
        page.goto(live.address + address)
        for summary in page.locator("summary:visible").all():
            summary.click()
        yield address
    page.goto(f"{live.address}/drafts/{draft_id}")
    page.fill("#title", "")
    page.fill("#theme", LONG)
    page.fill("#points-1-text", LONG)
    page.fill("#quotations-3-text", LONG)
    with page.expect_navigation():
        page.get_by_role("button", name="Keep it in the library").click()
    yield "cannot be kept"
    kept = open_draft(live.desk, draft_id)
    change_draft(live.desk, draft_id, {**kept.typed, "theme": "Elsewhere."}, kept.revision)
    with page.expect_navigation():
        page.get_by_role("button", name="Keep the draft").click()
    yield "conflict"
    for button in ("Look before keeping", "Keep at once"):
        page.goto(f"{live.address}/books")
        page.set_input_files(
            "#files",
            [
                {"name": f"{LONG}.md", "mimeType": "text/markdown", "buffer": LIFELINES.encode()},
                {"name": "empty.docx", "mimeType": "text/plain", "buffer": b""},
            ],
        )
        with page.expect_navigation():
            page.get_by_role("button", name=button).click()
        yield f"{button}: two files"


def test_every_page_of_writing_is_accessible_and_fits(live: Live, opened: Opened) -> None:
    """Axe-core finds nothing, light or dark, and at 320 pixels all fits and can be pressed."""
    page = opened(bypass_csp=True, viewport=NARROW)
    found = {}
    for name in rooms(page, live):
        if wrong := faults(page):
            found[name] = wrong
    forgive_refusals(opened)
    assert found == {}


def test_progress_is_seen_without_a_script(live: Live, opened: Opened) -> None:
    """Of the bars that come one after another only the last one is seen, and it says all."""
    page = opened(java_script_enabled=False)
    page.goto(f"{live.address}/books")
    files = [
        {"name": f"{n}.md", "mimeType": "text/markdown", "buffer": DIGEST.encode()}
        for n in range(3)
    ]
    page.set_input_files("#files", files)
    page.get_by_role("button", name="Keep at once").click()
    expect(page.locator(".how-far.all")).to_be_visible()
    expect(page.locator(".how-far")).to_have_count(4)
    assert [each.is_visible() for each in page.locator(".how-far").all()] == [False] * 3 + [True]
