"""The schedule against published values of FSRS-6.

Source of every figure, unless said beside it: FSRS-6 with its published default weights (Ye,
Su & Cao 2022, doi 10.1145/3534678.3539081), computed in 50-digit decimal arithmetic
independently of any library. Convention: the mean reversion of difficulty takes D0(4)
unclamped, as fsrs 6.3.x, ts-fsrs 5.4.2 and fsrs-rs-python 0.9.3 do.

What only a state that no history reaches can show is asked of the `fsrs` package itself,
through the very model the schedule has configured; each such test says so.
"""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from fsrs import Card, Rating, Scheduler, State

from cards.errors import InvalidPreference
from cards.schedule import DEFAULT_WEIGHTS, Schedule, spread_range
from tests.reference.histories import ITEM, START, answers_of, memory, vectors

VECTORS = vectors("fsrs_vectors.json")
HISTORIES = ("A", "B", "C", "D", "E")
ROWS = [(name, row) for name in HISTORIES for row in range(len(VECTORS[name]))]
CLOSE = 1e-6
SCHEDULE = Schedule()
DECAY = -DEFAULT_WEIGHTS[20]
FACTOR = 0.9803464944
MIDNIGHT = datetime(2020, 1, 1, tzinfo=UTC)

# The same histories as printed in the table, to eight decimals: (gap, grade), S, D.
EXAMPLES = {
    "A": (
        ((0, 3), (2, 3), (11, 3), (46, 1), (0, 3), (1, 3)),
        (2.30650000, 10.96433234, 46.28021729, 2.93258045, 2.93258045, 4.96671242),
        (2.11810397, 2.11121424, 2.10433139, 7.38997579, 7.37781418, 7.36566474),
    ),
    "B": (
        ((0, 1), (0, 3), (1, 3), (3, 3), (8, 3), (21, 3)),
        (0.21200000, 0.24668919, 2.02147725, 7.86369884, 21.91771315, 53.62690292),
        (6.41330000, 6.40211507, 6.39094132, 6.37977875, 6.36862734, 6.35748708),
    ),
}


def stepped(stability: float, difficulty: float, gap: int, grade: int) -> Card:
    """Take one step from a given state through the schedule's own model: the package alone."""
    card = Card(0, State.Review, None, stability, difficulty, MIDNIGHT, MIDNIGHT)
    after, _ = SCHEDULE._model.review_card(card, Rating(grade), MIDNIGHT + timedelta(days=gap))
    return after


def steps_to(name: str, row: int) -> list[tuple[int, int]]:
    """Return the gaps and grades of a history up to and with a row."""
    return [(each["t"], each["grade"]) for each in VECTORS[name][: row + 1]]


@pytest.mark.parametrize(("name", "row"), ROWS)
def test_each_step_gives_the_published_memory(name, row):
    """Stability and difficulty after every row of every history are the published ones."""
    expected = VECTORS[name][row]
    folded = SCHEDULE.fold(ITEM, answers_of(steps_to(name, row)))
    assert folded.stability == pytest.approx(float(expected["S"]), abs=CLOSE)
    assert folded.difficulty == pytest.approx(float(expected["D"]), abs=CLOSE)


@pytest.mark.parametrize(("name", "row"), ROWS)
def test_each_answer_is_predicted_as_published(name, row):
    """The recall predicted just before every row is the published one; none before the first."""
    answers = answers_of(steps_to(name, row))
    predicted = SCHEDULE.predict(answers[-1], answers[:-1])
    expected = VECTORS[name][row]["R_before"]
    if expected is None:
        assert predicted is None
    else:
        assert predicted == pytest.approx(float(expected), abs=CLOSE)


@pytest.mark.parametrize(("name", "row"), ROWS)
def test_the_interval_at_nine_tenths_is_the_stability(name, row):
    """At a target of .9 an item falls due after its stability, in whole days, at least one."""
    folded = SCHEDULE.fold(ITEM, answers_of(steps_to(name, row)))
    interval = max(1, round(float(VECTORS[name][row]["ivl90"])))
    low, high = spread_range(interval)
    assert low <= (folded.due_on - folded.last_day).days <= high


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_printed_examples_hold_at_every_step(name):
    """Examples A and B come out as the table prints them."""
    steps, stabilities, difficulties = EXAMPLES[name]
    for count, (stability, difficulty) in enumerate(zip(stabilities, difficulties, strict=True), 1):
        folded = SCHEDULE.fold(ITEM, answers_of(steps[:count]))
        assert folded.stability == pytest.approx(stability, abs=CLOSE)
        assert folded.difficulty == pytest.approx(difficulty, abs=CLOSE)


def test_recall_in_example_a_is_as_printed():
    """Recall before answers 2, 3, 4 and 6 of example A."""
    answers = answers_of(EXAMPLES["A"][0])
    printed = {1: 0.90949326, 2: 0.89977672, 3: 0.90041669, 5: 0.95650264}
    for index, expected in printed.items():
        predicted = SCHEDULE.predict(answers[index], answers)
        assert predicted == pytest.approx(expected, abs=CLOSE)


def test_difficulty_is_not_clamped_before_it_reverts():
    """The convention of current libraries holds, not the older one that gave 53.3825, 6.3809.

    Those two are in an older stored test of the fsrs package, which clamped D0(4) to 1 in
    the mean reversion.
    """
    folded = SCHEDULE.fold(ITEM, answers_of(EXAMPLES["B"][0]))
    assert folded.stability == pytest.approx(53.62690292, abs=CLOSE)
    assert abs(folded.stability - 53.3825) > 0.2
    assert abs(folded.difficulty - 6.3809) > 0.02


def test_the_weights_are_the_published_ones():
    """The 21 weights are those of the table."""
    assert tuple(float(weight) for weight in VECTORS["weights"]) == DEFAULT_WEIGHTS


def test_the_forgetting_curve_has_the_published_factor():
    """The curve's factor is .9^(1/decay) - 1, read back from a recall two stabilities on."""
    recall = SCHEDULE.recall(memory(1.0), START + timedelta(days=2))
    factor = (recall ** (1 / DECAY) - 1) / 2
    assert factor == pytest.approx(FACTOR, abs=1e-9)
    assert factor == pytest.approx(float(VECTORS["factor"]), abs=1e-9)


@pytest.mark.parametrize(
    ("days", "expected"),
    [
        (1, 0.985682),
        (2, 0.972770),
        (5, 0.940344),
        (10, 0.900000),
        (30, 0.809388),
        (100, 0.692827),
        (365, 0.573559),
    ],
)
def test_recall_falls_as_published(days, expected):
    """Recall of an item of ten days' stability, to the table's six decimals."""
    assert SCHEDULE.recall(memory(10.0), START + timedelta(days=days)) == pytest.approx(
        expected, abs=CLOSE
    )


RATIOS = [
    (0.95, 0.402559),
    (0.90, 1.0),
    (0.85, 1.906426),
    (0.80, 3.315960),
    (0.75, 5.569546),
    (0.70, 9.287911),
]


@pytest.mark.parametrize(("target", "ratio"), RATIOS)
def test_recall_has_fallen_to_the_target_after_its_interval(target, ratio):
    """After I/S stabilities recall is the target: the forgetting curve and the ratio agree."""
    days = 100_000
    recall = Schedule(target).recall(memory(days / ratio), START + timedelta(days=days))
    assert recall == pytest.approx(target, abs=CLOSE)


@pytest.mark.parametrize(("target", "ratio"), RATIOS)
def test_the_interval_is_the_published_share_of_the_stability(target, ratio):
    """I/S at each target; the package alone, which rounds to days, so at a stability of 1e8."""
    model = Scheduler(desired_retention=target, maximum_interval=10**12, enable_fuzzing=False)
    assert model._next_interval(stability=1e8) / 1e8 == pytest.approx(ratio, abs=CLOSE)


@pytest.mark.parametrize(("target", "ratio"), RATIOS)
def test_an_item_falls_due_at_the_targets_interval(target, ratio):
    """At every target the due day lies in the range around the published interval."""
    steps = EXAMPLES["A"][0][:3]
    folded = Schedule(target).fold(ITEM, answers_of(steps))
    low, high = spread_range(round(46.28021729 * ratio))
    assert low <= (folded.due_on - folded.last_day).days <= high


@pytest.mark.parametrize(
    ("grade", "stability", "difficulty"),
    [
        (1, 0.212, 6.41330000),
        (2, 1.2931, 5.11217071),
        (3, 2.3065, 2.11810397),
        (4, 8.2956, 1.0),
    ],
)
def test_a_first_answer_sets_the_published_memory(grade, stability, difficulty):
    """S0 is the grade's weight, and D0 is clamped to no less than 1."""
    folded = SCHEDULE.fold(ITEM, answers_of([(0, grade)]))
    assert folded.stability == pytest.approx(stability, abs=CLOSE)
    assert folded.difficulty == pytest.approx(difficulty, abs=CLOSE)


@pytest.mark.parametrize(
    ("grade", "expected"),
    [(1, 6.41330000), (2, 5.11217071), (3, 2.11810397), (4, -4.77163070)],
)
def test_first_difficulties_before_clamping(grade, expected):
    """D0 unclamped for each grade; the package alone, since a memory holds it clamped."""
    unclamped = SCHEDULE._model._initial_difficulty(rating=Rating(grade), clamp=False)
    assert unclamped == pytest.approx(expected, abs=CLOSE)


@pytest.mark.parametrize(
    ("gap", "stabilities"),
    [
        (10, (1.39198697, 23.24687511, 32.02672948, 51.25386165)),
        (30, (1.61621629, 36.19554802, 53.55761228, 91.57905204)),
    ],
)
def test_one_step_from_ten_days_and_middling_difficulty(gap, stabilities):
    """S' for each grade from S=10, D=5 after t days; the package alone, by its model here."""
    for grade, expected in enumerate(stabilities, 1):
        assert stepped(10.0, 5.0, gap, grade).stability == pytest.approx(expected, abs=CLOSE)


@pytest.mark.parametrize(
    ("grade", "expected"),
    [(1, 8.34176237), (2, 6.66599537), (3, 4.99022837), (4, 3.31446137)],
)
def test_one_step_of_difficulty_from_five(grade, expected):
    """D' for each grade from D=5, on the same day or later; the package alone."""
    assert stepped(10.0, 5.0, 10, grade).difficulty == pytest.approx(expected, abs=CLOSE)
    assert stepped(10.0, 5.0, 0, grade).difficulty == pytest.approx(expected, abs=CLOSE)


@pytest.mark.parametrize(
    ("stability", "stabilities"),
    [
        (10.0, (3.05124894, 10.0, 10.0, 15.53430795)),
        (0.5, (0.18580415, 0.5, 0.54987621, 0.94595328)),
    ],
)
def test_answers_on_the_same_day(stability, stabilities):
    """S' for each grade on the day of the answer before; the package alone."""
    for grade, expected in enumerate(stabilities, 1):
        assert stepped(stability, 5.0, 0, grade).stability == pytest.approx(expected, abs=CLOSE)


def raw_and_cap(stability: float, difficulty: float, gap: int) -> tuple[float, float]:
    """Return what forgetting would leave and the cap on it, by the published formulas."""
    weights = DEFAULT_WEIGHTS
    recall = (1 + FACTOR * gap / stability) ** DECAY
    grown = (stability + 1) ** weights[13] - 1
    raw = (
        weights[11]
        * difficulty ** -weights[12]
        * grown
        * 2.718281828459045 ** (weights[14] * (1 - recall))
    )
    return raw, stability / 1.05072037


@pytest.mark.parametrize("row", range(len(VECTORS["cap"])))
def test_forgetting_never_leaves_more_than_the_cap(row):
    """Every row of the cap table; the package alone, for no history reaches these states."""
    row = VECTORS["cap"][row]
    stability, difficulty = float(row["S"]), float(row["D"])
    raw, cap = raw_and_cap(stability, difficulty, row["t"])
    after = stepped(stability, difficulty, row["t"], 1).stability
    assert after == pytest.approx(float(row["out"]), abs=CLOSE)
    assert after == pytest.approx(min(raw, cap), abs=CLOSE)


@pytest.mark.parametrize(
    ("stability", "difficulty", "gap", "expected", "binds"),
    [
        (0.212, 10.0, 5, 0.12655595, False),
        (0.5, 1.0, 365, 0.47586400, True),
        (0.05, 1.0, 365, 0.04758640, True),
        (1.0, 1.0, 3650, 0.95172800, True),
    ],
)
def test_the_printed_cap_rows(stability, difficulty, gap, expected, binds):
    """The printed rows, three in which the cap binds and one in which it does not."""
    raw, cap = raw_and_cap(stability, difficulty, gap)
    assert (raw > cap) is binds
    assert stepped(stability, difficulty, gap, 1).stability == pytest.approx(expected, abs=CLOSE)


def test_the_printed_row_in_which_the_cap_does_not_bind():
    """R .61211580, raw .12655595, cap .20176634: by the schedule, the formulas and the table."""
    recall = SCHEDULE.recall(memory(0.212, 10.0), START + timedelta(days=5))
    raw, cap = raw_and_cap(0.212, 10.0, 5)
    assert recall == pytest.approx(0.61211580, abs=CLOSE)
    assert raw == pytest.approx(0.12655595, abs=CLOSE)
    assert cap == pytest.approx(0.20176634, abs=CLOSE)


def test_a_history_reaches_the_cap():
    """Four blanks, then a blank a year later: through the fold itself the cap binds.

    Expected: the last stability of history D in the table over e^(w17 w18) = 1.05072037.
    """
    steps = [*steps_to("D", 3), (365, 1)]
    before = float(VECTORS["D"][3]["S"])
    raw, cap = raw_and_cap(before, float(VECTORS["D"][3]["D"]), 365)
    assert raw > cap
    folded = SCHEDULE.fold(ITEM, answers_of(steps))
    assert folded.stability == pytest.approx(before / 1.05072037, abs=CLOSE)


def test_the_librarys_own_default_steps():
    """Days between answers given when due, with the library's own steps and no fuzzing.

    The library alone: the row cannot come from the empty steps the schedule uses. An older
    stored test of the library has 497 and 20 where the unclamped convention has 498 and 21.
    """
    model = Scheduler(enable_fuzzing=False)
    card = Card(0)
    at = MIDNIGHT
    days = []
    for grade in (3, 3, 3, 3, 3, 3, 1, 1, 3, 3, 3, 3, 3):
        card, _ = model.review_card(card, Rating(grade), at)
        days.append((card.due - at).days)
        at = card.due
    assert days == [0, 2, 11, 46, 163, 498, 0, 0, 2, 4, 7, 12, 21]


def test_stability_has_no_ceiling_here():
    """S=30000, D=1, t=36500, grade 4 gives 92319 days, where other implementations stop at 36500.

    Source: the comparison of fsrs 6.3.2 with ts-fsrs 5.4.2 and fsrs-rs-python 0.9.3 by
    running them; the package alone.
    """
    assert stepped(30_000.0, 1.0, 36_500, 4).stability == pytest.approx(92_319, abs=1)


def test_an_interval_has_the_published_ceiling():
    """However long a memory lasts, an item falls due within 36,500 days and its spreading."""
    answers = answers_of([(0, 4), (2_000, 4), (30_000, 4), (36_500, 4)])
    folded = SCHEDULE.fold(ITEM, answers)
    low, high = spread_range(36_500)
    assert folded.stability > 36_500
    assert low <= (folded.due_on - folded.last_day).days <= high == 36_500


@pytest.mark.parametrize("target", [0.0, 1.2, -1.0, float("nan")])
def test_a_target_the_library_mishandles_is_refused(target):
    """What the library answers with a division by zero, a day, or an attribute error, we refuse."""
    with pytest.raises(InvalidPreference):
        Schedule(target)


def test_a_night_is_a_day_though_it_is_no_24_hours():
    """Answers at 23:50 and 07:00 next morning are one day apart, where the library sees none.

    Source of the library's rule: fsrs 6.3.2 counts 24-hour blocks, "23.9 h = same day".
    """
    first, second = answers_of([(0, 3), (1, 3)])
    first = replace(first, answered_at=MIDNIGHT.replace(hour=23, minute=50))
    second = replace(second, answered_at=first.answered_at + timedelta(hours=7, minutes=10))
    folded = SCHEDULE.fold(ITEM, [first, second])
    card, _ = SCHEDULE._model.review_card(Card(0), Rating(3), first.answered_at)
    card, _ = SCHEDULE._model.review_card(card, Rating(3), second.answered_at)
    expected = stepped(2.3065, 2.11810397, 1, 3).stability
    assert folded.stability == pytest.approx(expected, abs=CLOSE)
    assert card.stability == pytest.approx(2.3065, abs=CLOSE)
