"""The yearly review: which commitments are in it, with which figures and changes."""

from dataclasses import replace
from datetime import date, timedelta

from cards.commitments import Act, Measure, Outcome, Period, Question
from cards.yearly import Review, review_of
from tests.cards.yearly.lives import facts

_WEEKLY = Measure(1, Period.WEEK)
_FIVE = Measure(1, Period.DAY, periods=5)


def _review(*known, last: date = date(2026, 12, 31)) -> Review:
    return review_of(last.year, last, known)


def test_what_was_kept_is_counted_within_the_year() -> None:
    """Only check-ins about days of the year count, by what came of them."""
    told = facts(
        "Write home every week",
        made=date(2025, 12, 1),
        measure=_WEEKLY,
        kept=(date(2025, 12, 31), date(2026, 1, 1), date(2026, 12, 31)),
        missed=(date(2026, 6, 1),),
    )
    review = _review(told)
    (promise,) = review.promises
    assert dict(promise.counts) == {Outcome.KEPT: 2, Outcome.MISSED: 1}
    assert promise.deeds == 2
    assert dict(review.counts) == dict(promise.counts)
    assert not promise.new
    assert promise.before is not None


def test_what_was_settled_before_the_year_is_left_out() -> None:
    """A commitment released last year is in last year's review, and in this one no more."""
    gone = facts(
        "Write home every week",
        made=date(2025, 3, 1),
        measure=_WEEKLY,
        decisions=((Act.RELEASE, date(2025, 9, 1), {"words": "She lives with us now"}),),
    )
    assert _review(gone).promises == ()
    of_then = facts(
        "Write home every week",
        made=date(2025, 3, 1),
        measure=_WEEKLY,
        decisions=((Act.RELEASE, date(2025, 9, 1), {"words": "She lives with us now"}),),
        last=date(2025, 12, 31),
    )
    review = _review(of_then, last=date(2025, 12, 31))
    assert [change.told for each in review.changed for change in each.changes] == [
        "Released: She lives with us now"
    ]
    assert review.released == 1


def test_what_came_in_after_the_day_looked_at_is_left_out() -> None:
    """A commitment made in May is not in a review of the year as it stood in March."""
    later = facts("Write home", made=date(2026, 5, 1), last=date(2026, 3, 1))
    assert _review(later, last=date(2026, 3, 1)).promises == ()


def test_changes_are_told_in_order_with_what_they_found() -> None:
    """A rewording keeps the former words beside it, a halving says what became less."""
    walk = facts(
        "Walk for 30 minutes every day",
        measure=Measure(1, Period.DAY, minutes=30),
        decisions=(
            (Act.REWORD, date(2026, 5, 1), {"words": "When it is 7, I will walk"}),
            (Act.HALVE, date(2026, 3, 1), {"measure": Measure(1, Period.DAY, minutes=15)}),
            (Act.REWORD, date(2026, 6, 1), {"words": "When it is 8, I will walk"}),
            (Act.PAUSE, date(2026, 7, 1), {"until": date(2026, 7, 31), "words": "A journey"}),
        ),
    )
    (promise,) = _review(walk).promises
    assert [change.told for change in promise.changes] == [
        "Halved from 30 to 15 minutes.",
        "Reworded. Before: “Walk for 30 minutes every day”",
        "Reworded. Before: “When it is 7, I will walk”",
        "Paused until 31 July 2026. A journey",
    ]
    assert promise.text == "When it is 8, I will walk"


def test_what_is_over_stalled_or_unjudged_is_put_up_for_renewal() -> None:
    """What ended asks what next, what stalled the question that fits; what goes well nothing."""
    days = tuple(date(2026, 1, 5) + timedelta(days=each) for each in range(5))
    review = _review(
        facts("Rise at six for five days", measure=_FIVE, kept=days),
        facts("Write home every week", measure=_WEEKLY),
        facts(
            "Sing every week",
            measure=_WEEKLY,
            kept=tuple(date(2026, 1, 5) + timedelta(weeks=each) for each in range(52)),
        ),
    )
    asked = {each.text: each.renewing.question for each in review.to_renew}
    assert asked == {
        "Rise at six for five days": Question.WHAT_NEXT,
        "Write home every week": Question.DID_YOU,
    }
    assert review.done == 1


def test_books_stand_by_the_day_of_their_first_commitment() -> None:
    """The book that asked first stands first, with its commitments in their order."""
    review = _review(
        facts("Sing", "Emma", made=date(2026, 4, 1)),
        facts("Rise at six", "Walden", made=date(2026, 2, 1)),
        facts("Rest", "Walden", made=date(2026, 2, 1)),
    )
    assert [(book.title, [one.text for one in book.promises]) for book in review.books] == [
        ("Walden", ["Rise at six", "Rest"]),
        ("Emma", ["Sing"]),
    ]


def test_a_year_without_commitments_is_empty() -> None:
    """Where nothing was promised the review says nothing, and fails at nothing."""
    review = _review()
    assert (review.books, review.pairs, review.timed, review.minutes) == ((), (), (), 0)


def test_a_past_year_keeps_the_words_it_had() -> None:
    """What was reworded in spring stands in last year's review by the words it had then."""
    known = facts(
        "Write home",
        made=date(2025, 3, 1),
        decisions=((Act.REWORD, date(2026, 4, 1), {"words": "When it rains, I will write"}),),
        last=date(2025, 12, 31),
    )
    (promise,) = _review(known, last=date(2025, 12, 31)).promises
    assert promise.text == "Write home"
    assert promise.changes == ()


def test_facts_in_any_order_give_the_same_review() -> None:
    """Late reports and decisions that arrive the other way round change nothing."""
    known = facts(
        "Write home every week",
        measure=_WEEKLY,
        kept=(date(2026, 2, 1), date(2026, 3, 1)),
        missed=(date(2026, 4, 1),),
        decisions=(
            (Act.PAUSE, date(2026, 5, 1), {"until": date(2026, 5, 20)}),
            (Act.REWORD, date(2026, 6, 1), {"words": "When it rains, I will write"}),
        ),
    )
    turned = replace(
        known, decisions=known.decisions[::-1], check_ins=tuple(reversed(known.check_ins))
    )
    assert _review(turned) == _review(known)


def test_what_was_taken_back_is_not_told() -> None:
    """A check-in or a decision withdrawn since is in no figure and no change."""
    known = facts(
        "Write home every week",
        measure=_WEEKLY,
        kept=(date(2026, 2, 1),),
        decisions=((Act.PAUSE, date(2026, 5, 1), {}),),
    )
    back = date(2026, 12, 1)
    withdrawn = replace(
        known,
        decisions=tuple(replace(each, withdrawn_on=back) for each in known.decisions),
        check_ins=tuple(replace(each, withdrawn_on=back) for each in known.check_ins),
    )
    (promise,) = _review(withdrawn).promises
    assert (promise.counts, promise.deeds, promise.changes) == ({}, 0, ())
