"""From figures to pictures and sentences: what is drawn, what the table holds, what is said."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from uuid import UUID

import pytest

from cards.answers import Grade
from cards.commitments.windows import Kept
from cards.fitting.records import Verdict
from cards.kinds.base import KindName, Shelved
from cards.planning import CarePlan, Habits, Proposal, TargetPlan
from cards.retention.figures import figures
from cards.retention.tallying import Counted, Tallying
from cards.schedule import DEFAULT_WEIGHTS
from cards.sitting.pace import USUAL
from cards.weighting import PUBLISHED, Weighting
from service.use_cases.learning_records import Fitting
from service.use_cases.picture_records import Curves, Months, Shares, Steps
from service.use_cases.records import Reader, ReaderId
from service.use_cases.retaining import MOST_FORMER, Learnt, Retained
from service.use_cases.retaining_records import StandingItems
from service.use_cases.retaining_weights import considered, former, in_force, waiting
from service.use_cases.retention_pictures.blanks import blanks
from service.use_cases.retention_pictures.foresight import calibration
from service.use_cases.retention_pictures.forgetting import forgetting
from service.use_cases.retention_pictures.promises import promises
from service.use_cases.retention_pictures.shares import MOST_BOOKS, by_book, by_month
from service.use_cases.retention_pictures.targets import proposal_in_words
from service.use_cases.retention_pictures.words import minutes_in_words, percent

DAY = date(2026, 3, 1)
READER = Reader(ReaderId(UUID(int=7)))
OWN = Weighting(tuple(each * 1.1 for each in DEFAULT_WEIGHTS), ((KindName.PLACE, DEFAULT_WEIGHTS),))

Asked = tuple[KindName, UUID, Iterable[tuple[int, bool, float | None]]]
"""A kind, a book, and its answers: days since the first day, whether it came back, foretold."""


def retained(asked: Iterable[Asked], titles: dict[UUID, str] | None = None) -> Retained:
    """Return what is retained of some items, nothing lying ahead."""
    tallying = Tallying()
    for kind, book, answers in asked:
        counted = [
            Counted(DAY + timedelta(days=on), Grade.CLEAR if came else Grade.BLANK, given)
            for on, came, given in answers
        ]
        tallying.add(kind, book, counted)
    found = figures(tallying.tallies(), READER.target)
    books = {each: Shelved(each, title) for each, title in (titles or {}).items()}
    habits = Habits(USUAL, READER.minutes, READER.target, READER.unasked_a_day)
    none = StandingItems((), (), (), (), (), (), ())
    nothing = Learnt(None, (), 0)
    return Retained(DAY, READER, found, books, nothing, none, (), DAY, habits)


@pytest.mark.parametrize(
    ("share", "said"),
    [(0, "0%"), (0.004, "under 1%"), (0.905, "90%"), (0.996, "over 99%"), (1, "100%")],
)
def test_all_and_nothing_are_said_of_all_and_nothing_alone(share: float, said: str) -> None:
    """A share is rounded to hundredths, but never to one it only comes near."""
    assert percent(share) == said


@pytest.mark.parametrize(
    ("minutes", "said"),
    [
        (0, "no time"),
        (1 / 60, "1 second"),
        (0.5, "30 seconds"),
        (1, "1.0 minutes"),
        (12.34, "12.3 minutes"),
    ],
)
def test_minutes_are_said_as_one_does(minutes: float, said: str) -> None:
    """Less than a minute in seconds."""
    assert minutes_in_words(minutes) == said


def test_of_many_books_the_surely_forgotten_are_drawn() -> None:
    """The first rows are those least likely to have come back; the table holds all."""
    books = [UUID(int=number) for number in range(40)]
    asked = [
        (
            KindName.THEME,
            book,
            [(0, True, None), *((on, on > number // 8, 0.9) for on in range(1, 9))],
        )
        for number, book in enumerate(books)
    ]
    titles = {book: f"Book {number:02}\n of  many" for number, book in enumerate(books)}
    found = by_book(retained(asked, titles))
    assert isinstance(found.drawing, Shares)
    assert len(found.drawing.rows) == MOST_BOOKS
    assert len(found.table.rows) == 40
    assert found.drawing.rows[0].label == "Book 32 of many"
    assert [row.share for row in found.drawing.rows] == sorted(
        row.share for row in found.drawing.rows
    )
    assert found.description.startswith("Of 40 books asked again, 16 lie below the 90% you aim for")
    assert "Book 32 of many" in found.description
    assert "13 more" in found.description
    assert found.description.endswith("the figures hold all.")


def test_months_are_named() -> None:
    """In the order they came, the last two said."""
    answers = [(0, True, None), (10, True, 0.9), (40, False, 0.9)]
    found = by_month(retained([(KindName.THEME, UUID(int=1), answers)]))
    assert found.description == (
        "In April 2026, 0 of 1 came back, 0%; in March 2026, 1 of 1 came back, 100%."
    )
    assert [row[0] for row in found.table.rows] == ["March 2026", "April 2026"]


def test_a_curve_of_survival_ends_where_few_are_followed() -> None:
    """With fewer than five items left at risk it is drawn no further; the table says how far.

    Source: Pocock, Clayton & Altman 2002, Lancet 359 (from memory).
    """
    asked = [
        (KindName.THEME, UUID(int=1), [(0, True, None), (number * 10, number < 3, 0.9)])
        for number in range(1, 10)
    ]
    found = blanks(retained(asked))
    assert isinstance(found.drawing, Steps)
    (line,) = found.drawing.lines
    # Nine items; the first two go on to 10 and 20 days, the others are blank at 30 to 90.
    assert [at for at, _ in line.steps] == [30, 40, 50]
    assert line.end == 60
    ((_, items, gone, *_, until),) = found.table.rows
    assert (items, gone, until) == (9, 7, 90)


def test_a_curve_says_only_what_was_asked() -> None:
    """From fifty answers of several ages curves are drawn; a year is told of nothing younger."""
    asked = [
        (KindName.THEME, UUID(int=1), [(0, True, None), (age, number % 10 > bad, 0.9)])
        for number in range(40)
        for age, bad in ((1, 0), (20, 2))
    ]
    found = forgetting(retained(asked))
    assert isinstance(found.drawing, Curves)
    assert [line.label for line in found.drawing.lines] == ["power curve", "exponential"]
    assert "after a week" in found.description
    assert "after a month" in found.description
    assert "a year" not in found.description
    few = forgetting(retained(asked[:20]))
    assert isinstance(few.drawing, Curves)
    assert few.drawing.lines == ()
    assert few.description.startswith("A curve is fitted from fifty answers")


def test_few_predictions_are_said_to_be_few() -> None:
    """With under a hundred answers the calibration curve says that chance draws it."""
    told = calibration(retained([(KindName.THEME, UUID(int=1), [(0, True, None), (9, True, 0.8)])]))
    assert told.description.startswith("Foretold was that 80% would come back; 100% did, of 1 ans")
    assert told.description.endswith("chance still draws most of this.")


def test_months_of_promises_are_stacked() -> None:
    """Every window counts in its month, and the last month is said."""
    windows = [(date(2026, 2, 8), Kept.KEPT), (date(2026, 2, 15), Kept.SILENT)]
    base = retained([])
    found = promises(replace(base, figures=figures({}, 0.9, windows=windows)))
    assert isinstance(found.drawing, Months)
    assert found.description == (
        "Of 2 windows in which something you promised was due, 1 was kept whole, 50%; in "
        "February 2026 1 of 2."
    )


def planned(proposal: Proposal | None) -> CarePlan:
    """Return a plan of three targets."""
    targets = tuple(
        TargetPlan(target, (1.0, 0.5, 0.2), 0.4, (9.0, 9.0, 9.0), 30 * target)
        for target in (0.7, 0.8, 0.9)
    )
    return CarePlan(None, 10, 8.0, (7.0, 6.0, 5.0), targets, proposal)


@pytest.mark.parametrize(
    ("proposal", "said"),
    [
        (None, "No target is proposed"),
        (Proposal(0.9, 0.9, 0.9, at_edge=False), "Your 90% is the target that keeps most per min"),
        (
            Proposal(0.8, 0.8, 0.9, at_edge=False),
            "Your 90% is among the targets that keep most per",
        ),
        (
            Proposal(0.8, 0.7, 0.8, at_edge=False),
            "Most is kept per minute at 80% (from 70% to 80% all are alike): under it an item",
        ),
        (Proposal(0.7, 0.7, 0.7, at_edge=True), "Most is kept per minute at 70%: under it"),
    ],
)
def test_what_is_proposed_is_said(proposal: Proposal | None, said: str) -> None:
    """A reader whose target is as good as the best is told so, not sent elsewhere."""
    assert proposal_in_words(planned(proposal), 0.9).startswith(said)


def fitted(day: int, weighting: Weighting) -> Fitting:
    """Return a fit adopted on a day of March."""
    verdict = Verdict(None, 300, 60, None, adopted=True, sentence="So.")
    at = datetime(2026, 3, day, 9, tzinfo=UTC)
    return Fitting(UUID(int=day), at, at.date(), 300, (verdict,), weighting, refolded=True)


def test_weights_are_told_with_their_days() -> None:
    """Whose are in force, since when, which kinds have their own, and what was before."""
    later, earlier = fitted(20, OWN), fitted(3, Weighting(OWN.general))
    learnt = Learnt(later, (later, earlier), 1_200)
    told = replace(retained([]), learnt=learnt, reader=replace(READER, weighting=OWN))
    assert in_force(told) == (
        "In force since 20 March 2026 are weights fitted to your own answers. The kind place has "
        "weights of its own."
    )
    assert considered(told)[0].endswith("considered on 20 March 2026, from 300 answers.")
    assert waiting(learnt).startswith("1,200 due days wait to be moved")
    assert waiting(replace(learnt, waiting=1)).startswith("1 due day waits")
    own, published = former(learnt)
    assert (own.since, own.until) == (date(2026, 3, 3), date(2026, 3, 20))
    assert (published.since, published.until) == (None, date(2026, 3, 3))
    assert published.weighting == PUBLISHED
    many = tuple(fitted(day, OWN) for day in range(MOST_FORMER, 0, -1))
    assert all(each.since for each in former(Learnt(many[0], many, 0)))


def test_a_proposal_names_what_both_targets_take() -> None:
    """Minutes until an item lasts, under the proposed and under the reader's; and the edge."""
    told = proposal_in_words(planned(Proposal(0.7, 0.7, 0.7, at_edge=True)), 0.9)
    assert "21.0 minutes until it lasts by itself, and 27.0 minutes at the 90% you aim for." in told
    assert told.endswith("one beyond it might take fewer.")
