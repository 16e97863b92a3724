"""What is printed of a sitting, as the data the typesetter takes: words, never code."""

import unicodedata
from typing import Any

from cards.kinds.base import Asked, Cue, KindName
from service.documents.press.sheet import broken, day_in_words, paragraphs_of
from service.use_cases.sitting_records import PrintedSheet, SheetLine

_LANGUAGE = "en"
_LONGEST = 2_000
"""Characters of one text that are printed: a page of it; more is cut, and says so."""
_UPON_LETTERS = frozenset({"Mn", "Me", "Cf"})
"""Categories of what stands on a letter or joins it to the next."""
_DIRECTIONS = "\u200e\u200f"
"""The marks of direction, which stand alone by right."""
_BARE = 30
"""Marks and joiners without a letter that one text may have: as many as one letter has to bear
(UAX 15, section 13). They show as nothing, and the time to set them grows with their square."""
_LINES = {KindName.THEME: 6}
_USUAL_LINES = 3


def sitting_of(printed: PrintedSheet) -> dict[str, Any]:
    """Return a sitting on paper as the JSON data of `sitting.typ`."""
    return {
        "title": f"Sitting, {day_in_words(printed.day, _LANGUAGE)}",
        "lang": _LANGUAGE,
        "minutes": printed.sheet.minutes,
        "cues": [_cue(line) for line in printed.lines],
        "answers": [_answer(line) for line in printed.lines],
    }


def _cue(line: SheetLine) -> dict[str, Any]:
    cue = line.cue
    way = cue.asked[0]
    return {
        "number": line.number,
        "heading": cue.heading,
        "words": _text(cue.words),
        "question": cue.question,
        "caution": cue.caution,
        "way": way.value,
        "ways": [each.value for each in cue.asked],
        "lines": _LINES.get(line.kind, _USUAL_LINES),
        "book": _book(line) if _names_its_book(cue) else None,
        "landmarks": [{"number": mark.number, "words": _text(mark.text)} for mark in cue.landmarks],
        "pieces": [_piece(piece, _LONGEST // len(cue.pieces)) for piece in cue.pieces],
        "choices": [
            _line(", ".join(filter(None, (book.title, book.author)))) for book in cue.choices
        ],
    }


def _names_its_book(cue: Cue) -> bool:
    """Tell whether the book is to be named beside a cue that does not name it itself."""
    return bool({Asked.GAP, Asked.PAGE, Asked.CHAPTER, Asked.BLANKS} & {*cue.asked})


def _answer(line: SheetLine) -> dict[str, Any]:
    said = line.answered
    return {
        "number": line.number,
        "words": _text(said.words),
        "source": ", ".join(filter(None, (_book(line), said.locator and _line(said.locator)))),
        "caution": said.caution,
    }


def _book(line: SheetLine) -> str:
    return _line(", ".join(filter(None, (line.title, line.author))).replace("\n", " "))


def _piece(words: str, most: int) -> str:
    """Return the words between two blanks, of long ones those beside the blanks alone."""
    half = most // 2
    cut = words if len(words) <= most else f"{words[:half].rstrip()} […] {words[-half:].lstrip()}"
    return _line(cut)


def _text(words: str) -> list[dict[str, Any]]:
    cut = words if len(words) <= _LONGEST else words[:_LONGEST].rstrip() + " […]"
    return paragraphs_of(_borne(cut), _LANGUAGE)


def _line(words: str) -> str:
    return broken(_borne(words))


def _borne(words: str) -> str:
    """Return words with few marks and joiners that have only a space to stand on."""
    if words.isascii():
        return words
    kept, bare, alone = [], 0, True
    for sign in words:
        if unicodedata.category(sign) not in _UPON_LETTERS:
            alone = sign.isspace()
        elif alone and sign not in _DIRECTIONS:
            bare += 1
            if bare > _BARE:
                continue
        kept.append(sign)
    return "".join(kept)
