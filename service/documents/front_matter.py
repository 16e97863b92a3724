"""The lines of `key: value` between two rows of dashes that open many Markdown files.

Read by our own few rules and not as YAML: readers write `title: Walden: or, Life
in the Woods`, which YAML refuses, and anchors and aliases have no place here.
"""

import re

from service.documents.properties import MAX_LENGTH

MAX_LINES = 200
"""Lines looked at for the closing row; without one, the dashes are part of the text."""
_FENCE = re.compile(r"-{3,}\s*")
_END = re.compile(r"(-{3,}|\.{3})\s*")
_PAIR = re.compile(r"([^\W\d][\w -]{0,40}?)\s*:(?:\s+(.*))?")


def split_front_matter(text: str) -> tuple[dict[str, str], str]:
    """Return the properties in a text's front matter, and the text after it."""
    lines = text.split("\n", MAX_LINES + 1)
    if not _FENCE.fullmatch(lines[0]):
        return {}, text
    for index, line in enumerate(lines[1 : MAX_LINES + 1], 1):
        if _END.fullmatch(line):
            found = _pairs(lines[1:index])
            return (found, "\n".join(lines[index + 1 :])) if found else ({}, text)
    return {}, text


def _pairs(lines: list[str]) -> dict[str, str]:
    found: dict[str, list[str]] = {}
    key = None
    for line in lines:
        pair = None if line[:1] in {" ", "\t", "-", "#"} else _PAIR.fullmatch(line.rstrip())
        if pair is not None:
            key = pair[1].lower()
            value = (pair[2] or "").strip()
            found[key] = [] if value in {"", ">", "|", ">-", "|-"} else _values(value)
        elif key is not None and line.strip() and not line.startswith("#"):
            found[key].append(_bare(line.strip().removeprefix("- ")))
    return {key: ", ".join(values)[:MAX_LENGTH] for key, values in found.items() if values}


def _values(value: str) -> list[str]:
    if value.startswith("[") and value.endswith("]"):
        return [_bare(part.strip()) for part in value[1:-1].split(",") if part.strip()]
    return [_bare(value)]


def _bare(value: str) -> str:
    if len(value) > 1 and value[0] == value[-1] and value[0] in "\"'":
        return value[1:-1]
    return value
