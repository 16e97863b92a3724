"""Everything at once: the whole library as one archive, and back from it into an empty one."""

from http import HTTPStatus
from os import SEEK_END

from flask import Response
from flask_smorest.fields import Upload
from marshmallow import fields
from werkzeug.datastructures import FileStorage

from cards.errors import CannotWrite, InvalidArchive, LibraryNotEmpty
from service.api.desk import desk
from service.api.fields import Request, Shape
from service.api.files import attachment
from service.api.operations import BINARY, Content, Gives, Reply, Resource, Takes
from service.use_cases.archiving import FILE, pieces_of, spooled_archive
from service.use_cases.archiving_back import restore_everything

resource = Resource(
    "archives", "", "Everything at once: out as one archive of open formats, and back from it."
)


class ArchiveFileSchema(Request):
    """A form with an archive."""

    file = Upload(
        required=True,
        metadata={"description": "The archive, a zip of at most 512 MB, as it was exported."},
    )


class RestoredSchema(Shape):
    """What was brought back."""

    digests = fields.Integer(
        required=True, metadata={"description": "How many digests, those removed with them."}
    )
    items = fields.Integer(required=True, metadata={"description": "How many items."})
    answers = fields.Integer(required=True, metadata={"description": "How many answers."})
    originals = fields.Integer(
        required=True, metadata={"description": "How many files digests were read from."}
    )


@resource.operation(
    "GET /export/everything.zip",
    gives=Gives(
        {HTTPStatus.OK: "The archive."},
        headers={HTTPStatus.OK: ("Content-Disposition",)},
        contents=(Content("application/zip", BINARY, "(the bytes of catchword.zip)"),),
    ),
    refuses=(CannotWrite,),
)
def get_everything() -> Reply:
    """Take everything out at once.

    Digests in Markdown, every fact as a line of JSON, the files digests were read from, a README
    that explains them, and a manifest with the SHA-256 of each. It is one moment of the library,
    and the same library gives the same bytes. The texts of books are left out, and so are the
    secrets of addresses.
    """
    archive = spooled_archive(desk())
    size = archive.seek(0, SEEK_END)
    archive.seek(0)
    answer = Response(
        pieces_of(archive),
        content_type="application/zip",
        headers={"Content-Disposition": attachment(FILE), "Content-Length": str(size)},
    )
    answer.call_on_close(archive.close)
    return answer


@resource.operation(
    "POST /restore",
    takes=Takes(ArchiveFileSchema(), "The archive.", location="files"),
    gives=Gives(
        {HTTPStatus.CREATED: "Everything is back."},
        RestoredSchema(),
        example={"digests": 12, "items": 214, "answers": 1830, "originals": 12},
    ),
    refuses=(InvalidArchive, LibraryNotEmpty),
)
def restore(sent: dict[str, FileStorage]) -> Reply:
    """Bring everything back into an empty library, all of it or nothing.

    Memories, due days and pages are those of the library the archive was taken from; an archive of
    an earlier Catchword is brought up to date on the way. Only the settings of a library may be
    there before, and the archive's take their place.
    """
    back = restore_everything(desk(), sent["file"].stream)
    found = {
        "digests": back.digests,
        "items": back.items,
        "answers": back.answers,
        "originals": back.originals,
    }
    return found, HTTPStatus.CREATED, {}
