"""From pandoc's syntax tree to blocks."""

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from cards.intake.blocks import Block, Shape
from service.documents.characters import cleaned
from service.documents.inlines import Content, Node, plain, runs_of
from service.documents.marks import FORGERIES, PAGE, TAB, Mark, taken
from service.documents.markup import words_of_markup

MAX_DEPTH = 60
"""Levels of nesting followed; a word processor offers ten."""
_QUOTING = frozenset(
    [
        *("quote", "quotations", "quotation", "block text", "block quotation", "block quote"),
        *("intense quote", "zitat", "zitate", "intensives zitat", "citation", "citation intense"),
        *("cita", "cita destacada", "citazione", "citazione intensa", "citação", "citaat"),
    ]
)
"""Paragraph styles that word processors set block quotations in, in lower case."""
_TERMS = re.compile(r"definition term( tight)?|list heading", re.IGNORECASE)
_DEFINITIONS = re.compile(r"definition definition( tight)?|list contents", re.IGNORECASE)
"""Paragraph styles OpenDocument files set definition lists in, which it has none of."""
_CLASSES = {"Definition-Term": "Definition Term", "Definition": "Definition"}
RULE = "* * *"
"""What a line across the page comes to, and a page break too: words of nobody."""
_SPACES = re.compile(r"[^\S\n]+")


class NestedTooDeep(ValueError):
    """A tree nested beyond `MAX_DEPTH`."""


def blocks_of(
    nodes: Sequence[Node], marks: Sequence[Mark] = (), *, literal: bool = False
) -> tuple[Block, ...]:
    """Return the blocks a sequence of pandoc's block nodes comes to.

    Args:
        nodes: of pandoc's tree.
        marks: what the paragraphs' marks stand for, see `marks`.
        literal: whether what looks like markup was meant as words, as in plain text.

    Raises:
        NestedTooDeep: beyond `MAX_DEPTH` levels.
    """
    walk = _Walk(marks, literal)
    walk.all(nodes, "", 0)
    while walk.blocks and walk.blocks[-1].text == RULE:
        walk.blocks.pop()
    return tuple(walk.blocks)


@dataclass
class _Walk:
    marks: Sequence[Mark]
    literal: bool
    blocks: list[Block] = field(default_factory=list)

    def all(self, nodes: Iterable[Node], style: str, depth: int) -> None:
        if depth > MAX_DEPTH:
            raise NestedTooDeep
        for node in nodes:
            self.one(node, style, depth)

    def one(self, node: Node, style: str, depth: int) -> None:
        handle = _HANDLERS.get(node["t"])
        if handle is not None:
            handle(self, node.get("c"), style, depth)

    def heading(self, content: Content, style: str, _depth: int) -> None:
        self.text(Shape.HEADING, content[2], _style(content[1]) or style, level=content[0])

    def paragraph(self, inlines: Content, style: str, _depth: int) -> None:
        self.text(Shape.PARAGRAPH, inlines, style)

    def verse(self, lines: Content, style: str, _depth: int) -> None:
        inlines = [inline for line in lines for inline in (*line, {"t": "LineBreak"})]
        self.text(Shape.PARAGRAPH, inlines, style)

    def code(self, content: Content, style: str, _depth: int) -> None:
        self.words(content[1], style)

    def raw(self, content: Content, style: str, _depth: int) -> None:
        if self.literal:
            self.words(content[1], style)
        elif content[0] == "html":
            for line in words_of_markup(content[1]).split("\n\n"):
                self.words(line, style)

    def division(self, content: Content, style: str, depth: int) -> None:
        self.all(content[1], _style(content[0]) or style, depth + 1)

    def figure(self, content: Content, style: str, depth: int) -> None:
        self.all([*content[2], *content[1][1]], style, depth + 1)

    def bullets(self, items: Content, style: str, depth: int) -> None:
        self.items(items, None, style, depth)

    def numbers(self, content: Content, style: str, depth: int) -> None:
        self.items(content[1], content[0][0], style, depth)

    def text(self, shape: Shape, inlines: Sequence[Node], style: str, level: int = 0) -> None:
        runs, mark = taken(runs_of(inlines, literal=self.literal), self.marks)
        pages = plain(runs).split(PAGE)
        strong = all(run.strong for run in runs if run.text.strip(PAGE + TAB).strip())
        if mark is not None:
            style, strong = mark.style or style, strong or mark.bold
        strong = strong or _TERMS.fullmatch(style) is not None
        if shape is Shape.PARAGRAPH and style.lower() in _QUOTING:
            shape = Shape.QUOTE
        if style.lower() == "horizontal line" and not tidy(plain(runs)):
            self.rule(None, "", 0)
        for number, words in enumerate(pages):
            if number:
                self.rule(None, "", 0)
            if text := tidy(words):
                self.blocks.append(Block(shape, text, level=level, strong=strong, style=style))

    def rule(self, _content: Content, _style: str, _depth: int) -> None:
        if self.blocks and self.blocks[-1].text != RULE:
            self.blocks.append(Block(Shape.PARAGRAPH, RULE))

    def words(self, words: str, style: str) -> None:
        if text := tidy(words):
            self.blocks.append(Block(Shape.PARAGRAPH, text, style=style))

    def within(self, nodes: Iterable[Node], style: str, depth: int) -> list[Block]:
        inner = _Walk(self.marks, self.literal)
        inner.all(nodes, style, depth + 1)
        return inner.blocks

    def quote(self, nodes: Content, style: str, depth: int) -> None:
        for block in self.within(nodes, style, depth):
            defined = _DEFINITIONS.fullmatch(block.style) is not None
            if block.shape in {Shape.PARAGRAPH, Shape.HEADING} and not defined:
                self.blocks.append(
                    Block(Shape.QUOTE, block.text, strong=block.strong, style=block.style)
                )
            else:
                self.blocks.append(block)

    def items(
        self, items: Iterable[Iterable[Node]], first: int | None, style: str, depth: int
    ) -> None:
        for offset, nodes in enumerate(items):
            inner = self.within(nodes, style, depth)
            own = 0
            while own < len(inner) and inner[own].shape is Shape.PARAGRAPH:
                own += 1
            if own:
                self.blocks.append(
                    Block(
                        Shape.ITEM,
                        "\n".join(block.text for block in inner[:own]),
                        level=1,
                        number=None if first is None else first + offset,
                        strong=all(block.strong for block in inner[:own]),
                        style=inner[0].style,
                    )
                )
            self.blocks.extend(_deeper(block) for block in inner[own:])

    def definitions(self, pairs: Content, style: str, depth: int) -> None:
        for term, definitions in pairs:
            if text := tidy(plain(runs_of(term, literal=self.literal))):
                self.blocks.append(Block(Shape.PARAGRAPH, text, strong=True, style=style))
            if len(definitions) == 1:
                self.all(definitions[0], style, depth + 1)
            else:
                self.items(definitions, None, style, depth)

    def table(self, content: Content, _style: str, depth: int) -> None:
        head, bodies, foot = content[3], content[4], content[5]
        self.all(content[1][1], "", depth + 1)
        rows = list(head[1])
        for body in bodies:
            rows += [*body[2], *body[3]]
        rows += foot[1]
        cells = [[cell[4] for cell in row[1]] for row in rows]
        if len(cells) == 1 and len(cells[0]) == 1:
            self.all(cells[0][0], "", depth + 1)
            return
        for row in cells:
            texts = [self.cell(nodes, depth) for nodes in row]
            if any(texts):
                self.blocks.append(Block(Shape.ROW, "\t".join(texts)))

    def cell(self, nodes: Iterable[Node], depth: int) -> str:
        lines = []
        for block in self.within(nodes, "", depth):
            text = block.text.replace("\t", " ")
            if block.shape is Shape.ITEM:
                text = f"- {text}" if block.number is None else f"{block.number}. {text}"
            lines.append(text)
        return "\n".join(lines)


def _deeper(block: Block) -> Block:
    if block.shape is not Shape.ITEM:
        return block
    return replace(block, level=block.level + 1)


def tidy(text: str) -> str:
    """Return text with single spaces or tabs, none at a line's ends, and no empty lines."""
    text = cleaned(text).replace(TAB, "\t").translate(FORGERIES)
    lines = (_SPACES.sub(_space, line).strip() for line in text.split("\n"))
    return "\n".join(line for line in lines if line)


def _space(found: re.Match[str]) -> str:
    return "\t" if "\t" in found[0] else " "


def _style(attributes: Sequence[Any]) -> str:
    """Return the style a division stands for: its name, or the class pandoc made of it."""
    named = next((str(value) for key, value in attributes[2] if key == "custom-style"), "")
    return named or next((_CLASSES[each] for each in attributes[1] if each in _CLASSES), "")


_Handler = Callable[[_Walk, Content, str, int], None]

_HANDLERS: dict[str, _Handler] = {
    "Header": _Walk.heading,
    "Para": _Walk.paragraph,
    "Plain": _Walk.paragraph,
    "LineBlock": _Walk.verse,
    "CodeBlock": _Walk.code,
    "RawBlock": _Walk.raw,
    "BlockQuote": _Walk.quote,
    "BulletList": _Walk.bullets,
    "OrderedList": _Walk.numbers,
    "HorizontalRule": _Walk.rule,
    "DefinitionList": _Walk.definitions,
    "Div": _Walk.division,
    "Figure": _Walk.figure,
    "Table": _Walk.table,
}
