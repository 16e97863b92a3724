"""A year looked back on, from the facts of a library."""

from datetime import date, timedelta
from uuid import uuid4

import pytest

from cards.commitments import Act, Outcome
from cards.errors import Invalid
from cards.parts import PartKind
from service.use_cases.check_in import Report, check_in
from service.use_cases.decide import Ruling, decide
from service.use_cases.library import open_digest
from service.use_cases.yearly_review import yearly_review


def test_a_year_tells_what_came_of_its_promises(house, added):
    """Check-ins, a release with its reason and the standing of the rest are in the review."""
    digest_id = added()
    first, second = open_digest(house.desk, digest_id).kept.held(PartKind.COMMITMENT)
    check_in(house.desk, Report(uuid4(), first.id, Outcome.KEPT, count=2))
    decide(house.desk, Ruling(uuid4(), second.id, Act.RELEASE, words="Nobody is left to write to"))
    house.now += timedelta(days=40)
    review = yearly_review(house.desk)
    assert (review.year, review.last) == (2026, house.now.date())
    (book,) = review.books
    one, other = book.promises
    assert (one.text, dict(one.counts), one.deeds) == (first.text, {Outcome.KEPT: 1}, 2)
    assert [change.told for change in other.changes] == ["Released: Nobody is left to write to"]
    assert (one.new, one.before) == (True, None)


def test_a_past_year_stands_as_it_did_on_its_last_day(house, added):
    """What happened in January is in the new year's review and not in the old one's."""
    digest_id = added()
    first, _ = open_digest(house.desk, digest_id).kept.held(PartKind.COMMITMENT)
    house.now += timedelta(days=400)
    check_in(house.desk, Report(uuid4(), first.id, Outcome.KEPT))
    old, new = yearly_review(house.desk, 2026), yearly_review(house.desk)
    assert (old.last, dict(old.counts)) == (date(2026, 12, 31), {})
    assert (new.year, dict(new.counts)) == (2027, {Outcome.KEPT: 1})
    assert new.promises[0].before == old.promises[0].after


def test_in_january_the_year_that_ended_is_looked_back_on(house):
    """Without a year named it is last year's review all January, and may be empty."""
    assert yearly_review(house.desk).year == 2025
    assert yearly_review(house.desk).promises == ()


@pytest.mark.parametrize("year", [1899, 2027, 10_000, -3, 0])
def test_a_year_that_has_not_begun_is_refused(house, year):
    """One sentence says which years can be looked back on."""
    with pytest.raises(Invalid, match="from 1900 to 2026"):
        yearly_review(house.desk, year)


def test_a_library_of_another_reader_is_not_looked_back_on(house, added):
    """A review is of the reader's own library alone."""
    added()
    assert yearly_review(house.another_reader().desk, 2026).promises == ()
