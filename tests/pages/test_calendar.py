"""The address of the calendar: what opens it, what does not, and that it is told to nobody."""

import logging
import re
from collections.abc import Callable
from dataclasses import replace

import pytest
from flask.testing import FlaskClient
from icalendar import Calendar

from service.pages import calendar as page
from service.use_cases.add_digest import Added
from service.use_cases.calendar import calendar_facts
from service.use_cases.ports import Desk
from service.use_cases.reminding import new_address, revoke_address
from tests.standing import application_on


def test_a_calendar_is_handed_out_at_its_address(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """The address the page shows is that of a calendar with the book's commitments and links."""
    shown = client.post("/calendar-addresses", data={"name": ""}).text
    (address,) = re.findall(r"http://localhost(/calendar/[\w-]{43}\.ics)", shown)
    answer = client.get(address)

    assert answer.status_code == 200
    assert answer.headers["Content-Type"] == "text/calendar; charset=utf-8"
    assert answer.headers["Cache-Control"] == "private, no-store"
    events = Calendar.from_ical(answer.data).events
    links = {event.get("URL") for event in events}
    held = calendar_facts(desk).commitments
    assert [each.title for each in held] == [added.kept.title] * 2
    for each in held:
        assert f"http://localhost/commitments/{each.id}/check-in" in links


@pytest.mark.usefixtures("added")
def test_a_calendar_leads_to_where_the_pages_are_reached(desk: Desk) -> None:
    """Where Catchword was told its own address, the links lead there, whatever host was asked."""
    made = new_address(desk, "")
    with application_on(replace(desk, address="https://books.example/")) as app:
        answer = app.test_client().get(f"/calendar/{made.secret}.ics")
    links = [event.get("URL") for event in Calendar.from_ical(answer.data).events]

    assert len(links) > 2
    assert all(link.startswith("https://books.example/") for link in links)


@pytest.mark.parametrize(
    "spoiled",
    [
        lambda secret: secret[:-1],
        lambda secret: secret + "A",
        lambda secret: secret.swapcase(),
        lambda _: "a" * 43,
        lambda _: "a" * 5000,
        lambda _: "%00",
        lambda _: "%F0%9F%98%80",
        lambda _: "..%2f..%2fetc",
    ],
    ids=["short", "long", "other case", "guessed", "endless", "null", "emoji", "a path"],
)
def test_what_was_guessed_is_an_address_like_any_that_leads_nowhere(
    client: FlaskClient, desk: Desk, spoiled: Callable[[str], str]
) -> None:
    """Nothing tells a guess from an address that never was one."""
    made = new_address(desk, "")
    nowhere = client.get("/nowhere")
    answer = client.get(f"/calendar/{spoiled(made.secret)}.ics")

    assert (answer.status_code, answer.text) == (nowhere.status_code, nowhere.text)
    assert set(answer.headers.keys()) == set(nowhere.headers.keys())


def test_a_revoked_address_is_no_address(client: FlaskClient, desk: Desk) -> None:
    """Revoked, it is answered as one that never was."""
    made = new_address(desk, "")
    address = f"/calendar/{made.secret}.ics"
    before = client.get(address).status_code
    revoke_address(desk, made.address.id)
    answer = client.get(address)

    assert before == 200
    assert (answer.status_code, answer.text) == (404, client.get("/nowhere").text)


def test_what_opens_it_is_never_told(
    client: FlaskClient,
    desk: Desk,
    caplog: pytest.LogCaptureFixture,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Opened, refused or failing, the secret is in no log and on no page."""

    def broken(*_: object) -> bytes:
        message = "The shelf fell over."
        raise RuntimeError(message)

    caplog.set_level(logging.DEBUG)
    made = new_address(desk, "")
    address = f"/calendar/{made.secret}.ics"
    opened = client.get(address)
    monkeypatch.setattr(page, "open_calendar", broken)
    failed = client.get(address)
    monkeypatch.undo()
    revoke_address(desk, made.address.id)
    refused = client.get(address)
    posted = client.post(address)

    assert [each.status_code for each in (opened, failed, refused, posted)] == [200, 500, 404, 405]
    for answer in (opened, failed, refused, posted):
        assert made.secret not in answer.text + str(answer.headers)
    assert "The shelf fell over." in caplog.text
    assert made.secret not in caplog.text
