"""The OpenAPI document holds: schemathesis sends what it allows and what it forbids.

Source of the requests: schemathesis 4, from the document alone. Ids it cannot know are
put in the place of those it made up, so that the requests reach the use cases.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
import schemathesis
from flask import Flask
from schemathesis import BaseSchema, Case, GenerationMode, HookContext
from schemathesis.config import SchemathesisConfig
from schemathesis.core.parameters import ParameterLocation
from schemathesis.engine import from_schema
from schemathesis.engine.events import FatalError, NonFatalError, ScenarioFinished
from schemathesis.engine.recorder import ScenarioRecorder

from tests.api.conftest import YEARS_BEFORE, Door

EXAMPLES = 8
"""Fuzzed requests an operation, besides those that cover each rule of the document."""
CONFIG = {
    "seed": 1,
    "generation": {"deterministic": True, "max-examples": EXAMPLES, "database": "none"},
    # The library is put back before each request, so requests that build on one another are
    # left to the tests beside this one.
    "phases": {"stateful": {"enabled": False}},
    "checks": {
        "positive_data_acceptance": {"expected-statuses": ["2xx", "304", "404", "409"]},
        "missing_required_header": {"expected-statuses": [428]},
    },
    # What a valid shape can still be refused for is in no JSON Schema: a day to come, one too
    # far off, a time zone there is not, a point a quotation cannot stand after, a file that is no
    # digest, text that is no bibliography, an attempt in a way that is not asked, a link to the
    # book itself, a sheet without anything to print.
    "operations": [
        {
            "include-operation-id": [
                "put_digest",
                "put_reader",
                "put_reminders",
                "put_headings",
                "post_answer",
                "post_check_in",
                "post_decision",
                "list_held_commitments",
                "get_commitment",
                "post_mending",
                "post_wording",
                "post_annotations",
                "read_citations",
                "compare_attempt",
                "post_link",
                "post_price",
                "post_sheet",
                "post_sheet_answers",
                "post_talk",
                "post_rereading",
            ],
            "checks": {
                "positive_data_acceptance": {
                    "expected-statuses": ["2xx", "304", "404", "409", "422"]
                }
            },
        },
        {
            "include-operation-id": ["add_file", "read_file", "put_book"],
            "checks": {"positive_data_acceptance": {"expected-statuses": ["2xx", "415", "422"]}},
        },
        {
            # A sound archive is put in the place of what was made up, be that right or wrong.
            "include-operation-id": ["restore"],
            "checks": {
                "positive_data_acceptance": {"expected-statuses": ["2xx", "422"]},
                "negative_data_rejection": {"enabled": False},
            },
        },
    ],
}


# Text that schemathesis knows no media type for is sent as plain text would be.
schemathesis.serializer.alias("application/x-bibtex", "text/plain")
RESTORE = "POST /api/restore"
REPORT = "9c1d7b52-0f6e-4f7b-8d21-0c4a7be0a1f2"
LINK = "2f6d1d0e-7d1b-4f57-8a7e-0d6a0f4b8c11"
READ = "6a1f0c52-7d55-4a60-8e07-1f4f1c3f8b21"
TALK = "5b0e7a0c-6c0d-4f55-9b64-0f7a8f3c2d19"
MENDED = "The clerk takes a lamp to the river and counts the boats that do not come (p. 80)."
BOOK = "CHAPTER I\n\nThe drains were full. Mud keeps its own acounts, said the ferryman.\n"


@dataclass
class Library:
    """A digest whose ids fuzzed requests are given, as it was before each of them.

    One of its points took another's place; its book was read twice, and its text was given.
    `empty` is a library with nothing in it, `archive` all of that.
    """

    file: Path
    known: dict[str, str]
    saved: Path
    empty: Path
    archive: bytes
    touched: bool = False

    def restore(self, case: Case) -> None:
        """Put the library back as it was, if the request before this one may have changed it.

        Where everything is to be brought back it is emptied, for nothing is mixed.
        """
        if case.operation.label == RESTORE:
            copy(self.empty, self.file)
        elif self.touched:
            copy(self.saved, self.file)
        self.touched = case.method != "GET"

    def lend_ids(self, case: Case) -> None:
        """Put ids that are there in the place of those made up, where the case means well."""
        if meant_well(case, ParameterLocation.PATH):
            for name in self.known.keys() & case.path_parameters.keys():
                case.path_parameters[name] = self.known[name]
        if meant_well(case, ParameterLocation.BODY) and isinstance(case.body, dict):
            if case.operation.label == RESTORE and "file" in case.body:
                case.body["file"] = self.archive
            for name in self.known.keys() & case.body.keys():
                case.body[name] = self.known[name]
            for entry in (case.body.get("entries") or ()) if "entries" in case.body else ():
                if isinstance(entry, dict) and "item" in entry:
                    entry["item"] = self.known["item"]
        if meant_well(case, ParameterLocation.HEADER) and "If-Match" in case.headers:
            case.headers["If-Match"] = "*"


def meant_well(case: Case, where: ParameterLocation) -> bool:
    """Tell whether a part of a request was made to be valid."""
    part = case.meta.components.get(where) if case.meta else None
    return part is None or part.mode is GenerationMode.POSITIVE


@pytest.fixture
def library_of_one(door: Door, tmp_path: Path) -> Library:
    """A library with one book, read twice, a link between both, a sheet, and one answer."""
    file, saved, empty = (tmp_path / name for name in ("library.db", "saved.db", "empty.db"))
    copy(file, empty)
    archive = door.client.get("/api/export/everything.zip").data
    where = door.add().headers["Location"]
    given = door.client.get(where).json
    given["finished_on"] = "2026-02-20"
    given["points"][1] = {"text": MENDED, "locator": "p. 80"}
    door.client.put(where, json=given, headers={"If-Match": "*"})
    (change,) = door.client.get(f"{where}/changes").json["changes"]
    again = door.add(YEARS_BEFORE, "2011.md")
    assert again.status_code == 201
    door.send(f"{where}/book", BOOK.encode(), "walks.txt", "PUT")
    item = door.item("theme")
    digest = door.client.get(where).json
    points = door.client.get(f"{where}/links").json["points"]
    link = {"id": LINK, "point": points[0]["id"], "book": again.json["digest"]["id"]}
    made = door.client.post(f"{where}/links", json=link)
    commitment = digest["commitments"][0]["id"]
    about = {"id": REPORT, "commitment": commitment}
    reported = door.client.post("/api/check-ins", json={**about, "outcome": "kept"})
    paused = door.client.post("/api/decisions", json={**about, "act": "pause"})
    again_read = {"id": READ, "digest": digest["id"]}
    read = door.client.post("/api/re-readings", json=again_read)
    known = {
        "digest_id": digest["id"],
        "other_id": again.json["digest"]["id"],
        "revision": "1",
        "part_id": change["part"]["id"],
        "continues": change["before"]["id"],
        "item_id": item,
        "answer_id": door.answer(item).json["id"],
        "digest": digest["id"],
        "item": item,
        "commitment": commitment,
        "commitment_id": commitment,
        "check_in_id": reported.json["id"],
        "instead_of": reported.json["id"],
        "decision_id": paused.json["id"],
        "point": points[0]["id"],
        "book": again.json["digest"]["id"],
        "link_id": made.json["id"],
        "talk_id": door.client.post(f"{where}/talks", json={"id": TALK}).json["talk"]["id"],
        "rereading_id": read.json["id"],
        "year": "2026",
        "sheet_id": door.client.post("/api/sheets").json["id"],
    }
    copy(file, saved)
    return Library(file, known, saved, empty, archive)


def copy(source: Path, target: Path) -> None:
    """Copy a whole SQLite database over another, which may be open elsewhere."""
    with closing(sqlite3.connect(source)) as one, closing(sqlite3.connect(target)) as other:
        other.execute("PRAGMA synchronous = OFF")
        one.backup(other)


@pytest.fixture
def api(app: Flask, library_of_one: Library) -> Iterator[BaseSchema]:
    """The API as schemathesis sees it, with ids that are there."""
    config = SchemathesisConfig.from_dict(CONFIG)
    schema = schemathesis.openapi.from_wsgi("/api/openapi.json", app, config=config)

    def before_call(_: HookContext, case: Case, kwargs: dict[str, Any]) -> None:
        library_of_one.restore(case)
        library_of_one.lend_ids(case)

    schemathesis.hook(before_call)
    yield schema
    schemathesis.hooks.unregister(before_call)


def test_the_document_holds(api: BaseSchema) -> None:
    """Whatever is sent to any operation, the answer is one the document foresees."""
    done: set[str] = set()
    wrong: list[str] = []
    for event in from_schema(api).execute():
        if isinstance(event, ScenarioFinished):
            wrong += failures(event.recorder)
            done |= succeeded(event.recorder)
        elif isinstance(event, NonFatalError):
            wrong.append(f"{event.label}: {event.value!r}")
        elif isinstance(event, FatalError):
            raise event.exception
    assert not wrong, "\n\n".join(wrong)
    assert done == {each.ok().label for each in api.get_all_operations()}


def succeeded(recorder: ScenarioRecorder) -> set[str]:
    """Return the operations that did what they were asked at least once."""
    return {
        node.value.operation.label
        for case_id, node in recorder.cases.items()
        if (exchange := recorder.interactions.get(case_id))
        and exchange.response
        and exchange.response.status_code < 300
    }


def failures(recorder: ScenarioRecorder) -> Iterator[str]:
    """Yield each check that failed, with the command that repeats it."""
    for case_id, checks in recorder.checks.items():
        for check in checks:
            if check.failure_info is not None:
                answer = recorder.interactions[case_id].response
                said = answer.text[:500] if answer else ""
                info = check.failure_info
                yield f"{info.failure.title}: {info.failure.message}\n{info.code_sample}\n{said}"
