"""Exports through the API: documented, streamed, and let go of by whoever goes away."""

from typing import Any

import pytest

from service.use_cases.exporting_columns import What
from service.use_cases.exporting_records import ExportForm
from service.use_cases.ports import Desk
from tests.api.conftest import Door

MEDIA_TYPES = {
    "csv": "text/csv; charset=utf-8; header=present",
    "json": "application/json",
    "parquet": "application/vnd.apache.parquet",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    "xapi": "application/json",
}
"""By form: IANA's registry of media types; RFC 4180 for the parameter of CSV (from memory)."""


@pytest.mark.usefixtures("walks")
def test_every_export_is_a_file_to_save(door: Door) -> None:
    """Each comes under its media type and a name of its own, and is never shown or kept."""
    assert door.answer(door.item("theme")).status_code == 201
    for what in What:
        for form in ExportForm:
            if form is ExportForm.XAPI and what not in {What.ANSWERS, What.CHECK_INS}:
                continue
            given = door.client.get(f"/api/export/{what}.{form}")
            assert (given.status_code, given.headers["Content-Type"]) == (200, MEDIA_TYPES[form])
            ending = "xapi.json" if form is ExportForm.XAPI else form
            assert f'attachment; filename="{what}.{ending}"' in given.headers["Content-Disposition"]
            assert given.data


@pytest.mark.usefixtures("walks")
def test_an_answer_is_in_the_export_at_once(door: Door) -> None:
    """What was answered a moment ago is in the next export, with its words."""
    item = door.item("theme")
    door.answer(item, "hazy", attempt={"words": "=cmd"})
    (row,) = door.client.get("/api/export/answers.json").json
    assert (row["item_id"], row["grade"], row["came_back"]) == (item, "hazy", True)
    assert row["attempt"] == "=cmd"
    assert "'=cmd" in door.client.get("/api/export/answers.csv").text


@pytest.mark.usefixtures("walks")
def test_whoever_goes_away_leaves_nothing_open(door: Door, desk: Desk) -> None:
    """An answer that is not read to its end holds the store until it is closed, and no longer."""
    door.answer(door.item("theme"))
    pool: Any = desk.store.engines.reading.pool  # type: ignore[attr-defined]
    given = door.client.get("/api/export/answers.csv", buffered=False)
    assert pool.checkedout() == 1
    given.close()
    assert pool.checkedout() == 0


def test_the_columns_are_documented(door: Door) -> None:
    """What the columns hold is said for each export, and is what an export has."""
    told = door.client.get("/api/export/columns").json
    assert {each["what"] for each in told["exports"]} == set(What)
    for each in told["exports"]:
        header = door.client.get(f"/api/export/{each['what']}.csv").text.strip()
        assert header == ",".join(column["name"] for column in each["columns"])
        assert all(column["type"] in told["types"] for column in each["columns"])
        assert all(column["meaning"].endswith((".", "empty.")) for column in each["columns"])


@pytest.mark.parametrize(
    "path", ["answers.ods", "readers.csv", "answers", "answers.CSV", "items.xapi"]
)
def test_what_there_is_not_is_no_address(door: Door, path: str) -> None:
    """A form or an export there is not is nothing here: 404."""
    refused = door.client.get(f"/api/export/{path}")
    assert (refused.status_code, refused.json["type"]) == (404, "/api/problems/nothing-here")
