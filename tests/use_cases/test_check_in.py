"""Check-ins are facts about commitments."""

from dataclasses import replace
from datetime import timedelta
from uuid import uuid4

import pytest

from cards.commitments import Outcome
from cards.errors import CommitmentMissing, Conflict, Invalid
from cards.parts import PartKind
from service.use_cases.check_in import Report, check_in
from service.use_cases.library import open_digest


def test_a_check_in_is_kept_once(house, added):
    """The same report twice is one fact, seen with the digest."""
    digest = open_digest(house.desk, added()).kept
    commitment = digest.held(PartKind.COMMITMENT)[0]
    report = Report(uuid4(), digest.id, commitment.id, Outcome.KEPT, None, "At breakfast.")
    for _ in range(2):
        check_in(house.desk, report)
    (seen,) = open_digest(house.desk, digest.id).check_ins
    assert (seen.outcome, seen.note, seen.day) == (
        Outcome.KEPT,
        "At breakfast.",
        house.now.date(),
    )


def test_a_check_in_needs_a_commitment_and_a_day_that_has_come(house, added):
    """A point is no commitment, another reader's is none of ours, tomorrow has not come."""
    digest = open_digest(house.desk, added()).kept
    point = digest.held(PartKind.POINT)[0]
    commitment = digest.held(PartKind.COMMITMENT)[0]
    with pytest.raises(CommitmentMissing):
        check_in(house.desk, Report(uuid4(), digest.id, point.id, Outcome.KEPT))
    with pytest.raises(CommitmentMissing):
        check_in(
            house.another_reader().desk,
            Report(uuid4(), digest.id, commitment.id, Outcome.KEPT),
        )
    tomorrow = house.now.date() + timedelta(days=1)
    with pytest.raises(Invalid):
        check_in(house.desk, Report(uuid4(), digest.id, commitment.id, Outcome.KEPT, tomorrow))
    assert not open_digest(house.desk, digest.id).check_ins


def test_an_id_belongs_to_one_check_in(house, added):
    """Another report under the same id is refused, and the first one stands."""
    digest = open_digest(house.desk, added()).kept
    commitment = digest.held(PartKind.COMMITMENT)[0]
    report = Report(uuid4(), digest.id, commitment.id, Outcome.KEPT)
    first = check_in(house.desk, report)
    house.now += timedelta(hours=1)
    with pytest.raises(Conflict):
        check_in(house.desk, replace(report, outcome=Outcome.MISSED))
    assert open_digest(house.desk, digest.id).check_ins == (first,)
    assert check_in(house.desk, report) == first
