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


@pytest.mark.parametrize("script", [True, False], ids=["with script", "without script"])
def test_a_sitting_is_our_own_files_alone(shelf: Live, opened: Opened, *, script: bool) -> None:
    """Through every kind of item no other host is asked, and no page has script or style in it.

    The policy allows none.
    """
    page = opened(java_script_enabled=script)
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    policies = []
    page.on("response", lambda each: policies.append(each.headers.get("content-security-policy")))
    for _ in every_kind(page, shelf):
        source = page.content()
        assert "<style" not in source
        assert " style=" not in source
        assert " onclick=" not in source
    assert {urlsplit(url).netloc for url in asked} == {urlsplit(shelf.address).netloc}
    assert policies
    for policy in policies:
        assert policy is not None
        assert "default-src 'none'" in policy
        assert "unsafe" not in policy
