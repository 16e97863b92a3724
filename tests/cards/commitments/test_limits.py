"""What a measure can ask: contradictions and absurdities are refused, each in a sentence."""

from datetime import date

import pytest

from cards.commitments import Measure, Period, hold_measure
from cards.errors import Invalid
from tests.reference.commitments import MONDAY, WEEKLY, on

MONTH, DAY, YEAR, ONCE = Period.MONTH, Period.DAY, Period.YEAR, Period.ONCE


@pytest.mark.parametrize(
    "measure",
    [
        WEEKLY,
        Measure(1_000, DAY, every=366, on=("MO", "SU"), periods=3_660, minutes=1_440),
        Measure(1, MONTH, on=("-5SA", "1MO", "TU"), deadline=date(2126, 12, 31)),
        Measure(1, YEAR, every=10, on=("53FR",)),
        Measure(3, deadline=MONDAY),
    ],
)
def test_what_a_life_holds_is_let_through(measure):
    """Every number at its limit is no refusal."""
    hold_measure(measure, MONDAY)


@pytest.mark.parametrize(
    ("measure", "where", "said"),
    [
        (Measure(0, DAY), "times", "0 deeds in a period is out of range; give 1 to 1000."),
        (Measure(1_001, DAY), "times", "1001 deeds"),
        (Measure(1, DAY, every=10_000), "every", "10000 days in a period"),
        (Measure(1, ONCE, every=2), "every", "2 spans in a period"),
        (Measure(1, DAY, periods=10_000), "periods", "10000 periods"),
        (Measure(1, DAY, minutes=0), "minutes", "0 minutes"),
        (Measure(1, ONCE, on=("MO",)), "period", "What is done once"),
        (Measure(1, ONCE, periods=2), "period", "What is done once"),
        (Measure(1, DAY, on=("XX",)), "on", "“XX” is no weekday"),
        (Measure(1, DAY, on=("",)), "on", "“” is no weekday"),
        (Measure(1, DAY, on=("1MO",)), "on", "only months and years"),
        (Measure(1, MONTH, on=("6MO",)), "on", "a month has at most 5"),
        (Measure(1, MONTH, on=("0MO",)), "on", "a month has at most 5"),
        (Measure(1, MONTH, on=("--1MO",)), "on", "a month has at most 5"),
        (Measure(1, YEAR, on=("54MO",)), "on", "a year has at most 53"),
        (Measure(1, YEAR, on=("٣MO",)), "on", "a year has at most 53"),
        (Measure(1, YEAR, on=("9" * 5_000 + "MO",)), "on", "out of range"),
        (Measure(1, DAY, deadline=on(4)), "deadline", "before its first"),
        (Measure(1, DAY, deadline=date.max), "deadline", "more than 100 years off"),
    ],
)
def test_what_contradicts_itself_is_refused(measure, where, said):
    """One sentence says what is wrong, at which field."""
    with pytest.raises(Invalid, match=said) as refused:
        hold_measure(measure, MONDAY)
    assert refused.value.where == where
    assert len(str(refused.value)) < 150
