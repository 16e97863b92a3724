"""A headless Chromium, and a library served to it on the loopback address."""

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from threading import Thread
from typing import Any
from uuid import UUID

import pytest
import waitress
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright
from waitress.server import BaseWSGIServer

from cards.parts import PartKind
from service.use_cases.add_digest import add_digest
from service.use_cases.library import open_digest
from service.use_cases.links import GivenLink, link
from service.use_cases.ports import Desk
from tests.pages.house import DIGEST, Clock, library
from tests.standing import application_on

_NAMES = ("chromium", "chromium-browser", "google-chrome", "chrome")
_FLAGS = """--no-sandbox --disable-gpu --disable-quic --no-first-run
    --disable-background-networking --disable-component-update --disable-sync""".split()
PATIENCE = 10_000
"""Milliseconds the browser may take for one step: far more than any of them needs."""


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """The machine's Chromium; skipped without one, but not in CI."""
    found = next(filter(None, map(shutil.which, _NAMES)), None)
    if found is None:
        reason = f"The pages were not opened in a browser: none of {', '.join(_NAMES)} is here."
        if os.environ.get("CI") == "true":
            pytest.fail(reason)
        pytest.skip(reason)
    with sync_playwright() as playwright:
        launched = playwright.chromium.launch(executable_path=found, args=_FLAGS)
        yield launched
        launched.close()


@dataclass(frozen=True)
class Live:
    """A served library.

    Attributes:
        address: where it is served, without a slash at the end.
        digest_id: of Silas Marner, the one book in it.
    """

    address: str
    desk: Desk
    clock: Clock
    digest_id: str


@pytest.fixture
def live(tmp_path: Path) -> Iterator[Live]:
    """A library with one book, served from a thread of its own."""
    clock = Clock()
    with library(tmp_path, clock.now) as desk:
        added = add_digest(desk, "silas.md", DIGEST.encode())
        with served(desk) as address:
            yield Live(address, desk, clock, str(added.kept.id))


OTHERS = ("Middlemarch", "Cranford", "Walden", "Emma", "Persuasion")
"""Titles of further books, enough to choose among."""


@pytest.fixture
def shelf(live: Live) -> Live:
    """Silas Marner among other books, its second point linked to one of them: all kinds."""
    digests = [
        add_digest(live.desk, f"{title}.md", f"# {title}\n\n## Theme\n\n{title}.".encode())
        for title in OTHERS
    ]
    kept = open_digest(live.desk, UUID(live.digest_id)).kept
    point = kept.held(PartKind.POINT)[1]
    given = GivenLink(live.desk.new_id(), kept.id, point.id, digests[2].kept.id, "It keeps you.")
    link(live.desk, given)
    return live


@pytest.fixture
def empty(tmp_path: Path) -> Iterator[str]:
    """The address of a served library without a book."""
    with library(tmp_path, Clock().now) as desk, served(desk) as address:
        yield address


@contextmanager
def served(desk: Desk) -> Iterator[str]:
    """Serve a library on a free port until the context is left: one at a time."""
    with application_on(desk) as app:
        server = waitress.create_server(app, host="127.0.0.1", port=0, threads=4)
        assert isinstance(server, BaseWSGIServer)
        thread = Thread(target=server.run)
        thread.start()
        try:
            yield f"http://127.0.0.1:{server.effective_port}"
        finally:
            # The loop ends when nothing is left to wait for; only its own thread may close that.
            server.trigger.pull_trigger(lambda: [each.close() for each in [*server._map.values()]])
            thread.join(timeout=PATIENCE / 1000)
            server.task_dispatcher.shutdown()
            assert not thread.is_alive()


class Opened:
    """Opens pages, and remembers what the browser complained of."""

    def __init__(self, browser: Browser) -> None:
        self._browser = browser
        self._contexts: list[BrowserContext] = []
        self.complaints: list[str] = []

    def __call__(self, **options: Any) -> Page:
        """Open an empty page in a fresh profile; `options` as a new context takes them."""
        context = self._browser.new_context(
            **{"viewport": {"width": 1280, "height": 800}, "reduced_motion": "reduce", **options}
        )
        context.set_default_timeout(PATIENCE)
        self._contexts.append(context)
        page = context.new_page()
        page.on("console", lambda said: self.complaints.append(said.text))
        page.on("pageerror", lambda error: self.complaints.append(str(error)))
        return page

    def close(self) -> None:
        """Close every page."""
        for context in self._contexts:
            context.close()


@pytest.fixture
def opened(browser: Browser) -> Iterator[Opened]:
    """Opens pages that must give the browser nothing to complain of."""
    made = Opened(browser)
    yield made
    made.close()
    assert made.complaints == []
