"""A shelf of books for the tests of the API, enough to choose among."""

from typing import Any
from uuid import UUID, uuid5

from werkzeug.test import TestResponse

from tests.api.conftest import WALKS, Door

OTHERS = ("Walden", "Cranford", "Middlemarch", "Emma", "Persuasion")
_IDS = UUID("0f8fad5b-d9cb-469f-a165-70867728950e")


def made_up(name: str) -> str:
    """Return an id that is always the same for a name."""
    return str(uuid5(_IDS, name))


def fill(door: Door, books: int = 6) -> None:
    """Put Walks in the Fens and further books on the shelf; those that are there stay as one."""
    door.add(WALKS)
    for title in OTHERS[: books - 1]:
        door.add(
            f"# {title}\n\n## Theme\n\nWhat {title} comes to is another matter.\n", f"{title}.md"
        )


def digest_of(door: Door, title: str) -> str:
    """Return the id of a digest by its title."""
    (found,) = [
        each for each in door.client.get("/api/digests").json["digests"] if each["title"] == title
    ]
    return str(found["id"])


def link_first_point(door: Door, to: str = "Walden", **more: object) -> TestResponse:
    """Link the first point of Walks in the Fens to another book."""
    fens = digest_of(door, "Walks in the Fens")
    points: list[dict[str, Any]] = door.client.get(f"/api/digests/{fens}/links").json["points"]
    body = {"id": made_up("link"), "point": points[0]["id"], "book": digest_of(door, to), **more}
    return door.client.post(f"/api/digests/{fens}/links", json=body)
