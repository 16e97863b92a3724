"""What asking is worth: the memory model over arrays, and the price of a second."""

from datetime import UTC, datetime, timedelta

import numpy as np
import pytest
from fsrs import Card, Rating, Scheduler, State
from hypothesis import given, settings
from hypothesis import strategies as st

from cards.schedule import DEFAULT_WEIGHTS
from cards.sitting.worth import worth, worth_unasked
from cards.sitting.worth_memory import BLANK, CLEAR, answered, curve, first, recall
from cards.sitting.worth_table import BETWEEN, HORIZON, TRUSTED, table
from tests.reference.histories import vectors

VECTORS = vectors("fsrs_vectors.json")
LATER = [
    (name, row)
    for name in ("A", "B", "C", "D", "E")
    for row in range(1, len(VECTORS[name]))
    if VECTORS[name][row]["t"] > 0
]
MIDNIGHT = datetime(2020, 1, 1, tzinfo=UTC)
PACKAGE = Scheduler(learning_steps=(), relearning_steps=(), enable_fuzzing=False)
DAYS = st.floats(0, 40_000)
STABILITIES = st.floats(0.001, 100_000)
DIFFICULTIES = st.floats(1, 10)


def of(*values):
    """Return an array of numbers."""
    return np.array(values, dtype=np.float64)


def worth_of(stability, difficulty, elapsed, seconds=30.0, weights=DEFAULT_WEIGHTS):
    """Return what asking one item is worth."""
    return float(worth(of(stability), of(difficulty), of(elapsed), of(seconds), weights)[0])


@pytest.mark.parametrize(("name", "row"), LATER)
def test_a_step_a_day_or_more_apart_gives_the_published_memory(name, row):
    """Recall, stability and difficulty are the published ones.

    Source: FSRS-6 with its published weights, in 50-digit decimal arithmetic
    (`tests/reference/fsrs_vectors.json` says how).
    """
    before, after = VECTORS[name][row - 1], VECTORS[name][row]
    stability, difficulty = of(float(before["S"])), of(float(before["D"]))
    recalled = recall(stability, of(after["t"]), DEFAULT_WEIGHTS)
    assert recalled == pytest.approx(float(after["R_before"]), rel=1e-6)
    found = answered(stability, difficulty, recalled, after["grade"] - 1, DEFAULT_WEIGHTS)
    assert found[0] == pytest.approx(float(after["S"]), rel=1e-6)
    assert found[1] == pytest.approx(float(after["D"]), rel=1e-6)


def test_first_answers_leave_what_is_published():
    """Stability and difficulty after one answer of each grade; source as above, to 8 decimals."""
    stability, difficulty = first(DEFAULT_WEIGHTS)
    assert stability == pytest.approx([0.212, 1.2931, 2.3065, 8.2956])
    assert difficulty == pytest.approx([6.4133, 5.11217071, 2.11810397, 1], abs=1e-8)


@given(st.floats(0.05, 20_000), DIFFICULTIES, st.integers(1, 3000), st.integers(0, 3))
def test_a_step_is_the_package_s_own(stability, difficulty, days, grade):
    """From any memory, a step is what the `fsrs` package makes of it."""
    card = Card(0, State.Review, None, stability, difficulty, MIDNIGHT, MIDNIGHT)
    then, _ = PACKAGE.review_card(card, Rating(grade + 1), MIDNIGHT + timedelta(days=days))
    recalled = recall(of(stability), of(days), DEFAULT_WEIGHTS)
    found = answered(of(stability), of(difficulty), recalled, grade, DEFAULT_WEIGHTS)
    assert max(found[0][0], 0.001) == pytest.approx(then.stability, rel=1e-9)
    assert found[1][0] == pytest.approx(then.difficulty, rel=1e-9)


@given(STABILITIES, DIFFICULTIES, DAYS, st.floats(1, 600))
def test_worth_is_for_a_second(stability, difficulty, elapsed, seconds):
    """It is finite, never below nothing, and half as much where asking takes twice as long."""
    found = worth_of(stability, difficulty, elapsed, seconds)
    assert 0 <= found < HORIZON
    assert worth_of(stability, difficulty, elapsed, 2 * seconds) == pytest.approx(found / 2)


@pytest.mark.parametrize("stability", [2.0, 10.0, 50.0, 300.0])
@pytest.mark.parametrize("difficulty", [2.0, 6.0, 9.0])
def test_waiting_is_worth_while_at_first(stability, difficulty):
    """Until an item is due asking it grows in worth, tenfold from a tenth of the time on."""
    early, due, late = (worth_of(stability, difficulty, share * stability) for share in (0.5, 1, 3))
    assert early < due < late
    assert late > 10 * worth_of(stability, difficulty, max(1, 0.1 * stability))


def test_many_are_weighed_at_once_each_as_if_alone():
    """The worth of an item does not depend on those beside it; none of none."""
    chance = np.random.default_rng(7)
    many = [
        np.exp(chance.normal(3, 2, 500)),
        chance.uniform(1, 10, 500),
        np.exp(chance.normal(3, 2, 500)),
        chance.uniform(10, 90, 500),
    ]
    found = worth(*many, DEFAULT_WEIGHTS)
    assert found.shape == (500,)
    for place in (0, 250, 499):
        assert found[place] == pytest.approx(worth_of(*(float(each[place]) for each in many)))
    assert worth(of(), of(), of(), of(), DEFAULT_WEIGHTS).shape == (0,)


def test_what_is_not_asked_yet_is_weighed_on_the_same_scale():
    """More than an item whose day has just come, less than one as new that is all but lost."""
    asked_first = worth_unasked(of(30.0, 60.0), DEFAULT_WEIGHTS)
    assert asked_first[0] == pytest.approx(2 * asked_first[1])
    stability, difficulty = (float(each[CLEAR]) for each in first(DEFAULT_WEIGHTS))
    assert worth_of(stability, difficulty, 2) < asked_first[0]
    assert asked_first[0] < worth_of(stability, difficulty, 60)


@settings(max_examples=15)
@given(
    st.floats(0.1, 0.8),
    st.floats(1, 3),
    st.floats(0, 0.8),
    st.floats(0.1, 3),
    st.floats(0.2, 4),
)
def test_other_readers_weights_give_a_scale_too(decay, gain, slowing, spacing, left):
    """With any weights a fit may come to, worth is finite, and asking at once is worth less.

    The ranges are within those that FSRS-6's own fitting allows (from memory).
    """
    weights = list(DEFAULT_WEIGHTS)
    weights[20], weights[8], weights[9], weights[10], weights[11] = (
        decay,
        gain,
        slowing,
        spacing,
        left,
    )
    table.cache_clear()
    elapsed = of(1, 10, 100, 1000, 10_000)
    values = table(tuple(weights))(np.full(5, 10.0), np.full(5, 5.0), elapsed)
    assert np.isfinite(values).all()
    assert (values >= 0).all()
    assert values[0] <= values[2]


class Played:
    """Items of one believed difficulty, each asked whenever it is worth a price, played out."""

    COUNT, LATEST = 12_000, 8 * HORIZON

    def __init__(self, difficulty, price):
        """Find from which wait on each stability is worth asking, by the table."""
        self.difficulty, self.price = difficulty, price
        self.stability = np.geomspace(0.05, 36_000, 200)
        waits = np.geomspace(1, 30_000, 400)
        worths = table(DEFAULT_WEIGHTS)(
            np.repeat(self.stability, 400), np.full(80_000, difficulty), np.tile(waits, 200)
        ).reshape(200, 400)
        reached = worths >= price
        self.wait = np.where(reached.any(1), waits[reached.argmax(1)], 1e9)

    def asked_from(self, stability):
        """Return the wait at which an item is asked."""
        return np.interp(np.log(stability), np.log(self.stability), self.wait)

    def total(self, stability, elapsed, wait):
        """Return the mean of recall, day for day, less the prices, if asked after one wait."""
        chance = np.random.default_rng(11)
        nodes, shares = np.polynomial.legendre.leggauss(16)
        held = np.full(self.COUNT, stability)
        since = np.full(self.COUNT, elapsed)
        until = np.full(self.COUNT, wait)
        day, total = np.zeros(self.COUNT), np.zeros(self.COUNT)
        believed = np.full(self.COUNT, BETWEEN + TRUSTED * (self.difficulty - BETWEEN))
        while (day < self.LATEST).any():
            span = np.clip(np.minimum(until - since, self.LATEST - day), 0, None)
            steps = np.log1p(span)[:, None] * (nodes + 1) / 2
            days = np.expm1(steps)
            kept = recall(held[:, None], since[:, None] + days, DEFAULT_WEIGHTS)
            faded = np.exp(-(day[:, None] + days) / HORIZON) * (days + 1)
            total += (kept * faded * shares).sum(1) * np.log1p(span) / 2
            day = day + span
            total -= np.where(day < self.LATEST, self.price * np.exp(-day / HORIZON), 0)
            recalled = recall(held, since + span, DEFAULT_WEIGHTS)
            up = answered(held, believed, recalled, CLEAR, DEFAULT_WEIGHTS)[0]
            down = answered(held, believed, recalled, BLANK, DEFAULT_WEIGHTS)[0]
            held = np.where(chance.random(self.COUNT) < recalled, up, down)
            since, until = np.zeros(self.COUNT), self.asked_from(held)
        return total.mean()


@pytest.mark.parametrize(
    ("stability", "difficulty", "elapsed"),
    [(20.0, 7.75, 100.0), (100.0, 5.5, 400.0), (200.0, 3.25, 500.0)],
)
def test_worth_is_the_price_at_which_asking_and_waiting_are_equally_good(
    stability, difficulty, elapsed
):
    """At half of it asking now comes to more than asking later, at twice it to less, played out.

    Source: the definition of the index (Whittle 1988, from memory). Items are played out one
    answer at a time, without the table's grid of waits and its linear equations; nearer to the
    price the two differ by less than so many played out can tell.
    """
    index = worth_of(stability, difficulty, elapsed, 1.0)
    cheap, dear = Played(difficulty, 0.5 * index), Played(difficulty, 2 * index)
    now, later = elapsed, 1.5 * elapsed
    assert cheap.total(stability, elapsed, now) > cheap.total(stability, elapsed, later)
    later = float(dear.asked_from(of(stability))[0])
    assert dear.total(stability, elapsed, now) < dear.total(stability, elapsed, later)


def test_the_curve_is_anchored_where_stability_says():
    """After one stability recall is 0.9; source: the factor that is published of FSRS-6."""
    assert curve(DEFAULT_WEIGHTS)[1] == pytest.approx(0.9803464944, abs=1e-10)
    assert recall(of(7.0), of(7.0), DEFAULT_WEIGHTS)[0] == pytest.approx(0.9)
