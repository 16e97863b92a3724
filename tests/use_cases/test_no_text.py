"""Words beside a digest that are no text: refused wherever they come in, and said where."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta
from uuid import UUID, uuid4

import pytest

from cards.commitments import Act, Outcome
from cards.errors import Invalid
from cards.parts import PartKind
from cards.wording import check
from service.use_cases.check_in import Report, check_in
from service.use_cases.commitments import open_commitment
from service.use_cases.decide import Ruling, decide
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import mend_digest
from service.use_cases.reminding import new_address
from service.use_cases.rereading import ReadAgain, record_rereading
from service.use_cases.talking import HeldTalk, record_talk
from tests.use_cases.house import House

BELL = "It rang \x07."
"""A terminal would obey it, and no font has it (XML 1.0, section 2.2, allows it in no document)."""


@pytest.fixture
def digest_id(added: Callable[[], UUID]) -> UUID:
    """The digest, in the library."""
    return added()


def test_words_that_are_no_text_are_refused(house: House, digest_id: UUID) -> None:
    """In a note, a witness, a reason, a name, of a talk, of a re-reading; nothing is kept."""
    (first, _) = open_digest(house.desk, digest_id).kept.held(PartKind.COMMITMENT)
    tries: dict[str, Callable[[], object]] = {
        "note": lambda: check_in(house.desk, Report(uuid4(), first.id, Outcome.KEPT, note=BELL)),
        "witness": lambda: check_in(
            house.desk, Report(uuid4(), first.id, Outcome.KEPT, witness=BELL)
        ),
        "words": lambda: decide(house.desk, Ruling(uuid4(), first.id, Act.RELEASE, words=BELL)),
        "name": lambda: new_address(house.desk, BELL),
        "listener": lambda: record_talk(house.desk, HeldTalk(uuid4(), digest_id, listener=BELL)),
    }
    for where, attempt in tries.items():
        with pytest.raises(Invalid, match="no text") as refusal:
            attempt()
        assert refusal.value.where == where
    for attempt in (
        lambda: record_talk(house.desk, HeldTalk(uuid4(), digest_id, note=BELL)),
        lambda: record_rereading(house.desk, ReadAgain(uuid4(), digest_id, note=BELL)),
    ):
        with pytest.raises(Invalid, match="no text"):
            attempt()
    opened = open_commitment(house.desk, first.id)
    assert (opened.check_ins, opened.decisions) == ((), ())


def test_a_book_is_read_again_after_it_was_finished(house: House, digest_id: UUID) -> None:
    """On the day it was finished at the earliest."""
    digest = open_digest(house.desk, digest_id).kept.digest()
    finished = house.now.date() - timedelta(days=30)
    mend_digest(house.desk, digest_id, replace(digest, finished_on=finished))
    for day in (date(1, 1, 1), finished - timedelta(days=1)):
        with pytest.raises(Invalid, match="was finished on") as refusal:
            record_rereading(house.desk, ReadAgain(uuid4(), digest_id, day))
        assert refusal.value.where == "day"
    assert record_rereading(house.desk, ReadAgain(uuid4(), digest_id, finished)).rereading.day


@pytest.mark.parametrize(
    "words", ["I will walk to the mill 0 times a week.", "Zero times a day I will complain."]
)
def test_no_times_at_all_is_no_measure(words: str) -> None:
    """Nothing to be done no times could ever be counted."""
    assert check(words, date(2026, 1, 5)).measure is None
