"""`/exports`: facts for other programs, with what each column of them holds."""

from http import HTTPStatus

from flask import Blueprint, Response, abort, render_template

from service.use_cases.exporting import export, forms_of
from service.use_cases.exporting_columns import HOLDS, What
from service.use_cases.exporting_described import DESCRIBED
from service.use_cases.exporting_records import ExportForm
from service.use_cases.ports import Desk

_FORMS = {
    ExportForm.CSV: "CSV",
    ExportForm.JSON: "JSON",
    ExportForm.PARQUET: "Parquet",
    ExportForm.XLSX: "Workbook",
    ExportForm.XAPI: "xAPI",
}
"""What each form is called where one is chosen."""


def install(door: Blueprint, desk: Desk) -> None:
    """Add the exports to the door."""

    @door.get("/exports")
    def exports() -> str:
        """Offer what can be exported, and say what it holds."""
        return render_template(
            "exports.html",
            exports=[
                (what, described, [(form, _FORMS[form]) for form in forms_of(what)])
                for what, described in DESCRIBED.items()
            ],
            types=HOLDS,
        )

    @door.get("/exports/<what>.<form>")
    def exported(what: str, form: str) -> Response:
        """Hand out an export, written while it is sent."""
        if what not in list(What) or form not in forms_of(What(what)):
            abort(HTTPStatus.NOT_FOUND)
        file = export(desk, What(what), ExportForm(form))
        answer = Response(file.pieces, content_type=file.media_type)
        answer.headers.set("Content-Disposition", "attachment", filename=file.name)
        return answer
