"""One book, its digest and its items, for the examples of every operation."""

from typing import Any

DIGEST_ID = "0b7f7a5e-3c5f-4f0e-9a55-1a4b4f7f5d10"
COMMITMENT_ID = "c2a9a3a4-7a62-4d0c-9a43-5a3f5a1b6c77"
ITEM_ID = "7d5e6f80-5c1b-5a27-8f1e-2b8f4f0d9c31"
ANSWER_ID = "9c1f6a52-0f6e-4f7b-8d21-3a1f0f9f7a64"

_BOOK: dict[str, Any] = {
    "title": "Silas Marner",
    "author": "George Eliot",
    "edition": "Everyman's Library, 1906",
    "isbn": None,
    "pages": 176,
    "finished_on": "2026-02-20",
}
_HELD: dict[str, Any] = {
    "theme": "A weaver who has lost his faith and his gold finds both again in a child.",
    "judgement": None,
    "points": [
        {"text": "Silas is cast out of Lantern Yard.", "locator": "ch. 1", "page": None},
        {"text": "Eppie comes to his hearth.", "locator": "p. 94", "page": 94},
    ],
    "quotations": [
        {
            "text": "The gold had turned into the child.",
            "locator": "p. 104",
            "page": 104,
            "after": 2,
        }
    ],
}
_COMMITMENT = "When I come home, ask a neighbour in for tea once a week."

WARNINGS: list[dict[str, Any]] = [
    {"part": "isbn", "message": "No ISBN was found; it can be added later."}
]
UNDERSTOOD = {
    **_BOOK,
    **_HELD,
    "commitments": [{"text": _COMMITMENT}],
    "warnings": WARNINGS,
    "sources": [
        {"part": "title", "words": "Silas Marner"},
        {"part": "points 2", "words": "2. Eppie comes to his hearth (p. 94)."},
    ],
    "left": ["Lent by Dolly, to be given back at Easter."],
    "advice": [
        {
            "part": "theme",
            "message": "The theme has 15 words, about a line: say what the book comes to, and by "
            "what stages.",
        }
    ],
}
KEPT = {
    **_BOOK,
    **_HELD,
    "id": DIGEST_ID,
    "revision": 3,
    "care": "steady",
    "commitments": [{"id": COMMITMENT_ID, "text": _COMMITMENT, "caution": None}],
    "items": {"theme": 1, "place": 1, "restate": 1},
}
MENDED = {**_BOOK, **_HELD, "commitments": [{"text": _COMMITMENT}]}
ADDED = {
    "digest": {**KEPT, "revision": 1},
    "file": "silas-marner.docx",
    "title": "Silas Marner",
    "status": "added",
    "items": {"theme": 1, "place": 1, "restate": 1},
    "warnings": WARNINGS,
}
SHELF = {
    "digests": [
        {
            **_BOOK,
            "id": DIGEST_ID,
            "revision": 3,
            "care": "steady",
            "added_at": "2026-02-21T08:30:00+00:00",
            "points": 2,
            "commitments": 1,
            "quotations": 1,
            "standings": {"unasked": 0, "settling": 2, "held": 0, "faded": 1},
        }
    ],
    "next": None,
}
ITEM = {
    "id": ITEM_ID,
    "kind": "theme",
    "digest": DIGEST_ID,
    "title": "Silas Marner",
    "author": "George Eliot",
    "cue": {
        "heading": "Recall the theme",
        "words": "Silas Marner, by George Eliot",
        "question": "What does the book come to, and by what stages?",
        "asked": ["words"],
        "landmarks": [],
        "pages": None,
        "pieces": [],
        "choices": [],
        "caution": None,
    },
    "standing": "settling",
    "due_on": "2026-03-01",
    "recall": 0.91,
    "retired": False,
}
ITEMS = {"items": [ITEM], "next": None}
SITTING = {
    "day": "2026-03-01",
    "items": [ITEM],
    "minutes": 10,
    "seconds": 60,
    "spent": 0,
    "next_on": "2026-03-04",
    "left_out": [],
    "away": None,
}
ATTEMPT = {"words": "A lonely weaver loses his gold and gets a child in its place."}
SAYS = {
    "words": _HELD["theme"],
    "gap": None,
    "page": None,
    "chapter": None,
    "order": [],
    "blanks": [],
    "book": None,
    "locator": None,
    "caution": None,
}
COMPARED = {
    "mark": {
        "grade": "clear",
        "reason": "Its one idea came back.",
        "answer_spans": [{"start": 2, "end": 8, "hit": True}],
        "attempt_spans": [{"start": 9, "end": 15, "hit": True}],
        "ideas": [{"start": 0, "end": 40, "weight": 2, "found": True, "turned": False}],
    },
    "answer": SAYS,
    "graded_first": False,
    "due": {
        "blank": "2026-03-02",
        "hazy": "2026-03-04",
        "clear": "2026-03-11",
        "vivid": "2026-03-30",
    },
}
GIVEN = {
    "id": ANSWER_ID,
    "item": ITEM_ID,
    "grade": "clear",
    "answered_at": "2026-03-01T21:40:00+01:00",
    "attempt": ATTEMPT,
    "seconds": 42,
    "graded_first": False,
}
FACT = {
    "id": ANSWER_ID,
    "item": ITEM_ID,
    "grade": "clear",
    "answered_at": "2026-03-01T20:40:00+00:00",
    "day": "2026-03-01",
    "suggested": "clear",
    "predicted": 0.91,
    "attempt": ATTEMPT["words"],
    "seconds": 42,
    "graded_first": False,
    "ticked": None,
    "taken_back_at": None,
}
HISTORY = {"answers": [FACT], "next": None}
RECORDED = {**FACT, "due_on": "2026-03-11", "standing": "settling", "stability": 9.8}
SHOWN = {**RECORDED, "says": SAYS}
TAKEN_BACK = {
    **FACT,
    "taken_back_at": "2026-03-01T20:41:00+00:00",
    "due_on": None,
    "standing": "unasked",
    "stability": None,
}
