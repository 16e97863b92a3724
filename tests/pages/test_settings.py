"""The settings' page."""

import pytest
from flask.testing import FlaskClient

from service.use_cases.ports import Desk
from service.use_cases.preferences import Preferences, set_preferences, show_reader
from tests.pages.sittings import form

GIVEN = {
    "time_zone": "Europe/Lisbon",
    "turns_at": "5",
    "target": "92.5",
    "unasked_a_day": "0",
    "minutes": "7",
}


def test_the_settings_are_shown(client: FlaskClient) -> None:
    """The page shows what is set now, in the words and units a reader thinks in."""
    page = client.get("/reader").text
    assert 'value="UTC"' in page
    assert '<option value="4" selected>04:00</option>' in page
    assert 'name="target" inputmode="decimal" maxlength="5" autocomplete="off" value="90"' in page
    assert '<option value="Europe/Lisbon">' in page


def test_settings_are_kept(client: FlaskClient, desk: Desk) -> None:
    """What is set is kept, and the page says so."""
    hidden = form(client.get("/reader").text, "/reader").hidden
    answered = client.post("/reader", data={**hidden, **GIVEN})
    assert answered.status_code == 303
    reader = show_reader(desk)
    assert (reader.time_zone, reader.turns_at) == ("Europe/Lisbon", 5)
    assert (reader.target, reader.unasked_a_day, reader.minutes) == (0.925, 0, 7)
    page = client.get(answered.location).text
    assert "Kept." in page
    assert 'value="92.5"' in page


@pytest.mark.parametrize(
    ("name", "wrong", "sentence"),
    [
        ("time_zone", "", "Give a time zone"),
        ("time_zone", "Atlantis/<b>", "is not a time zone"),
        ("time_zone", "../../etc/passwd", "is not a time zone"),
        ("turns_at", "24", "The hour is a whole number from 0 to 23."),
        ("turns_at", "", "The hour is a whole number from 0 to 23."),
        ("target", "50", "from 70 to 97"),
        ("target", "97.5", "from 70 to 97"),
        ("target", "nan", "from 70 to 97"),
        ("target", "", "from 70 to 97"),
        ("unasked_a_day", "101", "The number a day is a whole number from 0 to 100."),
        ("unasked_a_day", "-1", "The number a day is a whole number from 0 to 100."),
        ("minutes", "0", "The number of minutes is a whole number from 1 to 120."),
        ("minutes", "121", "The number of minutes is a whole number from 1 to 120."),
    ],
)
def test_a_setting_that_cannot_be(
    client: FlaskClient, desk: Desk, name: str, wrong: str, sentence: str
) -> None:
    """A setting outside its range is refused beside its field, and nothing is changed."""
    before = show_reader(desk)
    refused = client.post("/reader", data={**GIVEN, "revision": "1", name: wrong})
    assert refused.status_code == 422
    assert sentence in refused.text
    assert f'<p class="fault" id="{name}-fault">' in refused.text
    assert "<b>" not in refused.text
    assert show_reader(desk) == before


def test_settings_changed_meanwhile_are_not_overwritten(client: FlaskClient, desk: Desk) -> None:
    """A page opened before another change says so, and keeps what was typed."""
    hidden = form(client.get("/reader").text, "/reader").hidden
    set_preferences(desk, Preferences(unasked_a_day=3))
    refused = client.post("/reader", data={**hidden, **GIVEN})
    assert refused.status_code == 422
    assert "The settings were changed since you opened them" in refused.text
    assert 'value="Europe/Lisbon"' in refused.text
    assert show_reader(desk).time_zone == "UTC"
