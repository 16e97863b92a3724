"""Versions of a digest, what an edit did to its parts, and the reader's word on it."""

from typing import Any
from uuid import UUID, uuid4

import pytest

from tests.api.conftest import Clock, Door

FERRY = {"text": "A ferryman teaches him to read the water.", "locator": "p. 80"}


@pytest.fixture
def where(walks: UUID) -> str:
    """The address of the one digest in the library."""
    return f"/api/digests/{walks}"


def said(door: Door, where: str) -> dict[str, Any]:
    """Return what a digest says, without what counts its edits."""
    return {key: value for key, value in door.client.get(where).json.items() if key != "revision"}


def replaced(door: Door, where: str, point: dict[str, Any] = FERRY) -> dict[str, Any]:
    """Put another claim in the place of the second point; return the one change that made."""
    points = door.client.get(where).json["points"]
    points[1] = point
    assert door.change(where, points=points).status_code == 200
    (change,) = door.client.get(f"{where}/changes").json["changes"]
    return dict(change)


def test_each_edit_is_a_version(door: Door, where: str, clock: Clock) -> None:
    """The list has one entry a revision, the newest first, with its cause and its instant."""
    clock.move(days=1)
    door.change(where, theme="He learns to wait.")
    listed = door.client.get(f"{where}/versions").json
    assert listed == {
        "versions": [
            {"revision": 2, "kept_at": "2026-03-02T21:40:00+00:00", "cause": "mended"},
            {"revision": 1, "kept_at": "2026-03-01T21:40:00+00:00", "cause": "added"},
        ],
        "next": None,
    }


def test_pages_of_versions_neither_repeat_nor_skip(door: Door, where: str) -> None:
    """Following `Link` two at a time gives each revision once, newest first."""
    for number in range(4):
        door.change(where, theme=f"He learns to wait, {number}.")
    seen: list[int] = []
    path: str | None = f"{where}/versions?limit=2"
    while path:
        page = door.client.get(path)
        seen += [each["revision"] for each in page.json["versions"]]
        link = page.headers.get("Link")
        path = link and link.removeprefix("<").removesuffix('>; rel="next"')
        assert (path is None) == (page.json["next"] is None)
    assert seen == [5, 4, 3, 2, 1]


@pytest.mark.parametrize("query", ["cursor=AAAAAAAAAA", "cursor=BAAAAAAAAAA", "limit=0", "x=1"])
def test_a_wrong_query_is_refused_by_name(door: Door, where: str, query: str) -> None:
    """A cursor that is none, a limit out of bounds and an unknown name are refused: 422."""
    refused = door.client.get(f"{where}/versions?{query}")
    assert refused.status_code == 422
    assert refused.json["errors"][0]["parameter"] == query.partition("=")[0]


def test_a_version_says_what_the_digest_said_then(door: Door, where: str) -> None:
    """An earlier version has the whole digest of then, and what became of its parts since."""
    before = door.client.get(where).json
    replaced(door, where)
    first, second = (door.client.get(f"{where}/versions/{number}") for number in (1, 2))
    assert first.json["digest"]["points"] == before["points"]
    assert first.json["digest"]["care"] == "steady"
    assert first.json["changes"] == []
    assert first.json["since"] == second.json["changes"]
    (change,) = second.json["changes"]
    assert change["became"] == "replaced"
    assert change["kind"] == "point"
    assert change["part"]["text"] == FERRY["text"]
    assert (change["before"]["text"], change["before"]["page"]) == (
        "He loses the path at night.",
        80,
    )
    assert second.json["since"] == []
    assert second.headers["ETag"] == door.tag(where)


def test_a_version_not_changed_meanwhile_is_not_sent_again(door: Door, where: str) -> None:
    """If-None-Match is answered 304 until the digest is edited, which changes what came since."""
    first = f"{where}/versions/1"
    known = {"If-None-Match": door.tag(first)}
    assert door.client.get(first, headers=known).status_code == 304
    replaced(door, where)
    assert door.client.get(first, headers=known).status_code == 200


@pytest.mark.parametrize("revision", [2, 2147483647])
def test_a_version_that_never_was_is_missing(door: Door, where: str, revision: int) -> None:
    """A revision the digest never had is refused with 404, looked at or brought back."""
    path = f"{where}/versions/{revision}"
    for refused in (
        door.client.get(path),
        door.client.post(f"{path}/restoration", headers={"If-Match": "*"}),
    ):
        assert refused.status_code == 404
        assert refused.json["type"] == "/api/problems/version-missing"
        assert str(revision) in refused.json["detail"]


@pytest.mark.parametrize("revision", ["0", "-1", "2147483648", "1.5", "one"])
def test_what_is_no_revision_is_no_address(door: Door, where: str, revision: str) -> None:
    """A revision below 1, above 31 bits or no number at all is nothing here: 404."""
    refused = door.client.get(f"{where}/versions/{revision}")
    assert refused.json["type"] == "/api/problems/nothing-here"


def test_bringing_a_version_back_brings_back_memories(door: Door, where: str) -> None:
    """What was taken out is held again with its answers, and the undoing is a version too."""
    before, item = said(door, where), door.item("place")
    door.answer(item)
    door.change(where, quotations=[])
    assert door.client.get(f"/api/items/{item}").json["retired"] is True
    back = door.client.post(
        f"{where}/versions/1/restoration", headers={"If-Match": door.tag(where)}
    )
    assert back.status_code == 200
    assert back.headers["ETag"] == door.tag(where)
    assert said(door, where) == before
    held = door.client.get(f"/api/items/{item}").json
    assert (held["retired"], held["standing"]) == (False, "settling")
    newest = door.client.get(f"{where}/versions").json["versions"][0]
    assert (newest["revision"], newest["cause"]) == (3, "restored")


def test_a_small_rewording_keeps_history_and_says_so(door: Door, where: str) -> None:
    """A part that is only reworded has the same id as before, and is told as reworded."""
    change = replaced(door, where, {"text": "He loses his path at night.", "locator": "p. 80"})
    assert change["became"] == "reworded"
    assert change["part"]["id"] == change["before"]["id"]


def test_nothing_is_said_of_a_digest_that_was_never_edited(door: Door, where: str) -> None:
    """A digest just added has no changes, under the tag of the digest."""
    changes = door.client.get(f"{where}/changes")
    assert changes.json == {"revision": 1, "changes": []}
    assert changes.headers["ETag"] == door.tag(where)


def test_a_part_that_started_afresh_can_continue_another(door: Door, where: str) -> None:
    """Overruled, it takes on the retired part's identity; its words stay as they are."""
    change = replaced(door, where)
    overruled = door.client.put(
        f"{where}/parts/{change['part']['id']}/identity",
        json={"continues": change["before"]["id"]},
        headers={"If-Match": door.tag(where)},
    )
    assert overruled.status_code == 200, overruled.json
    assert overruled.json["points"][1]["text"] == FERRY["text"]
    assert overruled.headers["ETag"] == door.tag(where)
    (since,) = door.client.get(f"{where}/versions/1").json["since"]
    assert (since["became"], since["part"]["id"]) == ("reworded", change["before"]["id"])
    newest = door.client.get(f"{where}/versions").json["versions"][0]
    assert newest["cause"] == "overruled"


def test_a_reworded_commitment_can_start_afresh(door: Door, where: str) -> None:
    """Overruled, its item has no history; the answers stay with what it said before."""
    commitments = door.client.get(where).json["commitments"]
    item = door.client.get("/api/items?kind=restate").json["items"][0]["id"]
    asked = next(
        each
        for each in commitments
        if each["text"]
        in door.client.post(f"/api/items/{item}/comparison", json={"attempt": {"words": ""}}).json[
            "answer"
        ]["words"]
    )
    door.answer(item)
    asked["text"] = f"{asked['text'].rstrip('.')}, always."
    door.change(where, commitments=commitments)
    assert door.client.get(f"/api/items/{item}").json["standing"] == "settling"
    afresh = door.client.put(
        f"{where}/parts/{asked['id']}/identity", json={"afresh": True}, headers={"If-Match": "*"}
    )
    assert afresh.status_code == 200
    assert door.client.get(f"/api/items/{item}").json["retired"] is True
    fresh = [each for each in afresh.json["commitments"] if each["text"] == asked["text"]]
    assert fresh[0]["id"] != asked["id"]


@pytest.mark.parametrize(
    "body",
    [
        {},
        {"afresh": False},
        {"afresh": 1},
        {"continues": "seven"},
        {"continues": str(uuid4()), "afresh": True},
        {"becomes": str(uuid4())},
    ],
)
def test_what_overrules_nothing_is_refused(door: Door, where: str, body: dict[str, object]) -> None:
    """Neither way, both ways, or something else is refused with 422, and nothing changes."""
    change, before = replaced(door, where), door.tag(where)
    refused = door.client.put(
        f"{where}/parts/{change['part']['id']}/identity", json=body, headers={"If-Match": "*"}
    )
    assert refused.status_code == 422
    assert refused.json["type"] == "/api/problems/invalid-request"
    assert door.tag(where) == before


def test_only_a_held_part_can_continue_a_retired_one(door: Door, where: str) -> None:
    """A part that is not there, and one that is held, cannot be what another continues: 404."""
    change = replaced(door, where)
    held, retired = change["part"]["id"], change["before"]["id"]
    for part, former in ((held, str(uuid4())), (held, held), (retired, held), (uuid4(), retired)):
        refused = door.client.put(
            f"{where}/parts/{part}/identity",
            json={"continues": former},
            headers={"If-Match": "*"},
        )
        assert refused.status_code == 404
        assert refused.json["type"] == "/api/problems/part-missing"
