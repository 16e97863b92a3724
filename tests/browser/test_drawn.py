"""Drawn pictures in the browser: the right form shows, whole, legible, in both papers."""

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from jinja2 import Environment, FileSystemLoader
from playwright.sync_api import Page, Route

from service.feeds.pictures import Pictures
from service.feeds.pictures.lettering import width
from service.use_cases.picture_records import Picture
from tests.browser.conftest import Opened
from tests.feeds.pictures import samples

PAGES = Path(__file__).parents[2] / "service" / "pages"
ADDRESS = "http://drawn.example/"
SIZES = (320, 390, 700, 1280)
SLANT = 2
"""Units by which a slanted letter may lean over the edge, where nothing is clipped."""
LEAST = 11
"""Pixels of type that are read on a phone (common practice, no published source)."""
_FACE = "/static/fonts/source-serif-4-latin-400-normal.woff2"
_IN_OUR_FACE = (
    f"@font-face {{ font-family: Ours; src: url({_FACE}); font-display: block; }}"
    ".picture svg { font-family: Ours; }"
)
"""Asks for the typeface whatever it takes, for the pages go without it where it comes late."""
_SHOWN = """() => [...document.querySelectorAll(".picture svg")].filter(
    (svg) => svg.checkVisibility()
).map((svg) => {
    const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
    return {
        form: svg.getAttribute("class"),
        pixels: scale * parseFloat(svg.getAttribute("font-size")),
        right: svg.viewBox.baseVal.width,
        texts: [...svg.querySelectorAll("text")].map((text) => {
            const box = text.getBBox();
            const words = [...text.childNodes].filter((node) => node.nodeType === 3)
                .map((node) => node.data).join("");
            return [words, box.x, box.y, box.x + box.width, box.y + box.height];
        }),
    };
})"""


@pytest.fixture
def page(opened: Opened) -> Iterator[Page]:
    """A page with every sample as the macro sets it, served by the test itself."""
    templates = Environment(loader=FileSystemLoader(PAGES / "templates"), autoescape=True)
    macro = templates.get_template("picture.html").module.drawn
    drawer = Pictures()
    pictures = [
        Picture(name, f"What came back: {name}", samples.HOSTILE, samples.TABLE, drawing)
        for name, drawing in samples.DRAWINGS.items()
    ]
    figures = "".join(
        macro(each, drawer.inline(each), (("SVG", "#svg"), ("PNG", "#png"))) for each in pictures
    )
    html = (
        '<!doctype html><html lang="en"><title>Drawn</title>'
        '<meta name="viewport" content="width=device-width">'
        f'<link rel="stylesheet" href="/static/look.css"><main><h1>Drawn</h1>{figures}</main>'
    )

    def answer(route: Route) -> None:
        path = route.request.url.removeprefix(ADDRESS).split("?")[0]
        if path.startswith("static/"):
            route.fulfill(path=PAGES / path)
        else:
            route.fulfill(body=html, content_type="text/html; charset=utf-8")

    shown = opened()
    shown.route(f"{ADDRESS}**", answer)
    shown.goto(ADDRESS)
    shown.add_style_tag(content=_IN_OUR_FACE)
    assert shown.evaluate("document.fonts.load('14px Ours').then((faces) => faces.length)") == 1
    yield shown
    assert not opened.complaints


def test_one_form_shows_whole_and_legible(page: Page):
    """At every width the fitting form shows, its words inside it, apart, and 11 pixels or more.

    Figures stand open beside them, and nothing makes the page wider than its window.
    """
    page.evaluate("document.querySelectorAll('details').forEach((each) => (each.open = true))")
    for wide in SIZES:
        page.set_viewport_size({"width": wide, "height": 800})
        assert page.evaluate("document.documentElement.scrollWidth") == wide
        shown = page.evaluate(_SHOWN)
        assert len(shown) == len(samples.DRAWINGS)
        for each in shown:
            assert each["form"] == ("narrow" if wide < 520 else "wide")
            assert each["pixels"] >= LEAST
            beyond = [
                text
                for text in each["texts"]
                if text[1] < -SLANT or text[3] > each["right"] + SLANT
            ]
            assert not beyond, json.dumps(beyond)
            assert not list(overlapping(each["texts"]))


def test_the_widths_laid_out_with_are_never_too_small(page: Page):
    """What the browser sets in our typeface is no wider than what room was left for it."""
    for each in page.evaluate(_SHOWN):
        for words, left, _, right, _ in each["texts"]:
            if words.isascii():
                assert right - left <= width(words, 14) + 0.5, words


def overlapping(texts: list[list]) -> Iterator[tuple[str, str]]:
    """Return the pairs of texts that lie over each other by more than their leading."""
    for n, (words, left, top, right, bottom) in enumerate(texts):
        for other, other_left, other_top, other_right, other_bottom in texts[n + 1 :]:
            beside = min(right, other_right) - max(left, other_left)
            above = min(bottom, other_bottom) - max(top, other_top)
            if beside > 1 and above > (bottom - top) / 2:
                yield words, other
