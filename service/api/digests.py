"""Digests: handed over, looked through, mended, taken out."""

from http import HTTPStatus
from typing import Any
from uuid import UUID

from flask import Response
from webargs.flaskparser import abort
from werkzeug.datastructures import FileStorage

from cards.errors import (
    DigestChanged,
    DigestMissing,
    DocumentBroken,
    DocumentEmpty,
    DocumentLocked,
    DocumentTooLarge,
    DocumentTooSlow,
    DocumentUnsupported,
    InvalidDigest,
    NothingRecognised,
    SeveralDigests,
)
from cards.parts import KeptDigest
from service.api import examples
from service.api.cursors import InstantCursor, cursor_of, limit, links
from service.api.desk import desk
from service.api.digest_shapes import (
    AddedDigestSchema,
    DigestPageSchema,
    KeptDigestSchema,
    UnderstoodDigestSchema,
    added_digest,
    digest_entry,
    kept_digest,
    understood_digest,
)
from service.api.fields import Request
from service.api.files import attachment, bare_name
from service.api.mended_shapes import (
    NO_ISBN,
    FileSchema,
    MendedDigestSchema,
    WrongIsbn,
    mended_digest,
)
from service.api.operations import BINARY, Content, Gives, Reply, Resource, Takes
from service.api.tags import expected_revision, tag_of, unchanged
from service.use_cases.add_digest import Status, add_digest, read_digest
from service.use_cases.advice import advise
from service.use_cases.keeping import counted
from service.use_cases.library import list_digests, open_digest, open_original
from service.use_cases.mend_digest import mend_digest, remove_digest

resource = Resource(
    "digests", "/digests", "The two-page records of finished books, and the files they came from."
)

_UNREADABLE = (
    DocumentEmpty,
    DocumentTooLarge,
    DocumentTooSlow,
    DocumentLocked,
    DocumentBroken,
    DocumentUnsupported,
    NothingRecognised,
    SeveralDigests,
    InvalidDigest,
)
_PATH = {"digest_id": "Id of the digest."}
_FILE = Takes(FileSchema(), "The file.", location="files")


class DigestQuerySchema(Request):
    """Which digests are listed."""

    cursor = InstantCursor()
    limit = limit()


@resource.operation(
    "POST /read",
    takes=_FILE,
    gives=Gives(
        {HTTPStatus.OK: "What would be understood."},
        UnderstoodDigestSchema(),
        example=examples.UNDERSTOOD,
    ),
    refuses=_UNREADABLE,
)
def read_file(sent: dict[str, FileStorage]) -> Reply:
    """Say what would be understood of a file that holds one digest.

    Each part with the words it came from, what was left, and advice. Nothing is kept.
    """
    understood = read_digest(desk(), *_named(sent["file"]))
    advice = advise(desk(), understood.digest)
    return understood_digest(understood, advice), HTTPStatus.OK, {}


@resource.operation(
    "POST",
    takes=_FILE,
    gives=Gives(
        {
            HTTPStatus.CREATED: "The digest was added to the library.",
            HTTPStatus.OK: "The book was in the library: its digest was changed, or was the same.",
        },
        AddedDigestSchema(),
        example=examples.ADDED,
        headers={HTTPStatus.CREATED: ("Location", "ETag"), HTTPStatus.OK: ("Location", "ETag")},
    ),
    refuses=_UNREADABLE,
)
def add_file(sent: dict[str, FileStorage]) -> Reply:
    """Add a digest to the library.

    A digest of a book that is in the library corrects it: its items keep their history.
    Adding the same file again changes nothing. The file is kept beside the digest.
    """
    name, content = _named(sent["file"])
    added = add_digest(desk(), name, content)
    status = HTTPStatus.CREATED if added.status is Status.ADDED else HTTPStatus.OK
    headers = {
        "Location": f"/api/digests/{added.kept.id}",
        "ETag": tag_of(added.kept.id, added.kept.revision),
    }
    return added_digest(added, name), status, headers


@resource.operation(
    "GET",
    query=DigestQuerySchema(),
    gives=Gives(
        {HTTPStatus.OK: "One page of the library."},
        DigestPageSchema(),
        example=examples.SHELF,
        headers={HTTPStatus.OK: ("Link",)},
    ),
)
def list_library(query: dict[str, Any]) -> Reply:
    """List the digests of the library.

    The one added last comes first.
    """
    shelf = list_digests(desk(), query["cursor"], query["limit"])
    following = None if shelf.next is None else cursor_of(shelf.next)
    entries = [digest_entry(entry) for entry in shelf.entries]
    return {"digests": entries, "next": following}, HTTPStatus.OK, links(following)


@resource.operation(
    "GET /<uuid:digest_id>",
    path=_PATH,
    gives=Gives(
        {HTTPStatus.OK: "The digest."},
        KeptDigestSchema(),
        example=examples.KEPT,
        headers={HTTPStatus.OK: ("ETag",)},
    ),
    refuses=(DigestMissing,),
)
def get_digest(digest_id: UUID) -> Reply:
    """Open a digest."""
    kept = open_digest(desk(), digest_id).kept
    return unchanged(tag_of(digest_id, kept.revision)) or _shown(kept, counted(kept))


@resource.operation(
    "PUT /<uuid:digest_id>",
    path=_PATH,
    takes=Takes(
        MendedDigestSchema(), "All the digest is to say from now on.", example=examples.MENDED
    ),
    gives=Gives(
        {HTTPStatus.OK: "The digest as it is now."},
        KeptDigestSchema(),
        example={**examples.KEPT, "revision": 4},
        headers={HTTPStatus.OK: ("ETag",)},
    ),
    refuses=(DigestMissing, DigestChanged, InvalidDigest),
)
def put_digest(sent: dict[str, Any], digest_id: UUID) -> Reply:
    """Mend a digest.

    What is left out is taken out. Parts that are only reworded or moved keep the history of
    their items. A point or quotation without a locator may give its `page` instead.
    """
    revision = expected_revision(digest_id, lambda: _revision(digest_id))
    if isinstance(sent["isbn"], WrongIsbn):
        if sent["isbn"] != open_digest(desk(), digest_id).kept.isbn:
            abort(HTTPStatus.UNPROCESSABLE_ENTITY, messages={"json": {"isbn": [NO_ISBN]}})
        sent["isbn"] = str(sent["isbn"])
    kept = mend_digest(desk(), digest_id, mended_digest(sent), revision, sent["care"])
    return _shown(kept, counted(kept))


@resource.operation(
    "DELETE /<uuid:digest_id>",
    path=_PATH,
    gives=Gives({HTTPStatus.NO_CONTENT: "It is no longer in the library."}),
    refuses=(DigestMissing, DigestChanged),
)
def delete_digest(digest_id: UUID) -> Reply:
    """Take a digest out of the library.

    Its items are no longer asked. Their history is kept, and comes back when the digest is
    added again.
    """
    remove_digest(desk(), digest_id, expected_revision(digest_id, lambda: _revision(digest_id)))
    return Response(status=HTTPStatus.NO_CONTENT)


@resource.operation(
    "GET /<uuid:digest_id>/original",
    path=_PATH,
    gives=Gives(
        {HTTPStatus.OK: "The bytes of the file."},
        headers={HTTPStatus.OK: ("Content-Disposition",)},
        contents=(Content("application/octet-stream", BINARY, "(the bytes of silas-marner.docx)"),),
    ),
    refuses=(DigestMissing,),
)
def get_original(digest_id: UUID) -> Reply:
    """Take back the file a digest was last read from."""
    original = open_original(desk(), digest_id)
    return Response(
        original.content,
        mimetype="application/octet-stream",
        headers={"Content-Disposition": attachment(original.name)},
    )


def _named(file: FileStorage) -> tuple[str, bytes]:
    return bare_name(file.filename or "") or "digest", file.stream.read()


def _shown(kept: KeptDigest, items: dict[str, int]) -> Reply:
    headers = {"ETag": tag_of(kept.id, kept.revision)}
    return kept_digest(kept, items), HTTPStatus.OK, headers


def _revision(digest_id: UUID) -> int:
    return open_digest(desk(), digest_id).kept.revision
