"""What is printed of a talk, as the data the typesetter takes: words, never code."""

import unicodedata
from typing import Any

from cards.talk import Agenda, Length, Line, Section, Stage
from service.documents.press.sheet import paragraphs_of, stacked

_LANGUAGE = "en"
_MARGIN = " […]"
_SHOWN = 220
"""Letters of a line on the talking page: two lines and a half of it."""
_CHECKED = 110
"""Letters of the same overleaf, where it is only to be known again."""
_TEXTS = 1_700
"""Letters of a theme or a judgement: what the two pages of a digest have room for."""
_BESIDE = 160
_WITH = {Length.READ_IT: "who read the book", Length.DID_NOT: "who did not read it"}
_TOLD = {Stage.THEME, Stage.JUDGEMENT}


def talk_of(agenda: Agenda) -> dict[str, Any]:
    """Return a talk as the JSON data of `talk.typ`."""
    title = fitted(agenda.title, _SHOWN)
    return {
        "title": f"Talk: {title}",
        "lang": _LANGUAGE,
        "book": title,
        "author": None if agenda.author is None else fitted(agenda.author, _CHECKED),
        "with": f"About {agenda.length} minutes, with someone {_WITH[agenda.length]}",
        "talking": [_talking(each) for each in agenda.sections],
        "checking": [_checking(each) for each in agenda.sections if each.answers],
    }


def fitted(text: str, most: int) -> str:
    """Return a text in one line, cut where it is wider than so many Latin letters, and saying so.

    Letters of East Asia are twice as wide (Unicode annex 11).
    """
    line = " ".join(text.split())
    width = 0
    for place, letter in enumerate(line):
        width += 2 if unicodedata.east_asian_width(letter) in "WF" else 1
        if width > most:
            return line[:place].rstrip() + _MARGIN
    return line


def _talking(section: Section) -> dict[str, Any]:
    most = _TEXTS // 3 if section.stage in _TOLD or section.stage is Stage.BACK else _SHOWN
    return {
        "heading": section.heading,
        "minutes": section.minutes,
        "asked": section.asked,
        "blank": section.blank.value,
        "lines": [_line(each, most, _SHOWN) for each in section.lines],
        "more": _more(section),
    }


def _checking(section: Section) -> dict[str, Any]:
    most = _TEXTS if section.stage in _TOLD else _CHECKED
    return {
        "heading": section.heading,
        "lines": [_line(each, most, _BESIDE) for each in section.answers],
    }


def _line(line: Line, most: int, beside: int) -> dict[str, Any]:
    return {
        "label": line.label,
        "words": paragraphs_of(fitted(line.words, most), _LANGUAGE),
        "beside": stacked(fitted(line.beside, beside)),
    }


def _more(section: Section) -> str:
    """Return what is said of those left off, "" where none is."""
    if not section.more:
        return ""
    return f"And {section.more} more, in the digest."
