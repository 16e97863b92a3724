"""Reminders over the API: the mail, and the addresses of the calendar."""

from uuid import uuid4

import pytest

from tests.api.conftest import Door

WANTED = {"mail": True, "mail_to": "ada@example.org", "mail_at": 6}


def test_reminders_are_read_and_changed(door: Door) -> None:
    """They have a tag; with it they are changed, without it they are not."""
    first = door.client.get("/api/reminders")
    assert first.json == {"mail": False, "mail_to": None, "mail_at": 7, "can_mail": False}
    assert door.client.put("/api/reminders", json=WANTED).status_code == 428
    tag = {"If-Match": first.headers["ETag"]}
    kept = door.client.put("/api/reminders", json=WANTED, headers=tag)
    assert kept.json == WANTED | {"can_mail": False}
    assert door.client.put("/api/reminders", json=WANTED, headers=tag).status_code == 412
    again = {"If-None-Match": kept.headers["ETag"]}
    assert door.client.get("/api/reminders", headers=again).status_code == 304


@pytest.mark.parametrize(
    "wrong",
    [
        {"mail_to": None},
        {"mail_to": "ada"},
        {"mail_to": "a@b.c\r\nBcc: d@e.f"},
        {"mail_at": 24},
        {"mail_at": "7"},
        {"mail": 1},
        {"colour": "red"},
    ],
    ids=str,
)
def test_wrong_reminders_are_refused(door: Door, wrong: dict[str, object]) -> None:
    """What is no address, no hour, no yes or no, or not known is refused, and nothing is kept."""
    refused = door.client.put("/api/reminders", json={**WANTED, **wrong}, headers={"If-Match": "*"})
    assert refused.status_code == 422
    assert door.client.get("/api/reminders").json["mail"] is False


def test_an_address_is_made_listed_and_revoked(door: Door) -> None:
    """Its path is told once; the list names it without; revoked twice is revoked once."""
    made = door.client.post("/api/calendar-addresses", json={"name": "Desk"})
    assert made.status_code == 201
    address = dict(made.json)
    path = address.pop("path")
    assert len(path) == len("/calendar/.ics") + 43
    listed = door.client.get("/api/calendar-addresses")
    assert listed.json == {"addresses": [address]}
    assert path not in listed.text
    where = f"/api/calendar-addresses/{address['id']}"
    assert [door.client.delete(where).status_code for _ in range(2)] == [204, 404]
    assert door.client.get("/api/calendar-addresses").json == {"addresses": []}
    assert door.client.delete(f"/api/calendar-addresses/{uuid4()}").status_code == 404
    refused = door.client.post("/api/calendar-addresses", json={"name": "n" * 101})
    assert refused.status_code == 422
