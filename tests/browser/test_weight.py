"""What a sitting costs to load: bytes over the wire, no other host, no inline script or style."""

from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Page, Response

from tests.browser.conftest import Live, Opened
from tests.browser.ways import every_kind

FIRST_LOAD = 100_000
"""Bytes of the first load of the sitting, its typeface among them: the capability's own bound."""
SCRIPT = 15_000
"""Bytes of our script in it, likewise."""


def loaded(page: Page, address: str) -> list[Response]:
    """Open an address in an empty profile and return all that was sent for it."""
    answered: list[Response] = []
    page.on("response", lambda each: answered.append(each))  # noqa: PLW0108
    page.goto(address, wait_until="networkidle")
    page.evaluate("document.fonts.ready.then(() => null)")
    return answered


def sent(response: Response) -> int:
    """Return the bytes of a response as they were sent, packed or not, with its head."""
    sizes = response.request.sizes()
    return sizes["responseBodySize"] + sizes["responseHeadersSize"]


def test_the_first_load_is_light(shelf: Live, opened: Opened) -> None:
    """The first page of a sitting takes less than 100 kB over the wire, script under 15 kB."""
    answered = loaded(opened(), shelf.address)
    kinds = {response.request.resource_type for response in answered}
    assert {"document", "stylesheet", "script", "font"} <= kinds
    assert sum(map(sent, answered)) < FIRST_LOAD
    script = [each for each in answered if each.request.resource_type == "script"]
    assert sum(map(sent, script)) < SCRIPT
    assert sum(len(each.body()) for each in script) < SCRIPT


def test_nothing_is_asked_of_another_host(shelf: Live, opened: Opened) -> None:
    """Through every kind of item the browser asks no host but ours."""
    page = opened()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    for _ in every_kind(page, shelf):
        pass
    hosts = {urlsplit(url).netloc for url in asked}
    assert hosts == {urlsplit(shelf.address).netloc}


@pytest.mark.parametrize("script", [True, False], ids=["with script", "without script"])
def test_no_page_holds_script_or_style_of_its_own(
    shelf: Live, opened: Opened, *, script: bool
) -> None:
    """The policy allows only our own files, and no page of a sitting breaks it."""
    page = opened(java_script_enabled=script)
    policies = []
    page.on("response", lambda each: policies.append(each.headers.get("content-security-policy")))
    for _ in every_kind(page, shelf):
        source = page.content()
        assert "<style" not in source
        assert " style=" not in source
        assert " onclick=" not in source
    for policy in policies:
        assert policy is not None
        assert "default-src 'none'" in policy
        assert "unsafe" not in policy
