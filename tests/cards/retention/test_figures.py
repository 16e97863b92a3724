"""All figures together, from the tallies of a small library and of none."""

import pytest

from cards.commitments.windows import Kept
from cards.kinds.base import KindName
from cards.retention.figures import figures
from cards.retention.known import Recall
from cards.retention.quality import quality_of
from cards.retention.reading import read
from cards.retention.shares import Share
from cards.retention.tally import Of, Tally, TallyKey, merged
from cards.retention.tallying import tallies_of
from tests.cards.retention.telling import BOOK, OTHER, counted, day, foretold

NEXT, THEME = KindName.NEXT, KindName.THEME


def library():
    """Return the tallies of three items of two books."""
    return merged(
        tallies_of(
            NEXT,
            BOOK,
            [
                counted(0, "hazy", suggested="hazy"),
                counted(2, "clear", 0.9, "hazy"),
                counted(40, "blank", 0.85, "clear", first=True),
            ],
        ),
        tallies_of(THEME, BOOK, [counted(0), counted(12, "vivid", 0.95)]),
        tallies_of(THEME, OTHER, [counted(30)]),
    )


def test_each_figure_comes_from_its_answers():
    """By book, kind, month and age, with what was foreseen, lasted, agreed and is known."""
    found = figures(
        library(),
        0.9,
        [Recall(NEXT, BOOK, 0.6), Recall(THEME, OTHER, None)],
        [(day(6), Kept.KEPT)],
    )
    assert (found.target, found.answers, found.whole) == (0.9, 6, Share(2, 3))
    assert found.books == {BOOK: Share(2, 3)}
    assert found.kinds == {THEME: Share(1, 1), NEXT: Share(1, 2)}
    assert found.months == {"2026-01": Share(2, 2), "2026-02": Share(0, 1)}
    ages = [(each.age.words, each.share) for each in found.forgetting.ages]
    assert ages == [
        ("2 to 3 days", Share(1, 1)),
        ("8 to 14 days", Share(1, 1)),
        ("31 to 90 days", Share(0, 1)),
    ]
    assert [each.age.words for each in found.forgetting_by_kind[THEME].ages] == ["8 to 14 days"]
    assert found.quality.losses.n == 3
    assert found.quality.losses.predicted == pytest.approx(0.9)
    assert [kind for kind, _ in found.quality.by_kind] == [THEME, NEXT]
    assert [month for month, _ in found.quality.by_month] == ["2026-01", "2026-02"]
    assert found.quality.by_month[1][1].brier == pytest.approx(0.85**2)
    assert (found.survival[NEXT].items, found.survival[NEXT].blanks) == (1, 1)
    assert (found.survival[THEME].items, found.survival[THEME].until) == (2, 12)
    agreed = found.agreements
    assert (agreed.all.n, agreed.all.same, agreed.all.higher, agreed.first.n) == (3, 1, 1, 1)
    assert found.known.books[BOOK].expected == 0.6
    assert [(each.month, each.kept) for each in found.kept] == [("2026-01", 1)]


def test_the_curve_and_its_errors_are_over_the_bins_that_are_shown():
    """Three answers, three bins, and the errors of those very bins."""
    quality = figures(library(), 0.9).quality
    shown = [(round(each.predicted, 3), each.share) for each in quality.curve]
    assert shown == [(0.85, Share(0, 1)), (0.9, Share(1, 1)), (0.95, Share(1, 1))]
    assert quality.ece == pytest.approx((0.85 + 0.1 + 0.05) / 3)
    assert quality.rmse_bins == pytest.approx(((0.85**2 + 0.1**2 + 0.05**2) / 3) ** 0.5)
    assert quality.auc.area == 1


def test_the_curve_has_ten_bins_at_most():
    """Of a hundred answers, each predicted otherwise, ten each."""
    sorts = foretold([1] * 100, [0.8 + 0.001 * number for number in range(100)])
    assert [each.share.asked for each in quality_of(sorts, 0.9).curve] == [10] * 10


def test_of_an_empty_library_nothing_is_claimed():
    """Every figure is there and says nothing."""
    found = figures({}, 0.9)
    assert (found.answers, found.whole, found.quality) == (0, Share(0, 0), None)
    assert not any([found.books, found.kinds, found.months, found.survival, found.kept])
    assert found.forgetting.ages == ()
    assert found.agreements.all.n == 0
    assert found.known.whole.asked == 0


def test_what_was_predicted_stands_in_the_order_of_numbers():
    """A thousand comes after two, though as text it comes before."""
    made = {TallyKey(Of.PREDICTED, key): Tally(1) for key in ("1000", "2", "913")}
    assert list(read(made).thousandths) == [2, 913, 1000]


def test_a_key_that_cannot_be_read_is_a_mistake():
    """It is not passed over."""
    with pytest.raises(ValueError, match="nothing"):
        read({TallyKey(Of.ALL, "nothing"): Tally(1)})
