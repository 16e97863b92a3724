"""Steps of `reminded.feature`."""

from dataclasses import dataclass, field, replace
from datetime import timedelta

import pytest
from pytest_bdd import given, parsers, scenarios, then, when

from cards.commitments import Act
from features.keeping_steps import DAY, told
from service.use_cases.letter_records import Letter
from service.use_cases.ports import MailNotSent
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.reminding import set_reminders, stop_mail
from service.use_cases.tidy import Mailed, tidy

scenarios("reminded.feature")

PAGES = "https://books.example/"


@dataclass
class Post:
    """A mail server that keeps what it is given; satisfies `ports.Post`."""

    letters: list[Letter] = field(default_factory=list)
    shut: bool = False

    def send(self, letter: Letter) -> None:
        """Keep a mail, or refuse it."""
        if self.shut:
            raise MailNotSent("the server is shut.")
        self.letters.append(letter)


@pytest.fixture
def post():
    """A mail server that is open."""
    return Post()


def tidies(keeping, post):
    return tidy(replace(keeping.desk, post=post, address=PAGES)).mail


@given(parsers.parse("she wants a mail at {address} from {hour:d} o'clock on"))
def wants_mail(keeping, address, hour):
    set_reminders(keeping.desk, mail=True, to=address, at=hour)


@when(told("the machine tidies at {hour:d}:{minute:d} on {day:Day}"))
def tidies_at(keeping, post, hour, minute, day):
    keeping.mira.on(day, hour, minute)
    tidies(keeping, post)


@when(told("the machine tidies every half hour from {first:Day} to {last:Day}"))
def tidies_on(keeping, post, first, last):
    keeping.mira.on(first, 4)
    start = keeping.mira.now
    keeping.mira.on(last + DAY, 4)
    for number in range((keeping.mira.now - start) // timedelta(minutes=30)):
        keeping.mira.now = start + number * timedelta(minutes=30)
        tidies(keeping, post)


@when(told('she moves to "{zone}" on {day:Day}'))
def moves_to(keeping, zone, day):
    keeping.mira.on(day)
    set_preferences(keeping.desk, Preferences(time_zone=zone))
    keeping.mira.zone = zone


@when("she touches what ends the mails")
def touches(keeping, post):
    secret = post.letters[-1].stop.removeprefix(f"{PAGES}mail/stop/")
    assert stop_mail(keeping.desk, secret)


@when("somebody guesses at what ends the mails")
def guesses(keeping):
    assert not stop_mail(keeping.desk, "A" * 43)


@when(told("the mail server is shut, and the machine tidies at {hour:d}:{minute:d} on {day:Day}"))
def is_shut(keeping, post, hour, minute, day):
    post.shut = True
    keeping.mira.on(day, hour, minute)
    with pytest.raises(MailNotSent, match="tried again"):
        tidies(keeping, post)
    post.shut = False


@when(told('on {day:Day} she lets the promise go, "{reason}"'))
def lets_go(keeping, day, reason):
    keeping.mira.on(day)
    keeping.decides(Act.RELEASE, words=reason)


@then("the mails came at")
def came_at(post, datatable):
    came = [each.written_at for each in post.letters]
    assert [f"{each.day} {each:%B %H:%M}" for each in came] == [row for (row,) in datatable]


@then("the mail says how many minutes today's sitting takes")
def says_minutes(keeping, post):
    (letter,) = post.letters
    sitting = keeping.mira.sitting()
    assert letter.items == len(sitting.items) > 0
    assert letter.minutes == max(1, round(sitting.seconds / 60))


@then(parsers.parse('it names "{words}" with "{said}"'))
def names(post, words, said):
    (named,) = post.letters[0].commitments
    assert (named.text, named.said) == (words, said)


@then("a touch in it leads to where the promise is checked in on")
def leads_to(keeping, post):
    (named,) = post.letters[0].commitments
    assert named.address == f"{PAGES}commitments/{keeping.ids[0]}/check-in"


@then("no mail came")
def no_mail(keeping, post):
    assert post.letters == []
    assert tidies(keeping, post) is Mailed.NOTHING_TO_SAY
