"""Sheets: a sitting on paper, and what came back entered afterwards."""

from http import HTTPStatus
from typing import Any
from uuid import UUID

from flask import Response
from marshmallow import ValidationError, fields, validate, validates_schema

from cards.answers import MAX_ATTEMPT, Grade
from cards.errors import (
    AnswerConflict,
    CannotPrint,
    Invalid,
    InvalidAnswer,
    ItemMissing,
    SheetMissing,
)
from service.api import examples
from service.api.comparison_shapes import DigestSaysSchema
from service.api.desk import desk
from service.api.fields import Day, Identity, Request, Shape, Text
from service.api.files import attachment
from service.api.item_shapes import CueSchema
from service.api.operations import BINARY, Content, Gives, Reply, Resource, Takes
from service.api.sitting_shapes import SittingQuerySchema
from service.use_cases.sheets import Entered, enter_sheet, open_sheet, print_sheet
from service.use_cases.sitting_records import PrintedSheet

resource = Resource("sheets", "/sheets", "A sitting on paper.")

_PATH = {"sheet_id": "Id of the sheet."}
_MOST_ENTRIES = 500
_SHEET_ID = "4e0f5c0a-2a59-4a0e-8b5f-5b8d7b1c9e44"
_LINE = {
    "number": 1,
    "item": examples.ITEM_ID,
    "title": "Silas Marner",
    "author": "George Eliot",
    "cue": examples.ITEM["cue"],
    "answer": examples.SAYS,
    "answered_since": False,
}
_SHEET = {
    "id": _SHEET_ID,
    "made_at": "2026-03-01T07:10:00+00:00",
    "minutes": 10,
    "entered_at": None,
    "lines": [_LINE],
}


class LineSchema(Shape):
    """One item of a sheet."""

    number = fields.Integer(required=True, metadata={"description": "On the sheet, from 1."})
    item = fields.UUID(
        attribute="item_id", required=True, metadata={"description": "Id of the item."}
    )
    title = fields.String(required=True, metadata={"description": "Of its book."})
    author = fields.String(
        required=True, allow_none=True, metadata={"description": "Of its book, or null."}
    )
    cue = fields.Nested(
        CueSchema, required=True, metadata={"description": "What stands on the one side."}
    )
    answer = fields.Nested(
        DigestSaysSchema,
        attribute="answered",
        required=True,
        metadata={"description": "What stands on the other."},
    )
    answered_since = fields.Boolean(
        required=True,
        metadata={"description": "Whether it was answered after the sheet was printed."},
    )


class SheetSchema(Shape):
    """A sitting on paper."""

    id = fields.UUID(attribute="sheet.id", required=True, metadata={"description": "Of the sheet."})
    made_at = fields.DateTime(
        attribute="sheet.made_at",
        required=True,
        metadata={"description": "When it was printed, in UTC."},
    )
    minutes = fields.Integer(
        attribute="sheet.minutes", required=True, metadata={"description": "It was composed for."}
    )
    entered_at = fields.DateTime(
        attribute="sheet.entered_at",
        required=True,
        allow_none=True,
        metadata={"description": "When its answers were entered, in UTC, or null."},
    )
    lines = fields.List(
        fields.Nested(LineSchema),
        required=True,
        metadata={
            "description": "In the order they are printed; what the library no longer holds is "
            "left off."
        },
    )


class EntrySchema(Request):
    """What came back of one item."""

    item = Identity(required=True, metadata={"description": "Id of the item."})
    grade = fields.Enum(
        Grade,
        by_value=fields.String,
        required=True,
        metadata={"description": "The reader's own grade."},
    )
    words = Text(
        load_default="",
        validate=validate.Length(max=MAX_ATTEMPT),
        metadata={"description": "What they wrote on paper, to be marked and kept; may be empty."},
    )


class EnteredSchema(Request):
    """What came back of a sheet's items; those without a grade are left as they are."""

    on = Day(
        load_default=None,
        metadata={"description": "The reader's day they sat with it; today unless given."},
    )
    entries = fields.List(
        fields.Nested(EntrySchema),
        required=True,
        validate=validate.Length(1, _MOST_ENTRIES),
        metadata={"description": "One for each item that was answered."},
    )

    @validates_schema
    def each_once(self, data: dict[str, Any], **_: object) -> None:
        """Refuse two grades for one item."""
        items = [entry["item"] for entry in data.get("entries", ())]
        if len(set(items)) != len(items):
            raise ValidationError("Each item can be entered once.", "entries")


class EnteredCountSchema(Shape):
    """What entering a sheet came to."""

    fresh = fields.Integer(
        required=True,
        metadata={"description": "How many answers were new; the rest were kept already."},
    )


def _shown(printed: PrintedSheet) -> dict[str, object]:
    return {"sheet": printed.sheet, "lines": printed.lines}


@resource.operation(
    "POST",
    query=SittingQuerySchema(),
    gives=Gives(
        {HTTPStatus.CREATED: "The sheet."},
        SheetSchema(),
        example=_SHEET,
        headers={HTTPStatus.CREATED: ("Location",)},
    ),
    refuses=(Invalid,),
)
def post_sheet(query: dict[str, Any]) -> Reply:
    """Have today's sitting printed."""
    printed = print_sheet(desk(), query["minutes"])
    location = {"Location": f"/api/sheets/{printed.sheet.id}"}
    return _shown(printed), HTTPStatus.CREATED, location


@resource.operation(
    "GET /<uuid:sheet_id>",
    path=_PATH,
    gives=Gives({HTTPStatus.OK: "The sheet."}, SheetSchema(), example=_SHEET),
    refuses=(SheetMissing,),
)
def get_sheet(sheet_id: UUID) -> Reply:
    """Look at a sheet, its answers with it."""
    return _shown(open_sheet(desk(), sheet_id)), HTTPStatus.OK, {}


@resource.operation(
    "GET /<uuid:sheet_id>/pdf",
    path=_PATH,
    gives=Gives(
        {HTTPStatus.OK: "The file."},
        headers={HTTPStatus.OK: ("Content-Disposition",)},
        contents=(Content("application/pdf", BINARY, "(the bytes of sitting.pdf)"),),
    ),
    refuses=(SheetMissing, CannotPrint),
)
def get_sheet_pdf(sheet_id: UUID) -> Reply:
    """Take a sheet as a PDF: cues on one side, answers on the other."""
    printed = open_sheet(desk(), sheet_id)
    name = f"sitting-{printed.day}.pdf"
    return Response(
        desk().press.sheet(printed),
        content_type="application/pdf",
        headers={"Content-Disposition": attachment(name)},
    )


@resource.operation(
    "POST /<uuid:sheet_id>/answers",
    path=_PATH,
    takes=Takes(
        EnteredSchema(),
        "What came back.",
        example={"on": "2026-03-01", "entries": [{"item": examples.ITEM_ID, "grade": "clear"}]},
    ),
    gives=Gives({HTTPStatus.OK: "It is kept."}, EnteredCountSchema(), example={"fresh": 1}),
    refuses=(SheetMissing, InvalidAnswer, ItemMissing, AnswerConflict),
)
def post_sheet_answers(sent: dict[str, Any], sheet_id: UUID) -> Reply:
    """Enter what came back of a sheet, all of it or nothing.

    The same sent twice is kept once. Another grade for an item entered before is refused; take
    that answer back first.
    """
    entered = {each["item"]: Entered(each["grade"], each["words"]) for each in sent["entries"]}
    fresh = enter_sheet(desk(), sheet_id, entered, sent["on"])
    return {"fresh": fresh}, HTTPStatus.OK, {}
