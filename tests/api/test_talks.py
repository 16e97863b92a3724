"""Talks about a book, through the API."""

from io import BytesIO
from typing import Any
from uuid import uuid4

import pytest
from pypdf import PdfReader

from tests.api.conftest import Door


@pytest.fixture
def digest(door: Door) -> str:
    """The address of a digest."""
    return f"/api/digests/{door.add().json['digest']['id']}"


def talk(**more: object) -> dict[str, Any]:
    """Return a talk as it is sent."""
    return {"id": str(uuid4()), "listener": "Hanne", "minutes": 75, **more}


def test_a_talk_is_laid_out(door: Door, digest: str) -> None:
    """Eighty minutes or fifteen, and no theme among the lines that are read."""
    sheet = door.client.get(f"{digest}/talk").json
    assert sheet["minutes"] == sum(each["minutes"] for each in sheet["sections"]) == 80
    read = [line["words"] for each in sheet["sections"] for line in each["lines"]]
    assert not any("wait for weather" in words for words in read)
    (theme,) = [each for each in sheet["sections"] if each["stage"] == "theme"]
    assert "wait for weather" in theme["answers"][0]["words"]
    short = door.client.get(f"{digest}/talk?minutes=15").json
    assert sum(each["minutes"] for each in short["sections"]) == 15


def test_a_sheet_is_taken_as_a_pdf(door: Door, digest: str) -> None:
    """Two pages under the book's name."""
    taken = door.client.get(f"{digest}/talk/pdf?minutes=15")
    assert taken.headers["Content-Type"] == "application/pdf"
    assert "talk-walks-in-the-fens.pdf" in taken.headers["Content-Disposition"]
    assert len(PdfReader(BytesIO(taken.data)).pages) == 2


def test_a_talk_is_kept_once_and_flows_back(door: Door, digest: str) -> None:
    """The same sent twice is one fact; its commitments and judgement are the digest's."""
    sent = talk(note="Long.", resolved=["Visit Piet every Sunday."], judgement="Agreed")
    replies = [door.client.post(f"{digest}/talks", json=sent) for _ in range(2)]
    assert [(reply.status_code, reply.json["added"]) for reply in replies] == [(201, 1), (201, 0)]
    (kept,) = door.client.get(f"{digest}/talks").json["talks"]
    assert kept == replies[0].json["talk"]
    assert (kept["day"], kept["listener"], kept["minutes"]) == ("2026-03-01", "Hanne", 75)
    said = door.client.get(digest).json
    assert said["commitments"][-1]["text"] == "Visit Piet every Sunday."
    assert said["judgement"] == "Agreed"


@pytest.mark.parametrize(
    ("more", "status"),
    [
        ({"id": "1"}, 422),
        ({"day": "2026-03-02"}, 422),
        ({"minutes": 0}, 422),
        ({"minutes": "75"}, 422),
        ({"note": "x" * 2_001}, 422),
        ({"listener": "a\x00"}, 422),
        ({"resolved": [""]}, 422),
        ({"resolved": ["Sing"] * 21}, 422),
        ({"judgement": "a\x01b"}, 422),
        ({"who": "Hanne"}, 422),
    ],
)
def test_what_cannot_be_kept_is_refused(
    door: Door, digest: str, more: dict[str, Any], status: int
) -> None:
    """A problem says what is wrong, and nothing is kept."""
    reply = door.client.post(f"{digest}/talks", json=talk(**more))
    assert (reply.status_code, reply.mimetype) == (status, "application/problem+json")
    assert door.client.get(f"{digest}/talks").json == {"talks": []}


def test_an_id_belongs_to_one_talk(door: Door, digest: str) -> None:
    """Another talk under it is a conflict."""
    sent = talk()
    door.client.post(f"{digest}/talks", json=sent)
    reply = door.client.post(f"{digest}/talks", json={**sent, "listener": "Piet"})
    assert reply.status_code == 409


def test_a_talk_is_taken_back(door: Door, digest: str) -> None:
    """It is listed no longer; one that never was is missing."""
    sent = talk()
    door.client.post(f"{digest}/talks", json=sent)
    assert door.client.delete(f"{digest}/talks/{sent['id']}").status_code == 204
    assert door.client.get(f"{digest}/talks").json == {"talks": []}
    missing = door.client.delete(f"{digest}/talks/{uuid4()}")
    assert missing.json["type"] == "/api/problems/talk-missing"


@pytest.mark.parametrize("minutes", ["16", "", "-80", "80.0"])
def test_another_length_is_refused(door: Door, digest: str, minutes: str) -> None:
    """There are two lengths."""
    assert door.client.get(f"{digest}/talk?minutes={minutes}").status_code == 422
