"""What an answer adds to the tallies."""

from collections import Counter
from datetime import date, timedelta
from math import log
from uuid import UUID

from hypothesis import given, settings
from hypothesis import strategies as st

from cards.answers import GRADES, Grade
from cards.kinds.base import KindName
from cards.retention.tally import Of, Tally, TallyKey, difference, merged, total
from cards.retention.tallying import Counted, Tallying, tallies_of
from tests.cards.retention.telling import BOOK, OTHER, counted, day, told

STEPS = st.lists(
    st.tuples(
        st.sampled_from([-3, 0, 0, 1, 1, 2, 7, 30, 31, 90, 400, 800]),
        st.sampled_from(GRADES),
        st.one_of(st.none(), st.floats(0, 1)),
        st.one_of(st.none(), st.sampled_from(GRADES)),
        st.booleans(),
    ),
    max_size=12,
)
KINDS = st.sampled_from([KindName.THEME, KindName.NEXT])
BOOKS = st.sampled_from([BOOK, OTHER])
ITEMS = st.lists(st.tuples(KINDS, BOOKS, STEPS), max_size=5)


def answers_of(steps):
    """Return answers from steps of (days since, grade, predicted, mark, graded first)."""
    now, found = day(0), []
    for gap, *rest in steps:
        now += timedelta(days=gap)
        found.append(Counted(now, *rest))
    return found


def sums(items, through=None):
    """Return the tallies of several items."""
    tallying = Tallying()
    for kind, book, steps in items:
        tallying.add(kind, book, answers_of(steps), through)
    return tallying.tallies()


def test_the_first_answer_recalls_nothing_that_was_asked():
    """One answer is counted among all, in no share, and begins a survival."""
    found = tallies_of(KindName.THEME, BOOK, [counted(0, "clear")])
    assert found == {
        TallyKey(Of.ALL, "theme"): Tally(1, 1),
        TallyKey(Of.SURVIVAL, "theme|0|none"): Tally(1),
    }


def test_an_answer_of_a_later_day_is_counted_everywhere():
    """By book, kind and age, month, prediction and history, with its sums in billionths."""
    found = tallies_of(
        KindName.NEXT, BOOK, [counted(0), counted(35, "blank", 0.9125, "clear", first=True)]
    )
    one = Tally(1, 0, 1, 0, 912_500_000, 832_656_250, round(-log(0.0875) * 1e9))
    assert found == {
        TallyKey(Of.ALL, "next"): Tally(2, 1),
        TallyKey(Of.BOOK, BOOK.hex): one,
        TallyKey(Of.KIND_AGE, "next|35"): one,
        TallyKey(Of.MONTH, "2026-02"): one,
        TallyKey(Of.PREDICTED, "912"): one,
        TallyKey(Of.BIN, "2.1.0"): one,
        TallyKey(Of.MARK, "clear>blank>first"): Tally(1),
        TallyKey(Of.SURVIVAL, "next|35|blank"): Tally(1),
    }


def test_hazy_came_back():
    """Only blank did not come back."""
    whole = told(*(counted(n, grade) for n, grade in enumerate(["clear", *GRADES]))).whole()
    assert (whole.n, whole.recalled) == (4, 3)


def test_a_second_try_of_a_day_is_left_out():
    """Of two answers of a later day the first counts; the age of the next is from that day."""
    found = told(counted(0), counted(4, "blank"), counted(4, "vivid"), counted(6, "clear"))
    assert (found.whole().n, found.whole().recalled) == (2, 1)
    assert sorted(found.ages[KindName.NEXT]) == [2, 4]


def test_an_item_asked_again_on_its_first_day_is_still_not_recalled():
    """However often it was answered on its first day, nothing was asked on an earlier one."""
    assert told(counted(0), counted(0, "blank"), counted(0)).whole() == Tally()


def test_an_answer_that_was_not_foreseen_is_judged_by_no_prediction():
    """It counts in every share, and in none of the sums of predictions."""
    found = told(counted(0), counted(3), counted(5, "blank", 0.8))
    assert found.whole()[:5] == (2, 1, 1, 0, 800_000_000)
    assert {key: tally.n for key, tally in found.thousandths.items()} == {800: 1}
    assert sum(tally.n for tally in found.bins.values()) == 1


def test_certainty_that_was_wrong_costs_no_more_than_is_said():
    """A loss is held at that of one in a million; the squared error is whole."""
    found = told(counted(0), counted(1, "blank", 1.0)).whole()
    assert found.squares == 1_000_000_000
    assert found.logs == round(-log(1e-6) * 1e9)
    assert told(counted(0), counted(1, "vivid", 1.0)).whole().logs == 1_000


def test_days_after_the_last_one_wanted_are_not_there_yet():
    """The tallies through a day are those of the answers up to and on it."""
    answers = [counted(0), counted(3, "clear", 0.9), counted(9, "blank", 0.8)]
    for number in range(12):
        known = [each for each in answers if each.day <= day(number)]
        assert tallies_of(KindName.NEXT, BOOK, answers, day(number)) == tallies_of(
            KindName.NEXT, BOOK, known
        )
    assert tallies_of(KindName.NEXT, BOOK, answers, day(-1)) == {}


def test_who_flew_west_answered_on_the_day_before_last_named():
    """A later answer that bears an earlier date counts on the day of the one before it."""
    found = told(counted(0), counted(10, "clear", 0.9), counted(8, "blank"), counted(12, "clear"))
    assert sorted(found.ages[KindName.NEXT]) == [2, 10]
    assert list(found.survivals[KindName.NEXT]) == [(10, True)]


def test_survival_ends_with_the_first_blank():
    """Later blanks change nothing; without one it is known up to the last answer."""
    gone = told(counted(0), counted(4, "blank"), counted(9, "blank")).survivals
    assert gone[KindName.NEXT] == {(4, True): 1}
    there = told(counted(0), counted(4), counted(9)).survivals
    assert there[KindName.NEXT] == {(9, False): 1}
    never = told(counted(0, "blank"), counted(4)).survivals
    assert never[KindName.NEXT] == {(0, True): 1}


def test_a_second_try_that_is_blank_makes_no_history_of_blanks():
    """Only answers of a later day make the history an answer is binned by."""
    once = told(counted(0), counted(0, "blank"), counted(5, "clear", 0.9)).bins
    assert list(once) == ["1.1.0"]
    later = told(counted(0), counted(5, "blank"), counted(10, "clear", 0.9)).bins
    assert list(later) == ["1.1.1"]


def test_every_mark_is_held_against_the_grade():
    """Also of a first answer and of a second try; without a mark there is nothing to hold."""
    found = told(
        counted(0, "clear", suggested="hazy"), counted(0, "vivid", suggested="vivid"), counted(3)
    )
    assert found.marks == {
        (Grade.HAZY, Grade.CLEAR, False): 1,
        (Grade.VIVID, Grade.VIVID, False): 1,
    }


def test_keys_are_short_and_numbers_are_whole():
    """What a store must make room for."""
    found = tallies_of(
        KindName.COMPLETE,
        BOOK,
        [
            Counted(date.min, Grade.VIVID, None, Grade.VIVID),
            Counted(date.max, Grade.BLANK, 0.5, Grade.CLEAR, graded_first=True),
        ],
    )
    assert max(len(key) for _, key in found) <= 32
    assert all(isinstance(number, int) for tally in found.values() for number in tally)


@given(ITEMS)
@settings(max_examples=40)
def test_items_add_up_whatever_their_order(items):
    """All at once, backwards, or one by one and merged: the same."""
    whole = sums(items)
    assert whole == sums(items[::-1])
    assert whole == merged(*(sums([item]) for item in items))


@given(KINDS, BOOKS, STEPS, st.lists(BOOKS, max_size=1), st.integers(0, 12))
@settings(max_examples=40)
def test_what_changes_is_added_exactly(kind, book, steps, others, cut):
    """Tallies brought on by a difference are those counted afresh, forwards and back again."""
    rest = sums([(kind, other, steps) for other in others])
    before, after = sums([(kind, book, steps[:cut])]), sums([(kind, book, steps)])
    there = merged(merged(rest, before), difference(before, after))
    assert there == merged(rest, after)
    assert merged(there, difference(after, before)) == merged(rest, before)
    assert difference(after, after) == {}


@given(ITEMS)
@settings(max_examples=40)
def test_books_kinds_months_and_predictions_count_the_same_answers(items):
    """Each way of telling answers apart comes to the same whole."""
    found = sums(items)
    wholes = {
        of: total(tally for key, tally in found.items() if key.of is of)
        for of in (Of.BOOK, Of.KIND_AGE, Of.MONTH)
    }
    assert len(set(wholes.values())) == 1
    whole = wholes[Of.BOOK]
    for of in (Of.PREDICTED, Of.BIN):
        part = total(tally for key, tally in found.items() if key.of is of)
        assert part == (whole.foreseen, whole.came, *whole[2:])
    items_answered = sum(bool(steps) for _, _, steps in items)
    assert total(t for key, t in found.items() if key.of is Of.SURVIVAL).n == items_answered
    marks = sum(mark is not None for _, _, steps in items for *_, mark, _ in steps)
    assert total(t for key, t in found.items() if key.of is Of.MARK).n == marks


@given(STEPS)
@settings(max_examples=60)
def test_what_is_counted_is_what_a_plain_count_finds(steps):
    """Day by day with lists: which answers count, in which month, how many came back."""
    found = tallies_of(KindName.NEXT, BOOK, answers_of(steps))
    latest, months, came = None, Counter(), Counter()
    for answer in answers_of(steps):
        when = answer.day if latest is None else max(latest, answer.day)
        if latest is not None and when > latest:
            months[f"{when:%Y-%m}"] += 1
            came[f"{when:%Y-%m}"] += answer.grade is not Grade.BLANK
        latest = when
    by_month = {key.key: tally for key, tally in found.items() if key.of is Of.MONTH}
    assert {month: tally.n for month, tally in by_month.items()} == months
    assert {month: tally.recalled for month, tally in by_month.items()} == +came | {
        month: 0 for month in months if not came[month]
    }


def test_a_book_no_answer_of_which_counts_has_no_tally():
    """What adds up to nothing is not there."""
    found = sums([(KindName.NEXT, UUID(int=9), [(0, Grade.CLEAR, None, None, False)])])
    assert not any(key.of is Of.BOOK for key in found)
