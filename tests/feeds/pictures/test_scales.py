"""Axes and labels: few ticks at round values, and words that keep out of each other's way."""

from datetime import date, timedelta
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from service.feeds.pictures.dates import marked_days
from service.feeds.pictures.labels import spread
from service.feeds.pictures.lettering import broken, fitted, width
from service.feeds.pictures.scales import ruler
from service.use_cases.picture_records import Axis, Scale, Unit

HEIGHTS = st.lists(st.tuples(st.floats(-50, 350), st.floats(10, 40)), min_size=1, max_size=6)


@pytest.mark.parametrize(
    ("axis", "values", "most", "said"),
    [
        (Axis("", Unit.SHARE, start=0, end=1), [], 6, "0% 20% 40% 60% 80% 100%"),
        (Axis("", Unit.SHARE, start=0, end=1), [], 5, "0% 25% 50% 75% 100%"),
        (Axis("", Unit.SHARE, start=0.5, end=1), [], 3, "50% 75% 100%"),
        (Axis("", Unit.SHARE), [0.981, 0.987], 4, "98.0% 98.5% 99.0%"),
        (Axis("", Unit.COUNT, start=0), [2], 5, "0 1 2"),
        (Axis("", Unit.COUNT, start=0), [12_345], 5, "0 5,000 10,000 15,000"),
        (Axis("", Unit.MINUTES, start=0), [0.0], 4, "0.0 0.5 1.0"),
        (Axis("", Unit.NUMBER), [-3, 4], 5, "−4 −2 0 2 4"),
        (Axis("", Unit.DAYS, Scale.LOG), [1, 400], 5, "1 day|1 week|1 month|1 year"),
        (Axis("", Unit.MINUTES, Scale.LOG), [20, 44640], 5, "1 hour|1 day|1 week|1 month"),
        (Axis("", Unit.NUMBER, Scale.LOG), [1, 1000], 4, "1 10 100 1,000"),
        (Axis("", Unit.NUMBER, Scale.LOG), [0.31, 4.2], 5, "0.5 1 2"),
        (Axis("", Unit.NUMBER, Scale.LOG), [0.2, 2.0], 5, "0.2 0.5 1 2"),
    ],
)
def test_ticks_are_few_and_round(axis: Axis, values: list[float], most: int, said: str):
    """An axis is divided as a draughtsman would (common practice, no published source)."""
    ticks = [tick.words for tick in ruler(axis, values, most).ticks]
    assert ticks == said.split("|" if "|" in said else " ")


@settings(max_examples=60)
@given(st.lists(st.floats(-1e6, 1e6), min_size=1, max_size=5), st.integers(3, 8))
def test_every_value_stands_between_the_ends(values: list[float], most: int):
    """No value is off its axis, and there are never more ticks than may be."""
    axis = ruler(Axis("", Unit.NUMBER), values, most)
    assert all(-1e-6 <= axis.along(value) <= 1 + 1e-6 for value in values)
    assert 1 <= len(axis.ticks) <= most


@settings(max_examples=60)
@given(HEIGHTS)
def test_names_never_overlap_and_keep_their_order(blocks: list[tuple[float, float]]):
    """Blocks stand in the order they want, apart, and inside whenever they fit inside."""
    wanted, heights = [b[0] for b in blocks], [b[1] for b in blocks]
    middles = spread(wanted, heights, 0, 300)
    placed = sorted(zip(middles, heights, wanted, strict=True))
    for (upper, high, first), (lower, low, second) in pairwise(placed):
        assert upper + high / 2 <= lower - low / 2 + 1e-6
        assert first <= second
    assert placed[0][0] - placed[0][1] / 2 >= -1e-6
    assert placed[-1][0] + placed[-1][1] / 2 <= 300 + 1e-6


def test_names_that_have_room_stand_where_they_want():
    """Nothing is moved without need, and two that meet move as far as each other."""
    assert spread([50, 100], [20, 20], 0, 300) == [50, 100]
    assert spread([50, 54], [20, 20], 0, 300) == [42, 62]


@settings(max_examples=60)
@given(st.text(max_size=60), st.floats(20, 300))
def test_words_are_cut_to_their_room(words: str, room: float):
    """What is cut fits; what fits is not cut."""
    shown = fitted(words, 14, room)
    assert shown == words or width(shown, 14) <= room


def test_words_are_broken_between_words():
    """Lines fit, say everything while there are lines enough, and end in an ellipsis else."""
    title = "The Anatomy of Melancholy, What It Is"
    assert " ".join(broken(title, 14, 150, 9)) == title
    assert broken(title, 14, 150, 2)[1].endswith("…")
    assert all(width(line, 14) <= 150 for line in broken(title, 14, 150, 9))


@pytest.mark.parametrize(
    ("days", "room", "first", "last"),
    [
        (7, 60, "27 Nov", "3"),
        (28, 12, "30 Nov", "21"),
        (180, 3, "Dec\n2026", "May"),
        (400, 0.6, "Jan\n2027", "Oct"),
        (399, 0.2, "Jan\n2027", "Jan\n2027"),
        (3, 1, "27 Nov", "27 Nov"),
    ],
)
def test_days_are_named_as_often_as_there_is_room(days: int, room: float, first: str, last: str):
    """Days, Mondays, months, quarters or years are written, whatever fits (common practice)."""
    start = date(2026, 11, 27)
    found = marked_days(start, start + timedelta(days - 1), room, lambda words: 7.0 * len(words))
    assert (found[0][1], found[-1][1]) == (first, last)
