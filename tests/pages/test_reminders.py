"""The page of the reminders, and the one that ends the mails."""

import re
from dataclasses import replace

import pytest
from flask.testing import FlaskClient

from service.use_cases.ports import Desk
from service.use_cases.reminding import set_reminders, show_reminding
from service.use_cases.reminding_records import Reminders
from service.use_cases.tidy import hashed
from tests.pages.house import Clock
from tests.pages.sittings import form
from tests.standing import application_on

HOSTILE = '"><script>alert(1)</script>'


def test_the_mail_is_set(client: FlaskClient, desk: Desk) -> None:
    """What is chosen is kept and shown; without a mail server the page says that none goes out."""
    page = client.get("/reminders").text
    assert "knows no mail server yet" in page
    sent = {**form(page, "/reminders").hidden, "mail": "yes", "mail_at": "6"}
    kept = client.post("/reminders", data={**sent, "mail_to": "ada@example.org"})
    assert kept.status_code == 303
    assert 'value="ada@example.org"' in client.get(kept.location).text
    wanted = Reminders(mail=True, mail_to="ada@example.org", mail_at=6, revision=2)
    assert show_reminding(desk).reminders == wanted


@pytest.mark.parametrize(
    ("sent", "said"),
    [
        ({"mail": "yes"}, "Say to which address the mail is to go."),
        ({"mail": "yes", "mail_to": HOSTILE}, "This is no mail address."),
        ({"mail_to": "a@b.c", "mail_at": "24"}, "The hour is a whole number from 0 to 23."),
    ],
    ids=lambda value: value[:16] if isinstance(value, str) else "",
)
def test_what_cannot_be_set_is_refused(
    client: FlaskClient, desk: Desk, sent: dict[str, str], said: str
) -> None:
    """A wrong address or hour comes back with its reason, as it was typed, and nothing is kept."""
    refused = client.post("/reminders", data=sent)
    assert refused.status_code == 422
    assert said in refused.text
    assert "<script>alert" not in refused.text
    assert show_reminding(desk).reminders == Reminders()


def test_changed_elsewhere_meanwhile(client: FlaskClient, desk: Desk) -> None:
    """A form opened before another device changed the reminders changes nothing, and says so."""
    opened = form(client.get("/reminders").text, "/reminders").hidden
    kept = set_reminders(desk, mail=True, to="ada@example.org", at=7)
    refused = client.post("/reminders", data=opened)
    assert refused.status_code == 409
    assert "changed since you opened them" in refused.text
    assert show_reminding(desk).reminders == kept


def test_an_address_of_the_calendar_is_shown_once(client: FlaskClient, desk: Desk) -> None:
    """It is shown when it is made and never again; revoked, it is gone from the page."""
    made = client.post("/calendar-addresses", data={"name": HOSTILE})
    found = re.search(r"http://localhost/calendar/([\w-]{43})\.ics", made.text)
    assert found is not None
    page = client.get("/reminders").text
    assert found[1] not in page
    assert "<script>alert" not in page + made.text
    with desk.store.reading() as work:
        assert work.reminding.opens(desk.reader, hashed(found[1]))
    gone = client.post(form(page, "/revoked").action, follow_redirects=True).text
    assert "opens the calendar no longer" in gone
    assert "/revoked" not in gone
    refused = client.post("/calendar-addresses", data={"name": "n" * 101})
    assert refused.status_code == 422


def test_one_click_ends_the_mails(client: FlaskClient, desk: Desk, clock: Clock) -> None:
    """Opened, the address asks first; posted to by a mail program, it ends them (RFC 8058)."""
    set_reminders(desk, mail=True, to="ada@example.org", at=7)
    secret = "s" * 43
    with desk.store.writing() as work:
        work.reminding.begin_mail(desk.reader, clock.now().date(), clock.now(), hashed(secret))
        work.commit()
    asked = client.get(f"/mail/stop/{secret}")
    assert "No more of these mails?" in asked.text
    assert show_reminding(desk).reminders.mail
    for method in (client.get, client.post):
        assert method(f"/mail/stop/{'x' * 43}").status_code == 404
    body = {"List-Unsubscribe": "One-Click"}
    for _ in range(2):
        ended = client.post(f"/mail/stop/{secret}", data=body)
        assert ended.status_code == 200
        assert "None is sent from now on." in ended.text
    assert not show_reminding(desk).reminders.mail


def test_addresses_lead_to_where_the_reader_reaches_the_pages(desk: Desk) -> None:
    """Where the settings say how the pages are reached, the calendar's address begins so."""
    with application_on(replace(desk, address="https://books.example/")) as app:
        made = app.test_client().post("/calendar-addresses", data={})
    assert "https://books.example/calendar/" in made.text
