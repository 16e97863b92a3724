"""What a reader is told of what they retain: the figures of a small library, checked by hand."""

import csv
import io
from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from uuid import UUID, uuid4

import pytest

from cards.answers import Grade
from cards.commitments import Act, Measure, Outcome, Period
from cards.kinds.base import KindName
from cards.parts import PartKind
from cards.retention.shares import Share
from service.use_cases.check_in import Report, check_in
from service.use_cases.decide import Ruling, decide
from service.use_cases.exporting import export
from service.use_cases.exporting_columns import What
from service.use_cases.exporting_records import ExportForm
from service.use_cases.library import open_digest
from service.use_cases.picture_records import Picture
from service.use_cases.retaining import Retained, show_retention
from service.use_cases.retaining_measures import measures, told
from service.use_cases.retaining_weights import considered, former, in_force, waiting
from service.use_cases.retention_pictures import PICTURES
from service.use_cases.retention_pictures.shares import headline
from tests.use_cases.house import DIGEST, House

THEME = KindName.THEME


@pytest.fixture
def answered(house: House, added: Callable[[], UUID]) -> House:
    """Every item was clear on 5 January and five days later; but there the theme was blank."""
    added()
    for grade_of_theme in (Grade.CLEAR, Grade.BLANK):
        for item in list(house.items().values()):
            theme = item.item.kind is THEME
            house.answer(item.item.id, grade_of_theme if theme else Grade.CLEAR)
        house.now += timedelta(days=5)
    return house


def picture(retained: Retained, name: str) -> Picture:
    """Return one picture there is."""
    made = PICTURES[name](retained)
    assert made is not None
    return made


def test_an_empty_library_is_told_in_sentences(house: House) -> None:
    """With nothing asked no figure is made up, and each picture says why it is empty."""
    retained = show_retention(house.desk)
    assert headline(retained).startswith("Nothing has been asked a second time yet.")
    for name in ("by-book", "by-kind", "by-age", "by-month", "known", "coming", "promises"):
        assert picture(retained, name).empty
        assert picture(retained, name).description.endswith(".")
    for name in ("calibration", "forgetting", "grades", "blanks", "target"):
        assert picture(retained, name).empty
    assert PICTURES["target-close"](retained) is None
    assert in_force(retained).startswith("In force are the published default weights")
    assert "100 are still to come" in considered(retained)[0]
    assert (former(retained.learnt), waiting(retained.learnt)) == ((), "")


def test_figures_are_those_counted_by_hand(answered: House) -> None:
    """The first answers to items are left out; of the others all came back but the theme."""
    items = len(answered.items())
    retained = show_retention(answered.desk)
    assert retained.figures.answers == 2 * items
    assert retained.figures.whole == Share(items - 1, items)
    assert retained.figures.kinds[THEME] == Share(0, 1)
    (book,) = retained.figures.books
    assert retained.books[book].title == DIGEST.title
    assert headline(retained).startswith(
        f"When you were asked again, {items - 1} of {items} came back,"
    )
    (row,) = picture(retained, "by-book").table.rows
    low, high = Share(items - 1, items).bounds
    assert row == (
        "Silas Marner",
        items,
        items - 1,
        (items - 1) / items,
        low,
        high,
        "too few to say whether 90% is met",
    )
    (age,) = picture(retained, "by-age").table.rows
    assert age[:3] == ("4 to 7 days", items, items - 1)
    (month,) = picture(retained, "by-month").table.rows
    assert month[:3] == ("January 2026", items, items - 1)
    blanks = {row[0]: row[1:3] for row in picture(retained, "blanks").table.rows}
    assert blanks["Themes"] == (1, 1)
    assert all(gone == 0 for name, (_, gone) in blanks.items() if name != "Themes")
    assert retained.figures.known.whole.asked == items


def test_what_was_foreseen_is_judged_by_what_was_stored(answered: House) -> None:
    """The mean recall foretold is the mean of the predictions kept with the answers."""
    desk = answered.desk
    with desk.store.reading() as work:
        kept = [
            answer.predicted
            for item in answered.items()
            for answer in work.answers.of_item(desk.reader, item)
            if answer.predicted is not None
        ]
    quality = show_retention(desk).figures.quality
    assert quality is not None
    assert quality.losses.n == len(kept) == len(answered.items())
    assert quality.losses.predicted == pytest.approx(sum(kept) / len(kept), abs=1e-9)
    assert [each.name for each in measures(quality)][:2] == ["Log loss", "Brier score"]
    assert told(quality).startswith(f"Over {len(kept)} answers with a prediction")


def test_a_promise_counts_in_the_month_it_ended_in(house: House, added) -> None:
    """Without a measure, windows of 28 days from 5 January: one ends in February, one in March."""
    kept = open_digest(house.desk, added()).kept
    first, second = kept.held(PartKind.COMMITMENT)
    decide(house.desk, Ruling(uuid4(), second.id, Act.RELEASE, words="The friend moved in."))
    house.now += timedelta(days=20)
    check_in(house.desk, Report(uuid4(), first.id, Outcome.KEPT))
    house.now += timedelta(days=40)
    found = picture(show_retention(house.desk), "promises")
    assert [row[:5] for row in found.table.rows] == [
        ("February 2026", 1, 0, 0, 0),
        ("March 2026", 0, 0, 0, 1),
    ]
    assert found.description.startswith("Of 2 windows in which something you promised was due, 1 ")


def test_the_same_whatever_the_tallies_hold(answered: House) -> None:
    """Asked for again, days later, the figures are the same."""
    first = show_retention(answered.desk).figures
    answered.now += timedelta(days=9)
    again = show_retention(answered.desk).figures
    assert replace(again, known=first.known, kept=first.kept) == first


def test_rows_are_exported(answered: House) -> None:
    """Exported as CSV, the first row is of everything, as the figures have it."""
    written = b"".join(export(answered.desk, What.RETENTION, ExportForm.CSV).pieces).decode()
    rows = list(csv.DictReader(io.StringIO(written)))
    whole = show_retention(answered.desk).figures.whole
    assert (rows[0]["of"], rows[0]["label"]) == ("all", "everything")
    assert (int(rows[0]["asked"]), int(rows[0]["came_back"])) == (whole.asked, whole.recalled)
    assert float(rows[0]["low"]) == pytest.approx(whole.low)
    assert {row["label"] for row in rows if row["of"] == "book"} == {"Silas Marner"}
    assert sum(int(row["asked"]) for row in rows if row["of"] == "kind") == whole.asked


def test_the_coming_days_begin_where_nobody_sat_yet(house: House, added):
    """Before today's sitting they begin today; once one answer was given, tomorrow."""
    added()
    today = house.now.date()
    assert show_retention(house.desk).coming[0].day == today
    item = next(iter(house.items()))
    house.answer(item, Grade.CLEAR)
    assert show_retention(house.desk).coming[0].day == today + timedelta(days=1)


def test_what_was_done_once_long_ago_still_counts(house: House, added) -> None:
    """Done in its first days, years before its date, a deed is kept in the month of that date."""
    kept = open_digest(house.desk, added()).kept
    first, second = kept.held(PartKind.COMMITMENT)
    decide(house.desk, Ruling(uuid4(), second.id, Act.RELEASE, words="The friend moved in."))
    by = house.now.date() + timedelta(days=365 * 5)
    once = Measure(period=Period.ONCE, deadline=by)
    decide(house.desk, Ruling(uuid4(), first.id, Act.MEASURE, measure=once))
    house.now += timedelta(days=1)
    check_in(house.desk, Report(uuid4(), first.id, Outcome.KEPT))
    house.now += timedelta(days=365 * 5 + 30)
    found = picture(show_retention(house.desk), "promises")
    assert [row[:5] for row in found.table.rows] == [(f"{by:%B %Y}", 1, 0, 0, 0)]
