"""A library with at least one fact of every sort that is archived, lived through by use cases."""

from dataclasses import replace
from datetime import timedelta
from uuid import UUID, uuid4

from cards.answers import Grade
from cards.commitments import Act, Outcome
from cards.digest import Digest, Quotation
from cards.intake.heading_words import Part
from cards.parts import Care, PartKind
from cards.weighting import Weighting
from service.use_cases.add_digest import add_digest
from service.use_cases.answer import take_back
from service.use_cases.care import set_care
from service.use_cases.check_in import Report, check_in, withdraw_check_in
from service.use_cases.commitments import list_commitments
from service.use_cases.decide import Ruling, decide
from service.use_cases.drafts import begin_draft, look_over
from service.use_cases.headings import set_headings
from service.use_cases.learning_records import Fitting
from service.use_cases.leave_out import leave_out
from service.use_cases.links import GivenLink, link
from service.use_cases.mend_digest import mend_digest, remove_digest
from service.use_cases.minutes import set_minutes_today
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.prove import give_book
from service.use_cases.reminding import new_address, set_reminders
from service.use_cases.rereading import ReadAgain, record_rereading
from service.use_cases.sheets import compose_sheet, keep_sheet
from service.use_cases.talking import HeldTalk, record_talk
from service.use_cases.tallying import bring_on
from tests.use_cases.house import DIGEST, House

OTHER = Digest(
    title="Walden",
    author="Henry David Thoreau",
    theme="A man builds a hut by a pond, and finds how little he needs — “zwei Jahre”, 二年.",
    points=DIGEST.points,
    quotations=(Quotation("The mass of men lead lives of quiet desperation.", "p. 9"),),
)
BOOK = b"In those days. There were angels who came and took men by the hand. " * 3


def live(house: House) -> UUID:
    """Fill a library with facts of every sort over three weeks; return its first digest's id."""
    desk = house.desk
    set_preferences(desk, Preferences(unasked_a_day=30, time_zone="Europe/Vienna", minutes=20))
    set_headings(desk, {"Kern": Part.THEME, "Vorsätze": Part.COMMITMENTS, "z": Part.POINTS})
    first = add_digest(desk, "silas.docx", house.shelf.put(DIGEST)).kept.id
    house.now += timedelta(minutes=1)
    other = add_digest(desk, "2019/walden – Notizen.md", house.shelf.put(OTHER)).kept.id
    house.now += timedelta(minutes=1)
    gone = add_digest(desk, "emma.md", house.shelf.put(replace(OTHER, title="Emma"))).kept
    look_over(desk, "emma.docx", house.shelf.put(replace(OTHER, title="Emma again")), _lay)
    begin_draft(desk, {"title": "Wald\u0000en", "theme": ""})
    give_book(desk, first, "silas.txt", BOOK)
    _answer(house)
    kept = mend_digest(desk, first, replace(DIGEST, theme="A weaver hoards gold, and loses it."))
    point, *_ = kept.held(PartKind.POINT)
    link(desk, GivenLink(uuid4(), first, point.id, other, "Both live alone."))
    set_care(desk, other, Care.CLOSE)
    remove_digest(desk, gone.id)
    _promise(house)
    house.now += timedelta(days=8)
    record_talk(desk, HeldTalk(uuid4(), first, listener="Hanne", minutes=70))
    record_rereading(desk, ReadAgain(uuid4(), first, pages="pp. 3-9", minutes=20))
    keep_sheet(desk, compose_sheet(desk))
    _answer(house)
    set_minutes_today(desk, 12)
    leave_out(desk, next(iter(house.items())))
    set_reminders(desk, mail=True, to="reader@example.org", at=7)
    new_address(desk, "telephone")
    bring_on(desk)
    _learn(house)
    house.now += timedelta(days=12)
    return first


def _lay(digest: Digest) -> dict[str, str]:
    return {"title": digest.title, "theme": digest.theme or ""}


def _answer(house: House) -> None:
    grades = [Grade.CLEAR, Grade.BLANK, Grade.VIVID, Grade.HAZY]
    answers = [
        house.answer(item, grades[place % len(grades)]).answer.answer.id
        for place, item in enumerate(sorted(house.items()))
    ]
    take_back(house.desk, answers[1], uuid4())


def _promise(house: House) -> None:
    held, *_ = list_commitments(house.desk).commitments
    for outcome in (Outcome.KEPT, Outcome.MISSED):
        reported = check_in(house.desk, Report(uuid4(), held.id, outcome, note="“So far.”"))
    withdraw_check_in(house.desk, reported.id)
    decide(house.desk, Ruling(uuid4(), held.id, Act.PAUSE))


def _learn(house: House) -> None:
    """Have weights of the reader's own, a little off the published ones."""
    own = Weighting(tuple(each * 1.0625 for each in Weighting().general))
    with house.store.writing() as work:
        today = house.now.date()
        work.fittings.add(
            house.reader, Fitting(uuid4(), house.now, today, 400, (), own, moved_on=today)
        )
        work.fittings.add(
            house.reader, Fitting(uuid4(), house.now, today, 450, (), Weighting(), refolded=True)
        )
        work.readers.weigh(house.reader, own)
        work.commit()
