"""Quotations as Web Annotations (W3C Recommendation, 23 February 2017), JSON-LD, out and in.

A digest's quotations are a collection with one page. Each is an annotation whose target is
the book (`urn:isbn:...`, or a name made of its title) with the book's words and what stands
around them (TextQuoteSelector), their offsets in one text of it (TextPositionSelector) and
their page (FragmentSelector, `page=54` as RFC 3778 has it), as far as they are known. What
the model has no word for stands under a prefix of our own: the locator as written, the
point it stands after, the reader's words where they are not the book's.
"""

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any
from urllib.parse import quote
from uuid import UUID

from cards.digest import Quotation
from cards.intake.isbn import compact, is_isbn
from cards.parts import KeptDigest, PartKind
from cards.proving import Anchor
from service.feeds.web_annotations_in import OURS, read
from service.use_cases.records import AnnotatedQuotation

CONTEXT = "http://www.w3.org/ns/anno.jsonld"
PAGES = "http://tools.ietf.org/rfc/rfc3778"
"""What a fragment `page=54` conforms to; the model's own example of a page names it so."""


def to_annotations(kept: KeptDigest, anchors: Mapping[UUID, Anchor]) -> str:
    """Return the quotations of a kept digest as an annotation collection, in JSON-LD.

    Args:
        kept: the digest.
        anchors: where its quotations were found, by the ids of their parts.
    """
    parts = kept.held(PartKind.QUOTATION)
    quotations = [
        Annotated(part.id, quotation, anchors.get(part.id))
        for part, quotation in zip(parts, kept.digest().quotations, strict=True)
    ]
    return written(collection(kept.id, kept.title, kept.author, kept.isbn, quotations))


def annotations_in(text: str) -> tuple[AnnotatedQuotation, ...]:
    """Return the quotations that annotations in JSON-LD hold.

    The point a quotation stands after is not among them: its number is of the digest it
    comes from, and says nothing of another's points.

    Raises:
        InvalidAnnotations: it is no such document, quotes nothing, or is over a bound.
    """
    return tuple(
        AnnotatedQuotation(replace(each.quotation, after=None), each.anchor)
        for each in read(text).quotations
    )


@dataclass(frozen=True, slots=True)
class Annotated:
    """A quotation with the identity of its part, and where it was found in the book's text."""

    part_id: UUID
    quotation: Quotation
    anchor: Anchor | None = None


def collection(
    digest_id: UUID,
    title: str,
    author: str | None,
    isbn: str | None,
    quotations: Sequence[Annotated],
) -> dict[str, Any]:
    """Return a digest's quotations as an annotation collection, ready for `json.dumps`.

    Args:
        digest_id: of the digest; the collection is named by it.
        title: of the book.
        author: of the book, or None.
        isbn: of the book; one that is not sound names nothing.
        quotations: in the order of the digest.
    """
    source = book_urn(title, isbn)
    name = f"urn:uuid:{digest_id}"
    made: dict[str, Any] = {
        "@context": [CONTEXT, {"catchword": OURS}],
        "id": name,
        "type": "AnnotationCollection",
        "label": f"Quotations from {title}" + (f", by {author}" if author else ""),
        "catchword:title": title,
        "total": len(quotations),
    }
    if author:
        made["catchword:author"] = author
    if quotations:
        made["first"] = {
            "id": f"{name}#page",
            "type": "AnnotationPage",
            "partOf": name,
            "startIndex": 0,
            "items": [_annotation(each, source) for each in quotations],
        }
    return made


def annotation(each: Annotated, title: str, isbn: str | None) -> dict[str, Any]:
    """Return one quotation as an annotation that stands alone."""
    return {
        "@context": [CONTEXT, {"catchword": OURS}],
        **_annotation(each, book_urn(title, isbn)),
    }


def written(made: Mapping[str, Any]) -> str:
    """Return a collection or an annotation as JSON."""
    return json.dumps(made, ensure_ascii=False, indent=2) + "\n"


def book_urn(title: str, isbn: str | None) -> str:
    """Return the name of a book: by its ISBN where that is sound, else by its title."""
    if isbn is not None and is_isbn(isbn):
        return f"urn:isbn:{compact(isbn)}"
    return f"{OURS}book:{quote(' '.join(title.split()), safe='')}"


def _annotation(each: Annotated, source: str) -> dict[str, Any]:
    quotation, anchor = each.quotation, each.anchor
    made: dict[str, Any] = {
        "id": f"urn:uuid:{each.part_id}",
        "type": "Annotation",
        "motivation": "bookmarking",
        "target": {"source": source, "selector": list(_selectors(quotation, anchor))},
    }
    if quotation.locator is not None:
        made["catchword:locator"] = quotation.locator
    if quotation.after is not None:
        made["catchword:after"] = quotation.after
    if anchor is not None:
        if anchor.exact != quotation.text:
            made["catchword:text"] = quotation.text
        made["catchword:place"] = {
            "catchword:fraction": anchor.fraction,
            "catchword:chapter": anchor.chapter,
            "catchword:page": anchor.page,
            "catchword:sha256": anchor.source,
        }
    return made


def _selectors(quotation: Quotation, anchor: Anchor | None) -> Iterator[dict[str, Any]]:
    if anchor is None:
        yield {"type": "TextQuoteSelector", "exact": quotation.text}
        page = None if quotation.page is None else str(quotation.page)
    else:
        yield {
            "type": "TextQuoteSelector",
            "exact": anchor.exact,
            "prefix": anchor.prefix,
            "suffix": anchor.suffix,
        }
        yield {"type": "TextPositionSelector", "start": anchor.start, "end": anchor.end}
        page = anchor.page
    if page is not None and page.isdecimal():
        yield {"type": "FragmentSelector", "conformsTo": PAGES, "value": f"page={page}"}
