"""Annotations: quotations handed on as Web Annotations, and taken in (W3C, 23 February 2017)."""

from http import HTTPStatus
from uuid import UUID

from flask import Response

from cards.errors import DigestChanged, DigestMissing, InvalidAnnotations, InvalidDigest
from service.api import examples
from service.api.desk import desk
from service.api.digest_shapes import KeptDigestSchema, kept_digest
from service.api.operations import Content, Gives, Reply, Resource, TakesText
from service.api.tags import expected_revision, tag_of
from service.use_cases.keeping import counted
from service.use_cases.library import open_digest
from service.use_cases.prove import annotations_of, take_annotations

resource = Resource(
    "annotations", "/digests", "Quotations as Web Annotations, handed on and taken in."
)

JSON_LD = "application/ld+json"
PROFILED = f'{JSON_LD}; profile="http://www.w3.org/ns/anno.jsonld"'
"""The media type the Web Annotation Protocol gives annotations (W3C 2017, section 4.1)."""

_PATH = {"digest_id": "Id of the digest."}
_SCHEMA = {
    "type": "object",
    "description": "Of the Web Annotation Data Model: an AnnotationCollection, an AnnotationPage "
    "or an Annotation.",
}
_ANNOTATION = {
    "@context": "http://www.w3.org/ns/anno.jsonld",
    "id": "urn:uuid:4bfae7c9-9a1e-45bb-8d0c-1f0f3c1f5a70",
    "type": "Annotation",
    "motivation": "bookmarking",
    "target": {
        "source": "urn:x-catchword:book:Silas%20Marner",
        "selector": [
            {
                "type": "TextQuoteSelector",
                "exact": "The gold had turned into the child",
                "prefix": "come instead of the gold: ",
                "suffix": " before his bewildered eyes",
            },
            {
                "type": "FragmentSelector",
                "conformsTo": "http://tools.ietf.org/rfc/rfc3778",
                "value": "page=104",
            },
        ],
    },
}


@resource.operation(
    "GET /<uuid:digest_id>/annotations",
    path=_PATH,
    gives=Gives(
        {HTTPStatus.OK: "An AnnotationCollection with one page, one annotation a quotation."},
        contents=(Content(PROFILED, _SCHEMA, _ANNOTATION),),
    ),
    refuses=(DigestMissing,),
)
def get_annotations(digest_id: UUID) -> Reply:
    """Hand on the quotations of a digest as Web Annotations.

    Each with its words, and with what stands around them, their position and their page as far
    as the text of the book told them.
    """
    return Response(annotations_of(desk(), digest_id), content_type=PROFILED)


@resource.operation(
    "POST /<uuid:digest_id>/annotations",
    path=_PATH,
    takes=TakesText("Web Annotations, in UTF-8.", (Content(JSON_LD, _SCHEMA, _ANNOTATION),)),
    gives=Gives(
        {HTTPStatus.OK: "The digest as it is now."},
        KeptDigestSchema(),
        example={**examples.KEPT, "revision": 4},
        headers={HTTPStatus.OK: ("ETag",)},
    ),
    refuses=(DigestMissing, DigestChanged, InvalidAnnotations, InvalidDigest),
)
def post_annotations(sent: str, digest_id: UUID) -> Reply:
    """Take quotations from Web Annotations.

    Those the digest has not yet are added after the others. Taking the same in again changes
    nothing.
    """
    revision = expected_revision(digest_id, lambda: open_digest(desk(), digest_id).kept.revision)
    kept = take_annotations(desk(), digest_id, sent, revision)
    return kept_digest(kept, counted(kept)), HTTPStatus.OK, {"ETag": tag_of(kept.id, kept.revision)}
