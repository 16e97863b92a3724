"""Price: what keeping a book costs, in minutes a day over the coming years."""

from http import HTTPStatus
from typing import Any
from uuid import UUID

from marshmallow import fields

from cards.errors import DigestMissing, InvalidDigest
from cards.parts import Care
from cards.sitting import Price
from service.api import examples
from service.api.desk import desk
from service.api.fields import Shape
from service.api.mended_shapes import MendedDigestSchema, mended_digest
from service.api.operations import Gives, Reply, Resource, Takes
from service.use_cases.price import price_of, price_of_kept

resource = Resource("price", "/digests", "What keeping a book of the library costs.")
prices = Resource("prices", "/prices", "What keeping a book would cost before it is taken up.")

_PATH = {"digest_id": "Id of the digest."}
_EXAMPLE = {
    "close": {"minutes_a_day": [0.55, 0.2, 0.14, 0.11, 0.09]},
    "steady": {"minutes_a_day": [0.35, 0.12, 0.08, 0.06, 0.05]},
    "resting": {"minutes_a_day": [0.0, 0.0, 0.0, 0.0, 0.0]},
}


class PriceSchema(Shape):
    """What keeping a book costs at one care."""

    minutes_a_day = fields.List(
        fields.Float(),
        required=True,
        metadata={"description": "On the average day of each of the coming five years."},
    )


class PricesSchema(Shape):
    """What keeping a book costs at each care, at the reader's own pace."""

    close = fields.Nested(
        PriceSchema, required=True, metadata={"description": "Kept close: a higher target."}
    )
    steady = fields.Nested(
        PriceSchema, required=True, metadata={"description": "Kept at the reader's own target."}
    )
    resting = fields.Nested(
        PriceSchema,
        required=True,
        metadata={"description": "Put to rest: nothing new, the rest now and then."},
    )


def _shown(found: dict[Care, Price]) -> Reply:
    return {care.value: price for care, price in found.items()}, HTTPStatus.OK, {}


@resource.operation(
    "GET /<uuid:digest_id>/price",
    path=_PATH,
    gives=Gives({HTTPStatus.OK: "Its price."}, PricesSchema(), example=_EXAMPLE),
    refuses=(DigestMissing,),
)
def get_price(digest_id: UUID) -> Reply:
    """See what keeping a book costs, counted from its first asking.

    An expectation under the memory model and the reader's own seconds for each kind of item.
    """
    return _shown(price_of_kept(desk(), digest_id))


@prices.operation(
    "POST",
    takes=Takes(MendedDigestSchema(), "What the digest says.", example=examples.MENDED),
    gives=Gives({HTTPStatus.OK: "Its price."}, PricesSchema(), example=_EXAMPLE),
    refuses=(InvalidDigest,),
)
def post_price(sent: dict[str, Any]) -> Reply:
    """See what keeping a book would cost before it is taken up.

    Nothing is kept.
    """
    return _shown(price_of(desk(), mended_digest(sent)))
