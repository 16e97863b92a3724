"""Losses and bins of like history against the compiled library's own evaluation.

Source: `FSRS.evaluate` of fsrs-rs-python 0.9.3, in float32. It weighs what was answered lately
more: of n answers in the order given, number i, from 0, has the weight .25 + .75·(i/(n - 1))³.
Its log loss is the weighted mean; in a bin of like history its means are plain, and the bins
count by the sums of their weights. Ours weigh every answer the same; so the log loss is
compared answer by answer, and the bins with the library's weights laid around them here.
"""

from collections import defaultdict
from math import sqrt

import numpy as np
import pytest
from fsrs_rs_python import DEFAULT_PARAMETERS, FSRS, FSRSItem, FSRSReview

from cards.kinds.base import KindName
from cards.retention.calibration import bin_of, root_error
from cards.retention.history_bins import history_bin
from cards.retention.losses import loss, losses_of
from cards.retention.reading import read
from cards.retention.tally import merged, total
from cards.retention.tallying import Counted, tallies_of
from cards.schedule import Schedule
from tests.cards.retention.telling import BOOK
from tests.reference.histories import ITEM, answers_of

LIBRARY = FSRS(list(DEFAULT_PARAMETERS))
SCHEDULE = Schedule()
SHORT, LONG = ((0, 3), (2, 3)), ((0, 3), (2, 3), (11, 1))
GAPS = (0, 0, 1, 2, 3, 5, 13, 14, 47, 48, 180, 600)


def item(steps):
    """Return a history as the library takes it, from gaps in days and grades from 1 to 4."""
    return FSRSItem([FSRSReview(grade, gap) for gap, grade in steps])


def foreseen(steps):
    """Return the answers of a history with the recall predicted before each but the first."""
    found = []
    answers = answers_of(steps)
    for number, answer in enumerate(answers):
        memory = SCHEDULE.fold(ITEM, answers[:number])
        predicted = None if memory is None else SCHEDULE.recall(memory, answer.day)
        found.append(Counted(answer.day, answer.grade, predicted))
    return found


def evaluated(histories):
    """Return (prediction, came, bin) of the last answer of each history."""
    rows = []
    for steps in histories:
        asked = [grade for gap, grade in steps if gap]
        alike = history_bin(steps[-1][0], len(asked), asked[:-1].count(1))
        last = foreseen(steps)[-1]
        rows.append((last.predicted, steps[-1][1] > 1, alike))
    return rows


def weighted_root(rows):
    """Return the RMSE in bins with the library's weights."""
    bins = defaultdict(list)
    for place, (given, came, alike) in enumerate(rows):
        bins[alike].append((0.25 + 0.75 * (place / (len(rows) - 1)) ** 3, given - came))
    whole = squares = 0.0
    for held in bins.values():
        weight = sum(each for each, _ in held)
        whole += weight
        squares += weight * (sum(error for _, error in held) / len(held)) ** 2
    return sqrt(squares / whole)


def histories(seed, items):
    """Return every history that ends in an answer of a later day, of so many made-up items."""
    chance = np.random.default_rng(seed)
    found = []
    for _ in range(items):
        steps = [(0, int(chance.integers(1, 5)))]
        for _ in range(int(chance.integers(1, 12))):
            gap, grade = chance.choice(GAPS), chance.choice([1, 2, 3, 3, 3, 4])
            steps.append((int(gap), int(grade)))
            if gap:
                found.append(tuple(steps))
    return found


@pytest.mark.parametrize(("order", "root"), [((SHORT, LONG), 0.805802), ((LONG, SHORT), 0.410454)])
def test_the_library_weighs_what_was_answered_lately_more(order, root):
    """Two histories either way round: the library, and our bins with its weights."""
    assert LIBRARY.evaluate([item(steps) for steps in order]).rmse_bins == pytest.approx(
        root, abs=1e-6
    )
    assert weighted_root(evaluated(order)) == pytest.approx(root, abs=1e-6)


def test_ours_weigh_every_answer_the_same():
    """The same two answers, from the tallies of the item they were given to."""
    sorts = read(tallies_of(KindName.NEXT, BOOK, foreseen(LONG)))
    assert root_error(map(bin_of, sorts.bins.values())) == pytest.approx(0.639449, abs=5e-7)


def test_made_up_histories_fall_into_the_librarys_bins():
    """Some six hundred answers, with second tries of a day: the root agrees with its weights."""
    made = histories(3, 120)
    found = LIBRARY.evaluate([item(steps) for steps in made])
    rows = evaluated(made)
    assert len({alike for _, _, alike in rows}) > 20
    assert weighted_root(rows) == pytest.approx(found.rmse_bins, abs=1e-6)


def test_each_answer_loses_what_the_library_says():
    """Singly evaluated no weight is in the way: each loss, and their mean by the tallies."""
    made = histories(4, 25)
    theirs = [LIBRARY.evaluate([item(steps)]).log_loss for steps in made]
    ours = [loss(given, came) for given, came, _ in evaluated(made)]
    assert ours == pytest.approx(theirs, rel=1e-4, abs=1e-5)
    longest = [
        steps
        for steps, after in zip(made, [*made[1:], ()], strict=True)
        if after[: len(steps)] != steps
    ]
    sums = merged(*(tallies_of(KindName.NEXT, BOOK, foreseen(steps)) for steps in longest))
    whole = losses_of(total(read(sums).thousandths.values()))
    assert whole.n == len(made)
    assert whole.log_loss == pytest.approx(np.mean(theirs), rel=1e-5)
