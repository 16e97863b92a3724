"""Two readers in one store: what one promised or talked over is none of the other’s."""

from collections.abc import Callable
from uuid import UUID, uuid4

import pytest

from cards.commitments import Act, Outcome
from cards.errors import Missing
from cards.parts import PartKind
from service.use_cases.bringing_up import brought_up
from service.use_cases.calendar import open_calendar
from service.use_cases.check_in import Report, check_in, show_check_in, withdraw_check_in
from service.use_cases.commitments import all_commitments, commitment_called, open_commitment
from service.use_cases.decide import Ruling, decide, withdraw_decision
from service.use_cases.library import open_digest
from service.use_cases.ports import Desk
from service.use_cases.reminding import new_address, revoke_address, show_reminding
from service.use_cases.rereading import (
    ReadAgain,
    list_rereading,
    record_rereading,
    withdraw_rereading,
)
from service.use_cases.talking import HeldTalk, record_talk, withdraw_talk
from tests.use_cases.house import House


def test_anothers_promises_are_out_of_reach(house: House, added: Callable[[], UUID]) -> None:
    """Every id of another reader’s leads nowhere, and nothing of theirs is changed or listed."""
    digest_id = added()
    mine, theirs = house.desk, house.another_reader().desk
    first = open_digest(mine, digest_id).kept.held(PartKind.COMMITMENT)[0].id
    report = check_in(mine, Report(uuid4(), first, Outcome.KEPT))
    pause = decide(mine, Ruling(uuid4(), first, Act.PAUSE))
    talk = record_talk(mine, HeldTalk(uuid4(), digest_id)).talk
    read = record_rereading(mine, ReadAgain(uuid4(), digest_id)).rereading
    made = new_address(mine, "Telephone")
    before = open_commitment(mine, first)
    attempts: list[Callable[[Desk], object]] = [
        lambda desk: open_commitment(desk, first),
        lambda desk: commitment_called(desk, str(first)),
        lambda desk: check_in(desk, Report(uuid4(), first, Outcome.MISSED)),
        lambda desk: show_check_in(desk, report.id),
        lambda desk: withdraw_check_in(desk, report.id),
        lambda desk: decide(desk, Ruling(uuid4(), first, Act.RESUME)),
        lambda desk: withdraw_decision(desk, pause.id),
        lambda desk: record_talk(desk, HeldTalk(uuid4(), digest_id)),
        lambda desk: withdraw_talk(desk, digest_id, talk.id),
        lambda desk: record_rereading(desk, ReadAgain(uuid4(), digest_id)),
        lambda desk: withdraw_rereading(desk, read.id),
        lambda desk: revoke_address(desk, made.address.id),
    ]
    for attempt in attempts:
        with pytest.raises(Missing):
            attempt(theirs)
    assert not all_commitments(theirs).by_pace
    assert brought_up(theirs) is None
    assert not list_rereading(theirs).books
    assert open_calendar(theirs, made.secret) is None
    assert open_commitment(mine, first) == before
    assert show_reminding(mine).addresses == (made.address,)
    assert open_calendar(mine, made.secret) is not None
