"""Exports: facts for other programs, in the forms they take, however many there are."""

from http import HTTPStatus

from flask import Response
from marshmallow import fields

from service.api.desk import desk
from service.api.fields import Shape
from service.api.files import attachment
from service.api.operations import BINARY, Content, Gives, Reply, Resource
from service.use_cases.exporting import MEDIA_TYPES, STATED, Exported, export, forms_of
from service.use_cases.exporting_columns import HOLDS, Column, Described, What
from service.use_cases.exporting_described import DESCRIBED
from service.use_cases.exporting_records import ExportForm

resource = Resource(
    "exports", "/export", "Facts for other programs, as tables and as statements of xAPI."
)

_WHAT = f"<any({', '.join(repr(str(what)) for what in What)}):what>"
_FORM = f"<any({', '.join(form for form in ExportForm if form is not ExportForm.XAPI)}):form>"
_STATED = f"<any({', '.join(repr(str(what)) for what in STATED)}):what>"
_OBJECTS = {"type": "array", "items": {"type": "object"}}
_CONTENTS = (
    Content(
        "text/csv",
        {"type": "string"},
        "id,commitment_id,outcome,day\r\n"
        "0b7f7a5e-3c5f-4f0e-9a55-1a4b4f7f5d10,5e8b6f0e-6d2c-4b1e-9c57-0a7c5c1f7f10,kept,"
        "2026-03-01\r\n",
    ),
    Content(
        "application/json",
        _OBJECTS,
        [{"id": "0b7f7a5e-3c5f-4f0e-9a55-1a4b4f7f5d10", "outcome": "kept", "day": "2026-03-01"}],
    ),
    Content(MEDIA_TYPES[ExportForm.PARQUET], BINARY, "(the bytes of answers.parquet)"),
    Content(MEDIA_TYPES[ExportForm.XLSX], BINARY, "(the bytes of answers.xlsx)"),
)
_STATEMENTS = Content(
    "application/json",
    {"type": "array", "items": {"type": "object"}},
    [
        {
            "id": "0b7f7a5e-3c5f-4f0e-9a55-1a4b4f7f5d10",
            "actor": {
                "objectType": "Agent",
                "account": {
                    "homePage": "https://catchword.invalid/",
                    "name": "5e8b6f0e-6d2c-4b1e-9c57-0a7c5c1f7f10",
                },
            },
            "verb": {"id": "http://adlnet.gov/expapi/verbs/answered"},
            "object": {"id": "urn:uuid:7d3c5a52-6f7e-5b77-9a41-0a7c5c1f7f10"},
            "result": {"success": True, "score": {"scaled": 1.0}},
            "timestamp": "2026-03-01T21:40:00.000000Z",
        }
    ],
)


class ExportFieldSchema(Shape):
    """A field of the parts in a list of parts."""

    name = fields.String(required=True, metadata={"description": "Its name."})
    type = fields.String(required=True, metadata={"description": "The type of its values."})
    meaning = fields.String(required=True, metadata={"description": "What it says."})


class ExportColumnSchema(ExportFieldSchema):
    """A column of an export."""

    unit = fields.String(required=True, metadata={"description": "Of a number, or empty."})
    absent = fields.Boolean(
        required=True,
        metadata={"description": "Whether a value can be absent: an empty cell, null."},
    )
    fields_ = fields.List(
        fields.Nested(ExportFieldSchema),
        required=True,
        data_key="fields",
        metadata={"description": "What each part has, of a list of parts; empty otherwise."},
    )


class ExportSchema(Shape):
    """What can be exported, column by column."""

    what = fields.String(
        required=True, metadata={"description": "Its name, as it stands in addresses."}
    )
    holds = fields.String(required=True, metadata={"description": "What its rows are."})
    forms = fields.List(
        fields.String(), required=True, metadata={"description": "The forms it can be had in."}
    )
    columns = fields.List(
        fields.Nested(ExportColumnSchema),
        required=True,
        metadata={"description": "In their order."},
    )


class ExportsSchema(Shape):
    """Everything that can be exported, and the types its columns are of."""

    exports = fields.List(
        fields.Nested(ExportSchema), required=True, metadata={"description": "Each of them."}
    )
    types = fields.Dict(
        keys=fields.String(),
        values=fields.String(),
        required=True,
        metadata={"description": "What the values of each type are."},
    )


@resource.operation(
    "GET /columns",
    gives=Gives(
        {HTTPStatus.OK: "Every export with its columns."},
        ExportsSchema(),
        example={
            "exports": [
                {
                    "what": "answers",
                    "holds": "Every answer to every item.",
                    "forms": ["csv", "json", "parquet", "xlsx", "xapi"],
                    "columns": [
                        {
                            "name": "seconds",
                            "type": "whole number",
                            "unit": "seconds",
                            "meaning": "From the cue to the grade.",
                            "absent": True,
                            "fields": [],
                        }
                    ],
                }
            ],
            "types": {"whole number": "a whole number"},
        },
    ),
)
def get_export_columns() -> Reply:
    """Say what can be exported, column by column.

    Every form has the same columns, in the same order.
    """
    told = [_told(what, described) for what, described in DESCRIBED.items()]
    types = {holds.value: said for holds, said in HOLDS.items()}
    return {"exports": told, "types": types}, HTTPStatus.OK, {}


@resource.operation(
    f"GET /{_WHAT}.{_FORM}",
    path={"what": "What is exported.", "form": "What it is written as."},
    gives=Gives(
        {HTTPStatus.OK: "The file, written while it is sent."},
        headers={HTTPStatus.OK: ("Content-Disposition",)},
        contents=_CONTENTS,
    ),
)
def get_export(what: str, form: str) -> Reply:
    """Export facts as a file.

    It is one moment of the library, whatever is recorded while it is sent, and is never held
    whole: ten million rows take no more memory than ten thousand. Words that a spreadsheet would
    run as a formula begin with an apostrophe in `csv` and `xlsx`; in all other forms they are as
    they were written. `/api/export/columns` says what the columns hold.
    """
    return _streamed(export(desk(), What(what), ExportForm(form)))


@resource.operation(
    f"GET /{_STATED}.xapi",
    path={"what": "What is exported."},
    gives=Gives(
        {HTTPStatus.OK: "The statements, written while they are sent."},
        headers={HTTPStatus.OK: ("Content-Disposition",)},
        contents=(_STATEMENTS,),
    ),
)
def get_statements(what: str) -> Reply:
    """Export what was done as statements for learning record stores.

    Answers and check-ins alone, as an array of statements of xAPI (IEEE 9274.1.1), their ids those
    of the facts; what was taken back is followed by the statement that voids it. It is one moment
    of the library, and is never held whole. A reader is told apart by their id and by the address
    of their pages: where several libraries fill one store, set `CATCHWORD_ADDRESS` in each.
    """
    return _streamed(export(desk(), What(what), ExportForm.XAPI))


def _streamed(exported: Exported) -> Response:
    return Response(
        exported.pieces,
        content_type=exported.media_type,
        headers={"Content-Disposition": attachment(exported.name)},
    )


def _told(what: What, described: Described) -> dict[str, object]:
    return {
        "what": what.value,
        "holds": described.holds,
        "forms": [form.value for form in forms_of(what)],
        "columns": [
            _field(column)
            | {
                "unit": column.unit,
                "absent": column.absent,
                "fields_": [_field(each) for each in column.fields],
            }
            for column in described.columns
        ],
    }


def _field(column: Column) -> dict[str, object]:
    return {"name": column.name, "type": column.holds.value, "meaning": column.meaning}
