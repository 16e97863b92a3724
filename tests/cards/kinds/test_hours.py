"""Times of the clock that a text names: common practice, no published source."""

import pytest

from cards.kinds.hours import Hour, take_hours, with_hours
from cards.wording.line import Line


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("every morning at 7", {420}),
        ("7 a.m. every day", {420}),
        ("at seven", {420}),
        ("at 7 o'clock", {420}),
        ("19:00", {420}),
        ("at half past six", {390}),
        ("at 6:30", {390}),
        ("6.30 pm", {390}),
        ("at a quarter to seven", {405}),
        ("at noon", {0}),
        ("at 12 o'clock", {0}),
        ("by ten each night", {600}),
        ("leave by 8.45 each day", {525}),
        ("at 9.00, alone", {540}),
        ("by 2.50 pounds a week", set()),
        ("by 7.10 at the latest", set()),
        ("at 7 meetings", set()),
        ("before 24 hours have passed", set()),
        ("until 30 June", set()),
    ],
)
def test_an_hour_is_read_however_it_is_written(text, minutes):
    """In minutes from noon or midnight; what is counted is no hour."""
    assert {each.minutes for each in take_hours(Line(with_hours(text)))} == minutes


@pytest.mark.parametrize(
    ("one", "other", "same"),
    [
        (Hour(420), Hour(420, late=True), True),
        (Hour(420, late=False), Hour(420, late=True), False),
        (Hour(420), Hour(430), False),
    ],
)
def test_hours_are_the_same_in_either_half_of_the_day_that_is_said(one, other, same):
    """Seven may be seven in the evening, seven in the morning may not."""
    assert one.same(other) is same


def test_the_half_of_the_day_is_read():
    """By a.m. and p.m., and by the clock of 24 hours."""
    read = [
        next(iter(take_hours(Line(with_hours(text))))).late
        for text in ("7 a.m.", "7 pm", "19:00", "at 7", "noon", "midnight")
    ]
    assert read == [False, True, True, None, True, False]
