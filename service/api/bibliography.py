"""Bibliography: a book's facts as BibTeX and CSL-JSON, given and read."""

from http import HTTPStatus
from uuid import UUID

from flask import Response
from marshmallow import fields

from cards.errors import DigestMissing, InvalidBibliography
from service.api import meanings
from service.api.desk import desk
from service.api.fields import Shape
from service.api.operations import Content, Gives, Reply, Resource, TakesText
from service.use_cases.bibliography import cite_bibtex, cite_csl_json, facts_in

citation = Resource("citation", "/digests", "A digest's book as an entry of a bibliography.")
citations = Resource("citations", "/citations", "The books a bibliography describes.")

BIBTEX = "application/x-bibtex"
CSL_JSON = "application/vnd.citationstyles.csl+json"
_PATH = {"digest_id": "Id of the digest."}
_BIBTEX = Content(
    BIBTEX,
    {"type": "string"},
    "@book{eliot-silas-1906,\n  title = {Silas Marner},\n  author = {Eliot, George},\n"
    "  publisher = {Everyman's Library},\n  year = {1906}\n}\n",
)
_CSL_JSON = Content(
    CSL_JSON,
    {
        "type": "array",
        "items": {"type": "object"},
        "description": "Items of `csl-data.json`, the schema of the Citation Style Language.",
    },
    [
        {
            "id": "eliot-silas-1906",
            "type": "book",
            "title": "Silas Marner",
            "author": [{"family": "Eliot", "given": "George"}],
            "publisher": "Everyman's Library",
            "issued": {"date-parts": [[1906]]},
        }
    ],
)


class BookFactsSchema(Shape):
    """What a bibliography says about one book, as far as a digest holds it."""

    title = fields.String(required=True, allow_none=True, metadata=meanings.TITLE)
    author = fields.String(required=True, allow_none=True, metadata=meanings.AUTHOR)
    edition = fields.String(required=True, allow_none=True, metadata=meanings.EDITION)
    isbn = fields.String(required=True, allow_none=True, metadata=meanings.ISBN)
    pages = fields.Integer(required=True, allow_none=True, metadata=meanings.PAGES)


class BooksSchema(Shape):
    """The books a bibliography describes."""

    books = fields.List(
        fields.Nested(BookFactsSchema),
        required=True,
        metadata={"description": "Those with a title, in its order."},
    )


@citation.operation(
    "GET /<uuid:digest_id>/citation/bibtex",
    path=_PATH,
    gives=Gives({HTTPStatus.OK: "The entry, in UTF-8."}, contents=(_BIBTEX,)),
    refuses=(DigestMissing,),
)
def get_bibtex(digest_id: UUID) -> Reply:
    """Cite a digest's book in BibTeX."""
    return Response(cite_bibtex(desk(), digest_id), content_type=f"{BIBTEX}; charset=utf-8")


@citation.operation(
    "GET /<uuid:digest_id>/citation/csl-json",
    path=_PATH,
    gives=Gives({HTTPStatus.OK: "An array of one item."}, contents=(_CSL_JSON,)),
    refuses=(DigestMissing,),
)
def get_csl_json(digest_id: UUID) -> Reply:
    """Cite a digest's book in CSL-JSON."""
    return Response(cite_csl_json(desk(), digest_id), content_type=CSL_JSON)


@citations.operation(
    "POST /read",
    takes=TakesText("A bibliography, in UTF-8.", (_BIBTEX, _CSL_JSON)),
    gives=Gives(
        {HTTPStatus.OK: "The books."},
        BooksSchema(),
        example={
            "books": [
                {
                    "title": "Silas Marner",
                    "author": "George Eliot",
                    "edition": "Everyman's Library, 1906",
                    "isbn": None,
                    "pages": None,
                }
            ]
        },
    ),
    refuses=(InvalidBibliography,),
)
def read_citations(sent: str) -> Reply:
    """Read the books a bibliography describes.

    Nothing is kept.
    """
    return {"books": facts_in(desk(), sent)}, HTTPStatus.OK, {}
