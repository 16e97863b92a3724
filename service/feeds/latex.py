r"""Letters as BibTeX files write them, `{\"o}` for ö, and back.

The commands are those of LaTeX itself (Lamport, LaTeX: A Document Preparation System,
second edition, 3.2 and table 3.1 and 3.2) with the letters of the T1 encoding.
"""

import re
import unicodedata

_ACCENTS = {
    "`": "\u0300",
    "'": "\u0301",
    "^": "\u0302",
    "~": "\u0303",
    "=": "\u0304",
    "u": "\u0306",
    ".": "\u0307",
    '"': "\u0308",
    "r": "\u030a",
    "H": "\u030b",
    "v": "\u030c",
    "d": "\u0323",
    "c": "\u0327",
    "k": "\u0328",
    "b": "\u0331",
}
_COMMAND_OF = {mark: command for command, mark in _ACCENTS.items()}
_LETTERS = {
    "ss": "ß",
    "o": "ø",
    "O": "Ø",
    "l": "ł",
    "L": "Ł",
    "ae": "æ",
    "AE": "Æ",
    "oe": "œ",
    "OE": "Œ",
    "aa": "å",
    "AA": "Å",
    "i": "ı",
    "j": "ȷ",
    "dh": "ð",
    "DH": "Ð",
    "th": "þ",
    "TH": "Þ",
    "dj": "đ",
    "DJ": "Đ",
    "ng": "ŋ",
    "NG": "Ŋ",
    "S": "§",
    "P": "¶",
    "textbackslash": "\\",
    "textasciitilde": "~",
    "textasciicircum": "^",
    "dots": "…",
    "textbraceleft": "{",
    "textbraceright": "}",
    "ldots": "…",
    "textquotedbl": '"',
    "guillemotleft": "«",
    "guillemotright": "»",
    "textendash": "–",
    "textemdash": "—",
}
_PLAIN = {"---": "—", "--": "–", "``": "“", "''": "”", "~": " ", "\\ ": " ", "\\\\": " "}
_TOKEN = re.compile(
    r"\\(?P<accent>[`'^~=.\"])\s*(?:\{\s*(?P<one>\\[ij]|[^\W\d_]?)\s*(?:\{\})?\}"
    r"|(?P<two>\\[ij](?![A-Za-z])|[^\W\d_]))"
    r"|\\(?P<word>[uvHcdbkr])(?:\s*\{\s*(?P<three>\\[ij]|[^\W\d_]?)\s*\}"
    r"|\s+(?P<four>\\[ij](?![A-Za-z])|[^\W\d_]))"
    r"|\\(?P<letter>[A-Za-z]+)\s*(?:\{\})?"
    r"|\\(?P<sign>[&%$#_{}])"
    r"|(?P<plain>---|--|``|''|~|\\\\|\\ )"
    r"|(?P<brace>[{}])"
)
_SIGNS = {
    "\\": r"\textbackslash{}",
    "~": r"\textasciitilde{}",
    "^": r"\textasciicircum{}",
    "{": r"\textbraceleft{}",
    "}": r"\textbraceright{}",
    **{sign: f"\\{sign}" for sign in "&%$#_"},
}
_LIGATURES = re.compile(r"-(?=-)|`(?=`)|'(?=')")


def from_latex(text: str) -> str:
    """Return the words a value of a BibTeX field stands for, without braces and commands."""
    words = _TOKEN.sub(_meant, text)
    return " ".join(unicodedata.normalize("NFC", words).split())


def to_latex(text: str) -> str:
    """Return words as the value of a BibTeX field, to stand between braces.

    Accented letters become commands; letters of other scripts stay as they are, in UTF-8.
    """
    parted = _LIGATURES.sub(lambda sign: f"{sign[0]}\0", " ".join(text.split()))
    return "".join(_written(letter) for letter in parted).replace("\0", "{}")


def _meant(found: re.Match[str]) -> str:
    if found["brace"]:
        return ""
    if found["plain"]:
        return _PLAIN[found["plain"]]
    if found["sign"]:
        return found["sign"]
    if found["letter"]:
        return _LETTERS.get(found["letter"], "")
    accent = found["accent"] or found["word"]
    base = next((found[name] for name in ("one", "two", "three", "four") if found[name]), "")
    base = base.removeprefix("\\")
    return base + _ACCENTS[accent] if base else ""


def _written(letter: str) -> str:
    if letter in _SIGNS:
        return _SIGNS[letter]
    if letter.isascii():
        return letter
    parts = unicodedata.normalize("NFD", letter)
    base, mark = parts[0], parts[1:]
    if not base.isascii() or mark not in _COMMAND_OF:
        return letter
    command = _COMMAND_OF[mark]
    base = f"\\{base}" if base in {"i", "j"} and command not in _BELOW else base
    return f"{{\\{command}{{{base}}}}}" if command.isalpha() else f"{{\\{command}{base}}}"


_BELOW = frozenset("dckb")
"""Accents under a letter, which leave its dot alone."""
