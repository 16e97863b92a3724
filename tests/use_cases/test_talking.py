"""Talks about a book: the sheet, the fact, and what flows back into the digest."""

from dataclasses import replace
from datetime import date, timedelta
from uuid import uuid4

import pytest

from cards.commitments import Outcome
from cards.errors import Conflict, DigestChanged, DigestMissing, Invalid, InvalidDigest, TalkMissing
from cards.parts import PartKind
from cards.talk import Length, Stage
from service.use_cases.check_in import Report, check_in
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import remove_digest
from service.use_cases.talking import (
    MOST_RESOLVED,
    HeldTalk,
    record_talk,
    talk_sheet,
    talks_of,
    withdraw_talk,
)
from service.use_cases.versions import list_versions


def test_the_sheet_knows_what_was_recorded(house, added):
    """What came of the commitments stands on the checking page, as known on the day."""
    digest_id = added()
    (first, _) = open_digest(house.desk, digest_id).kept.held(PartKind.COMMITMENT)
    check_in(house.desk, Report(uuid4(), first.id, Outcome.KEPT))
    agenda = talk_sheet(house.desk, digest_id, Length.READ_IT)
    report = next(each for each in agenda.sections if each.stage is Stage.REPORT)
    assert [line.beside for line in report.answers] == ["on course", "on course"]
    assert sum(each.minutes for each in agenda.sections) == 80


def test_the_sheet_stays_until_the_book_was_talked_over(house, added):
    """Paper and screen show one sheet; after the talk another one is drawn."""
    digest_id = added()
    drawn = [talk_sheet(house.desk, digest_id, Length.READ_IT)]
    house.now += timedelta(days=1)
    drawn.append(talk_sheet(house.desk, digest_id, Length.READ_IT))
    assert drawn[0] == drawn[1]
    orders = set()
    for _ in range(6):
        record_talk(house.desk, HeldTalk(uuid4(), digest_id))
        order = talk_sheet(house.desk, digest_id, Length.READ_IT).sections[2]
        orders.add(tuple(line.words for line in order.lines))
    assert len(orders) > 1


def test_a_talk_is_kept_once_and_flows_back(house, added):
    """New commitments are added, the judgement replaced, in one version; twice is once."""
    digest_id = added()
    held = HeldTalk(
        uuid4(),
        digest_id,
        listener="Hanne",
        minutes=75,
        note="She thinks Eppie too good.",
        resolved=("When Hanne calls, I will ask about her mother.", " ", "When Hanne calls, I "),
        judgement="Agreed, but for the ending",
    )
    held = replace(held, resolved=(*held.resolved[:2], held.resolved[0].upper()))
    first = record_talk(house.desk, held)
    house.now += timedelta(days=2)
    again = record_talk(house.desk, held)
    assert (first.fresh, first.added, again.fresh, again.added) == (True, 1, False, 0)
    assert again.talk == first.talk
    (talk,) = talks_of(house.desk, digest_id)
    assert (talk.listener, talk.minutes, talk.day) == ("Hanne", 75, date(2026, 1, 5))
    digest = open_digest(house.desk, digest_id).kept.digest()
    assert [each.text for each in digest.commitments][2:] == [
        "When Hanne calls, I will ask about her mother."
    ]
    assert digest.judgement == "Agreed, but for the ending"
    assert len(list_versions(house.desk, digest_id).entries) == 2


def test_a_talk_without_anything_new_leaves_the_digest(house, added):
    """Where nothing was resolved, or only what is asked already, there is no new version."""
    digest_id = added()
    known = open_digest(house.desk, digest_id).kept
    asked = known.digest().commitments[0].text
    done = record_talk(house.desk, HeldTalk(uuid4(), digest_id, resolved=(asked,), judgement=" "))
    assert (done.kept.revision, done.added) == (known.revision, 0)


def test_an_id_belongs_to_one_talk(house, added):
    """Another talk under the same id is refused, and the first stands."""
    digest_id = added()
    held = HeldTalk(uuid4(), digest_id, listener="Hanne")
    record_talk(house.desk, held)
    with pytest.raises(Conflict):
        record_talk(house.desk, replace(held, listener="Piet"))
    assert [talk.listener for talk in talks_of(house.desk, digest_id)] == ["Hanne"]


def test_a_talk_that_cannot_be_is_refused_whole(house, added):
    """Tomorrow, too long a note, too many or too long commitments: neither fact nor edit."""
    digest_id = added()
    tomorrow = house.now.date() + timedelta(days=1)
    for wrong in (
        HeldTalk(uuid4(), digest_id, day=tomorrow, resolved=("Sing daily",)),
        HeldTalk(uuid4(), digest_id, note="x" * 2_001, resolved=("Sing daily",)),
        HeldTalk(uuid4(), digest_id, minutes=0),
        HeldTalk(uuid4(), digest_id, listener="x" * 201),
        HeldTalk(
            uuid4(),
            digest_id,
            resolved=tuple(f"Sing {n} songs" for n in range(MOST_RESOLVED + 1)),
        ),
        HeldTalk(uuid4(), digest_id, resolved=("x" * 20_001,)),
        HeldTalk(uuid4(), digest_id, judgement="a\x01b"),
    ):
        with pytest.raises((Invalid, InvalidDigest)):
            record_talk(house.desk, wrong)
    with pytest.raises(DigestChanged):
        record_talk(house.desk, HeldTalk(uuid4(), digest_id, revision=9))
    assert not talks_of(house.desk, digest_id)
    assert open_digest(house.desk, digest_id).kept.revision == 1


def test_a_talk_is_taken_back_and_what_was_resolved_stays(house, added):
    """Taken back twice is once; the commitment it brought is the digest's."""
    digest_id = added()
    talk = record_talk(house.desk, HeldTalk(uuid4(), digest_id, resolved=("Sing daily",))).talk
    for _ in range(2):
        assert withdraw_talk(house.desk, digest_id, talk.id).withdrawn_on == house.now.date()
    assert not talks_of(house.desk, digest_id)
    assert open_digest(house.desk, digest_id).kept.digest().commitments[-1].text == "Sing daily"
    for digest, which in ((digest_id, uuid4()), (uuid4(), talk.id)):
        with pytest.raises(TalkMissing):
            withdraw_talk(house.desk, digest, which)


def test_nobody_talks_over_another_reader_s_book(house, added):
    """Sheets, talks and records of a book are its reader’s alone, while it is in the library."""
    digest_id = added()
    other = house.another_reader().desk
    talk = record_talk(house.desk, HeldTalk(uuid4(), digest_id)).talk
    for door in (
        lambda: talk_sheet(other, digest_id, Length.READ_IT),
        lambda: talks_of(other, digest_id),
        lambda: record_talk(other, HeldTalk(uuid4(), digest_id)),
    ):
        with pytest.raises(DigestMissing):
            door()
    with pytest.raises(TalkMissing):
        withdraw_talk(other, digest_id, talk.id)
    remove_digest(house.desk, digest_id)
    with pytest.raises(DigestMissing):
        talk_sheet(house.desk, digest_id, Length.READ_IT)
