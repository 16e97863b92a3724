"""Two readings of one book, years apart, through the API."""

from uuid import UUID, uuid4

import pytest

from tests.api.conftest import YEARS_BEFORE, Door


@pytest.fixture
def earlier(door: Door, walks: UUID) -> UUID:
    """A reading of the same book, finished in another edition fifteen years before."""
    door.change(f"/api/digests/{walks}", finished_on="2026-02-20")
    added = door.add(YEARS_BEFORE, "2011.md")
    assert (added.status_code, added.json["status"]) == (201, "added")
    return UUID(added.json["digest"]["id"])


def test_each_reading_knows_the_other(door: Door, walks: UUID, earlier: UUID) -> None:
    """Either lists the other with its facts; a book read once has no other readings."""
    (other,) = door.client.get(f"/api/digests/{walks}/readings").json["readings"]
    assert other == {
        "id": str(earlier),
        "title": "Walks in the Fens",
        "author": "E. Fell",
        "edition": None,
        "isbn": None,
        "pages": 312,
        "finished_on": "2011-05-04",
        "care": "steady",
        "revision": 1,
    }
    (back,) = door.client.get(f"/api/digests/{earlier}/readings").json["readings"]
    assert back["id"] == str(walks)
    lone = door.add("# The Salt Road\n\n## Theme\n\nA carter turns back.\n", "salt.md")
    assert door.client.get(f"{lone.headers['Location']}/readings").json == {"readings": []}


def test_two_readings_stand_side_by_side(door: Door, walks: UUID, earlier: UUID) -> None:
    """Both whole digests are given, the earlier first, whichever is asked from."""
    both = [door.client.get(f"/api/digests/{each}").json for each in (earlier, walks)]
    for one, other in ((walks, earlier), (earlier, walks)):
        beside = door.client.get(f"/api/digests/{one}/readings/{other}")
        assert beside.json == {"earlier": both[0], "later": both[1]}


def test_a_reading_beside_one_that_is_gone_is_missing(
    door: Door, walks: UUID, earlier: UUID
) -> None:
    """A digest taken out, or never there, stands beside nothing, and is listed nowhere."""
    door.client.delete(f"/api/digests/{earlier}", headers={"If-Match": "*"})
    assert door.client.get(f"/api/digests/{walks}/readings").json == {"readings": []}
    for gone in (earlier, uuid4()):
        refused = door.client.get(f"/api/digests/{walks}/readings/{gone}")
        assert refused.status_code == 404
        assert str(gone) in refused.json["detail"]
