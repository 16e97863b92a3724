"""Advice: what would make a digest worthier of being kept, and how much of its pages it takes."""

from http import HTTPStatus
from uuid import UUID

from marshmallow import fields

from cards.budget import Budget
from cards.errors import DigestMissing
from service.api import examples
from service.api.desk import desk
from service.api.digest_shapes import WarningSchema
from service.api.fields import Shape
from service.api.operations import Gives, Reply, Resource
from service.use_cases.advice import advise
from service.use_cases.library import open_digest
from service.use_cases.writing_out import measure

resource = Resource(
    "advice",
    "/digests",
    "What would make a digest worthier of being kept, and how much of its two pages it takes.",
)

_PATH = {"digest_id": "Id of the digest."}
_BUDGET = {
    "pages": [
        {"page": 1, "lines_used": 44, "lines_allowed": 43, "over": 1},
        {"page": 2, "lines_used": 4, "lines_allowed": 43, "over": 0},
    ],
    "cuts": [
        {
            "part": "theme",
            "lines": 1,
            "message": "Page one is 1 line over: take 1 line out of the theme, which has 15.",
        }
    ],
}


class PageUseSchema(Shape):
    """How much of one page is used."""

    page = fields.Integer(
        required=True,
        metadata={"description": "1: theme, points and commitments; 2: quotations."},
    )
    lines_used = fields.Integer(
        required=True, metadata={"description": "Lines of type, as set for printing."}
    )
    lines_allowed = fields.Integer(required=True, metadata={"description": "Lines the page has."})
    over = fields.Integer(
        required=True, metadata={"description": "Lines beyond the page, 0 when it fits."}
    )


class CutSchema(Shape):
    """Something that could be cut to bring a page back to its lines."""

    part = fields.String(
        required=True,
        metadata={
            "description": "The part it is about, numbered where there are several; without a "
            "number where it is for the reader to say which of them go."
        },
    )
    lines = fields.Integer(
        required=True, metadata={"description": "How many lines to take out there."}
    )
    message = fields.String(required=True, metadata={"description": "One sentence."})


class BudgetSchema(Shape):
    """How much of its two pages a digest takes, and what to cut where it is over."""

    pages = fields.List(
        fields.Nested(PageUseSchema), required=True, metadata={"description": "Page one and two."}
    )
    cuts = fields.List(
        fields.Nested(CutSchema),
        required=True,
        metadata={"description": "None while both fit; the most to be gained first."},
    )


class AdviceSchema(Shape):
    """Advice on a digest, never a wall."""

    advice = fields.List(
        fields.Nested(WarningSchema),
        required=True,
        metadata={"description": "In the order of its parts; none when there is nothing to say."},
    )


@resource.operation(
    "GET /<uuid:digest_id>/budget",
    path=_PATH,
    gives=Gives({HTTPStatus.OK: "Its budget."}, BudgetSchema(), example=_BUDGET),
    refuses=(DigestMissing,),
)
def get_budget(digest_id: UUID) -> Reply:
    """Measure a digest on its two pages.

    Theme, points and commitments fit one page, quotations the other. Over that, what to cut is
    said, and by how many lines.
    """
    budget: Budget = measure(desk(), open_digest(desk(), digest_id).kept.digest())
    return budget, HTTPStatus.OK, {}


@resource.operation(
    "GET /<uuid:digest_id>/advice",
    path=_PATH,
    gives=Gives(
        {HTTPStatus.OK: "The advice."},
        AdviceSchema(),
        example={"advice": examples.UNDERSTOOD["advice"]},
    ),
    refuses=(DigestMissing,),
)
def get_advice(digest_id: UUID) -> Reply:
    """Ask what would make a digest worthier of being kept.

    Commitments are read as on the day the book was finished, else today.
    """
    digest = open_digest(desk(), digest_id).kept.digest()
    return {"advice": list(advise(desk(), digest))}, HTTPStatus.OK, {}
