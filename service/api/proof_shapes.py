"""The shapes of a digest held against the text of its book, and of what is to be mended."""

from collections.abc import Mapping
from typing import Any

from flask_smorest.fields import Upload
from marshmallow import fields, validate

from cards.digest import MAX_PARTS
from cards.parts import PartKind
from cards.proving import Anchor, Found, SlipKind
from cards.proving.proof import Mend, Proof
from service.api import meanings
from service.api.digest_shapes import QuotationSchema
from service.api.fields import Request, Shape, Whole
from service.use_cases.prove import Proved


class BookFileSchema(Request):
    """A form with the file of a whole book."""

    file = Upload(
        required=True,
        metadata={
            "description": "The book: an EPUB, a text file or a web page of it, under its name."
        },
    )


class SlipSchema(Shape):
    """One place where a quotation differs from its book."""

    kind = fields.Enum(
        SlipKind,
        by_value=fields.String,
        required=True,
        metadata={"description": "What sort of slip it is."},
    )
    quoted = fields.String(
        required=True,
        metadata={"description": "The reader's words there; empty where some are missing."},
    )
    book = fields.String(
        required=True,
        metadata={"description": "The book's words there; empty where the reader added some."},
    )
    start = fields.Integer(
        required=True,
        metadata={"description": "Where in the quotation it begins, in characters from 0."},
    )
    end = fields.Integer(
        required=True, metadata={"description": "Where in the quotation it has ended."}
    )


class BookChapterSchema(Shape):
    """A chapter of a book."""

    number = fields.Integer(
        required=True, metadata={"description": "Counted from 1 through the whole book."}
    )
    title = fields.String(
        required=True, metadata={"description": "Its heading as printed, or empty."}
    )


class FoundSchema(Shape):
    """Where the words of a quotation stand in the text of its book."""

    exact = fields.String(
        required=True, metadata={"description": "The book's own words, as they stand there."}
    )
    prefix = fields.String(
        required=True, metadata={"description": "What stands right before them."}
    )
    suffix = fields.String(required=True, metadata={"description": "What stands right after them."})
    start = fields.Integer(
        required=True, metadata={"description": "Where in the text they begin, in characters."}
    )
    end = fields.Integer(
        required=True, metadata={"description": "Where in the text they have ended."}
    )
    fraction = fields.Float(
        required=True, metadata={"description": "How far into the book they begin, 0 to 1."}
    )
    likeness = fields.Float(
        required=True,
        metadata={"description": "Of the words, 0 to 100; 100 where none differs."},
    )
    chapter = fields.Nested(
        BookChapterSchema,
        required=True,
        allow_none=True,
        metadata={"description": "The chapter they begin in, or null."},
    )
    pages = fields.List(
        fields.String(),
        required=True,
        metadata={"description": "The pages they stand on, as printed; none where not known."},
    )
    places = fields.Integer(
        required=True,
        metadata={
            "description": "How many places fit as well; more than 1 where nothing tells which is "
            "meant."
        },
    )
    slips = fields.List(
        fields.Nested(SlipSchema),
        required=True,
        metadata={"description": "What differs, word by word, in order."},
    )
    mended = fields.String(
        required=True,
        metadata={"description": "The quotation with the book's words in place of its slips."},
    )


class AnchorSchema(Shape):
    """Where a quotation was found, in this text of its book or in an earlier one."""

    fraction = fields.Float(
        required=True, metadata={"description": "How far into the book it stands, 0 to 1."}
    )
    chapter = fields.Integer(
        required=True, allow_none=True, metadata={"description": "Number of its chapter, or null."}
    )
    page = fields.String(
        required=True, allow_none=True, metadata={"description": "Its page as printed, or null."}
    )
    source = fields.String(
        required=True,
        metadata={"description": "SHA-256 of the file of that text, in hexadecimal digits."},
    )


class QuotationProofSchema(Shape):
    """One quotation held against the text of its book."""

    number = fields.Integer(required=True, metadata={"description": "Of the quotation, from 1."})
    quotation = fields.Nested(
        QuotationSchema, required=True, metadata={"description": "As the digest has it."}
    )
    found = fields.Nested(
        FoundSchema,
        required=True,
        allow_none=True,
        metadata={"description": "Where it stands, with its slips; null where it does not."},
    )
    contradiction = fields.String(
        required=True,
        allow_none=True,
        metadata={"description": "A sentence where the text contradicts its locator, or null."},
    )
    locator = fields.String(
        required=True,
        allow_none=True,
        metadata={"description": "The locator the text gives it, or null."},
    )
    after = fields.Integer(
        required=True,
        allow_none=True,
        metadata={"description": "Number of the point it stands after by the text, or null."},
    )
    mends = fields.List(
        fields.Enum(Mend, by_value=fields.String),
        required=True,
        metadata={
            "description": "What the text can mend: slips in its `words`, a `locator` that lacks "
            "or is wrong, a `place` among the points that lacks."
        },
    )
    anchor = fields.Nested(
        AnchorSchema,
        required=True,
        allow_none=True,
        metadata={
            "description": "Where it was last found; of an earlier edition where this text does "
            "not have it; null when it never was."
        },
    )


class ProofSchema(Shape):
    """A digest held against the text of its book. The text itself is never given out."""

    revision = fields.Integer(required=True, metadata=meanings.REVISION)
    book = fields.String(
        required=True, metadata={"description": "Name of the file the text was read from."}
    )
    quotations = fields.List(
        fields.Nested(QuotationProofSchema),
        required=True,
        metadata={"description": "Each quotation, in the digest's order."},
    )


class WantedMendSchema(Request):
    """What is to be mended in one quotation."""

    number = Whole(
        required=True,
        validate=validate.Range(1, MAX_PARTS),
        metadata={"description": "Of the quotation, from 1."},
    )
    mend = fields.List(
        fields.Enum(Mend, by_value=fields.String),
        required=True,
        validate=validate.Length(1, len(Mend)),
        metadata={"description": "What of it; what the text cannot mend stays as it is."},
    )


class MendingSchema(Request):
    """What is to be mended from the text of a book."""

    quotations = fields.List(
        fields.Nested(WantedMendSchema),
        load_default=None,
        validate=validate.Length(1, MAX_PARTS),
        metadata={"description": "The quotations to be mended; everything in all, unless given."},
    )


def proof_said(proved: Proved) -> dict[str, object]:
    """Return what `ProofSchema` dumps."""
    parts = proved.kept.held(PartKind.QUOTATION)
    return {
        "revision": proved.kept.revision,
        "book": proved.book,
        "quotations": [
            _proof(proof, proved.anchors.get(part.id))
            for part, proof in zip(parts, proved.proofs, strict=True)
        ],
    }


def wanted_mends(sent: Mapping[str, Any], quotations: int) -> dict[int, set[Mend]]:
    """Return what `MendingSchema` loaded, by quotation; everything in so many unless given."""
    if sent["quotations"] is None:
        return {number: set(Mend) for number in range(1, quotations + 1)}
    wanted: dict[int, set[Mend]] = {}
    for each in sent["quotations"]:
        wanted.setdefault(each["number"], set()).update(each["mend"])
    return wanted


def _proof(proof: Proof, anchor: Anchor | None) -> dict[str, object]:
    return {
        "number": proof.number,
        "quotation": proof.quotation,
        "found": None if proof.found is None else _found(proof.found),
        "contradiction": proof.contradiction,
        "locator": proof.locator,
        "after": proof.after,
        "mends": proof.mends,
        "anchor": anchor,
    }


def _found(found: Found) -> dict[str, object]:
    return {
        "exact": found.exact,
        "prefix": found.prefix,
        "suffix": found.suffix,
        "start": found.start,
        "end": found.end,
        "fraction": found.fraction,
        "likeness": found.score,
        "chapter": found.spot.chapter,
        "pages": found.spot.pages,
        "places": found.places,
        "slips": found.slips,
        "mended": found.mended,
    }
