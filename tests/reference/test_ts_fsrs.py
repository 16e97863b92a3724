"""The schedule against a frozen table of a third implementation.

Source: the npm package ts-fsrs 5.4.2, the published algorithm in TypeScript;
`ts_fsrs_vectors.md` says exactly how the table was made, and what differs. It rounds every
value to eight decimals at each step; hence the tolerance of 5e-6.
"""

import pytest

from cards.schedule import Schedule, spread_range
from tests.reference.histories import ITEM, answers_of, vectors

TABLE = vectors("ts_fsrs_vectors.json")
HISTORIES = TABLE["histories"]
ROUNDED = 5e-6
SCHEDULE = Schedule()


def test_the_table_is_of_the_version_it_names():
    """The table names its package and version, and holds some two hundred steps."""
    assert (TABLE["name"], TABLE["version"]) == ("ts-fsrs", "5.4.2")
    assert len(HISTORIES) == 25
    assert sum(len(steps) for steps in HISTORIES) == 197


@pytest.mark.parametrize("number", range(len(HISTORIES)))
def test_every_step_gives_the_same_memory(number):
    """Stability and difficulty after every step agree within the rounding."""
    history = [(step["gap"], step["grade"]) for step in HISTORIES[number]]
    for count, step in enumerate(HISTORIES[number], 1):
        folded = SCHEDULE.fold(ITEM, answers_of(history[:count]))
        assert folded.stability == pytest.approx(step["stability"], abs=ROUNDED, rel=ROUNDED)
        assert folded.difficulty == pytest.approx(step["difficulty"], abs=ROUNDED)


@pytest.mark.parametrize("number", range(len(HISTORIES)))
def test_every_answer_is_predicted_the_same(number):
    """The recall predicted before every step but the first agrees within the rounding."""
    answers = answers_of((step["gap"], step["grade"]) for step in HISTORIES[number])
    for answer, step in zip(answers[1:], HISTORIES[number][1:], strict=True):
        assert SCHEDULE.predict(answer, answers) == pytest.approx(step["recall"], abs=ROUNDED)


def test_an_interval_is_spread_over_the_same_range():
    """The least and the greatest day of every interval in the table are ours too."""
    for interval, ends in TABLE["spreading_ranges"].items():
        assert spread_range(int(interval)) == tuple(ends)
