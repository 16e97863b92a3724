"""What a measure can ask: contradictions and absurdities are refused, each in a sentence."""

from datetime import date

import pytest

from cards.commitments import Measure, Period
from cards.commitments.measures_held import held
from cards.errors import Invalid
from tests.reference.commitments import MONDAY, WEEKLY, on

MONTH, DAY, YEAR, ONCE = Period.MONTH, Period.DAY, Period.YEAR, Period.ONCE


@pytest.mark.parametrize(
    "measure",
    [
        WEEKLY,
        Measure(1_000, DAY, every=366, on=("MO", "SU"), periods=4_000, minutes=500),
        Measure(1, MONTH, on=("-5SA", "1MO", "TU"), deadline=date(2126, 12, 31)),
        Measure(1, YEAR, every=10, on=("5FR",)),
        Measure(3, deadline=MONDAY),
    ],
)
def test_what_a_life_holds_is_let_through(measure):
    """Every number at its limit is no refusal."""
    assert set(held(measure, MONDAY).on) == set(measure.on)


@pytest.mark.parametrize(
    ("measure", "said"),
    [
        (Measure(0, DAY), "“times” is 0; of what is counted by “day” it is from 1 to 1000."),
        (Measure(1_001, DAY), "“times” is 1001"),
        (Measure(1, DAY, every=10_000), "“every” is 10000"),
        (Measure(1, ONCE, every=2), "“every” is 2; of what is counted by “once” it is always 1."),
        (Measure(1, DAY, periods=10_000), "“periods” is 10000"),
        (Measure(1, DAY, minutes=0), "“minutes” is 0"),
        (Measure(25, DAY, minutes=60), "It asks 1500 minutes of a period that has 1440."),
        (Measure(1, ONCE, on=("MO",)), "What is done once names no weekdays"),
        (Measure(1, ONCE, periods=2), "What is done once has no number of periods"),
        (Measure(1, DAY, on=("XX",)), "“XX” is no day of the week"),
        (Measure(1, DAY, on=("",)), "“” is no day of the week"),
        (Measure(1, DAY, on=("1MO",)), "is a day of a month"),
        (Measure(1, DAY, on=("MO", "MO")), "It names a day twice."),
        (Measure(1, MONTH, on=("6MO",)), "“6MO” is no day of the week"),
        (Measure(1, YEAR, on=("٣MO",)), "“٣MO” is no day of the week"),
        (Measure(1, YEAR, on=("9" * 5_000 + "MO",)), "is no day of the week"),
        (Measure(1, DAY, deadline=on(4)), "is before its first"),
        (Measure(1, DAY, deadline=date.max), "more than 100 years off"),
        (Measure(1, DAY, periods=9, deadline=on(8)), "9 periods are over on"),
        (Measure(1, DAY, on=("SU",), deadline=on(8)), "No day it names lies between"),
    ],
)
def test_what_contradicts_itself_is_refused(measure, said):
    """One sentence says what is wrong with the measure, and stays short however long it is."""
    with pytest.raises(Invalid) as refused:
        held(measure, MONDAY)
    assert said in refused.value.message
    assert refused.value.where == "measure"
    assert len(refused.value.message) < 150
