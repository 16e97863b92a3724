"""Statements of xAPI, held against the models of ralph-malph."""

import json
from uuid import UUID

import pytest
from ralph.models.xapi.base.statements import BaseXapiStatement

from service.use_cases.exporting_columns import What
from service.use_cases.exporting_records import ExportForm, Table
from tests.feeds.exports.tables import HOME, ITEM, NOW, READER, check_in, packed_answers, table_of
from tests.feeds.exports.tables import written as file_of

ADL = "http://adlnet.gov/expapi/verbs/"
"""The registry of verbs of ADL, which wrote xAPI (from memory)."""


def stated(table: Table) -> list[dict[str, object]]:
    """Return the statements of a table, each of which the models accept."""
    found = json.loads(file_of(table, ExportForm.XAPI))
    for each in found:
        BaseXapiStatement.model_validate(each)
    return found


def test_an_answer_is_a_statement() -> None:
    """Who answered which item of which book, how well, in what time, and what was predicted.

    Fields: IEEE 9274.1.1, 4.2 (from memory); durations as ISO 8601 writes them.
    """
    blank, hazy, *_ = stated(packed_answers(4))
    assert hazy["id"] == str(UUID(int=2))
    assert hazy["actor"] == {
        "objectType": "Agent",
        "account": {"homePage": HOME, "name": str(READER)},
    }
    assert hazy["verb"]["id"] == f"{ADL}answered"
    assert hazy["object"]["id"] == f"urn:uuid:{ITEM}"
    assert hazy["result"] == {
        "success": True,
        "score": {"scaled": pytest.approx(1 / 3)},
        "response": "A clerk.",
        "duration": "PT12S",
    }
    assert hazy["context"]["extensions"]["https://catchword.invalid/xapi/predicted"] == 0.9
    assert blank["result"] == {"success": False, "score": {"scaled": 0.0}}


def test_what_was_taken_back_is_voided() -> None:
    """The statement stands, and another voids it; its id is the same in every export."""
    *_, last, voiding = stated(packed_answers(4))
    assert voiding["verb"]["id"] == f"{ADL}voided"
    assert voiding["object"] == {"objectType": "StatementRef", "id": last["id"]}
    assert stated(packed_answers(4))[-1]["id"] == voiding["id"] != last["id"]


def test_a_check_in_is_a_statement() -> None:
    """Kept is completed, partly is progressed, missed is failed; a withdrawn one is voided."""
    rows = [
        check_in(1, outcome="kept", count=2, note="=1+1", witness="Hanne"),
        check_in(2, outcome="partly"),
        check_in(3, outcome="missed", taken_back_at=NOW),
    ]
    kept, partly, missed, voiding = stated(table_of(What.CHECK_INS, rows))
    verbs = [each["verb"]["id"].removeprefix(ADL) for each in (kept, partly, missed, voiding)]
    assert verbs == ["completed", "progressed", "failed", "voided"]
    assert kept["result"] == {"completion": True, "success": True, "response": "=1+1"}
    assert partly["result"] == {"completion": False}
    assert missed["result"] == {"completion": False, "success": False}
    assert voiding["object"]["id"] == missed["id"]
