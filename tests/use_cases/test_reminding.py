"""Reminders: the mail of a day goes out once; the calendar opens by addresses of its own."""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime, timedelta
from uuid import UUID, uuid4

import pytest

from cards.errors import FeedAddressMissing, Invalid, InvalidPreference, ReaderChanged
from service.use_cases.letter_records import Letter
from service.use_cases.letters import due_at
from service.use_cases.ports import Desk, MailNotSent
from service.use_cases.preferences import Preferences, set_preferences, show_reader
from service.use_cases.reminding import (
    MOST_ADDRESSES,
    knows_stop,
    new_address,
    revoke_address,
    set_reminders,
    show_reminding,
    stop_mail,
)
from service.use_cases.reminding_records import Reminders
from service.use_cases.tidy import Mailed, hashed, tidy
from tests.use_cases.house import House

PAGES = "https://books.example/"


@dataclass
class Kept:
    """A post that keeps what it is given; satisfies `ports.Post`."""

    letters: list[Letter] = field(default_factory=list)
    shut: bool = False

    def send(self, letter: Letter) -> None:
        """Keep a mail, or refuse it."""
        if self.shut:
            raise MailNotSent("the server is shut.")
        self.letters.append(letter)


@pytest.fixture
def post() -> Kept:
    """A post that is open."""
    return Kept()


@pytest.fixture
def morning(house: House, post: Kept, added: Callable[[], UUID]) -> Callable[[], Desk]:
    """A desk with a book in it, a post, and a mail wanted from seven o'clock on; in UTC."""
    house.now = datetime(2026, 3, 2, 6, 59, tzinfo=UTC)
    added()
    set_reminders(house.desk, mail=True, to="ada@example.org", at=7)
    return lambda: replace(house.desk, post=post, address=PAGES)


def test_a_mail_goes_out_once_a_day(house: House, post: Kept, morning: Callable[[], Desk]) -> None:
    """Not before its hour, once after it, again the next day; what it says is today's."""
    assert tidy(morning()).mail is Mailed.NOT_YET
    house.now += timedelta(minutes=1)
    assert tidy(morning()).mail is Mailed.SENT
    house.now += timedelta(hours=5)
    assert tidy(morning()).mail is Mailed.BEFORE
    house.now += timedelta(days=1)
    assert tidy(morning()).mail is Mailed.SENT
    first, second = post.letters
    assert first.to == "ada@example.org"
    assert first.items > 0
    assert first.address == PAGES
    assert (second.day - first.day).days == 1
    assert first.number != second.number
    assert {each.text for each in first.commitments}
    assert all(
        each.address is not None and each.address.startswith(f"{PAGES}commitments/")
        for each in first.commitments
    )


def test_nothing_is_sent_where_none_is_wanted(house: House, post: Kept) -> None:
    """Unset, without a server, or with nothing to say, no mail goes out, and the reason is told."""
    desk = replace(house.desk, post=post)
    assert tidy(desk).mail is Mailed.OFF
    set_reminders(desk, mail=True, to="ada@example.org", at=5)
    assert tidy(house.desk).mail is Mailed.NO_SERVER
    assert tidy(desk).mail is Mailed.NOTHING_TO_SAY
    assert post.letters == []


def test_a_mail_that_was_refused_is_tried_again(
    house: House, post: Kept, morning: Callable[[], Desk]
) -> None:
    """A server that refuses leaves the day open; the next time the mail goes out."""
    house.now += timedelta(hours=1)
    post.shut = True
    with pytest.raises(MailNotSent, match="tried again"):
        tidy(morning())
    post.shut = False
    assert tidy(morning()).mail is Mailed.SENT
    assert len(post.letters) == 1


def test_of_two_at_once_one_sends(house: House, post: Kept, morning: Callable[[], Desk]) -> None:
    """A mail being sent by another is not sent a second time, though nothing says yet it was."""
    house.now += timedelta(hours=1)
    with house.store.writing() as work:
        assert work.reminding.begin_mail(
            house.reader, house.now.date(), house.now, hashed("another's")
        )
        work.commit()
    assert tidy(morning()).mail is Mailed.BEFORE
    assert post.letters == []


def test_one_click_ends_the_mails(house: House, post: Kept, morning: Callable[[], Desk]) -> None:
    """By the address in any mail they end for good; no other address or reader ends them."""
    house.now += timedelta(hours=1)
    tidy(morning())
    house.now += timedelta(days=1)
    tidy(morning())
    secret = str(post.letters[0].stop).removeprefix(f"{PAGES}mail/stop/")
    assert len(secret) == 43
    assert not stop_mail(house.desk, "x" * 43)
    assert not stop_mail(replace(house.another_reader().desk, post=post), secret)
    assert knows_stop(house.desk, secret)
    for _ in range(2):
        assert stop_mail(house.desk, secret)
    assert not show_reminding(house.desk).reminders.mail
    house.now += timedelta(days=1)
    assert tidy(morning()).mail is Mailed.OFF


@pytest.mark.parametrize(
    ("hour", "day", "instant"),
    [
        (7, "2026-03-28", "2026-03-28T07:00:00+00:00"),
        (7, "2026-03-29", "2026-03-29T06:00:00+00:00"),
        (2, "2026-03-27", "2026-03-28T02:00:00+00:00"),
        (7, "2026-10-25", "2026-10-25T07:00:00+00:00"),
    ],
)
def test_the_hour_is_that_of_the_readers_clock(
    house: House, hour: int, day: str, instant: str
) -> None:
    """Across daylight saving it stays the hour by the clock; one before the day turns ends the day.

    Source: the IANA time zone database for Europe/London, 2026.
    """
    set_preferences(house.desk, Preferences(time_zone="Europe/London", turns_at=4))
    reader = show_reader(house.desk)
    found = due_at(reader, datetime.fromisoformat(day).date(), hour)
    assert found == datetime.fromisoformat(instant)


@pytest.mark.parametrize(
    ("wanted", "where"),
    [
        ({"mail": True, "to": None, "at": 7}, "mail_to"),
        ({"mail": True, "to": "ada", "at": 7}, "mail_to"),
        ({"mail": True, "to": "a@b.c\r\nBcc: d@e.f", "at": 7}, "mail_to"),
        ({"mail": False, "to": "ada @example.org", "at": 7}, "mail_to"),
        ({"mail": True, "to": "ada@example.org", "at": 24}, "mail_at"),
    ],
)
def test_what_is_no_address_is_refused(house: House, wanted: dict[str, object], where: str) -> None:
    """Neither a wrong address nor one with lines of its own is kept, nor an hour that is none."""
    with pytest.raises(InvalidPreference) as refusal:
        set_reminders(house.desk, **wanted)  # type: ignore[arg-type]
    assert refusal.value.where == where
    assert show_reminding(house.desk).reminders == Reminders()


def test_two_who_change_the_reminders(house: House) -> None:
    """Of two who opened them at once the second is told; the same again changes nothing."""
    kept = set_reminders(house.desk, mail=True, to="ada@example.org", at=7, revision=1)
    assert set_reminders(house.desk, mail=True, to="ada@example.org", at=7) == kept
    with pytest.raises(ReaderChanged):
        set_reminders(house.desk, mail=False, to=None, at=7, revision=1)


def test_an_address_opens_the_calendar_until_it_is_revoked(house: House) -> None:
    """What opens it is told once and kept as a hash alone; another reader's opens nothing here."""
    made = new_address(house.desk, "Desk")
    other = house.another_reader()
    assert show_reminding(house.desk).addresses == (made.address,)
    assert show_reminding(other.desk).addresses == ()
    with house.store.reading() as work:
        assert work.reminding.opens(house.reader, hashed(made.secret))
        assert not work.reminding.opens(other.reader, hashed(made.secret))
    with pytest.raises(FeedAddressMissing):
        revoke_address(other.desk, made.address.id)
    revoke_address(house.desk, made.address.id)
    with pytest.raises(FeedAddressMissing):
        revoke_address(house.desk, made.address.id)
    with house.store.reading() as work:
        assert not work.reminding.opens(house.reader, hashed(made.secret))
    with pytest.raises(FeedAddressMissing):
        revoke_address(house.desk, uuid4())


def test_addresses_are_bounded(house: House) -> None:
    """There are so many at one time, with names of so many letters; a revoked one makes room."""
    with pytest.raises(Invalid):
        new_address(house.desk, "n" * 101)
    made = [new_address(house.desk, str(number)) for number in range(MOST_ADDRESSES)]
    assert len({each.secret for each in made}) == MOST_ADDRESSES
    with pytest.raises(InvalidPreference):
        new_address(house.desk, "one more")
    revoke_address(house.desk, made[0].address.id)
    new_address(house.desk, "one more")
