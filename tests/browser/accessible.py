"""What is wrong with a page as it stands: by axe-core, and too wide or too small for a finger."""

from typing import Any

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

NARROW, WIDE = {"width": 320, "height": 640}, {"width": 1280, "height": 800}
"""WCAG 2.2, 1.4.10: 1280 pixels at a zoom of 400% are 320."""
_RULES = {
    "resultTypes": ["violations"],
    "runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    "rules": {"color-contrast": {"enabled": False}},
}
"""What axe-core looks for whatever the paper: everything but contrast, which it changes."""
_CONTRAST = {"resultTypes": ["violations"], "runOnly": ["color-contrast"]}
_ALIKE = {"exclude": [["main.api section ~ section"]]}
"""Where contrast is not looked at: one template writes all sections of the API's page, some ten
thousand elements, so the colours of the first are those of all, and half a minute is saved."""
_SMALL = """() => [...document.querySelectorAll(
    "button, .head nav a, summary, .grades label, .gap label, .choices label, .order select"
)].filter((target) => {
    const box = target.getBoundingClientRect();
    return target.checkVisibility() && (box.height < 24 || box.width < 24);
}).map((target) => target.outerHTML)"""
"""Finds what is pressed and is less than 24 pixels high or wide (WCAG 2.2, 2.5.8)."""


def faults(page: Page) -> dict[str, object]:
    """Return what is wrong with a page in any way of looking at it, by what was looked for.

    Its width and its targets at 320 pixels, then what axe-core finds at 1280, with the contrast on
    dark paper and on light. One load is looked at in every way, for loading is most of the time.
    The page must let scripts in that are not ours; it is left narrow and light.
    """
    page.wait_for_load_state()  # What is sent without our script is there before its style is.
    page.set_viewport_size(NARROW)
    width = page.evaluate("document.documentElement.scrollWidth")
    found = {
        "wider than 320": width if width > NARROW["width"] else None,
        "targets under 24": page.evaluate(_SMALL),
    }
    page.set_viewport_size(WIDE)
    found["rules"] = _violated(page, _RULES)
    for scheme in ("dark", "light"):
        page.emulate_media(color_scheme=scheme)
        found[f"contrast, {scheme}"] = _violated(page, _CONTRAST, _ALIKE)
    page.set_viewport_size(NARROW)
    return {check: fault for check, fault in found.items() if fault}


def _violated(
    page: Page, wanted: dict[str, Any], where: dict[str, Any] | None = None
) -> list[tuple[str, list[str]]]:
    """Return the rules a page breaks, each with the elements that break it.

    The engine is half a megabyte: a document that holds it is not handed it again.
    """
    if not page.evaluate("'axe' in window"):
        page.evaluate(_engine.axe_script)
    found = page.evaluate(
        "async ([where, wanted]) => (await axe.run(where ?? document, wanted)).violations",
        [where, wanted],
    )
    return [(each["id"], [node["html"] for node in each["nodes"]]) for each in found]


_engine = Axe()
