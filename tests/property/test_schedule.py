"""Properties of the schedule. Each docstring quotes the rule it checks."""

from dataclasses import replace
from datetime import timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from cards.answers import GRADES
from cards.schedule import DEFAULT_WEIGHTS, MAX_INTERVAL, Schedule, spread, spread_range
from tests.property.strategies import gaps, grades, histories, item_ids, targets


def graded(answers, grade):
    """Return a history with its last answer graded otherwise."""
    return [*answers[:-1], replace(answers[-1], grade=grade)]


@settings(max_examples=1_000)
@given(histories(), targets, item_ids)
def test_a_better_grade_never_earns_an_earlier_day(answers, target, item):
    """“A better grade never earns a shorter interval”, nor an earlier due day once spread."""
    schedule = Schedule(target)
    folded = [schedule.fold(item, graded(answers, grade)) for grade in GRADES]
    stabilities = [memory.stability for memory in folded]
    days = [memory.due_on for memory in folded]
    assert stabilities == sorted(stabilities)
    assert days == sorted(days)
    assert [memory.call_on for memory in folded] == sorted(memory.call_on for memory in folded)


@settings(max_examples=500)
@given(histories(), targets, item_ids)
def test_a_due_day_lies_in_the_range_around_the_published_interval(answers, target, item):
    """“Spreading never moves a due day past its range”: around S/FACTOR (r^(1/decay) - 1)."""
    memory = Schedule(target).fold(item, answers)
    decay = -DEFAULT_WEIGHTS[20]
    exact = memory.stability * (target ** (1 / decay) - 1) / (0.9 ** (1 / decay) - 1)
    low, high = spread_range(min(max(round(exact), 1), MAX_INTERVAL))
    assert 1 <= low <= (memory.due_on - memory.last_day).days <= high <= MAX_INTERVAL


@given(st.integers(1, MAX_INTERVAL), item_ids, st.integers(1, 10_000))
def test_spreading_never_leaves_its_range(interval, item, answers):
    """“From max(2, round(I - delta)) to round(I + delta)”, by reckoning with whole numbers."""
    low, high = spread_range(interval)
    # delta in hundredths, doubled to keep halves whole
    delta = 100 if interval > 2 else 0
    delta += 15 * (2 * min(interval, 7) - 5) // 2 if interval > 2 else 0
    delta += 10 * max(0, min(interval, 20) - 7) + 5 * max(0, interval - 20)
    assert low <= spread(interval, item, answers) <= high
    assert low <= interval <= high
    assert 100 * (interval - low) <= delta + 51
    assert 100 * (high - interval) <= delta + 51


@given(st.integers(1, MAX_INTERVAL - 1), item_ids, st.integers(1, 10_000))
def test_spreading_keeps_the_order_of_intervals(interval, item, answers):
    """One fraction, “the same for all four grades”: a longer interval is never due earlier."""
    assert spread(interval, item, answers) <= spread(interval + 1, item, answers)


@given(histories(), item_ids, st.randoms(use_true_random=False))
def test_the_order_of_arrival_changes_nothing(answers, item, random):
    """“The fold of its answers in the order they happened, whatever order they arrived in”."""
    shuffled = list(answers)
    random.shuffle(shuffled)
    assert Schedule().fold(item, shuffled) == Schedule().fold(item, answers)


@given(histories(), item_ids, st.data())
def test_an_answer_sent_twice_changes_nothing(answers, item, data):
    """“Sending one twice changes nothing”, neither the memory nor a prediction."""
    twice = [*answers, *data.draw(st.lists(st.sampled_from(answers)))]
    assert Schedule().fold(item, twice) == Schedule().fold(item, answers)
    assert Schedule().predict(answers[-1], twice) == Schedule().predict(answers[-1], answers)


@given(histories(min_size=2), st.data())
def test_predicting_never_looks_ahead(answers, data):
    """An answer is predicted from those that happened before it, and not from its own grade."""
    index = data.draw(st.integers(0, len(answers) - 1))
    schedule = Schedule()
    predicted = schedule.predict(answers[index], answers[:index])
    later = [replace(each, grade=data.draw(grades)) for each in answers[index + 1 :]]
    regraded = replace(answers[index], grade=data.draw(grades))
    assert schedule.predict(answers[index], [*later, *answers[:index]]) == predicted
    assert schedule.predict(regraded, [*later, *answers[:index]]) == predicted
    assert (predicted is None) is (index == 0)


@given(histories(), targets, gaps, gaps)
def test_recall_is_a_probability_that_only_falls(answers, target, wait, more):
    """Recall lies above 0 and at most at 1, is 1 on the day of the answer, and never rises."""
    schedule = Schedule(target)
    memory = schedule.fold(answers[0].item_id, answers)
    first = memory.last_day + timedelta(days=wait)
    recall = schedule.recall(memory, first)
    assert schedule.recall(memory, memory.last_day) == 1.0
    assert 0 < schedule.recall(memory, first + timedelta(days=more)) <= recall <= 1


@given(histories(), targets)
def test_a_memory_keeps_its_bounds(answers, target):
    """Stability stays above 0, difficulty from 1 to 10, however the answers went."""
    memory = Schedule(target).fold(answers[0].item_id, answers)
    assert memory.stability > 0
    assert 1 <= memory.difficulty <= 10


@given(histories(), targets, targets, item_ids)
def test_a_higher_target_is_never_due_later(answers, one, other, item):
    """The target moves the due day alone: the memory is the same, the day earlier if higher."""
    low, high = sorted((one, other))
    late, early = (Schedule(target).fold(item, answers) for target in (low, high))
    assert early.due_on <= late.due_on
    assert replace(early, due_on=late.due_on) == late
