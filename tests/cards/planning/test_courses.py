"""The courses items take under each target."""

from datetime import timedelta
from random import Random
from statistics import fmean

import numpy as np
import pytest

from cards.kinds.base import KindName
from cards.parts import Care
from cards.planning.beginnings import Abreast, beginnings
from cards.planning.courses import A_YEAR, DAYS, QUARTER, followed
from cards.schedule import DEFAULT_WEIGHTS
from cards.sitting.price import askings
from cards.weighting import Weighting
from tests.cards.planning.libraries import (
    DAY,
    MINUTE,
    Library,
    fresh,
    habits,
    held,
    histories,
    lived,
    varied,
)


def courses(library, unasked=(), targets=(0.9,), count=None, **more):
    """Follow the items of a library that are foreseen alike, and say how many they are."""
    ((_, weights, its),) = beginnings(library, unasked, DAY, habits(**more), DAYS)
    some = its.some(count or len(its))
    return followed(Abreast.of([(some, np.array(targets))]), weights), len(some)


@pytest.mark.parametrize("target", [0.75, 0.9])
def test_items_are_asked_and_known_as_when_lived_through(target):
    """Twelve items in their first year: askings, and what is known in its last quarter.

    Outside source: `lived`, the package itself by chance, 40 times over; such a mean strays by
    some 3 in a hundred of the askings, and by 1 of what is known.
    """
    given = histories(12, 4)
    found, count = courses(held(given), targets=[target], count=3_072)
    chance = Random(11)
    asked, known = [], []
    for _ in range(40):
        for one in given:
            asked.append(len(lived(one, None, A_YEAR, target, chance)[0]))
            known.append(lived(one, None, A_YEAR - chance.randrange(QUARTER), target, chance)[1])
    assert found.seconds[0, 0] / count / 60 == pytest.approx(fmean(asked), rel=0.07)
    assert found.known[0, 0] / count == pytest.approx(fmean(known), abs=0.02)


@pytest.mark.parametrize("target", [0.7, 0.85, 0.97])
def test_what_is_let_in_at_once_is_asked_as_its_price_tells(target):
    """Items let in on the first day take, in each of ten years, what `askings` foresees alone."""
    found, count = courses(Library(), [fresh(2_048)], [target], a_day=9_999)
    due, again = askings(target, DAYS)
    years = (due + again).reshape(-1, A_YEAR).sum(axis=1)
    assert found.seconds[0] / count / 60 == pytest.approx(years, rel=0.2, abs=0.1)
    assert found.seconds[0].sum() / count / 60 == pytest.approx(years.sum(), rel=0.02)


def test_a_few_courses_tell_what_all_of_them_tell():
    """A thousand courses, the fewest followed of a care, tell what twelve thousand tell.

    Within 6 in a hundred of the minutes of ten years and 11 of those of the first, some three
    times what they were seen to stray by; and within 1 of what is known.
    """
    library, targets = varied(3_000), [0.7, 0.9, 0.97]
    few, n = courses(library, targets=targets, count=1_024)
    all_, m = courses(library, targets=targets, count=12_000)
    assert few.known / n == pytest.approx(all_.known / m, abs=0.01)
    assert few.seconds[:, 0] / n == pytest.approx(all_.seconds[:, 0] / m, rel=0.11)
    assert few.seconds.sum(axis=1) / n == pytest.approx(all_.seconds.sum(axis=1) / m, rel=0.06)


def test_a_higher_target_takes_more_and_keeps_more_as_it_is_foreseen():
    """Before anything is drawn level, too: of all ten years, and but for a three-hundredth."""
    targets = np.arange(0.7, 0.975, 0.03)
    found, count = courses(varied(1_000), targets=targets, count=512)
    assert (np.diff(found.known, axis=0) / count > -0.003).all()
    assert (np.diff(found.seconds.sum(axis=1)) > 0).all()


def test_what_is_overdue_is_asked_on_the_first_day():
    """Items due for years are all asked in the first year, and those asked yesterday are not."""
    overdue, _ = courses(Library().hold(4, 3_000.0, last=-5_000))
    held_, _ = courses(Library().hold(4, 3_000.0))
    assert overdue.seconds[0, 0] >= 4 * 60
    assert held_.seconds[0, 0] == 0


def test_what_is_let_in_later_is_not_known_before():
    """Of items let in over ten years, one in five years' worth is known after half of them."""
    found, count = courses(Library(), [fresh(3_650)], a_day=1)
    assert found.known[0] / count == pytest.approx([0.085, 0.46, 0.93], abs=0.03)
    assert found.seconds[0].sum() > 0


def test_items_are_foreseen_by_the_weights_of_their_kind():
    """Items of two sets of weights come apart, and those of three cares."""
    steep = (*DEFAULT_WEIGHTS[:20], 0.4)
    library = Library().hold(3, kind=KindName.PLACE).hold(2, kind=KindName.THEME)
    library.hold(4, kind=KindName.THEME, care=Care.CLOSE)
    apart = habits(weighting=Weighting(by_kind=((KindName.THEME, steep),)))
    found = {
        (care, weights): len(its) for care, weights, its in beginnings(library, [], DAY, apart, 9)
    }
    assert found == {
        (Care.STEADY, DEFAULT_WEIGHTS): 3,
        (Care.STEADY, steep): 2,
        (Care.CLOSE, steep): 4,
    }


def test_a_later_day_finds_less_known():
    """Begun a month later, the items have rested a month more."""
    library = varied(8)
    ((*_, now),) = beginnings(library, [], DAY, habits(), DAYS)
    ((*_, then),) = beginnings(library, [], DAY + timedelta(days=30), habits(), DAYS)
    assert (now.day - then.day).tolist() == [30.0] * 8
    assert MINUTE[KindName.PLACE] == now.seconds[0]
