"""What a talk says was recorded of a commitment."""

from datetime import UTC, date, datetime, time, timedelta
from uuid import UUID

import pytest

from cards.commitments import (
    Act,
    CheckIn,
    Commitment,
    Decision,
    Measure,
    Outcome,
    Period,
    pace_of,
)
from cards.talk.recorded import recorded

_MADE = date(2026, 1, 5)
_WEEKLY = Measure(1, Period.WEEK)
_FIVE_DAYS = Measure(1, Period.DAY, periods=5)
_BY = date(2026, 1, 9)
_TWICE = Measure(2, deadline=_BY)
_ID = UUID(int=7)


def _said(day: date, outcome: Outcome = Outcome.KEPT) -> CheckIn:
    at = datetime.combine(day, time(20), UTC)
    return CheckIn(UUID(int=day.toordinal()), _ID, outcome, day, at, day)


@pytest.mark.parametrize(
    ("measure", "days", "on", "words"),
    [
        (_WEEKLY, [], date(2026, 1, 6), "on course"),
        (_WEEKLY, [], date(2026, 1, 14), "slipping; the last one counted was not kept"),
        (_WEEKLY, [6, 13], date(2026, 1, 21), "on course; of the last two counted, two kept"),
        (_WEEKLY, [6], date(2026, 1, 14), "on course; the last one counted was kept"),
        (_WEEKLY, [], date(2026, 1, 21), "stalled; of the last two counted, none kept"),
        (_TWICE, [6], date(2026, 1, 7), "on course, 1 of 2 done"),
        (_TWICE, [5, 6, 7], date(2026, 1, 9), "done, 2 of 2"),
        (Measure(deadline=_BY), [], date(2026, 1, 12), "slipping"),
        (_FIVE_DAYS, [5, 6, 7], date(2026, 1, 12), "ended, 3 of 5 kept"),
        (_FIVE_DAYS, [5, 6, 7, 8, 9], date(2026, 1, 12), "done, 5 of 5 kept"),
    ],
)
def test_the_pace_is_told_with_its_figures(
    measure: Measure, days: list[int], on: date, words: str
) -> None:
    """The words name the pace and so many of so many, as the design’s truth table has them."""
    made = Commitment(_ID, "Write home", _MADE, _MADE, measure)
    said = [_said(date(2026, 1, day)) for day in days]
    assert recorded(pace_of(made, [], said, on)) == words


def test_what_was_released_tells_its_reason() -> None:
    """Of a released commitment the reason is told, and of an unknown one that nothing is."""
    made = Commitment(_ID, "Write home", _MADE, _MADE, _WEEKLY)
    at = datetime(2026, 1, 7, 9, tzinfo=UTC)
    gone = Decision(
        UUID(int=9), _ID, Act.RELEASE, at.date(), at, at.date(), words="She moved in with us"
    )
    stand = pace_of(made, [gone], [], at.date() + timedelta(days=1))
    assert recorded(stand) == "released: She moved in with us"
    assert recorded(None) == "nothing recorded"


def test_what_was_over_on_arrival_is_not_judged() -> None:
    """One that was over before it came into the library says that this is still to be told."""
    made = Commitment(_ID, "Write home", _MADE, date(2026, 6, 1), _FIVE_DAYS)
    assert recorded(pace_of(made, [], [], date(2026, 6, 2))).startswith("over before")
