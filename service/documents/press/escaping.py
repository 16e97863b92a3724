"""Words as Markdown that means nothing but these words, and back.

What is escaped here shows as the same words wherever CommonMark (0.31, spec.commonmark.org)
is read, and comes back letter for letter.
"""

import re

NEW_LINE = "&#10;"
"""A new line where Markdown has room for one line only."""
NOTHING = "&zwnj;"
"""Stands for an empty line between lines of one paragraph; it shows as nothing."""
_SIGNS = re.compile(
    r"[\\*`~|]"
    r"|(?<![^\W_])_|_(?![^\W_])"
    r"|<(?=[A-Za-z/!?])"
    r"|&(?=#|[A-Za-z][A-Za-z0-9]*;)"
    r"|\[(?=\^)|\](?=[(\[:])"
)
_OPENING = re.compile(
    r"(#{1,6})(?=[ ]|$)|(>)|([-+])(?=[ ]|$)|([=-])(?=[=-]*$)|(:)|(\[)(?=[ xX]\](?: |$))"
)
_NUMBERED = re.compile(r"(\d{1,9})([.)])(?=[ ]|$)")
_EDGES = re.compile(r"^[ \t]+|(?<![ \t])[ \t]+$")
_CODED = re.compile(r"[\t\ufffd]")
_ESCAPED = re.compile(r"\\([!-/:-@\[-`{-~])|&#(\d{1,7});|(&zwnj;)|(\*+|(?<!\w)_+|_+(?!\w))")


def escaped(text: str) -> str:
    """Return the lines of one paragraph as Markdown, each but the last broken by a backslash."""
    return "\\\n".join(_line(line) or NOTHING for line in text.split("\n"))


def escaped_in_one(text: str) -> str:
    """Return words as Markdown on a single line, for a heading or between signs of emphasis."""
    line = NEW_LINE.join(_line(line) for line in text.split("\n"))
    return line[:-1] + "\\#" if line.endswith("#") else line


def unescaped(markdown: str) -> str:
    """Return the words that Markdown on one line stands for; signs of emphasis are taken out."""
    return _ESCAPED.sub(_meant, markdown)


def _meant(found: re.Match[str]) -> str:
    if found[1] is not None:
        return found[1]
    if found[2] is not None:
        number = int(found[2])
        return chr(number) if 0 < number < 0x110000 and not 0xD800 <= number < 0xE000 else "\ufffd"
    return ""


def _line(line: str) -> str:
    line = _SIGNS.sub(lambda sign: f"\\{sign[0]}", line)
    line = _OPENING.sub(lambda sign: f"\\{sign[0]}", line, count=1) if _opens(line) else line
    if (numbered := _NUMBERED.match(line)) is not None:
        line = f"{numbered[1]}\\{line[numbered.end(1) :]}"
    line = _EDGES.sub(_coded, line)
    return _CODED.sub(_coded, line)


def _opens(line: str) -> bool:
    return _OPENING.match(line) is not None


def _coded(found: re.Match[str]) -> str:
    return "".join(f"&#{ord(letter)};" for letter in found[0])
