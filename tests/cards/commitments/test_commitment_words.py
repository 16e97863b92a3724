"""How a commitment, its measure and its standing are said in words."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from cards.commitments import (
    Act,
    Measure,
    Period,
    Rule,
    Span,
    measure_in_words,
    pace_of,
    progress,
    told,
)
from cards.commitments.day_words import span_in_words, spans_in_words
from tests.reference.commitments import (
    DAILY,
    KEPT,
    MISSED,
    MONDAY,
    PARTLY,
    WEEKLY,
    commitment,
    decided,
    on,
    paused,
    said,
)

WEEKS, DAYS, MONTHS, YEARS = Period.WEEK, Period.DAY, Period.MONTH, Period.YEAR
THRICE = Measure(3, WEEKS, on=("MO", "WE", "FR"), deadline=on(3, 3))


@pytest.mark.parametrize(
    ("measure", "words"),
    [
        (THRICE, "three times a week, on Monday, Wednesday and Friday, until 3 March 2026"),
        (Measure(), "once"),
        (Measure(2, deadline=on(30, 3)), "twice, by 30 March 2026"),
        (Measure(20, WEEKS, every=2), "20 times every other week"),
        (Measure(1, DAYS, every=2, periods=7), "once every other day, for 14 days"),
        (Measure(1, DAYS, every=10), "once every ten days"),
        (
            Measure(1, DAYS, on=("MO", "TU"), periods=1, minutes=1),
            "once a day, on Monday and Tuesday, one minute each time, one day in all",
        ),
        (
            Measure(1, DAYS, every=3, on=("MO", "TU")),
            "once in three of the days named, on Monday and Tuesday",
        ),
        (Measure(1, DAYS, on=("MO", "TU", "WE", "TH", "FR")), "once a day, on working days"),
        (Measure(1, WEEKS, on=("SA", "SU")), "once a week, at the weekend"),
        (Measure(1, MONTHS, every=3), "once a quarter"),
        (
            Measure(1, MONTHS, on=("-1FR",), minutes=30),
            "once a month, on the last Friday, 30 minutes each time",
        ),
        (
            Measure(1, MONTHS, on=("2TU", "-2TU")),
            "once a month, on the second Tuesday and the second last Tuesday",
        ),
        (
            Measure(1, YEARS, on=("20MO",), periods=3),
            "once a year, on the 20th Monday, for three years",
        ),
    ],
)
def test_a_measure_is_said_as_a_reader_would(measure, words):
    """Count, period, days, length and end each have their words."""
    assert measure_in_words(measure) == words


@pytest.mark.parametrize(
    ("first", "last", "words"),
    [
        (on(5), on(11), "5 to 11 January 2026"),
        (on(5), on(5), "5 January 2026"),
        (on(29), on(4, 2), "29 January to 4 February 2026"),
        (on(1), on(31), "January 2026"),
        (on(1), on(31, 3), "January to March 2026"),
        (on(1), on(31, 12), "2026"),
        (on(30, 12), on(5, 1, 2027), "30 December 2026 to 5 January 2027"),
        (on(1, 12, 9999), date.max, "December 9999"),
    ],
)
def test_a_span_of_days_is_said_once(first, last, words):
    """What both ends share is said once; whole months and years by their names."""
    assert span_in_words(Span(first, last)) == words


def test_spans_that_share_a_year_say_it_once():
    """The year stands after the last of them; spans of several years each say theirs."""
    weeks = [Span(on(5), on(11)), Span(on(12), on(18))]
    assert spans_in_words(weeks) == "5 to 11 January and 12 to 18 January 2026"
    years = [Span(on(1, 1, year), on(31, 12, year)) for year in (2025, 2026)]
    assert spans_in_words(years) == "2025 and 2026"


ONCE = Measure(2, deadline=on(2, 3))
FIVE = Measure(1, DAYS, periods=5)
SILENT = "Nothing was said about"
SECOND_WEEK = [said(on(12 + day)) for day in (0, 1, 3)]


@pytest.mark.parametrize(
    ("measure", "decisions", "facts", "day", "words"),
    [
        (
            WEEKLY,
            [],
            [],
            on(13),
            "Nothing is judged yet: 5 to 11 January 2026 can be reported on until 13 January 2026.",
        ),
        (WEEKLY, [decided(Act.START, on(19), on(5))], [], on(6), "It begins on 19 January 2026."),
        (WEEKLY, [], [said(on(6))], on(14), "Kept from 5 to 11 January 2026: 1 of 1."),
        (
            Measure(2, MONTHS),
            [],
            [said(on(6), count=2)],
            on(8, 2),
            "Kept from 5 to 31 January 2026: 2 of 2.",
        ),
        (
            Measure(1, MONTHS),
            [],
            [said(on(6)), said(on(6, 2))],
            on(8, 3),
            "Kept in February 2026: 1 of 1.",
        ),
        (DAILY, [], SECOND_WEEK, on(21), "Partly kept from 12 to 18 January 2026: 3 of 7 days."),
        (Measure(2, DAYS), [], [said(on(6))], on(14), "Partly kept from 5 to 11 January 2026."),
        (WEEKLY, [], [said(on(6), PARTLY)], on(14), "Partly kept from 5 to 11 January 2026."),
        (WEEKLY, [], [], on(14), f"{SILENT} 5 to 11 January 2026. One such week does no harm."),
        (
            WEEKLY,
            [],
            [said(on(6), MISSED)],
            on(14),
            "It was missed from 5 to 11 January 2026. One such week does no harm.",
        ),
        (
            WEEKLY,
            [],
            [said(on(20))],
            on(21),
            f"{SILENT} 12 to 18 January 2026. Something was done since.",
        ),
        (
            WEEKLY,
            [],
            [],
            on(21),
            f"{SILENT} the last two weeks, 5 to 11 January and 12 to 18 January 2026.",
        ),
        (
            None,
            [],
            [],
            on(4, 3),
            (
                f"{SILENT} the last two stretches, 5 January to 1 February and "
                "2 February to 1 March 2026."
            ),
        ),
        (
            WEEKLY,
            [],
            [said(on(6), MISSED), said(on(13), MISSED)],
            on(21),
            "The last two weeks, 5 to 11 January and 12 to 18 January 2026, were missed.",
        ),
        (
            WEEKLY,
            [],
            [said(on(13), MISSED)],
            on(21),
            (
                "Of the last two weeks, nothing was said about 5 to 11 January 2026, "
                "and 12 to 18 January 2026 was missed."
            ),
        ),
        (
            WEEKLY,
            [paused(on(12), on(18))],
            [],
            on(28),
            f"{SILENT} the last two weeks that count, 5 to 11 January and 19 to 25 January 2026.",
        ),
        (
            Measure(1, MONTHS),
            [],
            [],
            on(7, 3),
            f"{SILENT} the last two months, 5 to 31 January and February 2026.",
        ),
        (FIVE, [], [], on(12), "It ended on 9 January 2026, and what came of it was not said."),
        (
            FIVE,
            [],
            [said(on(6), MISSED)],
            on(12),
            "It ended on 9 January 2026, with 0 of 5 days kept.",
        ),
        (FIVE, [], [said(on(day)) for day in range(5, 10)], on(12), "Kept on 5 of 5 days."),
        (FIVE, [], [said(on(day)) for day in (5, 6, 9)], on(12), "Kept on 3 of 5 days."),
        (
            Measure(1, WEEKS, deadline=on(11)),
            [paused(on(6), on(7))],
            [],
            on(14),
            "It ended on 11 January 2026; nothing in it was counted.",
        ),
        (ONCE, [], [said(on(6))], on(2, 3), "1 of 2 done. Due by 2 March 2026."),
        (ONCE, [], [said(on(6), count=2)], on(7), "Done: 2 of 2."),
        (ONCE, [], [said(on(6), count=26)], on(7), "Done: 2 of 2."),
        (WEEKLY, [], [said(on(6), count=7)], on(14), "Kept from 5 to 11 January 2026: 1 of 1."),
        (Measure(), [], [said(on(6))], on(7), "Done."),
        (Measure(deadline=on(2, 3)), [], [], on(3, 3), "Overdue since 3 March 2026."),
        (
            Measure(deadline=on(2, 3)),
            [],
            [],
            on(10, 3),
            "Overdue since 3 March 2026, 8 days by now.",
        ),
        (
            ONCE,
            [decided(Act.MOVE, on(day), until=on(day, 4)) for day in (7, 8, 9)],
            [],
            on(9),
            "Its day was moved three times, now to 9 April 2026.",
        ),
        (WEEKLY, [paused(on(12), on(18))], [], on(12), "Paused until 18 January 2026."),
        (
            WEEKLY,
            [paused(on(12))],
            [],
            on(13),
            "Paused since 12 January 2026, until you take it up again.",
        ),
        (
            FIVE,
            [decided(Act.CLOSE, on(7), outcome=PARTLY)],
            [],
            on(8),
            "You closed it on 7 January 2026: partly.",
        ),
        (
            ONCE,
            [decided(Act.CLOSE, on(7), outcome=KEPT)],
            [],
            on(8),
            "You closed it on 7 January 2026: kept.",
        ),
        (
            FIVE,
            [decided(Act.CLOSE, on(13), outcome=KEPT)],
            [said(on(5))],
            on(14),
            "You closed it on 13 January 2026: kept, 1 of 5 days.",
        ),
        (
            FIVE,
            [decided(Act.RELEASE, on(7), words="The mill is gone.")],
            [],
            on(8),
            "Released on 7 January 2026: The mill is gone.",
        ),
    ],
)
def test_every_rule_is_told_with_its_figures(measure, decisions, facts, day, words):
    """One or two plain sentences name the rule and the figures, without blame."""
    assert told(pace_of(commitment(measure), decisions, facts, day)) == words


def test_what_came_in_late_is_told_so():
    """What was over before it came in says when; what is not asked about yet, from when it is."""
    over = commitment(FIVE, entered=on(1, 3))
    assert told(pace_of(over, (), (), on(1, 3))) == (
        "It was over on 9 January 2026, before it came in: what came of it is yours to say."
    )
    late = pace_of(commitment(WEEKLY, entered=on(7)), (), (), on(8))
    assert (told(late), progress(late)) == ("Nothing is judged yet.", "0 of 1 this week")
    early = commitment(WEEKLY, entered=on(1, 3))
    assert told(pace_of(early, (), (), on(6))) == "It is asked about from 1 March 2026 on."


def test_every_rule_has_its_sentence():
    """No rule is without one."""
    stand = pace_of(commitment(WEEKLY), [paused(MONDAY)], (), on(21, 3))
    for rule in Rule:
        if rule is not Rule.TWO_WITHOUT and rule not in {Rule.LAST_KEPT, Rule.LAST_NOT_KEPT}:
            assert told(replace(stand, rule=rule)).endswith(".")


@pytest.mark.parametrize(
    ("measure", "facts", "words"),
    [
        (Measure(3, WEEKS), [said(on(6)), said(on(7))], "2 of 3 this week"),
        (Measure(2, DAYS), [said(on(8))], "1 of 2 today"),
        (Measure(2, MONTHS), [said(on(8))], "1 of 2 this month"),
        (Measure(2, YEARS), [], "0 of 2 this year"),
        (Measure(1, YEARS), [said(on(8), count=7)], "7 this year, 1 was asked"),
        (Measure(2, DAYS), [said(on(8), count=3)], "3 today, 2 were asked"),
        (Measure(2, WEEKS, every=2), [said(on(8))], "1 of 2 in these two weeks"),
        (Measure(1, DAYS, on=("MO",)), [], None),
        (Measure(3), [said(on(8))], "1 of 3 done"),
        (Measure(), [], None),
        (None, [said(on(8))], None),
    ],
)
def test_progress_says_how_far_the_running_period_is(measure, facts, words):
    """“2 of 3 this week”; nothing where nothing is counted on that day."""
    assert progress(pace_of(commitment(measure), (), facts, on(8))) == words


def test_no_progress_is_told_of_what_is_paused_or_over():
    """What is not asked has no running figures."""
    assert progress(pace_of(commitment(), [paused(on(6))], (), on(7))) is None
    assert progress(pace_of(commitment(FIVE), (), (), on(12) + timedelta(days=9))) is None
