"""Pictures of every page at phone and desktop width, light and dark, for people to look at.

They are left in the folder that CATCHWORD_PICTURES names, or else in the test's own.
"""

import os
import re
from collections.abc import Iterator
from pathlib import Path
from uuid import UUID

import pytest
from playwright.sync_api import Page, expect

from cards.kinds.base import KindName
from service.use_cases.commitments import all_commitments
from service.use_cases.items import item_history, list_items
from tests.browser.conftest import Live, Opened
from tests.browser.ways import attempt, compare, every_kind
from tests.pages.sittings import only

SIZES = {"desktop": {"width": 1280, "height": 800}, "phone": {"width": 390, "height": 844}}


def sitting(page: Page, live: Live) -> Iterator[str]:
    """Show every page of a sitting."""
    yield from every_kind(page, live)
    only(live.desk, KindName.PLACE)
    page.goto(f"{live.address}/?plot=hidden")
    page.fill("[name=page]", "99")
    yield "place asked by page"
    compare(page)
    yield "place compared by page"
    only(live.desk, KindName.ORDER)
    page.goto(live.address)
    page.get_by_role("button", name="Compare").click()
    expect(page.locator(".fault")).to_be_visible()
    yield "order refused"
    only(live.desk, KindName.RESTATE)
    page.goto(live.address)
    page.locator(".minutes summary").click()
    yield "minutes"
    attempt(page)
    compare(page)
    page.locator("[value=clear]").check(force=True)
    page.get_by_role("button", name="Next").click()
    expect(page.get_by_role("heading", name="Was it kept?")).to_be_visible()
    yield "was it kept"
    with page.expect_navigation():
        page.get_by_role("link", name="Not now").click()
    yield "done"
    page.goto(f"{live.address}/answers/{last_answer(live)}")
    expect(page.get_by_role("heading", name="What your digest says")).to_be_visible()
    yield "answer"


def rooms(page: Page, live: Live) -> Iterator[str]:
    """Show the pages around it."""
    book = f"/books/{live.digest_id}"
    for address in (
        *("/books", "/commitments", "/reader", "/write", "/drafts", "/api/", "/nowhere", book),
        *("/commitments/over", "/re-reading", "/reminders", "/review/2026"),
        *(
            f"{book}/{room}"
            for room in ("talk", "mend", "places", "versions", "proof", "facts", "remove")
        ),
    ):
        page.goto(live.address + address)
        yield address.replace(live.digest_id, "book")

    promised = f"{live.address}/commitments/{first_commitment(live)}"
    page.goto(promised)
    yield "commitment"
    page.goto(f"{promised}/check-in")
    yield "check-in"


def first_commitment(live: Live) -> UUID:
    """Return the id of the first commitment there is."""
    found = all_commitments(live.desk).by_pace.values()
    return next(each.id for those in found for each in those)


def last_answer(live: Live) -> UUID:
    """Return the id of the answer given last."""
    items = list_items(live.desk, limit=200).items
    given = [each for item in items for each in item_history(live.desk, item.kept.item.id).answers]
    return max(given, key=lambda each: each.answer.answered_at).answer.id


LONGEST = 8_000
"""Pixels of a page that are drawn: more is no picture, and the API's page has more."""


def draw(page: Page, stem: Path) -> Iterator[Path]:
    """Draw a page from top to bottom in every way, in windows so high that nothing sticks.

    The page is loaded once: loading it is most of the time, and its looks are the style's alone.
    """
    for width, size in SIZES.items():
        page.set_viewport_size(size)
        height = page.evaluate("document.documentElement.scrollHeight")
        page.set_viewport_size({**size, "height": min(max(height, size["height"]), LONGEST)})
        for scheme in ("light", "dark"):
            page.emulate_media(color_scheme=scheme)
            path = stem.with_name(f"{stem.name}-{width}-{scheme}.png")
            page.screenshot(path=path)
            yield path
    page.set_viewport_size(SIZES["desktop"])


@pytest.mark.parametrize("walk", [sitting, rooms])
def test_every_page_has_its_picture(shelf: Live, opened: Opened, tmp_path: Path, walk) -> None:
    """Every page is drawn at both widths, on light paper and on dark, whole."""
    folder = Path(os.environ.get("CATCHWORD_PICTURES", tmp_path / "pictures"))
    page = opened()
    names, made = [], []
    for name in walk(page, shelf):
        names.append(name)
        made += draw(page, folder / re.sub(r"\W+", "-", name).strip("-"))
    opened.complaints[:] = [
        said
        for said in opened.complaints
        if not any(f"status of {code}" in said for code in (404, 422))
    ]
    assert len(set(made)) == len(made) == 4 * len(names)
    assert all(path.read_bytes().startswith(b"\x89PNG") for path in made)
    for ways in zip(*[iter(made)] * 4, strict=True):
        assert len({path.read_bytes() for path in ways}) == 4
