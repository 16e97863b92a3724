"""What stands on paper, and lines that stay lines there and on the screen."""

import re
from uuid import UUID

import pytest
from playwright.sync_api import Page, expect

from cards.digest import Commitment, Digest, Point, Quotation
from cards.kinds.base import KindName
from service.use_cases.mend_digest import mend_digest
from tests.browser.conftest import Live, Opened
from tests.pages.sittings import only, these


def test_a_digest_prints_without_the_furniture(live: Live, opened: Opened) -> None:
    """On paper a digest has its two pages side by side, and nothing that can only be pressed."""
    page = opened()
    page.goto(f"{live.address}/books/{live.digest_id}")
    page.emulate_media(media="print")
    expect(page.locator("nav")).to_be_hidden()
    for link in ("Mend the digest", "Take it out of the library"):
        expect(page.get_by_role("link", name=link)).to_be_hidden()
    assert not [
        each for each in page.locator("button, select, textarea").all() if each.is_visible()
    ]
    expect(page.get_by_role("heading", name="What is asked of it")).to_be_hidden()
    left, right = (leaf.bounding_box() for leaf in page.locator(".leaf").all())
    assert left is not None
    assert right is not None
    assert left["y"] == right["y"]
    assert left["x"] + left["width"] <= right["x"]


@pytest.mark.parametrize("kind", list(KindName))
def test_a_cue_prints_without_the_furniture(shelf: Live, opened: Opened, kind: KindName) -> None:
    """On paper a cue stands whole, with room to write and nothing that can only be pressed."""
    only(shelf.desk, kind)
    page = opened()
    page.goto(shelf.address)
    page.emulate_media(media="print")
    expect(page.locator("#cue")).to_be_visible()
    expect(page.locator("nav")).to_be_hidden()
    for name in ("Compare", "Leave out for today"):
        expect(page.get_by_role("button", name=name)).to_be_hidden()
    expect(page.locator(".minutes")).to_be_hidden()
    for room in page.locator("#words, .blank, .gap, .order .text, .choices label").all():
        expect(room).to_be_visible()


def test_verse_keeps_its_lines(live: Live, opened: Opened) -> None:
    """A text of two lines stands on two lines wherever it is shown, and on paper too."""
    mend_digest(live.desk, UUID(live.digest_id), VERSE)
    page = opened()
    for media in ("screen", "print"):
        page.goto(f"{live.address}/books/{live.digest_id}")
        page.emulate_media(media=media)
        for shown in (".said", ".points >> nth=0", ".points >> nth=1", "blockquote"):
            assert len(lines(page, f"{shown} >> .lines" if "points" in shown else shown)) == 2
    page.emulate_media(media="screen")
    page.goto(f"{live.address}/commitments")
    assert len(lines(page, ".promises .lines")) == 2
    page.goto(f"{live.address}/books/{live.digest_id}/places")
    assert len(lines(page, ".quoted-small")) == len(lines(page, ".plot .landmark")) == 2
    for kind in (KindName.THEME, KindName.RESTATE, KindName.PLACE, KindName.COMPLETE):
        these(live.desk, kind)
        page.goto(live.address)
        if kind is KindName.PLACE:
            assert len(lines(page, "blockquote")) == len(lines(page, ".landmark")) == 2
        page.get_by_role("button", name=re.compile("Nothing comes back|I can’t tell")).click()
        expect(page.locator(".grades")).to_be_visible()
        if kind is not KindName.THEME:
            told = ".landmark" if page.locator(".landmark").count() else "#says"
            assert len(lines(page, told)) == 2


def lines(page: Page, selector: str) -> list[str]:
    """Return the lines in which the first element that fits is set, as they are painted."""
    return page.locator(selector).first.inner_text().splitlines()


VERSE = Digest(
    title="Songs of the Fen",
    theme="He goes out to count,\nand is counted.",
    points=(Point("He goes out\nat dusk.", "p. 3"), Point("He comes home.")),
    commitments=(Commitment("When the bell rings,\nsay one stanza aloud to Hanne."),),
    quotations=(
        Quotation("I went to count the herons;\nthe herons counted me.", "p. 41", 1),
        Quotation("The last light\nis the one you carry.", "Finale"),
    ),
)
