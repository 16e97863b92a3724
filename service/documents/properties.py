"""What a document says about itself, outside its text."""

from collections.abc import Iterator
from typing import Any

from lxml import etree

from service.documents.archives import Parts
from service.documents.characters import cleaned
from service.documents.formats import Format
from service.documents.inlines import plain, runs_of
from service.documents.xml import MalformedXml, parsed

MAX_LENGTH = 1_000
"""Characters kept of one property."""
_PART = {Format.DOCX: "docProps/core.xml", Format.ODT: "meta.xml"}
_NOBODY = frozenset(
    ["", "python-docx", "un-named", "unknown", "user", "microsoft office user", "windows user"]
)
"""What programs write where nobody said who wrote a document."""
_KEYS = {"title": "title", "creator": "author", "initial-creator": "author"}


def archived_properties(kind: Format, parts: Parts) -> dict[str, str]:
    """Return the title and author a zipped document's own properties give.

    Damaged properties count as none: nothing in the text depends on them.
    """
    try:
        root = parsed(parts[_PART[kind]])
    except (KeyError, MalformedXml):
        return {}
    found: dict[str, str] = {}
    for element in root.iter():
        if isinstance(element.tag, str):
            key = _KEYS.get(etree.QName(element).localname)
            value = " ".join(cleaned(element.text or "").split())
            if key is not None and value.casefold() not in _NOBODY:
                found.setdefault(key, value[:MAX_LENGTH])
    return found


def tree_properties(meta: dict[str, Any]) -> dict[str, str]:
    """Return the properties pandoc read off a document, as strings."""
    found = {}
    for key, value in meta.items():
        text = " ".join(cleaned(", ".join(_strings(value))).split())
        if text:
            found[key.lower()] = text[:MAX_LENGTH]
    return found


def _strings(value: dict[str, Any]) -> Iterator[str]:
    match value.get("t"), value.get("c"):
        case "MetaString", str(text):
            yield text
        case "MetaInlines", list(inlines):
            yield plain(runs_of(inlines))
        case "MetaList", list(values):
            for inner in values[:20]:
                yield from _strings(inner) if inner.get("t") != "MetaList" else ()
        case "MetaBlocks", list(nodes):
            for node in nodes:
                if node["t"] in {"Para", "Plain"}:
                    yield plain(runs_of(node["c"]))
        case _:
            return
