"""What came of one commitment, for the examples of the operations on it."""

from typing import Any

from service.api.examples import COMMITMENT_ID, DIGEST_ID, KEPT

_MEASURE: dict[str, Any] = {
    "times": 1,
    "period": "week",
    "every": 1,
    "on": [],
    "periods": None,
    "deadline": None,
    "minutes": None,
}
REPORT: dict[str, Any] = {
    "id": "5f0c8d3e-98d3-4f0a-8a3c-0c4a7be0a1f2",
    "commitment": COMMITMENT_ID,
    "digest": DIGEST_ID,
    "outcome": "partly",
    "day": "2026-03-01",
    "note": "The neighbour was away; his sister came.",
    "count": None,
    "witness": "Dolly",
    "instead_of": None,
}
CHECK_IN: dict[str, Any] = {
    "id": REPORT["id"],
    "commitment": COMMITMENT_ID,
    "outcome": "partly",
    "day": "2026-03-01",
    "reported_at": "2026-03-01T20:15:00+00:00",
    "reported_on": "2026-03-01",
    "note": REPORT["note"],
    "count": None,
    "witness": "Dolly",
    "taken_back_on": None,
}
RULING: dict[str, Any] = {
    "id": "8a3c0c4a-7be0-4d1f-9e2a-5f0c8d3e98d3",
    "commitment": COMMITMENT_ID,
    "act": "pause",
    "day": "2026-03-01",
    "measure": None,
    "until": "2026-03-14",
    "outcome": None,
    "words": "Away at Lantern Yard.",
}
DECISION: dict[str, Any] = {
    **RULING,
    "decided_at": "2026-03-01T20:20:00+00:00",
    "decided_on": "2026-03-01",
    "taken_back_on": None,
}
HELD: dict[str, Any] = {
    "id": COMMITMENT_ID,
    "digest": DIGEST_ID,
    "title": "Silas Marner",
    "author": "George Eliot",
    "number": 1,
    "text": KEPT["commitments"][0]["text"],
    "made_on": "2026-02-20",
    "caution": None,
    "measure": _MEASURE,
    "check_ins": {"kept": 2, "partly": 1, "missed": 0},
    "last": CHECK_IN,
    "stand": {
        "pace": "on course",
        "rule": "not closed",
        "said": "On course: its first week is not over yet.",
        "progress": "0 of 1 this week",
        "ends_on": None,
        "due": 0,
        "done": 0,
        "settled": False,
        "offer": None,
    },
}
COMMITMENTS: dict[str, Any] = {"day": "2026-03-01", "commitments": [HELD], "next": None}
OPEN: dict[str, Any] = {
    "day": "2026-03-01",
    **HELD,
    "former": ["Ask a neighbour in for tea more often."],
    "pauses": [{"first": "2026-03-01", "last": "2026-03-14"}],
    "windows": [
        {
            "first": "2026-02-20",
            "last": "2026-02-26",
            "came_to": "kept",
            "paused": False,
            "closed": True,
            "periods": [{"first": "2026-02-20", "last": "2026-02-26", "due": 1, "done": 1}],
        }
    ],
    "reports": [CHECK_IN],
    "decisions": [DECISION],
}
