"""The words inside a paragraph of pandoc's tree, with their emphasis reduced to bold or not."""

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any, TypeAlias

Node = dict[str, Any]
Content: TypeAlias = Any
"""What a node holds: a shape of its own for each kind of node."""

MAX_NESTING = 100
"""Levels of emphasis within emphasis followed; what lies deeper is left out."""
_BREAK = re.compile(r"<br\s*/?>", re.IGNORECASE)
_AROUND = " \t\n\xa0\ue002"
"""What may stand around the words of a note, the mark of a tab among it."""
_QUOTES = {"DoubleQuote": ("“", "”"), "SingleQuote": ("‘", "’")}
_LETTERS = {"Str": "", "Space": " ", "SoftBreak": " ", "LineBreak": "\n"}
_ATTRIBUTED = frozenset({"Span", "Link", "Cite"})
_HOLDERS = _ATTRIBUTED | {
    "Emph",
    "Underline",
    "Strong",
    "Strikeout",
    "Superscript",
    "Subscript",
    "SmallCaps",
    "Quoted",
}

_INNER: dict[str, Callable[[Content], Sequence[Sequence[Node]]]] = {
    "Div": lambda content: [content[1]],
    "BlockQuote": lambda content: [content],
    "BulletList": lambda content: content,
    "OrderedList": lambda content: content[1],
}
"""What the blocks that hold others hold."""


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of text, bold or not."""

    text: str
    strong: bool


def runs_of(inlines: Sequence[Node], *, literal: bool = False) -> list[Run]:
    """Return the runs of a paragraph.

    A line break stands as a line feed; quotation marks are curly; a footnote stands in
    square brackets where its mark was, since readers put page numbers there.
    Pictures are left out.
    """
    return list(_runs(inlines, literal, strong=False, depth=0))


def plain(runs: Sequence[Run]) -> str:
    """Return the text of runs."""
    return "".join(run.text for run in runs)


def _runs(inlines: Sequence[Node], literal: bool, *, strong: bool, depth: int) -> Iterator[Run]:
    if depth > MAX_NESTING:
        return
    for node in inlines:
        kind = node["t"]
        if kind in _LETTERS:
            yield Run(_LETTERS[kind] or node["c"], strong)
        elif kind in {"Code", "Math"} or (kind == "RawInline" and literal):
            yield Run(node["c"][1], strong)
        elif kind == "RawInline" and _BREAK.match(node["c"][1]):
            yield Run("\n", strong)
        elif kind == "Note":
            yield from _note(node["c"], literal, strong=strong, depth=depth)
        elif kind in _HOLDERS:
            opening, inner, closing = _held(kind, node["c"])
            yield Run(opening, strong)
            yield from _runs(inner, literal, strong=strong or kind == "Strong", depth=depth + 1)
            yield Run(closing, strong)


def _held(kind: str, content: Content) -> tuple[str, Sequence[Node], str]:
    """Return what stands before, inside and after an inline that holds others."""
    if kind == "Quoted":
        opening, closing = _QUOTES[content[0]["t"]]
        return opening, content[1], closing
    return "", content[1] if kind in _ATTRIBUTED else content, ""


def _note(nodes: Sequence[Node], literal: bool, *, strong: bool, depth: int) -> Iterator[Run]:
    words = " ".join(
        "".join(run.text for run in _runs(inlines, literal, strong=strong, depth=depth + 1))
        for inlines in _paragraphs(nodes, depth)
    ).strip(_AROUND)
    if words:
        yield Run(f" [{words}]", strong)


def _paragraphs(nodes: Sequence[Node], depth: int) -> Iterator[Sequence[Node]]:
    for node in nodes:
        if node["t"] in {"Para", "Plain"}:
            yield node["c"]
        elif node["t"] in _INNER and depth <= MAX_NESTING:
            for inner in _INNER[node["t"]](node["c"]):
                yield from _paragraphs(inner, depth + 1)
