"""A digest as JSON, in the shape that `digest.schema.json` states."""

import json
from collections.abc import Iterator, Mapping
from datetime import date
from typing import Any, TypeVar

from cards.digest import Commitment, Digest, Point, Quotation
from cards.errors import DocumentBroken

VERSION = 1
MAX_BYTES = 8 * 1024 * 1024
"""Bytes of one file: all a digest may hold, each letter escaped to six."""
_TEXTS = ("title", "author", "edition", "isbn", "theme", "judgement")
_KNOWN = frozenset(
    ("catchword", "pages", "finished_on", "points", "commitments", "quotations", *_TEXTS)
)
_WORDS = {str: "words in quotation marks", int: "a whole number", list: "a list", dict: "an object"}

_Kind = TypeVar("_Kind")


def json_of(digest: Digest) -> str:
    """Return a digest as JSON; `digest_of_json` reads it back."""
    return (
        json.dumps(
            {
                "catchword": VERSION,
                "title": digest.title,
                "author": digest.author,
                "edition": digest.edition,
                "isbn": digest.isbn,
                "pages": digest.pages,
                "finished_on": digest.finished_on and digest.finished_on.isoformat(),
                "theme": digest.theme,
                "judgement": digest.judgement,
                "points": [
                    {"text": point.text, "locator": point.locator} for point in digest.points
                ],
                "commitments": [{"text": commitment.text} for commitment in digest.commitments],
                "quotations": [
                    {"text": one.text, "locator": one.locator, "after": one.after}
                    for one in digest.quotations
                ],
            },
            ensure_ascii=False,
            indent=2,
        )
        + "\n"
    )


def digest_of_json(name: str, content: bytes) -> Digest:
    """Return the digest a JSON file holds.

    Raises:
        DocumentBroken: it is no JSON, or not of the shape of a digest; the sentence says
            where.
        InvalidDigest: what it holds breaks a bound of a digest.
    """
    if len(content) > MAX_BYTES:
        raise _refused(name, f"it is larger than {MAX_BYTES // (1024 * 1024)} MB")
    try:
        found = json.loads(
            content.decode("utf-8-sig"), parse_constant=_no_constant, object_pairs_hook=_once
        )
    except UnicodeDecodeError as error:
        raise _refused(name, "it is not written in UTF-8") from error
    except json.JSONDecodeError as error:
        raise _refused(name, f"it is no JSON from line {error.lineno} on") from error
    except (ValueError, RecursionError) as error:
        said = "it is no JSON that a digest can be written in, or says something twice"
        raise _refused(name, said) from error
    if not isinstance(found, dict) or found.get("catchword") != VERSION:
        raise _refused(name, f"it is not an object with “catchword”: {VERSION}")
    if unknown := sorted(set(found) - _KNOWN):
        raise _refused(name, f"a digest has no “{unknown[0][:60]}”")
    read = _Object(name, "", found)
    return Digest(
        title=read.needed("title", str),
        author=read.value("author", str),
        edition=read.value("edition", str),
        isbn=read.value("isbn", str),
        pages=read.value("pages", int),
        finished_on=read.day("finished_on"),
        theme=read.value("theme", str),
        judgement=read.value("judgement", str),
        points=tuple(
            Point(one.needed("text", str), one.value("locator", str))
            for one in read.objects("points", {"text", "locator"})
        ),
        commitments=tuple(
            Commitment(one.needed("text", str)) for one in read.objects("commitments", {"text"})
        ),
        quotations=tuple(
            Quotation(one.needed("text", str), one.value("locator", str), one.value("after", int))
            for one in read.objects("quotations", {"text", "locator", "after"})
        ),
    )


class _Object:
    """An object of the file, read with care, and where it stands for what is said of it."""

    def __init__(self, name: str, where: str, found: Mapping[str, Any]) -> None:
        self.name = name
        self.where = where
        self.found = found

    def value(self, key: str, kind: type[_Kind]) -> _Kind | None:
        found = self.found.get(key)
        if found is None:
            return None
        if not isinstance(found, kind) or isinstance(found, bool):
            raise _refused(self.name, f"{self._at(key)} is not {_WORDS[kind]}")
        return found

    def needed(self, key: str, kind: type[_Kind]) -> _Kind:
        found = self.value(key, kind)
        if found is None:
            raise _refused(self.name, f"{self._at(key)} is missing")
        return found

    def day(self, key: str) -> date | None:
        written = self.value(key, str)
        try:
            return None if written is None else date.fromisoformat(written)
        except ValueError as error:
            said = f"{self._at(key)} is no date such as 2026-01-18"
            raise _refused(self.name, said) from error

    def objects(self, key: str, known: set[str]) -> Iterator["_Object"]:
        for number, one in enumerate(self.value(key, list) or (), 1):
            where = f"{key} {number}"
            if not isinstance(one, dict):
                raise _refused(self.name, f"{where} is not an object")
            if unknown := sorted(set(one) - known):
                raise _refused(self.name, f"{where} has no “{unknown[0][:60]}”")
            yield _Object(self.name, where, one)

    def _at(self, key: str) -> str:
        return f"the {key} of {self.where}" if self.where else f"the {key}"


def _no_constant(constant: str) -> None:
    raise ValueError(constant)


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """Return an object whose keys are each said once: of two values one would be dropped."""
    found = dict(pairs)
    if len(found) < len(pairs):
        raise ValueError(found)
    return found


def _refused(name: str, why: str) -> DocumentBroken:
    return DocumentBroken(
        f"“{name}” does not hold a digest as Catchword writes it: {why}. Mend it there, or hand "
        "over a document instead.",
        where="file",
    )
