"""Every page in the browser: accessible, whole at 320 pixels, quiet on the console."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from uuid import UUID

import pytest
from playwright.sync_api import Page, expect

from cards.commitments import Outcome
from cards.digest import Point, Quotation
from cards.intake import Understood
from cards.kinds.base import KindName
from cards.parts import PartKind
from service.use_cases.add_digest import Kept, keep_understood
from service.use_cases.check_in import Report, check_in
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import mend_digest
from tests.browser.accessible import NARROW, faults
from tests.browser.conftest import Live, Opened
from tests.browser.ways import compare, every_kind, go_on
from tests.pages.sittings import only

BRIGHT, DIM = 600, 150
"""Sums of red, green and blue that nobody would take for the other."""
LONG = "Llanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogoch" * 4


def press(page: Page, role: str, name: str) -> None:
    """Press a button or a link that loads a page, and wait for it."""
    with page.expect_navigation():
        page.get_by_role(role, name=name).click()


def sitting(page: Page, live: Live) -> Iterator[str]:
    """Ask every kind of item, and name each page that is shown on the way."""
    yield from every_kind(page, live, f"Gold {LONG}")
    for kind in (KindName.PLACE, KindName.ORDER, KindName.SOURCE):
        only(live.desk, kind)
        page.goto(live.address)
        page.get_by_role("button", name="Compare").click()
        expect(page.locator(".fault")).to_be_visible()
        yield f"{kind}, nothing given"
    only(live.desk, KindName.PLACE)
    page.goto(live.address)
    press(page, "link", "Hide the plot")
    yield "plot hidden"
    only(live.desk, KindName.THEME)
    page.goto(live.address)
    page.locator(".minutes summary").click()
    page.fill("#minutes", "many")
    page.get_by_role("button", name="Keep").click()
    expect(page.locator(".fault")).to_be_visible()
    yield "minutes refused"
    page.get_by_role("button", name="Leave out for today").click()
    expect(page.locator(".left-out")).to_be_visible()
    yield "all left out"
    only(live.desk, KindName.THEME)
    page.goto(live.address)
    page.fill("#words", LONG)
    compare(page)
    go_on(page)
    yield "done"
    press(page, "link", "The answer")
    yield "answer"


def rooms(page: Page, live: Live) -> Iterator[str]:
    """Go through the other rooms, with their forms refused and granted."""
    book = f"{live.address}/books/{live.digest_id}"
    kept = open_digest(live.desk, UUID(live.digest_id)).kept
    part = next(each for each in kept.parts if each.kind is PartKind.COMMITMENT)
    check_in(
        live.desk, Report(live.desk.new_id(), part.id, Outcome.KEPT, note=LONG, witness="W" * 200)
    )
    for address in ("", "/mend", "/places", "/remove"):
        page.goto(book + address)
        yield f"book{address}"
    page.goto(f"{book}/mend")
    page.fill("#title", "")
    page.fill("#pages", "many")
    page.fill("#theme", LONG)
    press(page, "button", "Keep it so")
    yield "mend, refused"
    for address in ("/books", "/commitments", "/archive", "/reader"):
        page.goto(live.address + address)
        for summary in page.locator("summary").all():
            summary.click()
        yield address
    page.fill("#time_zone", "Atlantis")
    press(page, "button", "Keep")
    yield "reader, refused"
    yield from promised(page, live, part.id)
    for address in ("/api/", "/api/problems/conflict", "/nowhere"):
        page.goto(live.address + address)
        yield address
    for button in ("Look before keeping", "Keep at once"):
        page.goto(f"{live.address}/books")
        press(page, "button", button)
        yield f"{button}: no file"
        page.set_input_files(
            "#files",
            [
                {"name": f"{LONG}.md", "mimeType": "text/markdown", "buffer": ESSAYS},
                {"name": "empty.docx", "mimeType": "text/plain", "buffer": b""},
            ],
        )
        press(page, "button", button)
        yield f"{button}: two files"


def promised(page: Page, live: Live, commitment_id: UUID) -> Iterator[str]:
    """Check in, decide and be reminded, refused and granted, long after; all of it laid open."""
    commitment = f"{live.address}/commitments/{commitment_id}"
    live.clock.next_day(60)
    for address in ("/commitments", "/commitments/over", "/reminders"):
        page.goto(live.address + address)
        for summary in page.locator("summary").all():
            summary.click()
        yield address
    page.fill("#name", LONG[:100])
    press(page, "button", "Make an address")
    yield "an address of the calendar"
    page.goto(f"{commitment}/check-in")
    page.locator("summary").click()
    yield "check-in"
    page.fill("#count", "many")
    press(page, "button", "kept")
    yield "check-in, refused"
    page.goto(commitment)
    for summary in page.locator("summary").all():
        summary.click()
    page.get_by_label("How often, how much").fill(LONG)
    press(page, "button", "Correct the measure")
    yield "decision, refused"
    page.get_by_label("Let it go, and why").fill(LONG)
    press(page, "button", "Release it")
    yield "released"


NOVEL = f"CHAPTER 1\n\nIn old days there were angels who came and took men. {LONG}\n".encode()


def edited(page: Page, live: Live) -> Iterator[str]:
    """Edit a digest, hold it against its book, and read it a second time."""
    book = f"{live.address}/books/{live.digest_id}"
    digest = open_digest(live.desk, UUID(live.digest_id)).kept.digest()
    slipped = Quotation(f"there were angels who cam and took men. {LONG}")
    points = (Point(f"{LONG} and quite another claim"), *digest.points[1:])
    changed = replace(digest, points=points, quotations=(slipped, *digest.quotations))
    mend_digest(live.desk, UUID(live.digest_id), changed)
    for address in ("?kept=digest", "/versions", "/versions/1", "/facts", "/annotations"):
        page.goto(book + address)
        yield f"book{address}"
    page.goto(f"{book}/proof")
    page.set_input_files(
        "#book", [{"name": f"{LONG}.txt", "mimeType": "text/plain", "buffer": NOVEL}]
    )
    press(page, "button", "Look the quotations up")
    yield "proof"
    press(page, "button", "Mend what is ticked")
    yield "proof, mended"
    page.goto(f"{book}/facts")
    page.fill("#bibliography", "Dear aunt,")
    press(page, "button", "Take its facts")
    yield "facts, refused"
    again = replace(digest, finished_on=date(2036, 2, 11), points=(Point(LONG),), quotations=())
    with live.desk.store.writing() as work:
        work.readers.lock(live.desk.reader)
        read = Understood(replace(again, commitments=()), ())
        other = keep_understood(live.desk, work, read, None, Kept.READING).kept.id
        work.commit()
    page.goto(f"{book}/beside/{other}")
    yield "beside"


ESSAYS = (
    f"# {LONG}\n\n## Theme\n\n{LONG} and more.\n\n## Quotations\n\n* “{LONG}” (p. 3)\n".encode()
)


@pytest.mark.parametrize("walk", [sitting, rooms, edited])
def test_every_page_is_accessible_and_fits(shelf: Live, opened: Opened, walk) -> None:
    """Axe-core finds nothing, light or dark, and at 320 pixels all fits and can be pressed."""
    page = opened(bypass_csp=True, viewport=NARROW)
    found = {}
    for name in walk(page, shelf):
        if wrong := faults(page):
            found[name] = wrong
    forgive_refusals(opened)
    assert found == {}


def test_a_sitting_is_accessible_without_our_script(shelf: Live, opened: Opened) -> None:
    """Nothing is wrong with the pages of a sitting either where our script never came."""
    page = opened(bypass_csp=True, viewport=NARROW)
    page.route("**/*.js?*", lambda route: route.abort())
    found = {}
    for name in sitting(page, shelf):
        if wrong := faults(page):
            found[name] = wrong
    opened.complaints[:] = [each for each in opened.complaints if "ERR_FAILED" not in each]
    forgive_refusals(opened)
    assert found == {}


def test_an_empty_library_is_accessible(empty: str, opened: Opened) -> None:
    """The first page a reader ever sees is accessible too, and fits."""
    page = opened(bypass_csp=True, viewport=NARROW)
    for address in ("/", "/books", "/commitments", "/archive", "/nowhere"):
        page.goto(empty + address)
        assert faults(page) == {}, address
    forgive_refusals(opened)


def test_the_paper_is_dark_when_the_system_asks_for_it(live: Live, opened: Opened) -> None:
    """Dark paper is dark and its ink light; light paper the other way round."""
    lightness = {}
    for scheme in ("light", "dark"):
        page = opened(color_scheme=scheme)
        page.goto(live.address)
        for what in ("backgroundColor", "color"):
            colour = page.evaluate(f"getComputedStyle(document.documentElement).{what}")
            lightness[scheme, what] = sum(map(int, colour[4:-1].split(",")))
    assert lightness["light", "backgroundColor"] > BRIGHT
    assert lightness["light", "color"] < DIM
    assert lightness["dark", "backgroundColor"] < DIM
    assert lightness["dark", "color"] > BRIGHT


def test_the_type_is_our_own(live: Live, opened: Opened) -> None:
    """The pages are set in the typeface they ship."""
    page = opened()
    page.goto(live.address)
    page.evaluate("document.fonts.ready.then(() => null)")
    assert page.evaluate("document.fonts.check('16px \"Source Serif 4\"')")
    assert page.evaluate("[...document.fonts].some((face) => face.status === 'loaded')")


def forgive_refusals(opened: Opened) -> None:
    """Leave out what the browser says of pages that were refused on purpose."""
    opened.complaints[:] = [
        said
        for said in opened.complaints
        if not any(f"status of {code}" in said for code in (404, 409, 422))
    ]
