"""What each target takes and keeps, on its page; and taking one."""

import pytest
from flask.testing import FlaskClient

from cards.parts import Care
from service.use_cases.add_digest import Added, add_digest
from service.use_cases.care import set_care
from service.use_cases.ports import Desk
from service.use_cases.preferences import Preferences, set_preferences, show_reader
from tests.pages.house import DIGEST
from tests.pages.sittings import form


def test_the_plan_is_told_by_care_and_whole(client: FlaskClient, desk: Desk, added: Added) -> None:
    """A sentence says what is proposed; the library and the books of each care have a picture."""
    other = add_digest(desk, "w.md", DIGEST.replace("Silas Marner", "Walden").encode())
    set_care(desk, other.kept.id, Care.CLOSE)
    page = client.get("/retention/target").text
    assert "per minute" in page
    for name in ("target", "target-close", "target-steady"):
        assert f'<figure class="drawn" id="{name}"' in page
    assert 'id="target-resting"' not in page
    assert "10 minutes a day you have" in page
    assert 'href="/retention/target"' in client.get("/reader").text


def test_a_target_is_taken(client: FlaskClient, desk: Desk, added: Added) -> None:
    """What is typed is aimed for from then on, and the page says so; all else stays as set."""
    before = show_reader(desk)
    hidden = form(client.get("/retention/target").text, "/retention/target").hidden
    answered = client.post("/retention/target", data={**hidden, "target": "84.5"})
    assert answered.status_code == 303
    after = show_reader(desk)
    assert (after.target, after.minutes, after.revision) == (0.845, before.minutes, 2)
    assert "Kept. You aim for 84%" in client.get(answered.location).text


@pytest.mark.parametrize("wrong", ["", "98", "9" * 40 + "<b>"])
def test_a_target_that_cannot_be(client: FlaskClient, desk: Desk, wrong: str) -> None:
    """It is refused in one sentence, and nothing is kept."""
    answered = client.post("/retention/target", data={"revision": "1", "target": wrong})
    assert answered.status_code == 422
    assert "The retention aimed for is a number from 70 to 97." in answered.text
    assert "<b>" not in answered.text
    assert show_reader(desk).revision == 1


def test_settings_changed_meanwhile_are_not_overwritten(client: FlaskClient, desk: Desk) -> None:
    """A target taken on settings that were changed elsewhere is refused."""
    set_preferences(desk, Preferences(minutes=20))
    answered = client.post("/retention/target", data={"revision": "1", "target": "84"})
    assert answered.status_code == 422
    assert show_reader(desk).target == 0.9
