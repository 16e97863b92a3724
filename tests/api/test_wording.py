"""The wording check through the API."""

import pytest

from tests.api.conftest import Door


def test_a_commitment_is_read(door: Door) -> None:
    """The answer has exactly the six fields, and the measure its seven."""
    answered = door.client.post(
        "/api/wording",
        json={
            "text": "On Monday and Thursday nights I will read aloud to Hanne for half an hour.",
            "on": "2026-03-04",
        },
    )
    assert answered.status_code == 200
    assert answered.json == {
        "concrete": True,
        "specific": True,
        "measurable": True,
        "measure": {
            "times": 2,
            "period": "week",
            "every": 1,
            "on": ["MO", "TH"],
            "periods": None,
            "deadline": None,
            "minutes": 30,
        },
        "cue": "On Monday and Thursday nights",
        "advice": [],
    }


def test_the_day_is_the_readers_unless_given(door: Door) -> None:
    """Without a day, "tomorrow" is after the reader's day; with one, after that."""
    body = {"text": "Tomorrow I will write to Hanne."}
    for sent, deadline in ((body, "2026-03-02"), ({**body, "on": "2026-06-30"}, "2026-07-01")):
        answered = door.client.post("/api/wording", json=sent)
        assert answered.json["measure"]["deadline"] == deadline


def test_another_language_is_not_judged(door: Door) -> None:
    """Of German nothing is judged, and the advice says so."""
    answered = door.client.post("/api/wording", json={"text": "Ich werde jeden Abend lesen."})
    assert answered.json["concrete"] is None
    assert answered.json["measure"] is None
    assert "German" in answered.json["advice"][0]


@pytest.mark.parametrize(
    ("body", "where"),
    [
        ({"text": ""}, "invalid-request"),
        ({"text": "  "}, "invalid"),
        ({"text": "x" * 20_001}, "invalid-request"),
        ({"text": "Read.", "on": "4 March"}, "invalid-request"),
        ({"on": "2026-03-04"}, "invalid-request"),
        ({"text": "Read.", "day": "2026-03-04"}, "invalid-request"),
    ],
)
def test_what_cannot_be_checked_is_refused(door: Door, body: dict[str, str], where: str) -> None:
    """No words, too many, a date that is none and unknown fields are refused in a sentence."""
    refused = door.client.post("/api/wording", json=body)
    assert refused.status_code == 422
    assert refused.json["type"] == f"/api/problems/{where}"
    assert refused.json["detail"].endswith(".")


def test_the_first_and_last_days_of_the_calendar_are_days(door: Door) -> None:
    """Where a date would leave the calendar there is no date, and never a failure."""
    for on in ("0001-01-01", "9999-12-31"):
        for text in ("By Easter call Hanne.", "Tomorrow call Hanne.", "Within a year call Hanne."):
            answered = door.client.post("/api/wording", json={"text": text, "on": on})
            assert answered.status_code == 200, (on, text)
