"""Days of the calendar that a text names: common practice, no published source."""

import pytest

from cards.kinds.calendar_days import take_days
from cards.wording.line import Line


@pytest.mark.parametrize(
    "text",
    [
        "3 December",
        "December 3rd",
        "the third of December",
        "Dec. 3",
        "by 3/12",
        "2026-12-03",
        "3.12.2026",
        "(3.12.)",
    ],
)
def test_a_date_is_read_however_it_is_written(text):
    """Day before month or after it, in words or figures."""
    assert take_days(Line(text)).dates == {(12, 3)}


@pytest.mark.parametrize(
    ("text", "date"),
    [
        ("until December", (12, 0)),
        ("until the end of June", (6, 30)),
        ("by the last day of February", (2, 28)),
        ("in May", (5, 0)),
    ],
)
def test_a_month_alone_and_its_end_are_read(text, date):
    """A month without a day has the day 0; its end is its last day in a common year."""
    assert take_days(Line(text)).dates == {date}


def test_may_is_a_verb_too():
    """What may go wrong is no month."""
    assert take_days(Line("write what may go wrong")).dates == frozenset()


def test_years_feasts_and_spans_are_read():
    """By number, by name, by what they are to today."""
    assert take_days(Line("until the end of 2027")).years == {2027}
    assert take_days(Line("by 15 April 2027")).years == {2027}
    assert take_days(Line("until Easter, this year")).feasts == {"easter", "this year"}


def test_a_feast_of_the_same_day_every_year_is_that_date():
    """Michaelmas is 29 September, under either name."""
    assert take_days(Line("by Michaelmas")) == take_days(Line("by 29 September"))


@pytest.mark.parametrize(
    ("text", "days"),
    [
        ("on Sundays", {"SU"}),
        ("Wed. evenings", {"WE"}),
        ("sat. mornings", {"SA"}),
        ("every working day", {"MO", "TU", "WE", "TH", "FR"}),
        ("Monday to Friday", {"MO", "TU", "WE", "TH", "FR"}),
        ("at weekends", {"SA", "SU"}),
        ("daily", set()),
    ],
)
def test_weekdays_are_read_however_they_are_written(text, days):
    """As RFC 5545 (3.3.10, BYDAY) writes them."""
    assert take_days(Line(text)).weekdays == days
