"""The shapes of digests as they are given, and the way to them."""

from collections.abc import Iterable, Mapping

from marshmallow import fields

from cards.cautions import caution
from cards.digest import Digest, Notice
from cards.intake import Understood
from cards.items import Standing
from cards.parts import Care, KeptDigest, PartKind
from service.api import meanings
from service.api.fields import Shape
from service.use_cases.add_digest import Added, Status
from service.use_cases.library import ShelvedDigest


class PointSchema(Shape):
    """A point."""

    text = fields.String(required=True, metadata=meanings.WORDS)
    locator = fields.String(required=True, allow_none=True, metadata=meanings.LOCATOR)
    page = fields.Integer(required=True, allow_none=True, metadata=meanings.PAGE)


class CommitmentSchema(Shape):
    """A commitment as a file words it."""

    text = fields.String(required=True, metadata=meanings.WORDS)


class KeptCommitmentSchema(Shape):
    """A commitment of a digest in the library."""

    id = fields.UUID(required=True, metadata={"description": "To check in with."})
    text = fields.String(required=True, metadata=meanings.WORDS)
    caution = fields.String(
        required=True,
        allow_none=True,
        metadata={"description": "To be shown with it when it touches health, money or the law."},
    )


class QuotationSchema(Shape):
    """A quotation."""

    text = fields.String(required=True, metadata=meanings.WORDS)
    locator = fields.String(required=True, allow_none=True, metadata=meanings.LOCATOR)
    page = fields.Integer(required=True, allow_none=True, metadata=meanings.PAGE)
    after = fields.Integer(required=True, allow_none=True, metadata=meanings.AFTER)


class WarningSchema(Shape):
    """Something to know about how one part was understood."""

    part = fields.String(
        required=True,
        metadata={"description": "The part it is about, numbered where there are several."},
    )
    message = fields.String(required=True, metadata={"description": "One sentence."})


def care_field() -> fields.Enum[Care]:
    """Return the field for how much of a book is kept."""
    return fields.Enum(Care, by_value=fields.String, required=True, metadata=meanings.CARE)


class SourceSchema(Shape):
    """Words of a document that one part was read from."""

    part = fields.String(
        required=True,
        metadata={
            "description": "The part, numbered where there are several; `document` for words that "
            "only arrange it."
        },
    )
    words = fields.String(
        required=True,
        metadata={"description": "As they stood there; the cells of a row are parted by tabs."},
    )


class BookSchema(Shape):
    """A book."""

    title = fields.String(required=True, metadata=meanings.TITLE)
    author = fields.String(required=True, allow_none=True, metadata=meanings.AUTHOR)
    edition = fields.String(required=True, allow_none=True, metadata=meanings.EDITION)
    isbn = fields.String(required=True, allow_none=True, metadata=meanings.ISBN)
    pages = fields.Integer(required=True, allow_none=True, metadata=meanings.PAGES)
    finished_on = fields.Date(required=True, allow_none=True, metadata=meanings.FINISHED)


class DigestSchema(BookSchema):
    """What a digest says, its commitments left aside."""

    theme = fields.String(required=True, allow_none=True, metadata=meanings.THEME)
    judgement = fields.String(required=True, allow_none=True, metadata=meanings.JUDGEMENT)
    points = fields.List(fields.Nested(PointSchema), required=True, metadata=meanings.POINTS)
    quotations = fields.List(
        fields.Nested(QuotationSchema), required=True, metadata=meanings.QUOTATIONS
    )


class UnderstoodDigestSchema(DigestSchema):
    """A digest as a file was understood; nothing of it is kept."""

    commitments = fields.List(
        fields.Nested(CommitmentSchema), required=True, metadata=meanings.COMMITMENTS
    )
    warnings = fields.List(
        fields.Nested(WarningSchema),
        required=True,
        metadata={"description": "What to know about how the file was understood."},
    )
    sources = fields.List(
        fields.Nested(SourceSchema),
        required=True,
        metadata={"description": "For each part found, the words of the file it came from."},
    )
    left = fields.List(
        fields.String(),
        required=True,
        metadata={"description": "The words of the file that were not taken in, in its order."},
    )
    advice = fields.List(
        fields.Nested(WarningSchema),
        required=True,
        metadata={"description": "What would make it worthier of being kept."},
    )


class ItemCountsSchema(Shape):
    """How many items of each kind a digest makes; a kind it makes none of is left out."""

    theme = fields.Integer(metadata={"description": "Recall the theme."})
    place = fields.Integer(metadata={"description": "Put a quotation where it belongs."})
    restate = fields.Integer(metadata={"description": "Say a commitment again."})


class KeptDigestSchema(DigestSchema):
    """A digest in the library."""

    id = fields.UUID(required=True, metadata={"description": "Of the digest."})
    revision = fields.Integer(required=True, metadata=meanings.REVISION)
    care = care_field()
    commitments = fields.List(
        fields.Nested(KeptCommitmentSchema), required=True, metadata=meanings.COMMITMENTS
    )
    items = fields.Nested(
        ItemCountsSchema, required=True, metadata={"description": "The items it makes."}
    )


class StandingsSchema(Shape):
    """How many items of a digest stand how."""

    unasked = fields.Integer(required=True, metadata={"description": "Not asked yet."})
    settling = fields.Integer(
        required=True, metadata={"description": "Came back, but not for three weeks yet."}
    )
    held = fields.Integer(required=True, metadata={"description": "Kept for three weeks or more."})
    faded = fields.Integer(
        required=True, metadata={"description": "Came back blank when last asked."}
    )


class DigestEntrySchema(BookSchema):
    """A digest as the list of the library shows it."""

    id = fields.UUID(required=True, metadata={"description": "Of the digest."})
    revision = fields.Integer(required=True, metadata=meanings.REVISION)
    care = care_field()
    added_at = fields.DateTime(required=True, metadata={"description": "When it was added."})
    points = fields.Integer(required=True, metadata={"description": "How many points it has."})
    commitments = fields.Integer(
        required=True, metadata={"description": "How many commitments it has."}
    )
    quotations = fields.Integer(
        required=True, metadata={"description": "How many quotations it has."}
    )
    standings = fields.Nested(
        StandingsSchema,
        required=True,
        metadata={"description": "Its items by how they stand with the reader's memory."},
    )


class DigestPageSchema(Shape):
    """One page of the library."""

    digests = fields.List(
        fields.Nested(DigestEntrySchema),
        required=True,
        metadata={"description": "The digests, the one added last first."},
    )
    next = fields.String(
        required=True,
        allow_none=True,
        metadata={"description": "Cursor of the page that follows, null on the last."},
    )


class AddedDigestSchema(Shape):
    """What became of a file that was handed over."""

    digest = fields.Nested(
        KeptDigestSchema, required=True, metadata={"description": "The digest as it is kept now."}
    )
    file = fields.String(required=True, metadata={"description": "The file's name."})
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


def understood_digest(understood: Understood, advice: Iterable[Notice]) -> dict[str, object]:
    """Return what `UnderstoodDigestSchema` dumps."""
    return digest_said(understood.digest) | {
        "warnings": understood.notices,
        "sources": understood.sources,
        "left": understood.left,
        "advice": list(advice),
    }


def kept_digest(kept: KeptDigest, items: Mapping[str, int]) -> dict[str, object]:
    """Return what `KeptDigestSchema` dumps."""
    return digest_said(kept.digest()) | {
        "id": kept.id,
        "revision": kept.revision,
        "care": kept.care,
        "commitments": [
            {"id": part.id, "text": part.text, "caution": caution(part.text)}
            for part in kept.held(PartKind.COMMITMENT)
        ],
        "items": items,
    }


def added_digest(added: Added, file: str) -> dict[str, object]:
    """Return what `AddedDigestSchema` dumps."""
    return {
        "digest": kept_digest(added.kept, added.items),
        "file": file,
        "title": added.kept.title,
        "status": added.status,
        "items": added.items,
        "warnings": added.notices,
    }


def digest_entry(entry: ShelvedDigest) -> dict[str, object]:
    """Return what `DigestEntrySchema` dumps."""
    kept = entry.kept
    return book_said(kept) | {
        "id": kept.id,
        "revision": kept.revision,
        "care": kept.care,
        "added_at": entry.added_at,
        "points": len(kept.held(PartKind.POINT)),
        "commitments": len(kept.held(PartKind.COMMITMENT)),
        "quotations": len(kept.held(PartKind.QUOTATION)),
        "standings": {standing.value: entry.standings.get(standing, 0) for standing in Standing},
    }


def book_said(book: Digest | KeptDigest) -> dict[str, object]:
    """Return what `BookSchema` dumps."""
    return {
        "title": book.title,
        "author": book.author,
        "edition": book.edition,
        "isbn": book.isbn,
        "pages": book.pages,
        "finished_on": book.finished_on,
    }


def digest_said(digest: Digest) -> dict[str, object]:
    """Return what `DigestSchema` dumps, and the commitments as they are worded."""
    return book_said(digest) | {
        "theme": digest.theme,
        "judgement": digest.judgement,
        "commitments": digest.commitments,
        "points": digest.points,
        "quotations": digest.quotations,
    }
