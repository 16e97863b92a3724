"""The fold against an independent, compiled implementation on thousands of made-up histories.

Source: the package fsrs-rs-python 0.9.3, a compiled implementation of FSRS-6. It works in
float32 and takes whole days from the caller, so the comparison is relative, to 1e-4. It
stops stability at 36,500 days, which our model does not: a history is compared up to the
answer before it gets there.
"""

from fsrs_rs_python import DEFAULT_PARAMETERS, FSRS, FSRSItem, FSRSReview
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from cards.schedule import Schedule
from tests.reference.histories import ITEM, answers_of

CEILING = 36_500
RELATIVE = 1e-4
LIBRARY = FSRS(list(DEFAULT_PARAMETERS))
SCHEDULE = Schedule()

GAPS = st.one_of(st.just(0), st.integers(1, 14), st.integers(15, 400), st.integers(401, 2_500))
STEPS = st.lists(st.tuples(GAPS, st.integers(1, 4)), min_size=1, max_size=50)
LONG = st.lists(st.tuples(st.integers(0, 400), st.integers(1, 4)), min_size=25, max_size=50)


def library_states(steps):
    """Return the library's (stability, difficulty) after each step."""
    reviews = [FSRSReview(grade, gap if number else 0) for number, (gap, grade) in enumerate(steps)]
    states = LIBRARY.historical_memory_states(FSRSItem(reviews))
    return [(state.stability, state.difficulty) for state in states]


def close(ours, theirs):
    """Tell whether two numbers agree within 1e-4 of the second."""
    return abs(ours - theirs) <= RELATIVE * abs(theirs)


@settings(max_examples=3_000, derandomize=True, deadline=None, database=None)
@given(STEPS)
def test_any_history_gives_the_compiled_librarys_memory(steps):
    """Stability and difficulty agree to 1e-4, whatever the gaps and grades."""
    states = library_states(steps)
    below = next((i for i, (s, _) in enumerate(states) if s >= CEILING), len(states))
    assume(below > 0)
    folded = SCHEDULE.fold(ITEM, answers_of(steps[:below]))
    stability, difficulty = states[below - 1]
    assert close(folded.stability, stability), (folded.stability, stability)
    assert close(folded.difficulty, difficulty), (folded.difficulty, difficulty)


@settings(max_examples=300, derandomize=True, deadline=None, database=None)
@given(LONG)
def test_every_step_of_a_long_history_gives_the_compiled_librarys_memory(steps):
    """Of histories of 25 to 50 answers not only the end agrees, but every step."""
    for count, (stability, difficulty) in enumerate(library_states(steps), 1):
        if stability >= CEILING:
            break
        folded = SCHEDULE.fold(ITEM, answers_of(steps[:count]))
        assert close(folded.stability, stability)
        assert close(folded.difficulty, difficulty)


def test_the_ceiling_is_the_librarys_alone():
    """Where the library stops at 36,500 days our memory grows on: the one documented difference."""
    steps = [(0, 4), (2_500, 4), (30_000, 4), (36_500, 4)]
    assert library_states(steps)[-1][0] == CEILING
    assert SCHEDULE.fold(ITEM, answers_of(steps)).stability > CEILING
