"""Where a point or a quotation stands in its book: the words, and the number they hold.

A locator is kept as the reader wrote it, tidied; its number is read from it and
never guessed.
"""

import re
from dataclasses import dataclass
from enum import StrEnum

_ROMAN = re.compile(
    r"(?=[mdclxvi])m{0,4}(cm|cd|d?c{0,3})(xc|xl|l?x{0,3})(ix|iv|v?i{0,3})",
    re.IGNORECASE | re.ASCII,
)
_ROMAN_VALUES = {"i": 1, "v": 5, "x": 10, "l": 50, "c": 100, "d": 500, "m": 1000}
_WORD = {
    "page": r"(?:pp?|pgs?|pages?|s|seiten?|p[áa]gs?|p[áa]ginas?|pagine|blz)",
    "chapter": (
        r"(?:ch|chs|chap|chapters?|kap|kapitel|chapitres?|cap|cap[ií]tulos?|capitol[oi]|hoofdstuk|hfst)"
    ),
    "section": r"(?:§+|sec|sect|sections?)",
    "book": r"(?:bk|books?|buch|livre|libro|livro|boek)",
    "part": r"(?:pt|parts?|teil|partie|parte|deel)",
    "line": r"(?:ll?|lines?|vers|verses?)",
    "volume": r"(?:vols?|volumes?|band|tome)",
    "act": r"(?:acts?|akt|aufzug|acte|acto|atto|ato|bedrijf)",
    "scene": r"(?:sc|scenes?|szene|auftritt|scène|escena|scena|cena)",
    "canto": r"(?:cantos?|gesang|chant)",
    "letter": r"(?:letters?|epistles?|brief|lettre|carta|lettera)",
    "essay": r"(?:essays?)",
    "lecture": r"(?:lectures?|vorlesung)",
    "stanza": r"(?:stanzas?|strophe)",
    "location": r"(?:locs?|locations?|positions?)",
}
_NUMBER = r"(?P<number>\d{1,5}|[mdclxvi]{1,9})"
_SHAPES = {
    unit: re.compile(rf"(?<!\w){word}\.?\s*{_NUMBER}(?![\w])", re.IGNORECASE)
    for unit, word in _WORD.items()
}
_STEP = re.compile(
    "|".join(
        rf"(?<!\w)(?P<{unit}>{word}\.?\s*(?:\d{{1,5}}|[mdclxvi]{{1,9}}))(?!\w)"
        for unit, word in _WORD.items()
    )
    + r"|(?<!\d)(?P<percent>\d{1,3})\s?%",
    re.IGNORECASE,
)
_PAGES = re.compile(
    rf"(?<!\w){_WORD['page']}\.?\s*[\dmdclxvi]+(?:\s?[-–—]\s?[\dmdclxvi]+)?(?!\w)", re.IGNORECASE
)
_TRAILING_NUMBER = re.compile(r"(?:\d+|[mdclxvi]+)$", re.IGNORECASE)


class Unit(StrEnum):
    """What a locator counts."""

    PAGE = "page"
    CHAPTER = "chapter"
    SECTION = "section"
    BOOK = "book"
    PART = "part"
    LINE = "line"
    VOLUME = "volume"
    ACT = "act"
    SCENE = "scene"
    CANTO = "canto"
    LETTER = "letter"
    ESSAY = "essay"
    LECTURE = "lecture"
    STANZA = "stanza"
    LOCATION = "location"
    PERCENT = "percent"


@dataclass(frozen=True, slots=True)
class Place:
    """A number and what it counts: page 54, chapter 20."""

    unit: Unit
    number: int


def roman(numeral: str) -> int | None:
    """Return the value of a Roman numeral in either case, or None when it is none."""
    if not _ROMAN.fullmatch(numeral):
        return None
    values = [_ROMAN_VALUES[letter] for letter in numeral.lower()]
    return sum(
        -value if value < max(values[index:]) else value for index, value in enumerate(values)
    )


def place_of(locator: str | None, unit: Unit) -> Place | None:
    """Return the first number of `unit` in a locator, or None when it holds none.

    Pages in Roman numerals (`p. ix`) stand before the book's own count and so
    have no place on its scale: they give None.
    """
    if locator is None:
        return None
    found = _SHAPES[unit.value].search(locator)
    if found is None:
        return None
    written = found["number"]
    if written.isdigit():
        return Place(unit, int(written))
    value = None if unit is Unit.PAGE else roman(written)
    return None if value is None else Place(unit, value)


def page_of(locator: str | None) -> int | None:
    """Return the (first) page a locator names, or None."""
    place = place_of(locator, Unit.PAGE)
    return None if place is None else place.number


def chapter_of(locator: str | None) -> int | None:
    """Return the (first) chapter a locator names, or None."""
    place = place_of(locator, Unit.CHAPTER)
    return None if place is None else place.number


def steps_of(locator: str | None) -> tuple[Place, ...]:
    """Return what a locator counts beside pages, from the outermost in: `Book V, §16`.

    Empty where it counts nothing, or holds a number that could not be read: half of
    a place is no place.
    """
    if locator is None:
        return ()
    locator = _PAGES.sub(" ", locator)
    steps = []
    for found in _STEP.finditer(locator):
        unit = Unit(found.lastgroup or "")
        written = _TRAILING_NUMBER.search(found[unit.value])
        number = None if written is None else _value(written[0])
        if number is None:
            return ()
        steps.append(Place(unit, number))
    left = re.findall(r"[^\W_]+", _STEP.sub(" ", locator))
    read = not any(word.isdigit() or _value(word) is not None for word in left)
    return tuple(steps) if read and len({step.unit for step in steps}) == len(steps) else ()


def _value(written: str) -> int | None:
    return int(written) if written.isdecimal() else roman(written)
