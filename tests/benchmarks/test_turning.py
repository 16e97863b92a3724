"""How soon the next page of a sitting is shown, measured over a whole sitting in one run."""

from tests.benchmarks import turning
from tests.browser.conftest import Live, Opened, browser, live, opened, shelf

__all__ = ["browser", "live", "opened", "shelf"]

RUNS = 3
"""Runs of which one must hold: a busy moment of the machine spoils one run, not three."""


def test_the_next_cue_is_shown_at_once(shelf: Live, opened: Opened) -> None:
    """The next page is shown within 50 ms of the server's answer, at the median of a sitting."""

    def held() -> bool:
        shelf.clock.next_day(30)
        return turning.measure(opened(), shelf.address) < turning.LIMIT

    assert any(held() for _ in range(RUNS))
