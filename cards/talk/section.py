"""One section of a talk: what is asked, what stands on the sheet, what it is checked against."""

from dataclasses import dataclass
from enum import StrEnum

from cards.talk.lengths import Stage


class Blank(StrEnum):
    """What is left free on the sheet to be filled in."""

    NONE = "none"
    NUMBER = "number"
    PLACE = "place"
    ROOM = "room"


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a sheet.

    Attributes:
        label: what it is called in the talk: a letter, a number, or nothing.
        words: what is read.
        beside: what is said of it: a caution, a place, what was recorded; may be empty.
    """

    label: str
    words: str
    beside: str = ""


@dataclass(frozen=True, slots=True)
class Section:
    """One section.

    Attributes:
        stage: what it is.
        heading: its name in words.
        asked: what the two are to do.
        lines: what stands on the talking page; never the theme, an order or a place.
        blank: what is left free: before each line a number, after each a place, or room to
            write; or nothing.
        answers: what stands on the checking page; may be empty.
        more: of how many of its kind nothing stands on the sheet.
        minutes: what it takes of the talk.
    """

    stage: Stage
    heading: str
    asked: str
    lines: tuple[Line, ...] = ()
    blank: Blank = Blank.NONE
    answers: tuple[Line, ...] = ()
    more: int = 0
    minutes: int = 0
