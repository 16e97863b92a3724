"""Fewer courses where many are asked again and again."""

import numpy as np
import pytest

from cards.planning import thinning
from cards.planning.beginnings import Abreast, beginnings
from cards.planning.courses import followed
from cards.planning.lasting import gained
from cards.planning.thinning import thinned
from cards.schedule import DEFAULT_WEIGHTS
from tests.cards.planning.libraries import DAY, habits, varied


def test_as_many_go_on_as_the_steps_leave_room_for():
    """A hundred thousand at a few steps, and every second of them after many, in turns."""
    assert thinned(100_000, 8) is None
    assert thinned(100_000, 16) == slice(1, None, 2)
    assert thinned(100_000, 32) == slice(0, None, 2)
    assert thinned(100_000, 33) is None
    assert thinned(1_000, 3_600) is None


def test_fewer_courses_tell_the_same(monkeypatch):
    """Thinned again and again, what is asked, known and made to last is the same.

    Within 5 in a hundred of the minutes, and half of one of what is known.
    """
    ((_, weights, its),) = beginnings(varied(400), [], DAY, habits(), 9)
    abreast = Abreast.of([(its.some(2_048), np.array([0.8, 0.95]))])
    whole, lasting = followed(abreast, weights), gained(abreast, weights)
    monkeypatch.setattr(thinning, "_ASKINGS", 12_000)
    fewer, made = followed(abreast, weights), gained(abreast, weights)
    assert not np.array_equal(fewer.seconds, whole.seconds)
    assert fewer.seconds.sum(axis=1) == pytest.approx(whole.seconds.sum(axis=1), rel=0.05)
    assert fewer.known / 2_048 == pytest.approx(whole.known / 2_048, abs=0.005)
    assert made.seconds == pytest.approx(lasting.seconds, rel=0.05)
    assert made.lasting == pytest.approx(lasting.lasting, rel=0.02)


def test_where_nothing_grows_a_day_asks_all_there_is(monkeypatch):
    """Items asked every day for ten years take their seconds every day, thinned or not."""
    monkeypatch.setattr(thinning, "_ASKINGS", 2_000)
    monkeypatch.setattr(thinning, "_FEWEST", 64)
    stuck = (*DEFAULT_WEIGHTS[:8], -20.0, *DEFAULT_WEIGHTS[9:])
    ((_, _, its),) = beginnings(varied(64), [], DAY, habits(), 9)
    found = followed(Abreast.of([(its.some(640), np.array([0.97]))]), stuck)
    # A minute, and at the most half of them forgotten.
    assert 365 * 640 * 60 * 0.95 < found.seconds[0, 9] < 365 * 640 * 60 * 1.5
