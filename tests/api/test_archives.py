"""The whole library over HTTP: out as one file, back from one."""

from dataclasses import replace

import pytest

from service import gate
from service.main import create_app
from service.use_cases.ports import Desk
from tests.api.conftest import Door
from tests.api.shelf import fill
from tests.api.test_two_readers import STRANGER
from tests.feeds.archive.forging import with_fact


@pytest.fixture
def other(desk: Desk) -> Door:
    """The API as another reader, who has nothing yet, uses it."""
    return Door(create_app(replace(desk, reader=STRANGER)).test_client())


def test_everything_goes_out_and_comes_back(door: Door, other: Door) -> None:
    """A zip under a name; read back, everything is as it was, and so is the next zip."""
    fill(door, books=2)
    door.answer(door.item("theme"))
    out = door.client.get("/api/export/everything.zip")
    assert (out.status_code, out.mimetype) == (200, "application/zip")
    assert 'filename="catchword.zip"' in out.headers["Content-Disposition"]
    assert int(out.headers["Content-Length"]) == len(out.data)
    back = other.send("/api/restore", out.data, "catchword.zip")
    assert back.status_code == 201, back.text
    items = len(door.client.get("/api/items?limit=200").json["items"])
    assert back.json == {"digests": 2, "items": items, "answers": 1, "originals": 2}
    for address in ("/api/items", "/api/sitting", "/api/digests"):
        assert other.client.get(address).json == door.client.get(address).json
    assert other.client.get("/api/export/everything.zip").data == out.data


def test_nothing_is_mixed(door: Door) -> None:
    """A library with something in it keeps it, and says so."""
    fill(door)
    out = door.client.get("/api/export/everything.zip").data
    refused = door.send("/api/restore", out, "catchword.zip")
    assert (refused.status_code, refused.json["type"]) == (
        409,
        "/api/problems/library-not-empty",
    )


def test_what_was_changed_is_refused(door: Door, other: Door) -> None:
    """A problem that names the file and the line; nothing is kept."""
    fill(door)
    door.answer(door.item("theme"))
    out = door.client.get("/api/export/everything.zip").data
    for sent, where in (
        (with_fact(out, "answers", grade="grand"), "facts/answers.jsonl, line 1"),
        (b"Dear aunt", "file"),
    ):
        refused = other.send("/api/restore", sent, "catchword.zip")
        assert (refused.status_code, refused.json["type"]) == (
            422,
            "/api/problems/invalid-archive",
        )
        assert refused.json["where"] == where
    assert other.client.get("/api/items").json["items"] == []


def test_an_archive_may_be_larger_than_a_document(
    door: Door, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Half a gigabyte is let in at this address and at its page; what is over the bound is not."""
    largest = 512 * 1024**2 + gate.AROUND
    assert gate.LARGEST_AT["/api/restore"] == gate.LARGEST_AT["/archive"] == largest
    monkeypatch.setitem(gate.LARGEST_AT, "/api/restore", 1000)
    assert door.send("/api/restore", b"x" * 1000, "catchword.zip").status_code == 413
