"""What each target takes and keeps in ten years."""

from dataclasses import replace
from itertools import pairwise
from uuid import UUID

import pytest

from cards.kinds.base import KindName
from cards.parts import Care
from cards.planning import Unasked, foreseeing, plan
from cards.planning.foreseeing import TARGETS
from cards.schedule import DEFAULT_WEIGHTS, aimed
from cards.weighting import Weighting
from tests.cards.planning.libraries import DAY, MINUTE, OTHER, Library, fresh, habits, varied


def mixed() -> tuple[Library, list[Unasked]]:
    """Return a library of every care, something of each not asked yet."""
    library = varied(60)
    library.cares = [list(Care)[number % 3] for number in range(60)]
    return library, [fresh(20, Care.CLOSE), fresh(30, book=OTHER), fresh(5, Care.RESTING)]


@pytest.fixture(scope="module", autouse=True)
def few_courses():
    """Follow fewer courses than the service does, where no figure is held to another's."""
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(foreseeing, "_COURSES", 256)
        patched.setattr(foreseeing, "_FEWEST", 128)
        yield


@pytest.fixture(scope="module")
def whole():
    """The plan of that library, two items let in a day."""
    library, unasked = mixed()
    return plan(library, unasked, DAY, habits(a_day=2))


def test_the_targets_go_from_the_lowest_to_the_highest(whole):
    """From 0.70 to 0.97 by hundredths, for the whole library and each care."""
    assert (TARGETS[0], TARGETS[-1], len(TARGETS)) == (0.7, 0.97, 28)
    for each in (whole.whole, *whole.by_care):
        assert tuple(row.target for row in each.targets) == TARGETS
    assert [each.care for each in whole.by_care] == [Care.CLOSE, Care.STEADY, Care.RESTING]


def test_a_higher_target_never_keeps_less_nor_takes_less(whole):
    """After one, five and ten years, for every care."""
    for each in (whole.whole, *whole.by_care):
        for lower, higher in pairwise(each.targets):
            assert all(a <= b for a, b in zip(lower.known, higher.known, strict=True))
            assert all(a <= b for a, b in zip(lower.minutes, higher.minutes, strict=True))
            assert lower.mean_minutes <= higher.mean_minutes
    assert whole.whole.targets[0].mean_minutes < whole.whole.targets[-1].mean_minutes
    assert whole.whole.targets[0].known[2] < whole.whole.targets[-1].known[2]


def test_the_cares_add_up_to_the_whole(whole):
    """Items, minutes and what is known."""
    parts = whole.by_care
    assert whole.whole.items == sum(each.items for each in parts) == 115
    assert whole.whole.now == pytest.approx(sum(each.now for each in parts))
    for row, found in enumerate(whole.whole.targets):
        rows = [each.targets[row] for each in parts]
        assert found.mean_minutes == pytest.approx(sum(each.mean_minutes for each in rows))
        assert found.known[1] == pytest.approx(sum(each.known[1] for each in rows))


def test_nothing_is_known_beyond_the_items_nor_less_than_without_sittings(whole):
    """What is known lies between what is left alone and all there is."""
    for each in (whole.whole, *whole.by_care):
        assert list(each.left_alone) == sorted(each.left_alone, reverse=True)
        assert each.left_alone[0] < each.now
        for row in each.targets:
            for alone, known in zip(each.left_alone, row.known, strict=True):
                assert alone <= known <= each.items
            assert row.mean_minutes > 0


def test_known_for_each_minute_the_lowest_target_would_always_be_best(whole):
    """Why it is not what a target is proposed by: every further minute keeps less than the first.

    As `cards.planning.lasting` says, also of what is known beyond what is left alone.
    """
    steady = whole.by_care[1]
    for without in (0.0, steady.left_alone[2]):
        a_minute = [(row.known[2] - without) / row.mean_minutes for row in steady.targets]
        assert max(a_minute[5:]) < a_minute[0] == max(a_minute)
    assert steady.proposal is not None
    assert steady.proposal.target > 0.75


def test_at_rest_no_target_makes_a_difference(whole):
    """Books at rest are sampled at the lowest target whatever the reader's; none is proposed."""
    resting = whole.by_care[2]
    assert len({row.known for row in resting.targets}) == 1
    assert len({row.minutes for row in resting.targets}) == 1
    assert resting.proposal is None
    assert resting.targets[0].until_lasting is None


def test_what_is_kept_close_is_planned_at_what_its_care_makes_of_a_target():
    """Close books at 0.8 take what steady ones take at 0.9, which is half as often forgotten."""
    close, steady = varied(40), varied(40)
    close.cares = [Care.CLOSE] * 40
    closely, steadily = (plan(each, [], DAY, habits()) for each in (close, steady))
    assert aimed(0.8, Care.CLOSE) == pytest.approx(0.9)
    at, other = closely.whole.targets[10], steadily.whole.targets[20]
    assert (at.target, other.target) == (0.8, 0.9)
    assert at.mean_minutes == pytest.approx(other.mean_minutes, rel=0.1)
    assert at.known == pytest.approx(other.known, rel=0.01)


def test_new_books_are_proposed_neither_end(monkeypatch):
    """For a library of new items the target proposed takes least until they last."""
    monkeypatch.setattr(foreseeing, "_FEWEST", 1_024)
    found = plan(Library(), [fresh(200)], DAY, habits(a_day=5)).whole
    told = found.proposal
    assert told is not None
    assert not told.at_edge
    assert 0.85 <= told.target <= 0.94
    assert told.alike_from <= told.target <= told.alike_to
    until = {row.target: row.until_lasting for row in found.targets}
    assert until[told.target] < 1.1 * min(until.values())
    assert until[told.target] < until[0.7]
    assert until[told.target] < until[0.97]


def test_where_all_lasts_nothing_is_proposed():
    """Ten items known for decades: no target keeps more of them."""
    found = plan(Library().hold(10), [], DAY, habits())
    assert found.whole.proposal is None
    assert found.within == 0.97


def test_an_empty_library_is_planned_too():
    """Nothing takes no time, and no care has books."""
    found = plan(Library(), [], DAY, habits())
    assert found.by_care == ()
    assert (found.whole.items, found.whole.now, found.whole.proposal) == (0, 0, None)
    assert {row.mean_minutes for row in found.whole.targets} == {0}


def test_the_highest_target_that_fits_the_minutes_is_told(whole):
    """It is the last of which the first year takes no more than the reader has."""
    library, unasked = mixed()
    first_year = [row.minutes[0] for row in whole.whole.targets]
    for minutes, told in ((1.0001 * first_year[15], 0.85), (0.9 * first_year[0], None)):
        assert plan(library, unasked, DAY, habits(minutes, a_day=2)).within == told
    assert first_year[15] < first_year[16]


def test_the_order_the_items_come_in_does_not_matter(whole):
    """The same library the other way round makes the same plan."""
    library, unasked = mixed()
    other = plan(library.turned_round(), unasked, DAY, habits(a_day=2))
    assert other.whole.targets == whole.whole.targets
    assert other.whole.proposal == whole.whole.proposal
    assert other.whole.now == pytest.approx(whole.whole.now)


def test_what_is_not_asked_takes_nothing():
    """Unasked items that are never let in, or of a book at rest, count as items alone."""
    found = plan(Library(), [fresh(9, Care.RESTING), fresh(7)], DAY, habits()).whole
    assert found.items == 16
    assert found.targets[-1].known == (0, 0, 0)
    assert found.targets[-1].mean_minutes == 0


def test_items_twice_as_slow_take_twice_as_long():
    """The seconds of each kind are the reader's own."""
    library = Library().hold(30, 40.0, last=-30).hold(30, 40.0, last=-30, kind=KindName.THEME)
    one = plan(library, [], DAY, habits())
    slow = {kind: 2 * seconds for kind, seconds in MINUTE.items()}
    other = plan(library, [], DAY, replace(habits(), seconds=slow))
    for row, slower in zip(one.whole.targets, other.whole.targets, strict=True):
        assert slower.mean_minutes == pytest.approx(2 * row.mean_minutes)
        assert slower.known == row.known


def test_items_that_are_forgotten_sooner_take_longer():
    """A kind whose stability grows less takes more minutes, the other kinds as many as before."""
    slow = (*DEFAULT_WEIGHTS[:8], 1.6, *DEFAULT_WEIGHTS[9:])
    unasked = [fresh(50), Unasked(UUID(int=5), Care.CLOSE, KindName.THEME, 50)]
    usual = plan(Library(), unasked, DAY, habits(a_day=9))
    weighting = Weighting(by_kind=((KindName.THEME, slow),))
    own = plan(Library(), unasked, DAY, habits(a_day=9, weighting=weighting))
    assert (
        own.by_care[0].targets[20].mean_minutes > 1.15 * usual.by_care[0].targets[20].mean_minutes
    )
    assert own.by_care[1].targets[20].mean_minutes == pytest.approx(
        usual.by_care[1].targets[20].mean_minutes, rel=0.1
    )


REVIEWS_A_DAY = {
    0.95: {1: 18, 5: 45, 10: 59},
    0.90: {1: 11, 5: 30, 10: 41},
    0.85: {1: 9, 5: 24, 10: 33},
    0.80: {1: 7, 5: 19, 10: 28},
    0.70: {1: 4, 5: 13, 10: 21},
}
KNOWN_AT_THE_END = {0.95: 0.975, 0.90: 0.950, 0.85: 0.914, 0.80: 0.881, 0.70: 0.804}


def test_ten_years_of_books_are_planned_as_computed_elsewhere(monkeypatch):
    """25 items a book, 300 books in ten years: reviews a day and mean recall at the end.

    Source: computed for this project in 50-digit arithmetic, independently of this code, under
    the published default weights; whole reviews a day, first askings and second ones of a day
    not among them; one run by chance, without spreading, a book's items in step. Here two items
    are let in each day, 7,300 and not 7,500, and a blank is asked again, on the average as
    often as the target is missed. Within 12 in a hundred or the half review the rounding hides,
    and 2 of the recall.
    """
    monkeypatch.setattr(foreseeing, "_FEWEST", 4_096)
    found = plan(Library(), [fresh(7_300)], DAY, habits(a_day=2)).whole.targets
    for row in found:
        if row.target not in REVIEWS_A_DAY:
            continue
        reviews = [(minutes - 2) / (2 - row.target) * 7_500 / 7_300 for minutes in row.minutes]
        expected = list(REVIEWS_A_DAY[row.target].values())
        assert reviews == pytest.approx(expected, rel=0.12, abs=0.5)
        assert row.known[2] / 7_300 == pytest.approx(KNOWN_AT_THE_END[row.target], abs=0.02)
