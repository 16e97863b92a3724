"""The shapes of digests as they are sent, and the way from them."""

import re
from collections.abc import Mapping
from typing import Any

from flask_smorest.fields import Upload
from marshmallow import ValidationError, fields, validate

from cards.digest import (
    MAX_EDITION,
    MAX_ISBN,
    MAX_LOCATOR,
    MAX_PAGES,
    MAX_PARTS,
    MAX_TEXT,
    MAX_TITLE,
    Commitment,
    Digest,
    Point,
    Quotation,
)
from cards.errors import InvalidDigest
from cards.locators import page_of
from cards.parts import Care
from service.api import meanings
from service.api.fields import Day, Request, Text, Whole

_HIGHEST_PAGE = 99_999
"""The highest page a locator can name (`cards.locators` reads five digits)."""


class FileSchema(Request):
    """A form with one file."""

    file = Upload(
        required=True,
        metadata={
            "description": "The digest: DOCX, ODT, RTF, HTML, Markdown or plain text, under its "
            "name."
        },
    )


_IGNORED = {"description": "Ignored, so that what was given can be sent back."}


class MendedPointSchema(Request):
    """A point as it is to be from now on."""

    text = Text(required=True, validate=validate.Length(1, MAX_TEXT), metadata=meanings.WORDS)
    locator = Text(
        allow_none=True,
        load_default=None,
        validate=validate.Length(1, MAX_LOCATOR),
        metadata=meanings.LOCATOR,
    )
    page = Whole(
        allow_none=True,
        load_default=None,
        validate=validate.Range(0, _HIGHEST_PAGE),
        metadata={
            "description": "The page its locator names; without one, `p.` and this is its locator."
        },
    )


class MendedCommitmentSchema(Request):
    """A commitment as it is to be from now on."""

    text = Text(required=True, validate=validate.Length(1, MAX_TEXT), metadata=meanings.WORDS)
    id = fields.Raw(allow_none=True, metadata=_IGNORED)
    caution = fields.Raw(allow_none=True, metadata=_IGNORED)


class MendedQuotationSchema(MendedPointSchema):
    """A quotation as it is to be from now on."""

    after = Whole(
        allow_none=True,
        load_default=None,
        validate=validate.Range(0, MAX_PARTS),
        metadata=meanings.AFTER,
    )


class WrongIsbn(str):
    """An ISBN of no right length. Only a digest that was read with it may keep it."""

    __slots__ = ()


NO_ISBN = "An ISBN has 10 or 13 digits, the last of ten may be X."


class _Isbn(Text):
    """An ISBN, its hyphens and spaces taken out."""

    def _deserialize(self, value: object, *args: Any, **kwargs: Any) -> str:  # noqa: ANN401 - passed on
        written = super()._deserialize(value, *args, **kwargs)
        plain = re.sub(r"[ -]", "", written).upper()
        if re.fullmatch(r"\d{9}[\dX]|\d{13}", plain, re.ASCII):
            return plain
        if not 0 < len(written) <= MAX_ISBN:
            raise ValidationError(NO_ISBN)
        return WrongIsbn(written)


class MendedDigestSchema(Request):
    """All a digest is to say from now on: what is left out is taken out."""

    title = Text(required=True, validate=validate.Length(1, MAX_TITLE), metadata=meanings.TITLE)
    author = Text(
        allow_none=True,
        load_default=None,
        validate=validate.Length(1, MAX_TITLE),
        metadata=meanings.AUTHOR,
    )
    edition = Text(
        allow_none=True,
        load_default=None,
        validate=validate.Length(1, MAX_EDITION),
        metadata=meanings.EDITION,
    )
    isbn = _Isbn(
        allow_none=True,
        load_default=None,
        metadata=meanings.ISBN | {"pattern": "^([0-9][ -]?){9}(([0-9][ -]?){3}[0-9]|[0-9Xx])$"},
    )
    pages = Whole(
        allow_none=True,
        load_default=None,
        validate=validate.Range(1, MAX_PAGES),
        metadata=meanings.PAGES,
    )
    finished_on = Day(allow_none=True, load_default=None, metadata=meanings.FINISHED)
    theme = Text(
        allow_none=True,
        load_default=None,
        validate=validate.Length(1, MAX_TEXT),
        metadata=meanings.THEME,
    )
    judgement = Text(
        allow_none=True,
        load_default=None,
        validate=validate.Length(1, MAX_TEXT),
        metadata=meanings.JUDGEMENT,
    )
    points = fields.List(
        fields.Nested(MendedPointSchema),
        load_default=[],
        validate=validate.Length(max=MAX_PARTS),
        metadata=meanings.POINTS,
    )
    commitments = fields.List(
        fields.Nested(MendedCommitmentSchema),
        load_default=[],
        validate=validate.Length(max=MAX_PARTS),
        metadata=meanings.COMMITMENTS,
    )
    quotations = fields.List(
        fields.Nested(MendedQuotationSchema),
        load_default=[],
        validate=validate.Length(max=MAX_PARTS),
        metadata=meanings.QUOTATIONS,
    )
    care = fields.Enum(
        Care,
        by_value=fields.String,
        load_default=None,
        metadata={"description": f"{meanings.CARE['description']} Left as it is unless given."},
    )
    id = fields.Raw(allow_none=True, metadata=_IGNORED)
    revision = fields.Raw(allow_none=True, metadata=_IGNORED)
    items = fields.Raw(allow_none=True, metadata=_IGNORED)
    warnings = fields.Raw(allow_none=True, metadata=_IGNORED)
    sources = fields.Raw(allow_none=True, metadata=_IGNORED)
    left = fields.Raw(allow_none=True, metadata=_IGNORED)
    advice = fields.Raw(allow_none=True, metadata=_IGNORED)


def mended_digest(sent: Mapping[str, Any]) -> Digest:
    """Return the digest that `MendedDigestSchema` loaded.

    Raises:
        InvalidDigest: it breaks a rule of digests, or a page and a locator disagree.
    """
    return Digest(
        title=sent["title"],
        author=sent["author"],
        edition=sent["edition"],
        isbn=sent["isbn"],
        pages=sent["pages"],
        finished_on=sent["finished_on"],
        theme=sent["theme"],
        judgement=sent["judgement"],
        points=tuple(
            Point(each["text"], _locator(each, f"points {number}"))
            for number, each in enumerate(sent["points"], 1)
        ),
        commitments=tuple(Commitment(each["text"]) for each in sent["commitments"]),
        quotations=tuple(
            Quotation(each["text"], _locator(each, f"quotations {number}"), each["after"])
            for number, each in enumerate(sent["quotations"], 1)
        ),
    )


def _locator(sent: Mapping[str, Any], where: str) -> str | None:
    """Return the locator of a point or quotation, made of its page when it has none."""
    locator: str | None = sent["locator"]
    page: int | None = sent["page"]
    if locator is None:
        return None if page is None else f"p. {page}"
    if page is not None and page_of(locator) != page:
        raise InvalidDigest(
            f"The page is said to be {page}, but the locator is “{locator}”. Send the locator "
            "alone.",
            where=where,
        )
    return locator
