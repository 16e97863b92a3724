"""Versions: what a digest said before, brought back; what an edit did, overruled."""

from http import HTTPStatus
from typing import Any
from uuid import UUID

from cards.errors import DigestChanged, DigestMissing, PartMissing, VersionMissing
from service.api import examples
from service.api.cursors import NumberCursor, cursor_of, limit, links
from service.api.desk import desk
from service.api.digest_shapes import KeptDigestSchema, kept_digest
from service.api.fields import Request
from service.api.operations import Gives, Reply, Resource, Takes
from service.api.tags import expected_revision, tag_of, unchanged
from service.api.version_shapes import (
    ChangesSchema,
    IdentitySchema,
    VersionPageSchema,
    VersionSchema,
    change_said,
    version_said,
)
from service.use_cases.keeping import counted
from service.use_cases.library import open_digest
from service.use_cases.versions import (
    continue_part,
    last_changes,
    list_versions,
    open_version,
    restore_version,
    start_afresh,
)

resource = Resource(
    "versions",
    "/digests",
    "What a digest said at every revision, what each edit did to its parts, and the reader's word "
    "on it.",
)

_REVISION = "<int(min=1, max=2147483647):revision>"
_PATH = {"digest_id": "Id of the digest."}
_OF_VERSION = {**_PATH, "revision": "Revision of the digest, from 1."}
_OF_PART = {**_PATH, "part_id": "Id of a part the digest holds."}
_BEFORE = {
    "id": "5e0b4a58-7f6e-4a53-9f0b-0d2f1f6a3c11",
    "number": 2,
    "text": "A child comes to his hearth.",
    "locator": "p. 94",
    "page": 94,
    "after": None,
}
_CHANGE = {
    "became": "reworded",
    "kind": "point",
    "part": {**_BEFORE, "text": "Eppie comes to his hearth."},
    "before": _BEFORE,
}
_ENTRY = {"revision": 3, "kept_at": "2026-02-22T19:05:00+00:00", "cause": "mended"}
_VERSION = {
    **_ENTRY,
    "digest": {**examples.MENDED, "care": "steady"},
    "changes": [_CHANGE],
    "since": [],
}


class VersionQuerySchema(Request):
    """Which versions are listed."""

    cursor = NumberCursor()
    limit = limit()


@resource.operation(
    "GET /<uuid:digest_id>/versions",
    path=_PATH,
    query=VersionQuerySchema(),
    gives=Gives(
        {HTTPStatus.OK: "One page of its versions."},
        VersionPageSchema(),
        example={"versions": [_ENTRY], "next": None},
        headers={HTTPStatus.OK: ("Link",)},
    ),
    refuses=(DigestMissing,),
)
def list_all_versions(query: dict[str, Any], digest_id: UUID) -> Reply:
    """List the versions of a digest.

    The newest comes first, which is the digest as it is now.
    """
    page = list_versions(desk(), digest_id, query["cursor"], query["limit"])
    following = None if page.next is None else cursor_of(page.next)
    return {"versions": page.entries, "next": following}, HTTPStatus.OK, links(following)


@resource.operation(
    f"GET /<uuid:digest_id>/versions/{_REVISION}",
    path=_OF_VERSION,
    gives=Gives(
        {HTTPStatus.OK: "The version. Its ETag is of the digest as it is now."},
        VersionSchema(),
        example=_VERSION,
        headers={HTTPStatus.OK: ("ETag",)},
    ),
    refuses=(DigestMissing, VersionMissing),
)
def get_version(digest_id: UUID, revision: int) -> Reply:
    """Look at a version of a digest.

    With what became of each part in the edit that made it, and since.
    """
    opened = open_version(desk(), digest_id, revision)
    tag = tag_of(digest_id, opened.kept.revision)
    return unchanged(tag) or (version_said(opened), HTTPStatus.OK, {"ETag": tag})


@resource.operation(
    f"POST /<uuid:digest_id>/versions/{_REVISION}/restoration",
    path=_OF_VERSION,
    gives=Gives(
        {HTTPStatus.OK: "The digest as it is now."},
        KeptDigestSchema(),
        example={**examples.KEPT, "revision": 4},
        headers={HTTPStatus.OK: ("ETag",)},
    ),
    refuses=(DigestMissing, VersionMissing, DigestChanged),
)
def post_restoration(digest_id: UUID, revision: int) -> Reply:
    """Bring a version of a digest back.

    The digest says again what it said then, and every part has its history back. What it said
    meanwhile is a version of its own.
    """
    current = expected_revision(digest_id, lambda: _revision(digest_id))
    kept = restore_version(desk(), digest_id, revision, current)
    return kept_digest(kept, counted(kept)), HTTPStatus.OK, {"ETag": tag_of(kept.id, kept.revision)}


@resource.operation(
    "GET /<uuid:digest_id>/changes",
    path=_PATH,
    gives=Gives(
        {HTTPStatus.OK: "What became of its parts."},
        ChangesSchema(),
        example={"revision": 3, "changes": [_CHANGE]},
        headers={HTTPStatus.OK: ("ETag",)},
    ),
    refuses=(DigestMissing,),
)
def get_changes(digest_id: UUID) -> Reply:
    """See what the last edit of a digest did to its parts.

    Which kept their history and which started afresh. `PUT .../parts/{part_id}/identity`
    overrules it.
    """
    # Read before the changes: should the digest be edited between, its tag fits no more.
    revision = _revision(digest_id)
    tag = tag_of(digest_id, revision)
    changes = [change_said(each) for each in last_changes(desk(), digest_id)]
    shown = {"revision": revision, "changes": changes}
    return unchanged(tag) or (shown, HTTPStatus.OK, {"ETag": tag})


@resource.operation(
    "PUT /<uuid:digest_id>/parts/<uuid:part_id>/identity",
    path=_OF_PART,
    takes=Takes(
        IdentitySchema(), "What the part is after all.", example={"continues": _BEFORE["id"]}
    ),
    gives=Gives(
        {HTTPStatus.OK: "The digest as it is now."},
        KeptDigestSchema(),
        example={**examples.KEPT, "revision": 4},
        headers={HTTPStatus.OK: ("ETag",)},
    ),
    refuses=(DigestMissing, DigestChanged, PartMissing),
)
def put_identity(sent: dict[str, Any], digest_id: UUID, part_id: UUID) -> Reply:
    """Overrule what an edit did to a part.

    A part that started afresh continues a retired one, with its history; or a part that was
    reworded starts afresh. Its words stay as they are.
    """
    revision = expected_revision(digest_id, lambda: _revision(digest_id))
    if "continues" in sent:
        kept = continue_part(desk(), digest_id, part_id, sent["continues"], revision)
    else:
        kept = start_afresh(desk(), digest_id, part_id, revision)
    return kept_digest(kept, counted(kept)), HTTPStatus.OK, {"ETag": tag_of(kept.id, kept.revision)}


def _revision(digest_id: UUID) -> int:
    return open_digest(desk(), digest_id).kept.revision
