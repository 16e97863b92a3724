"""Web Annotations read: from our own collections, and from whoever else keeps to the model."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any
from urllib.parse import unquote

from cards.digest import MAX_LOCATOR, MAX_TEXT, MAX_TITLE, Digest, Quotation
from cards.errors import InvalidAnnotations, InvalidDigest
from cards.intake.isbn import is_isbn
from cards.proving import Anchor
from service.feeds.json_ld import (
    MAX_ANNOTATIONS,
    each_of,
    parsed,
    text_of,
    too_large,
    types_of,
)

OURS = "urn:x-catchword:"
"""What the prefix `catchword` stands for."""
_PAGE = re.compile(r"#?page=(\d{1,5})(?:&.*)?")
_CONTAINERS = frozenset({"AnnotationCollection", "AnnotationPage"})
_MAX_OFFSET = 2**53


@dataclass(frozen=True, slots=True)
class Read:
    """A quotation read from an annotation.

    Attributes:
        name: of the annotation, a URI, or "".
        source: the book's name there, a URI.
        quotation: the words, their locator and the point they stand after, as far as told.
        exact, prefix, suffix: the book's words and what stands around them; "" where not told.
        start, end: their offsets in some text of the book, or None.
        anchor: all of that, where the annotation tells which text it is of; else None.
        comments: what its bodies say, in plain text.
    """

    name: str
    source: str
    quotation: Quotation
    exact: str
    prefix: str = ""
    suffix: str = ""
    start: int | None = None
    end: int | None = None
    anchor: Anchor | None = None
    comments: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Annotations:
    """What a file of annotations holds.

    Attributes:
        title, author, isbn: of the book, where it is told.
        quotations: in the order of the file.
        left: a sentence for each annotation of which no quotation was made.
    """

    title: str | None
    author: str | None
    isbn: str | None
    quotations: tuple[Read, ...]
    left: tuple[str, ...]


def read(text: str) -> Annotations:
    """Return the quotations in a file of annotations.

    Args:
        text: JSON-LD: a collection, a page, an annotation, or an array of annotations.

    Raises:
        InvalidAnnotations: it is no JSON, holds no annotation or none that quotes words of a
            book, or is over a bound.
    """
    root = parsed(text)
    found = list(_annotations(root))
    if len(found) > MAX_ANNOTATIONS:
        raise too_large()
    if not found:
        raise InvalidAnnotations(
            "This holds no Web Annotation: nothing in it is of the type Annotation. Export the "
            "annotations as JSON-LD of the W3C Web Annotation Data Model.",
            where="annotations",
        )
    quotations: list[Read] = []
    left: list[str] = []
    for number, each in enumerate(found, 1):
        made = _quotation(each)
        if isinstance(made, str):
            left.append(f"Annotation {number} ({_name(each) or 'without a name'}) {made}.")
        else:
            quotations.append(made)
    if not quotations:
        raise InvalidAnnotations(
            f"Of {len(found)} annotations none makes a quotation. {left[0]}", where="annotations"
        )
    head = root if isinstance(root, dict) else {}
    title, author, isbn = _book(head, quotations)
    return Annotations(title, author, isbn, tuple(quotations), tuple(left))


def _annotations(value: object) -> Iterator[dict[str, Any]]:
    """Yield the annotations of a value in order, through collections, pages and arrays."""
    waiting = [value]
    while waiting:
        each = waiting.pop()
        if isinstance(each, list):
            waiting += reversed(each)
        elif isinstance(each, dict):
            types = types_of(each)
            if "Annotation" in types:
                yield each
            elif types & _CONTAINERS or "@graph" in each:
                held = (each.get(key) for key in ("first", "items", "@graph"))
                waiting += [one for one in held if isinstance(one, dict | list)][::-1]


def _quotation(made: dict[str, Any]) -> Read | str:
    """Return the quotation an annotation makes, or why it makes none."""
    for target in each_of(made.get("target")):
        if not isinstance(target, dict):
            continue
        selectors = list(_selectors(target.get("selector")))
        quote = _of_type(selectors, "TextQuoteSelector")
        exact = text_of(quote.get("exact"), MAX_TEXT + 1) if quote is not None else ""
        if quote is None or not exact.strip():
            continue
        words = text_of(made.get("catchword:text"), MAX_TEXT + 1) or exact
        try:
            quotation = Quotation(words, _locator(made, selectors), _after(made))
            # A digest says what text is and how much; its bounds are those of any other door.
            Digest("Annotations", quotations=(Quotation(quotation.text, quotation.locator),))
        except InvalidDigest as error:
            return f"can not be kept: {error.message[:1].lower()}{error.message[1:].rstrip('.')}"
        position = _position(selectors)
        start, end = position
        prefix, suffix = (text_of(quote.get(key), MAX_TEXT) for key in ("prefix", "suffix"))
        return Read(
            name=_name(made),
            source=_source(target),
            quotation=quotation,
            exact=exact,
            prefix=prefix,
            suffix=suffix,
            start=start,
            end=end,
            anchor=_anchor(made, exact, (prefix, suffix), position),
            comments=tuple(_comments(made)),
        )
    return "quotes no words, so no quotation was made of it"


def _selectors(value: object) -> Iterator[dict[str, Any]]:
    """Yield selectors, those that refine others after them, each once."""
    waiting = list(reversed(each_of(value)))
    while waiting:
        each = waiting.pop()
        if isinstance(each, dict):
            yield each
            waiting += reversed(each_of(each.get("items")))
            waiting += reversed(each_of(each.get("refinedBy")))


def _of_type(selectors: list[dict[str, Any]], wanted: str) -> dict[str, Any] | None:
    return next((each for each in selectors if wanted in types_of(each)), None)


def _position(selectors: list[dict[str, Any]]) -> tuple[int, int] | tuple[None, None]:
    position = _of_type(selectors, "TextPositionSelector") or {}
    start, end = position.get("start"), position.get("end")
    if type(start) is int and type(end) is int and 0 <= start <= end < _MAX_OFFSET:
        return start, end
    return None, None


def _locator(made: dict[str, Any], selectors: list[dict[str, Any]]) -> str | None:
    said = text_of(made.get("catchword:locator"), MAX_LOCATOR)
    if said.strip():
        return said
    for each in selectors:
        if "FragmentSelector" in types_of(each):
            page = _PAGE.fullmatch(text_of(each.get("value"), MAX_LOCATOR))
            if page is not None:
                return f"p. {int(page[1])}"
    return None


def _after(made: dict[str, Any]) -> int | None:
    after = made.get("catchword:after")
    return after if type(after) is int and 0 <= after < _MAX_OFFSET else None


def _anchor(
    made: dict[str, Any],
    exact: str,
    around: tuple[str, str],
    position: tuple[int, int] | tuple[None, None],
) -> Anchor | None:
    place = made.get("catchword:place")
    start, end = position
    if not isinstance(place, dict) or start is None or end is None:
        return None
    fraction, sha = place.get("catchword:fraction"), place.get("catchword:sha256")
    chapter, page = place.get("catchword:chapter"), place.get("catchword:page")
    if not isinstance(fraction, int | float) or isinstance(fraction, bool):
        return None
    if not 0 <= fraction <= 1 or not isinstance(sha, str) or not re.fullmatch("[0-9a-f]{64}", sha):
        return None
    return Anchor(
        exact=exact,
        prefix=around[0],
        suffix=around[1],
        start=start,
        end=end,
        fraction=float(fraction),
        chapter=chapter if type(chapter) is int and 0 < chapter < _MAX_OFFSET else None,
        page=page[:20] if isinstance(page, str) and page else None,
        source=sha,
    )


def _comments(made: dict[str, Any]) -> Iterator[str]:
    value = made.get("bodyValue")
    bodies = each_of(made.get("body"))
    for body in [*([{"value": value}] if value is not None else []), *bodies]:
        if isinstance(body, dict):
            for each in [body, *each_of(body.get("items"))]:
                said = text_of(each.get("value"), MAX_TEXT) if isinstance(each, dict) else ""
                if said.strip():
                    yield said


def _book(
    head: dict[str, Any], quotations: list[Read]
) -> tuple[str | None, str | None, str | None]:
    """Return title, author and ISBN, where all quotations are of one book and it says so."""
    title = text_of(head.get("catchword:title"), MAX_TITLE).strip() or None
    author = text_of(head.get("catchword:author"), MAX_TITLE).strip() or None
    isbn = None
    if len({each.source for each in quotations}) == 1:
        source = quotations[0].source
        named = source.removeprefix("urn:isbn:")
        if named != source and is_isbn(named):
            isbn = named
        of_title = source.removeprefix(f"{OURS}book:")
        if title is None and of_title != source:
            title = unquote(of_title)[:MAX_TITLE].strip() or None
    return title, author, isbn


def _source(target: dict[str, Any]) -> str:
    source = target.get("source")
    if isinstance(source, dict):
        return _name(source)
    return text_of(source, 2000)


def _name(made: dict[str, Any]) -> str:
    return text_of(made.get("id", made.get("@id")), 2000)
