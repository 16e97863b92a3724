"""When a reader's own weights are put in force, and when those in force stay."""

import numpy as np
import pytest
from sklearn.metrics import log_loss

from cards.fitting.considering import FEWEST, FEWEST_APART, consider
from cards.fitting.likeliest import KIND_STRENGTH, fit
from cards.fitting.model import predictions
from cards.fitting.reviews import KINDS, Reviews
from cards.kinds.base import KindName
from cards.weighting import PUBLISHED, Weighting
from tests.benchmarks.recovery.histories import FIRST_DAY, history
from tests.benchmarks.recovery.readers import as_published
from tests.cards.fitting.histories import reviews_of
from tests.reference.histories import START


def retentive(items, *, otherwise=False):
    """Return a reader who begins an item a day, and keeps nearly all, though blank at first.

    Otherwise one with whom nearly nothing of the same comes back.
    """
    gaps, rows = np.cumsum([0, 4, 20, 60]), range(items)
    days = [FIRST_DAY + item + gap for item in rows for gap in gaps]
    grades = [
        2 * (turn > 0 and ((7 * item + 4 * turn) % 15 < 3) == otherwise)
        for item in rows
        for turn in range(4)
    ]
    return Reviews.of(np.repeat(rows, 4), np.zeros(4 * items), days, grades)


def joined(*parts):
    """Return the reviews of several readers as if they were one's, each of a kind of its own."""
    items = np.concatenate([each.items + 100_000 * n for n, (each, _) in enumerate(parts)])
    kinds = np.concatenate([np.full(len(each), KINDS.index(kind)) for each, kind in parts])
    days = np.concatenate([each.days for each, _ in parts])
    grades = np.concatenate([each.grades for each, _ in parts])
    return Reviews(items, kinds.astype(np.int8), days, grades)


@pytest.fixture(scope="module")
def unlike():
    """A reader who keeps more than the published weights say."""
    return retentive(200)


@pytest.fixture(scope="module")
def considered(unlike):
    """What considering them comes to."""
    return consider(unlike)


def test_a_reader_unlike_the_published_weights_gets_their_own(unlike, considered):
    """Weights that foresaw later answers better are adopted, and fitted to all answers then."""
    verdict = considered.verdict
    assert verdict.adopted
    assert verdict.comparison.gain > 2 * verdict.comparison.error
    assert considered.weighting.general == fit(unlike)
    assert verdict.answers == unlike.scored.sum()
    assert verdict.held_out == pytest.approx(verdict.answers / 5, rel=0.05)


def test_what_is_judged_has_seen_no_later_answer(unlike, considered):
    """The proposed weights are those fitted to the answers before the held-out days alone."""
    verdict = considered.verdict
    begin = verdict.comparison.from_day
    later = unlike.scored & (unlike.days >= begin)
    earlier = fit(unlike.only(unlike.days < begin))
    lost = log_loss(unlike.came_back[later], predictions(unlike, earlier)[later])
    assert verdict.comparison.proposed == pytest.approx(lost, rel=1e-9)


def test_the_sentence_says_what_was_compared(considered):
    """The reader is told the figures, the day, and what is in force now."""
    verdict = considered.verdict
    assert considered.sentence == verdict.sentence
    for said in (
        f"the {verdict.held_out:,} since ",
        f"log loss {verdict.comparison.proposed:.4f} against {verdict.comparison.in_force:.4f}",
        "yours are in force now.",
    ):
        assert said in verdict.sentence


def test_a_reader_like_the_published_weights_keeps_them():
    """Weights fitted to a reader the published ones describe foresee no better, and stay out."""
    found = consider(history(as_published, 3, books=25, items_a_book=3).reviews)
    assert not found.adopted
    assert found.weighting == PUBLISHED
    assert found.verdict.comparison is not None
    assert "these stay." in found.sentence


def test_what_was_considered_once_is_not_adopted_again(unlike, considered):
    """Answers the weights in force were fitted to are not held out against them."""
    later = int(unlike.days.max()) + 1
    again = consider(unlike, considered.weighting, since=later)
    assert not again.adopted
    assert again.weighting == considered.weighting
    assert again.verdict.held_out == 0
    assert "too few" in again.sentence


@pytest.mark.parametrize(
    ("items", "apart", "said"),
    [(50, 1, "40, of 40 items on 40 days"), (120, 0, "120, of 120 items on 1 day")],
    ids=["answers", "days"],
)
def test_too_few_answers_are_told_and_change_nothing(items, apart, said):
    """With fewer later answers, or days of them, than needed the reader is told so."""
    steps = [[(0, 2), (2, 2), (9, 0), (3, 2), (900 + apart * n, 2)] for n in range(items)]
    found = consider(reviews_of(steps), since=START.toordinal() + 500)
    assert not found.adopted
    assert found.verdict.comparison is None
    assert f"are {said}, where {FEWEST} are needed, of {FEWEST_APART} items" in found.sentence


def test_no_answers_at_all_are_too_few():
    """A reader who has answered nothing is told so, and keeps the published weights."""
    found = consider(Reviews.of([], [], [], []))
    assert found.by_kind == ()
    assert found.weighting == PUBLISHED
    assert found.verdict.answers == 0


def test_a_kind_that_is_forgotten_otherwise_gets_weights_of_its_own():
    """Where one kind is kept and another lost at the same gaps, each gets weights of its own."""
    reviews = joined(
        (retentive(400, otherwise=True), KindName.THEME),
        (retentive(400), KindName.PLACE),
    )
    found = consider(reviews, Weighting())
    own = dict(found.weighting.by_kind)
    assert KindName.PLACE in own
    assert own[KindName.PLACE][0] > 2 * found.weighting.of(KindName.THEME)[0]
    of_kind = reviews.only(reviews.kinds == KINDS.index(KindName.PLACE))
    assert own[KindName.PLACE] == fit(of_kind, found.weighting.general, KIND_STRENGTH)
    verdicts = {each.kind: each for each in found.by_kind}
    assert verdicts[KindName.PLACE].adopted
    assert "of the kind “place”" in verdicts[KindName.PLACE].sentence


def test_one_kind_alone_is_not_tried_apart_from_all(unlike, considered):
    """Where all answers are of one kind, weights for it would be those for every kind again."""
    assert considered.by_kind == ()
    own = Weighting(PUBLISHED.general, ((KindName.THEME, fit(unlike)),))
    assert consider(unlike, own).weighting == own
