"""The shapes of many files handed over at once, and of the report on each."""

from flask_smorest.fields import Upload
from marshmallow import fields, validate

from service.api import meanings
from service.api.digest_shapes import ItemCountsSchema, UnderstoodDigestSchema, WarningSchema
from service.api.fields import Request, Shape
from service.api.refusing import ProblemSchema
from service.use_cases.add_digest import Added, Status

_FILE = {"description": "The file's name, with the folders it stood in."}
_PROBLEM = {
    "description": "Why nothing became of the file, as a problem document would say it; or null."
}


class FilesSchema(Request):
    """A form with files."""

    files = fields.List(
        Upload(),
        required=True,
        validate=validate.Length(min=1),
        metadata={
            "description": "Digests, as many of them in a file as there are, and zips of such "
            "files, each under its name; at most 2,100 in one form."
        },
    )


class ImportedDigestSchema(Shape):
    """What became of one digest of a file."""

    id = fields.UUID(required=True, metadata={"description": "Of the digest."})
    title = fields.String(required=True, metadata=meanings.TITLE)
    status = fields.Enum(
        Status,
        by_value=fields.String,
        required=True,
        metadata={"description": "Whether the digest is new, changed, or was the same already."},
    )
    items = fields.Nested(
        ItemCountsSchema, required=True, metadata={"description": "The items it makes."}
    )
    warnings = fields.List(
        fields.Nested(WarningSchema),
        required=True,
        metadata={"description": "What to know about how the file was understood."},
    )


class ImportReportSchema(Shape):
    """What became of one file."""

    file = fields.String(required=True, metadata=_FILE)
    digests = fields.List(
        fields.Nested(ImportedDigestSchema),
        required=True,
        metadata={"description": "What became of each digest in it; none when it was refused."},
    )
    problem = fields.Nested(ProblemSchema, required=True, allow_none=True, metadata=_PROBLEM)


class ImportsSchema(Shape):
    """What became of the files."""

    files = fields.List(
        fields.Nested(ImportReportSchema),
        required=True,
        metadata={"description": "A report a file, those inside a zip in its place."},
    )


class ReadReportSchema(Shape):
    """What would be understood of one file; nothing of it is kept."""

    file = fields.String(required=True, metadata=_FILE)
    digests = fields.List(
        fields.Nested(UnderstoodDigestSchema),
        required=True,
        metadata={"description": "Each digest in it; none when it was refused."},
    )
    problem = fields.Nested(ProblemSchema, required=True, allow_none=True, metadata=_PROBLEM)


class ReadFilesSchema(Shape):
    """What would be understood of the files; nothing of them is kept."""

    files = fields.List(
        fields.Nested(ReadReportSchema),
        required=True,
        metadata={"description": "A report a file, those inside a zip in its place."},
    )


def imported_digest(added: Added) -> dict[str, object]:
    """Return what `ImportedDigestSchema` dumps."""
    return {
        "id": added.kept.id,
        "title": added.kept.title,
        "status": added.status,
        "items": added.items,
        "warnings": added.notices,
    }
