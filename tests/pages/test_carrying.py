"""What the forms of a sitting carry on: when a cue was shown, and what its numbers stood for."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from cards.kinds.base import Asked, Cue, Landmark
from service.pages.carrying import begun_at, same_cue, sign_of, taken_since

NOW = datetime(2026, 3, 2, 20, 0, tzinfo=UTC)
ORDER = Cue("h", "w", "q", (Asked.ORDER,), landmarks=(Landmark(1, "a"), Landmark(2, "b")))


def test_seconds_are_counted_from_the_cue() -> None:
    """The instant the cue was shown, written and read, gives the whole seconds since."""
    begun = (NOW - timedelta(seconds=42)).isoformat()
    assert begun_at({"begun": begun}) == NOW - timedelta(seconds=42)
    assert taken_since({"begun": begun}, NOW) == 42


@pytest.mark.parametrize(
    "written",
    [
        "",
        "yesterday",
        "2026-03-02T19:59:00",
        "2026-03-02T20:01:00+00:00",
        "2026-03-02T19:00:00+00:00",
        "0001-01-01T00:00:00+14:00",
        "9999-12-31T23:59:59-14:00",
        "2026-03-02T19:59:00+00:00" + " " * 100,
        "\x00",
    ],
)
def test_an_instant_that_cannot_be_right_counts_nothing(written: str) -> None:
    """A missing, broken, future or far instant gives no seconds, and never an error."""
    assert taken_since({"begun": written}, NOW) is None
    assert taken_since({}, NOW) is None


def test_a_cue_is_known_by_what_its_numbers_stand_for() -> None:
    """Other points, or the same otherwise ordered, are another cue; another title is not."""
    form = {"shown": sign_of(ORDER)}
    assert same_cue(form, replace(ORDER, words="another title"))
    assert not same_cue(form, replace(ORDER, landmarks=ORDER.landmarks[::-1]))
    assert not same_cue(form, replace(ORDER, landmarks=ORDER.landmarks[:1]))
    assert same_cue({}, ORDER)
    assert sign_of(Cue("h", "w", "q")) == ""
