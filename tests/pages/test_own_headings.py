"""The reader's own headings on the settings page: seen, added, taken out."""

import pytest
from flask.testing import FlaskClient

from cards.intake.heading_words import Part
from service.use_cases.headings import set_headings, show_headings
from service.use_cases.ports import Desk


def test_a_heading_is_added_and_taken_out(client: FlaskClient, desk: Desk) -> None:
    """A heading said on the settings page is kept, shown there, and can be taken out."""
    assert "None yet." in client.get("/reader").text
    sent = {"heading": " Lifelines ", "part": "commitments"}
    answered = client.post("/reader/headings", data=sent)
    assert answered.status_code == 303
    page = client.get(answered.location).text
    assert "Your headings are kept." in page
    assert '“<span dir="auto">Lifelines</span>” announces the commitments' in page
    assert show_headings(desk) == {"Lifelines": Part.COMMITMENTS}
    answered = client.post("/reader/headings/out", data={"heading": "Lifelines"})
    assert answered.status_code == 303
    assert show_headings(desk) == {}


def test_several_headings_stay(client: FlaskClient, desk: Desk) -> None:
    """Adding one keeps the others, and taking out one that is not there changes nothing."""
    set_headings(desk, {"Lifelines": Part.COMMITMENTS})
    client.post("/reader/headings", data={"heading": "Sparks", "part": "points"})
    client.post("/reader/headings/out", data={"heading": "Embers"})
    assert show_headings(desk) == {"Lifelines": Part.COMMITMENTS, "Sparks": Part.POINTS}


@pytest.mark.parametrize(
    ("heading", "part", "field", "sentence"),
    [
        ("", "points", "heading", "Write the heading as it stands in your digests."),
        ("Lifelines", "", "part", "Choose the part of a digest"),
        ("Lifelines", "items", "part", "Choose the part of a digest"),
        ("12345", "points", "heading", "has no letters"),
        ("x" * 81, "points", "heading", "too long for a heading"),
    ],
)
def test_what_can_be_no_heading(
    client: FlaskClient, desk: Desk, heading: str, part: str, field: str, sentence: str
) -> None:
    """What is wrong is said beside its field, what was typed stays, and nothing is kept."""
    answered = client.post("/reader/headings", data={"heading": heading, "part": part})
    assert answered.status_code == 422
    assert f'id="{field}-fault"' in answered.text
    assert sentence in answered.text
    assert f'name="heading" maxlength="80" dir="auto" autocomplete="off" value="{heading}"' in (
        answered.text
    )
    assert show_headings(desk) == {}


def test_a_heading_holds_no_markup(client: FlaskClient) -> None:
    """A hostile heading is shown as words."""
    sent = {"heading": "<script>alert(1)</script>", "part": "points"}
    page = client.get(client.post("/reader/headings", data=sent).location).text
    assert "<script>alert" not in page
    assert "&lt;script&gt;alert(1)" in page
