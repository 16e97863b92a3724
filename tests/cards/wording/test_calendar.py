"""Days told in words: feasts, ordinals, and where a month or the calendar ends."""

from datetime import date, timedelta

import pytest

from cards.wording.dates import day_or_span
from cards.wording.feasts import FEASTS, easter, feast
from cards.wording.line import line_of
from cards.wording.spans import after, months_after, next_day, nth_weekday, span_of

WEDNESDAY = date(2026, 3, 4)


@pytest.mark.parametrize(
    "day",
    [
        "1818-03-22",
        "1943-04-25",
        "1954-04-18",
        "1991-03-31",
        "1992-04-19",
        "1993-04-11",
        "2000-04-23",
        "2024-03-31",
        "2025-04-20",
        "2026-04-05",
        "2027-03-28",
        "2285-03-22",
    ],
)
def test_easter_falls_where_the_tables_have_it(day: str) -> None:
    """Source: the examples in Meeus, "Astronomical Algorithms", ch. 8, and church calendars."""
    assert easter(int(day[:4])).isoformat() == day


def test_movable_feasts_keep_their_distance_and_weekday() -> None:
    """Ash Wednesday, Good Friday, Whitsun and the first of Advent fall on their days; 30 years."""
    for year in range(2010, 2040):
        assert feast("ash wednesday", year)[0].weekday() == 2
        assert feast("good friday", year)[0] == easter(year) - timedelta(days=2)
        assert feast("whitsun", year)[0] == easter(year) + timedelta(days=49)
        first, eve = feast("advent", year)
        assert first.weekday() == 6
        assert timedelta(days=21) <= eve - first <= timedelta(days=27)
        assert feast("thanksgiving", year)[0].weekday() == 3
        assert 22 <= feast("thanksgiving", year)[0].day <= 28


def test_every_feast_has_a_span_every_year() -> None:
    """Each name gives a first day that is not after its last, in the year asked for."""
    for name in FEASTS:
        first, last = feast(name, 2028)
        assert first <= last
        assert last.year == 2028


@pytest.mark.parametrize(
    ("phrase", "last"),
    [
        ("Friday", "2026-03-06"),
        ("Wednesday", "2026-03-11"),
        ("this Wednesday", "2026-03-04"),
        ("next Monday", "2026-03-09"),
        ("Monday week", "2026-03-16"),
        ("a week on Monday", "2026-03-16"),
        ("the 4th", "2026-04-04"),
        ("the 31st", "2026-03-31"),
        ("30 February", None),
        ("29 February", "2028-02-29"),
        ("1 March", "2027-03-01"),
        ("March", "2026-03-31"),
        ("the end of the quarter", "2026-03-31"),
        ("the end of June", "2026-06-30"),
        ("the end of next month", "2026-04-30"),
        ("the last Friday of next month", "2026-04-24"),
        ("the first Monday in May", "2026-05-04"),
        ("the first week of April", "2026-04-07"),
        ("this week", "2026-03-08"),
        ("next week", "2026-03-15"),
        ("tomorrow", "2026-03-05"),
        ("2 weeks from now", "2026-03-18"),
        ("2026-12-24", "2026-12-24"),
        ("24/12/2026", "2026-12-24"),
        ("12/24/2026", "2026-12-24"),
        ("Easter", "2026-04-05"),
        ("New Year's Eve", "2026-12-31"),
        ("mid-May", "2026-05-15"),
        ("the second quarter", "2026-06-30"),
        ("half past seven", None),
    ],
)
def test_a_phrase_names_its_day(phrase: str, last: str | None) -> None:
    """Seen from Wednesday 4 March 2026, each phrase ends on the day a reader would say."""
    span = day_or_span(line_of(phrase), WEDNESDAY)
    assert (span and span[1].isoformat()) == last


def test_spans_begin_on_mondays_and_firsts() -> None:
    """Weeks begin on Monday; months and quarters end on their last day."""
    assert span_of("week", WEDNESDAY) == (date(2026, 3, 2), date(2026, 3, 8))
    assert span_of("weekend", WEDNESDAY) == (date(2026, 3, 7), date(2026, 3, 8))
    assert span_of("month", date(2028, 2, 5))[1] == date(2028, 2, 29)
    assert span_of("quarter", WEDNESDAY, 1) == (date(2026, 4, 1), date(2026, 6, 30))
    assert span_of("year", WEDNESDAY, 1) == (date(2027, 1, 1), date(2027, 12, 31))


def test_arithmetic_keeps_within_its_month_and_the_calendar() -> None:
    """A month from 31 January is the last of February; beyond a century there is no day."""
    assert months_after(date(2026, 1, 31), 1) == date(2026, 2, 28)
    assert next_day(WEDNESDAY, 2) == date(2026, 3, 11)
    assert nth_weekday(2026, 2, 0, 5) is None
    assert nth_weekday(2026, 5, 4, -1) == date(2026, 5, 29)
    assert after(WEDNESDAY, 10**9, "weeks") is None
    assert after(date.max, 1, "day") is None
    assert after(WEDNESDAY, 1, "fathoms") is None


@pytest.mark.parametrize(
    ("said", "line"),
    [
        ("twenty-five letters", "25 letters"),
        ("a dozen letters", "12 letters"),
        ("half a dozen letters", "6 letters"),
        ("two dozen letters", "24 letters"),
        ("a couple of letters", "2 letters"),
        ("one hundred and twenty pages", "120 pages"),
        ("a hundred days", "100 days"),
        ("the twenty-first", "the 21th"),
        ("every second day", "every 2th day"),
        ("ten seconds", "10 seconds"),
        ("a fortnight", "a 2 weeks"),
        ("twice, thrice", "2 times , 3 times"),
        ("I’ll not", "i will not"),
        ("no one and one another", "nobody and eachother"),
        ("at 7:30 pm", "at @"),
    ],
)
def test_numbers_in_words_become_figures(said: str, line: str) -> None:
    """A line holds figures for every number, ordinals with "th", and no contractions."""
    assert line_of(said) == line
