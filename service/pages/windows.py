"""The windows a commitment is judged by, drawn in a row and told in a table."""

from dataclasses import dataclass

from cards.commitments import Stand
from cards.commitments.windows import Kept, Window

_STEP = 22
"""Pixels from one window to the next."""


@dataclass(frozen=True, slots=True)
class DrawnWindow:
    """One window of the row.

    Attributes:
        at: where its mark stands, in pixels from the left.
        came_to: `kept`, `partly`, `missed`, `silent`; `paused`, or `open` while it runs.
        window: the window itself.
    """

    at: int
    came_to: str
    window: Window

    @property
    def done(self) -> int:
        """Whole deeds done in its periods, in none of them more than were due."""
        return sum(min(each.done, each.due) for each in self.window.periods)

    @property
    def due(self) -> int:
        """Deeds due in its periods."""
        return sum(each.due for each in self.window.periods)


@dataclass(frozen=True, slots=True)
class DrawnWindows:
    """The row of windows, the earliest first.

    Attributes:
        width: of the drawing, in pixels.
        words: what it shows, in a sentence for who does not see it.
    """

    windows: tuple[DrawnWindow, ...]
    width: int
    words: str


def windows_drawn(stand: Stand | None) -> DrawnWindows | None:
    """Return the windows a commitment was judged by, or None where there are none."""
    if stand is None or not stand.windows:
        return None
    in_order = tuple(reversed(stand.windows))
    drawn = tuple(
        DrawnWindow(_STEP // 2 + place * _STEP, _came_to(each), each)
        for place, each in enumerate(in_order)
    )
    said = ", ".join(each.came_to for each in drawn)
    return DrawnWindows(drawn, len(drawn) * _STEP, f"From the earliest on: {said}.")


def _came_to(window: Window) -> str:
    if window.paused:
        return "paused"
    if not window.closed and window.came_to is not Kept.KEPT:
        return "open"
    return window.came_to.value
