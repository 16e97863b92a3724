"""A kept digest as the JSON a version holds, and back.

Each fact stands under its own name, so that versions outlive what a digest comes to hold
later: a name that is missing reads as absent, one that is not known is passed over.
"""

import json
from collections.abc import Iterator
from datetime import date
from typing import Any
from uuid import UUID

from cards.parts import Care, KeptDigest, Part, PartKind


def kept_to_json(kept: KeptDigest) -> str:
    """Return a digest with every part, held and retired, as JSON."""
    return json.dumps(
        {
            "id": str(kept.id),
            "title": kept.title,
            "author": kept.author,
            "edition": kept.edition,
            "isbn": kept.isbn,
            "pages": kept.pages,
            "finished_on": kept.finished_on.isoformat() if kept.finished_on else None,
            "judgement": kept.judgement,
            "removed": kept.removed,
            "revision": kept.revision,
            "care": kept.care.value,
            "parts": [_part_to_json(part) for part in kept.parts],
        },
        ensure_ascii=False,
    )


def kept_from_json(written: str) -> KeptDigest:
    """Return the digest `kept_to_json` wrote, equal to what it was given."""
    found = json.loads(written)
    finished_on = found.get("finished_on")
    return KeptDigest(
        id=UUID(found["id"]),
        title=found["title"],
        author=found.get("author"),
        edition=found.get("edition"),
        isbn=found.get("isbn"),
        pages=found.get("pages"),
        finished_on=date.fromisoformat(finished_on) if finished_on else None,
        judgement=found.get("judgement"),
        parts=tuple(_part_from_json(part) for part in found["parts"]),
        removed=found.get("removed", False),
        revision=found["revision"],
        care=Care(found.get("care", Care.STEADY)),
    )


def texts_in_json(written: str) -> Iterator[tuple[UUID, str]]:
    """Return the id and the words of each part of the digest `kept_to_json` wrote."""
    return ((UUID(part["id"]), part["text"]) for part in json.loads(written)["parts"])


def _part_to_json(part: Part) -> dict[str, Any]:
    return {
        "id": str(part.id),
        "kind": part.kind.value,
        "number": part.number,
        "text": part.text,
        "locator": part.locator,
        "after": part.after,
        "retired": part.retired,
    }


def _part_from_json(found: dict[str, Any]) -> Part:
    return Part(
        id=UUID(found["id"]),
        kind=PartKind(found["kind"]),
        number=found["number"],
        text=found["text"],
        locator=found.get("locator"),
        after=found.get("after"),
        retired=found.get("retired", False),
    )
