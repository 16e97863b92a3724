"""The book's own text: a digest proved against it, and mended from it."""

import json
from http import HTTPStatus
from typing import Any
from uuid import UUID

from flask import Response
from werkzeug.datastructures import FileStorage

from cards.errors import (
    BookTextMissing,
    DigestChanged,
    DigestMissing,
    DocumentBroken,
    DocumentEmpty,
    DocumentLocked,
    DocumentTooLarge,
    DocumentTooSlow,
    DocumentUnsupported,
    Invalid,
    InvalidDigest,
)
from service.api import examples
from service.api.desk import desk
from service.api.files import bare_name
from service.api.operations import Gives, Reply, Resource, Takes
from service.api.proof_shapes import (
    BookFileSchema,
    MendingSchema,
    ProofSchema,
    proof_said,
    wanted_mends,
)
from service.api.tags import expected_revision, tag_of, unchanged
from service.use_cases.library import open_digest
from service.use_cases.prove import Proved, forget_book, give_book, mend_from_book, proof_of

resource = Resource(
    "book",
    "/digests",
    "The book's own text: quotations proved against it, and mended from it. It stays where "
    "Catchword keeps its library, and is never given out.",
)

_UNREADABLE = (
    DocumentEmpty,
    DocumentTooLarge,
    DocumentTooSlow,
    DocumentLocked,
    DocumentBroken,
    DocumentUnsupported,
    Invalid,
)
_PATH = {"digest_id": "Id of the digest."}
_QUOTATION = {
    **examples.KEPT["quotations"][0],
    "text": "The gold had turned to the child.",
    "locator": None,
    "page": None,
}
_PROOF = {
    "revision": 3,
    "book": "silas-marner.epub",
    "quotations": [
        {
            "number": 1,
            "quotation": _QUOTATION,
            "found": {
                "exact": "The gold had turned into the child",
                "prefix": "thing but the thought that the child was come instead of the gold: ",
                "suffix": " before his bewildered eyes, and he had",
                "start": 262144,
                "end": 262178,
                "fraction": 0.611,
                "likeness": 97.1,
                "chapter": {"number": 14, "title": "CHAPTER XIV"},
                "pages": ["104"],
                "places": 1,
                "slips": [
                    {"kind": "spelling", "quoted": "to", "book": "into", "start": 20, "end": 22}
                ],
                "mended": "The gold had turned into the child.",
            },
            "contradiction": None,
            "locator": "p. 104",
            "after": 2,
            "mends": ["words", "locator"],
            "anchor": {"fraction": 0.611, "chapter": 14, "page": "104", "source": "9f" * 32},
        }
    ],
}
_MENDING = {"quotations": [{"number": 1, "mend": ["words", "locator"]}]}
_GIVES = Gives(
    {HTTPStatus.OK: "The digest held against the text. Its ETag names the digest's revision."},
    ProofSchema(),
    example=_PROOF,
    headers={HTTPStatus.OK: ("ETag",)},
)


@resource.operation(
    "PUT /<uuid:digest_id>/book",
    path=_PATH,
    takes=Takes(BookFileSchema(), "The book.", location="files"),
    gives=_GIVES,
    refuses=(DigestMissing, *_UNREADABLE),
)
def put_book(sent: dict[str, FileStorage], digest_id: UUID) -> Reply:
    """Give the text of a digest's book, and hold the digest against it.

    It takes the place of a text given before. Quotations found in that one are found again by
    their words.
    """
    open_digest(desk(), digest_id)
    name = bare_name(sent["file"].filename or "") or "book"
    return _shown(give_book(desk(), digest_id, name, sent["file"].stream.read()))


@resource.operation(
    "GET /<uuid:digest_id>/book",
    path=_PATH,
    gives=_GIVES,
    refuses=(DigestMissing, BookTextMissing),
)
def get_proof(digest_id: UUID) -> Reply:
    """Hold a digest against the text of its book.

    Every quotation is looked for in spite of quotation marks, hyphens, ellipses and small slips.
    """
    proved = proof_of(desk(), digest_id)
    return unchanged(_tag(proved)) or _shown(proved)


@resource.operation(
    "DELETE /<uuid:digest_id>/book",
    path=_PATH,
    gives=Gives({HTTPStatus.NO_CONTENT: "The library holds no text of the book."}),
    refuses=(DigestMissing,),
)
def delete_book(digest_id: UUID) -> Reply:
    """Forget the text of a digest's book.

    Where quotations were found in it is kept. Forgetting it again changes nothing.
    """
    forget_book(desk(), digest_id)
    return Response(status=HTTPStatus.NO_CONTENT)


@resource.operation(
    "POST /<uuid:digest_id>/book/mending",
    path=_PATH,
    takes=Takes(
        MendingSchema(), "What to mend; may be left out.", example=_MENDING, required=False
    ),
    gives=_GIVES,
    refuses=(DigestMissing, DigestChanged, BookTextMissing, InvalidDigest),
)
def post_mending(sent: dict[str, Any], digest_id: UUID) -> Reply:
    """Mend quotations from the text of their book, in one step.

    Slips are put right, locators and places filled in, as far as the text tells them; the items
    keep their history.
    """
    revision = expected_revision(digest_id, lambda: open_digest(desk(), digest_id).kept.revision)
    count = len(open_digest(desk(), digest_id).kept.digest().quotations)
    return _shown(mend_from_book(desk(), digest_id, wanted_mends(sent, count), revision))


def _shown(proved: Proved) -> Reply:
    return proof_said(proved), HTTPStatus.OK, {"ETag": _tag(proved)}


def _tag(proved: Proved) -> str:
    """Return the tag of a proof: the digest's revision, and what else the proof depends on."""
    said = json.dumps(ProofSchema().dump(proof_said(proved)))
    return tag_of(proved.kept.id, proved.kept.revision, said)
