"""Answers and check-ins as statements of xAPI, for learning record stores.

IEEE 9274.1.1 (xAPI 2.0), written so that stores of xAPI 1.0.3 take it too. Verbs are those of
the registry of ADL. Ids are those of the facts, so that sending an export twice changes nothing;
what was taken back is followed by the statement that voids it, with an id made from the fact's.
"""

from collections.abc import Iterator, Mapping
from typing import Any
from uuid import UUID, uuid5

from service.feeds.exports.rows import rows_of
from service.use_cases.exporting_columns import What
from service.use_cases.exporting_records import Table

VERBS = "http://adlnet.gov/expapi/verbs/"
"""Where the registry of ADL (from memory) keeps its verbs."""
EXTENSIONS = "https://catchword.invalid/xapi/"
"""What is said beyond the standard's own fields; a name nobody else can have (RFC 2606)."""
_QUESTION = "http://adlnet.gov/expapi/activities/question"
_OBJECTIVE = "http://adlnet.gov/expapi/activities/objective"
_VOIDING = UUID("0d2f3f0c-6f0b-5c6e-8a55-0f6f1c1c6a11")

SCALED = {"blank": 0.0, "hazy": 1 / 3, "clear": 2 / 3, "vivid": 1.0}
"""What a grade is on the scale from 0 to 1: our own convention, in even steps."""
_OUTCOMES = {"kept": "completed", "partly": "progressed", "missed": "failed"}
"""The verb of each outcome."""

_Row = Mapping[str, Any]


def statements(table: Table) -> Iterator[dict[str, Any]]:
    """Yield the statements of a table of answers or check-ins, in its order."""
    names = [column.name for column in table.described.columns]
    said = _answered if table.what is What.ANSWERS else _checked_in
    actor = {
        "objectType": "Agent",
        "account": {"homePage": table.home, "name": str(table.reader)},
    }
    for values in rows_of(table):
        row = dict(zip(names, values, strict=True))
        yield {"id": row["id"], "actor": actor, **said(row)}
        if row["taken_back_at"] is not None:
            yield {
                "id": str(uuid5(_VOIDING, str(row["id"]))),
                "actor": actor,
                "verb": _verb("voided"),
                "object": {"objectType": "StatementRef", "id": row["id"]},
                "timestamp": row["taken_back_at"],
            }


def _answered(row: _Row) -> dict[str, Any]:
    result: dict[str, Any] = {
        "success": row["came_back"],
        "score": {"scaled": SCALED[row["grade"]]},
        **_said(row["attempt"]),
    }
    if row["seconds"] is not None:
        result["duration"] = f"PT{row['seconds']}S"
    extensions = {
        f"{EXTENSIONS}{name}": row[name]
        for name in ("predicted", "suggested", "graded_first", "day", "grade", "kind")
        if row[name] is not None
    }
    return {
        "verb": _verb("answered"),
        "object": _activity(row["item_id"], _QUESTION, f"{row['title']}: {row['kind']}"),
        "result": result,
        "context": _context(row, extensions),
        "timestamp": row["answered_at"],
    }


def _checked_in(row: _Row) -> dict[str, Any]:
    result: dict[str, Any] = {"completion": row["outcome"] == "kept", **_said(row["note"])}
    if row["outcome"] != "partly":
        result["success"] = row["outcome"] == "kept"
    extensions = {
        f"{EXTENSIONS}{name}": row[name]
        for name in ("outcome", "day", "count", "witness")
        if row[name] not in {None, ""}
    }
    return {
        "verb": _verb(_OUTCOMES[row["outcome"]]),
        "object": _activity(row["commitment_id"], _OBJECTIVE, row["commitment"]),
        "result": result,
        "context": _context(row, extensions),
        "timestamp": row["reported_at"],
    }


def _said(words: str) -> dict[str, str]:
    """Return the reader’s words as a response: a statement holds nothing empty (IEEE 9274.1.1)."""
    return {"response": words} if words else {}


def _verb(name: str) -> dict[str, Any]:
    return {"id": f"{VERBS}{name}", "display": {"en": name}}


def _activity(identity: str, kind: str, name: str) -> dict[str, Any]:
    return {
        "objectType": "Activity",
        "id": f"urn:uuid:{identity}",
        "definition": {"type": kind, "name": {"und": name}},
    }


def _context(row: _Row, extensions: dict[str, Any]) -> dict[str, Any]:
    book = {
        "objectType": "Activity",
        "id": f"urn:uuid:{row['digest_id']}",
        "definition": {"name": {"und": row["title"]}},
    }
    return {
        "platform": "Catchword",
        "contextActivities": {"parent": [book]},
        "extensions": extensions,
    }
