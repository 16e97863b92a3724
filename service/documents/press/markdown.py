"""Our own written form as Markdown: the facts in front matter, the parts under headings."""

import json
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from cards.intake.blocks import Block, Shape
from cards.intake.headings import Part, part_named
from cards.intake.own_blocks import MARK, MORE, PLACE, TEMPLATE, VERSION, Role
from cards.intake.own_words import OWN_WORDS
from service.documents.press.escaping import escaped, escaped_in_one, unescaped

_KEYS = {"edition": "edition", "isbn": "isbn", "pages": "pages", "finished": "finished"}
_PLAIN = frozenset({"pages", "finished"})
_ROLE_IN = {
    Part.THEME: Role.THEME,
    Part.POINTS: Role.POINT,
    Part.COMMITMENTS: Role.COMMITMENT,
    Part.QUOTATIONS: Role.QUOTATION,
    Part.JUDGEMENT: Role.JUDGEMENT,
}
_FENCE = "---"
_MAX_FRONT = 60
"""Lines in which front matter has to end; ours has seven, and readers add some."""
_PAIR = re.compile(r"([\w -]{1,60}?):(?: +(.*))?")
_HEADING = re.compile(r" {0,3}(#{1,6})(?:[ \t]+(.*?))?(?:[ \t]+#+)?[ \t]*")
_ITEM = re.compile(r"( {0,3}(?:(\d{1,9})[.)]|[-*+]))(?: (?:\[[ xX]\] )?|$)")
_QUOTE = re.compile(r" {0,3}> ?")
_PLACE = re.compile(r"\*((?:[^*\\]|\\.)+)\*")
_LABELS = {getattr(words, name).casefold(): name for words in OWN_WORDS.values() for name in _KEYS}


def markdown(blocks: Sequence[Block], *, mark: str = VERSION) -> str:
    """Return blocks of our own form as Markdown; `blocks_of_markdown` reads it back."""
    front = [_FENCE, f"{MARK}: {mark}"]
    title = ""
    for block in blocks:
        match block.style:
            case Role.TITLE:
                title = block.text
                front.append(f"title: {_string(title)}")
            case Role.AUTHOR:
                front.append(f"author: {_string(block.text)}")
            case Role.FACT:
                front.append(_fact(block.text))
    body = _Body()
    for block in blocks:
        body.take(block)
    parts = ["\n".join([*front, _FENCE]), f"# {escaped_in_one(title)}", *body.parts]
    return "\n\n".join(parts) + "\n"


def mark_of_markdown(text: str) -> str | None:
    """Return the mark of our own form that a text bears in its front matter, or None."""
    if not text.startswith(f"{_FENCE}\n"):
        return None
    for line in text.split("\n", _MAX_FRONT)[1:_MAX_FRONT]:
        if line.rstrip() == _FENCE:
            return None
        key, sign, value = line.partition(":")
        if sign and key.strip() == MARK:
            return value.strip().strip("\"'")
    return None


def blocks_of_markdown(text: str) -> tuple[Block, ...]:
    """Return the blocks of Markdown in our own form, whatever else a reader wrote in it."""
    front, body = _split(text)
    said = list(_front_blocks(front))
    reading = _Reading()
    for line in body:
        reading.take(line)
    reading.close()
    return (*_titled(said, reading.title, front), *reading.blocks)


def _string(text: str) -> str:
    return json.dumps(text, ensure_ascii=False).replace("\ufffd", "\\ufffd")


def _fact(line: str) -> str:
    label, _, value = line.partition(": ")
    key = _LABELS[label.casefold()]
    return (
        f"{key}: {value}" if key in _PLAIN and value[:1].isdigit() else f"{key}: {_string(value)}"
    )


@dataclass
class _Body:
    """The parts of the Markdown under the title."""

    parts: list[str] = field(default_factory=list)
    number: int = 0
    indent: str = ""

    def take(self, block: Block) -> None:
        role = Role(block.style)
        match role:
            case Role.TITLE | Role.AUTHOR | Role.FACT:
                return
            case Role.SECTION:
                self.number = 0
                self.parts.append(f"## {escaped_in_one(block.text)}")
            case Role.THEME | Role.JUDGEMENT:
                self.parts.append(escaped(block.text))
            case Role.POINT:
                self.number += 1
                self._item(f"{self.number}. ", block.text)
            case Role.COMMITMENT:
                self._item("- ", block.text)
            case Role.QUOTATION:
                self.indent = "> "
                self.parts.append(self._within(escaped(block.text)))
            case Role.POINT_PLACE | Role.QUOTATION_PLACE:
                self._more(f"*{escaped_in_one(block.text)}*")
            case _:
                self._more(escaped(block.text))

    def _item(self, marker: str, text: str) -> None:
        self.indent = " " * len(marker)
        self.parts.append(marker + self._within(escaped(text)).removeprefix(self.indent))

    def _more(self, text: str) -> None:
        self.parts[-1] += f"\n{self.indent.rstrip()}\n{self._within(text)}"

    def _within(self, text: str) -> str:
        return "\n".join(f"{self.indent}{line}" for line in text.split("\n"))


def _split(text: str) -> tuple[list[str], list[str]]:
    lines = text.split("\n")
    for number, line in enumerate(lines[1:], 1):
        if line.rstrip() == _FENCE:
            return lines[1:number], lines[number + 1 :]
    return [], lines


def _front_blocks(lines: Sequence[str]) -> Iterator[Block]:
    english = OWN_WORDS["en"]
    for line in lines:
        found = _PAIR.fullmatch(line.rstrip(" "))
        key = "" if found is None else found[1].strip().casefold()
        value = "" if found is None else _value(found[2] or "")
        if key == MARK or not line.strip() or (found is not None and not value):
            continue
        if key == "title":
            yield Block(Shape.HEADING, value, level=1, style=Role.TITLE.value)
        elif key == "author":
            yield Block(Shape.PARAGRAPH, value, style=Role.AUTHOR.value)
        elif key in _KEYS:
            label = getattr(english, _KEYS[key])
            yield Block(Shape.PARAGRAPH, f"{label}: {value}", style=Role.FACT.value)
        else:
            yield Block(Shape.PARAGRAPH, line, style=Role.FACT.value)


def _value(written: str) -> str:
    if written.startswith('"') and written.endswith('"') and len(written) > 1:
        try:
            return str(json.loads(written, strict=False))
        except ValueError:
            return written[1:-1]
    if len(written) > 1 and written[0] == written[-1] == "'":
        return written[1:-1].replace("''", "'")
    return written


def _titled(said: list[Block], title: str | None, front: Sequence[str]) -> list[Block]:
    """Return what the front matter says, with the title that stands over the text.

    Where the two differ, in a digest the one over the text counts, and the other is
    told of; in a template both go on, since one of them is a hint.
    """
    given = [block for block in said if block.style == Role.TITLE]
    if title is None or any(block.text == title for block in given):
        return said
    over = Block(Shape.HEADING, title, level=1, style=Role.TITLE.value)
    if any(TEMPLATE in line for line in front):
        return [over, *said]
    others = [block for block in said if block.style != Role.TITLE]
    told = [Block(Shape.PARAGRAPH, f"title: {block.text}") for block in given]
    return [over, *told, *others]


@dataclass
class _Reading:
    """One pass over the lines under the front matter."""

    blocks: list[Block] = field(default_factory=list)
    title: str | None = None
    part: Part | None = None
    shape: Shape = Shape.PARAGRAPH
    indent: int = 0
    paragraphs: list[list[str]] = field(default_factory=list)
    parted: bool = False

    def take(self, line: str) -> None:
        heading = _HEADING.fullmatch(line)
        item = _ITEM.match(line)
        quoted = _QUOTE.match(line)
        inside = self.paragraphs and self.shape is Shape.ITEM and _deep(line, self.indent)
        if inside:
            self._line(line[self.indent :])
        elif not line.strip():
            self._blank()
        elif heading is not None:
            self.close()
            self._heading(len(heading[1]), heading[2] or "")
        elif quoted is not None:
            if self.shape is not Shape.QUOTE or (self.parted and self.paragraphs):
                self.close()
            self.shape = Shape.QUOTE
            rest = line[quoted.end() :]
            if rest.strip():
                self._line(rest, quote=True)
            else:
                self.paragraphs.append([])
        elif item is not None:
            self.close()
            self.shape, self.indent = Shape.ITEM, len(item[1]) + 1
            self._line(line[item.end() :])
        else:
            if self.shape is not Shape.PARAGRAPH and self.parted:
                self.close()
            self._line(line.strip(" "))

    def _blank(self) -> None:
        self.parted = True

    def _line(self, line: str, *, quote: bool = False) -> None:
        if not self.paragraphs or (self.parted and not quote):
            self.paragraphs.append([])
        self.parted = False
        self.paragraphs[-1].append(line)

    def close(self) -> None:
        """Finish the item, quotation or paragraphs that were being read."""
        read = [paragraph for paragraph in self.paragraphs if paragraph]
        shape, self.shape = self.shape, Shape.PARAGRAPH
        self.paragraphs, self.parted = [], False
        if not read:
            return
        role = None if self.part is None else _ROLE_IN[self.part]
        if role is None or _SHAPE_OF[role] is not shape:
            self.blocks += [Block(shape, _text(lines), level=_LEVEL[shape]) for lines in read]
            return
        for number, lines in enumerate(read):
            place = _PLACE.fullmatch("".join(lines)) if number and role in PLACE else None
            if place is not None:
                self.blocks.append(Block(Shape.PARAGRAPH, unescaped(place[1]), style=PLACE[role]))
            else:
                style = MORE.get(role, role) if number else role
                self.blocks.append(Block(Shape.PARAGRAPH, _text(lines), style=style.value))

    def _heading(self, level: int, written: str) -> None:
        text = unescaped(written)
        if level == 1 and self.title is None and self.part is None:
            self.title = text
            return
        announced = part_named(text)
        self.part = None if announced is None else announced.part
        style = "" if announced is None else Role.SECTION.value
        self.blocks.append(Block(Shape.HEADING, text, level=level, style=style))


_SHAPE_OF = {
    Role.THEME: Shape.PARAGRAPH,
    Role.POINT: Shape.ITEM,
    Role.COMMITMENT: Shape.ITEM,
    Role.QUOTATION: Shape.QUOTE,
    Role.JUDGEMENT: Shape.PARAGRAPH,
}
_LEVEL = {Shape.PARAGRAPH: 0, Shape.ITEM: 1, Shape.QUOTE: 0}


def _deep(line: str, indent: int) -> bool:
    return bool(line.strip()) and not line[:indent].strip(" ") and len(line) > indent


def _text(lines: Sequence[str]) -> str:
    """Return the words of a paragraph's lines; a line not broken on purpose runs on."""
    text = ""
    for line in lines:
        broken = (len(line) - len(line.rstrip("\\"))) % 2 == 1
        text += unescaped(line[:-1]) + "\n" if broken else unescaped(line.rstrip(" ")) + " "
    return text[:-1]
