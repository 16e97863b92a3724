"""What a draft holds in several, as JSON, and back: its fields, sources and notices.

Fields of the form keep the order they were typed in.
"""

import json
from collections.abc import Iterable, Mapping

from cards.digest import Notice
from cards.intake import Source


def typed_to_json(typed: Mapping[str, str]) -> str:
    """Return the fields of a form by their names."""
    return json.dumps(dict(typed), ensure_ascii=False)


def typed_from_json(written: str) -> dict[str, str]:
    """Return the fields `typed_to_json` wrote."""
    found: dict[str, str] = json.loads(written)
    return found


def sources_to_json(sources: Iterable[Source]) -> str:
    """Return the words of the document each part came from."""
    return json.dumps(
        [{"part": source.part, "words": source.words} for source in sources], ensure_ascii=False
    )


def sources_from_json(written: str) -> tuple[Source, ...]:
    """Return the sources `sources_to_json` wrote."""
    return tuple(Source(found["part"], found["words"]) for found in json.loads(written))


def left_to_json(left: Iterable[str]) -> str:
    """Return the words of the document that were not taken in."""
    return json.dumps(list(left), ensure_ascii=False)


def left_from_json(written: str) -> tuple[str, ...]:
    """Return the words `left_to_json` wrote."""
    return tuple(json.loads(written))


def notices_to_json(notices: Iterable[Notice]) -> str:
    """Return what to tell the reader about how a document was understood."""
    return json.dumps(
        [{"part": notice.part, "message": notice.message} for notice in notices],
        ensure_ascii=False,
    )


def notices_from_json(written: str) -> tuple[Notice, ...]:
    """Return the notices `notices_to_json` wrote."""
    return tuple(Notice(found["part"], found["message"]) for found in json.loads(written))
