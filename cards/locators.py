"""Where a point or a quotation stands in its book: the words, and the number they hold.

A locator is kept as the reader wrote it, tidied; its number is read from it and
never guessed.
"""

import re
import unicodedata
from dataclasses import dataclass
from enum import StrEnum

_ROMAN = re.compile(
    r"(?=[mdclxvi])m{0,4}(cm|cd|d?c{0,3})(xc|xl|l?x{0,3})(ix|iv|v?i{0,3})",
    re.IGNORECASE | re.ASCII,
)
_ROMAN_VALUES = {"i": 1, "v": 5, "x": 10, "l": 50, "c": 100, "d": 500, "m": 1000}
_WORD = {
    "page": (
        r"(?:pp?|pgs?|pages?|s|seiten?|p[áa]gs?|pagg?|p[áa]ginas?|pagine|blz|bladzijden?|"
        r"bladzijdes?)"
    ),
    "chapter": (
        r"(?:ch|chs|chap|chapters?|kap|kapitel|chapitres?|cap|cap[ií]tulos?|capitol[oi]|"
        r"hoofdstuk|hfst)"
    ),
    "section": (
        r"(?:§+|secs?|sect|sections?|abschnitte?|secci[óo]n|se[cç][çc]?[ãa]o|sezione|sectie|"
        r"paragraaf)"
    ),
    "book": r"(?:bks?|books?|buch|livre|libro|livro|boek)",
    "part": r"(?:pts?|parts?|teile?|partie|parte|deel)",
    "line": (
        r"(?:ll?|lines?|vv?|vss?|vers|verses?|verso|versos|verse|versi|zeilen?|lignes?|righ?[ae]|"
        r"regels?)"
    ),
    "volume": r"(?:vols?|volumes?|band|bd|tome|tomo|t)",
    "act": r"(?:acts?|akt|aufzug|acte|acto|atto|ato|bedrijf)",
    "scene": r"(?:sc|scenes?|szene|auftritt|scène|escena|scena|cena|toneel)",
    "canto": r"(?:cantos?|gesang|chant)",
    "letter": r"(?:letters?|epistles?|ep|briefe?|lettres?|cartas?|letter[ae])",
    "essay": r"(?:essays?)",
    "lecture": r"(?:lectures?|vorlesung)",
    "stanza": r"(?:stanzas?|strophes?|estrofas?|estrofes?|strof[ae])",
    "phase": r"(?:phases?)",
    "stave": r"(?:staves?)",
    "meditation": r"(?:meditations?)",
    "day": r"(?:days?)",
    "tale": r"(?:tales?)",
    "sonnet": r"(?:sonnets?)",
    "poem": r"(?:poems?|rimas?|rime)",
    "fragment": r"(?:fragments?)",
    "aphorism": r"(?:aphorisms?)",
    "night": r"(?:nights?)",
    "dialogue": r"(?:dialogues?)",
    "discourse": r"(?:discourses?)",
    "maxim": r"(?:maxims?)",
    "location": r"(?:locs?|locations?|positions?|pos)",
}
_NUMBER = r"(?P<number>\d{1,5}|[mdclxvi]{1,9})"
_SHAPES = {
    unit: re.compile(rf"(?<!\w){word}\.?\s*{_NUMBER}(?![\w])", re.IGNORECASE)
    for unit, word in _WORD.items()
}
_STEP = re.compile(
    "(?:"
    + "|".join(
        rf"(?<!\w)(?P<{unit}>{word}\.?\s*(?:\d{{1,5}}|[mdclxvi]{{1,9}}))(?!\w)"
        for unit, word in _WORD.items()
    )
    + r")(?:\s?[-–—]\s?(?P<last>\d{1,5}|[mdclxvi]{1,9})(?!\w))?"
    + r"|(?<!\d)(?P<percent>\d{1,3})\s?%",
    re.IGNORECASE,
)
_PAGES = re.compile(
    rf"(?<!\w){_WORD['page']}\.?\s*[\dmdclxvi]+(?:\s?[-–—]\s?[\dmdclxvi]+)?(?!\w)", re.IGNORECASE
)
_PAIR = re.compile(r"([IVXLC]{1,6}),\s?(\d{1,4}|[ivxlc]{1,7})")
"""A part in large Roman figures and a chapter, as they are cited without a word: `II, 11`."""
_TRAILING_NUMBER = re.compile(r"(?:\d+|[mdclxvi]+)$", re.IGNORECASE)


_COUNTS = (
    (
        "one first eins erste erster erstes un une premier premiere uno una primero "
        "primera primo prima um uma primeiro primeira een eerste"
    ),
    (
        "two second zwei zweite zweiter zweites deux deuxieme seconde dos segundo segunda "
        "due secondo seconda dois duas twee tweede"
    ),
    (
        "three third drei dritte dritter drittes trois troisieme tres tercero tercera tre "
        "terzo terza terceiro terceira drie derde"
    ),
    (
        "four fourth vier vierte vierter viertes quatre quatrieme cuatro cuarto cuarta "
        "quattro quarto quarta quatro vierde"
    ),
    (
        "five fifth funf funfte funfter funftes cinq cinquieme cinco quinto quinta cinque "
        "vijf vijfde"
    ),
    (
        "six sixth sechs sechste sechster sechstes sixieme seis sexto sexta sei sesto "
        "sesta zes zesde"
    ),
    (
        "seven seventh sieben siebte siebter siebtes sept septieme siete septimo septima "
        "sette settimo settima sete setimo setima zeven zevende"
    ),
    (
        "eight eighth acht achte achter achtes huit huitieme ocho octavo octava otto "
        "ottavo ottava oito oitavo oitava achtste"
    ),
    (
        "nine ninth neun neunte neunter neuntes neuf neuvieme nueve noveno novena nove "
        "nono nona negen negende"
    ),
    ("ten tenth zehn zehnte zehnter zehntes dix dixieme diez decimo decima dieci dez tien tiende"),
    "eleven eleventh elf elfte elfter",
    "twelve twelfth zwolf zwolfte zwolfter douze doce dodici doze twaalf twaalfde",
    "thirteen thirteenth dreizehn treize trece tredici treze dertien",
    "fourteen fourteenth vierzehn quatorze catorce quattordici catorze veertien",
    "fifteen fifteenth funfzehn quinze quince quindici vijftien",
    "sixteen sixteenth sechzehn seize dieciseis sedici dezesseis zestien",
    "seventeen seventeenth siebzehn diecisiete diciassette dezessete zeventien",
    "eighteen eighteenth achtzehn dieciocho diciotto dezoito achttien",
    "nineteen nineteenth neunzehn diecinueve diciannove dezenove negentien",
    "twenty twentieth zwanzig vingt veinte venti vinte twintig",
)
_COUNT_OF = {word: number for number, words in enumerate(_COUNTS, 1) for word in words.split()}
COUNTED = (
    "chapter|book|part|act|scene|section|letter|volume|canto|lecture|kapitel|buch|teil|band|"
    "akt|"
    "aufzug|szene|brief|chapitre|livre|partie|tome|acte|lettre|capítulo|libro|parte|tomo|acto|"
    "carta|"
    "capitolo|atto|lettera|livro|ato|hoofdstuk|boek|deel|bedrijf"
)
"""Units that readers count in words as well: Part Two, zweites Buch, the Third Letter."""
_ACCENTED = (
    "fünf|fünfte|fünfter|fünftes|première|deuxième|troisième|quatrième|cinquième|sixième|septième|"
    "huitième|neuvième|dixième|séptimo|séptima|décimo|décima|sétimo|sétima|zwölf|zwölfte|zwölfter"
)
COUNT_WORDS = "|".join([*sorted(_COUNT_OF, key=len, reverse=True), _ACCENTED])
"""Numbers in words, one to twenty, counting and ordering, in seven languages."""
_AHEAD = re.compile(rf"(?<!\w)({COUNTED})\s(?:the\s)?([^\W\d_]{{2,12}})(?!\w)", re.IGNORECASE)
_BEHIND = re.compile(rf"(?<!\w)([^\W\d_]{{2,12}})\s({COUNTED})(?!\w)", re.IGNORECASE)


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
    PHASE = "phase"
    STAVE = "stave"
    MEDITATION = "meditation"
    DAY = "day"
    TALE = "tale"
    SONNET = "sonnet"
    POEM = "poem"
    FRAGMENT = "fragment"
    APHORISM = "aphorism"
    NIGHT = "night"
    DIALOGUE = "dialogue"
    DISCOURSE = "discourse"
    MAXIM = "maxim"
    LOCATION = "location"
    PERCENT = "percent"


@dataclass(frozen=True, slots=True)
class Place:
    """A number and what it counts: page 54, chapter 20.

    Attributes:
        unit: what is counted.
        number: the number, or the first of a range.
        last: the last of a range, `lines 10-14`, or None.
    """

    unit: Unit
    number: int
    last: int | None = None

    @property
    def end(self) -> int:
        """The last number it takes in."""
        return self.number if self.last is None else max(self.last, self.number)


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
    found = _SHAPES[unit.value].search(in_figures(locator))
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
    if (pair := _PAIR.fullmatch(locator.strip())) is not None:
        part, chapter = roman(pair[1]), _value(pair[2])
        if part is None or chapter is None:
            return ()
        return Place(Unit.PART, part), Place(Unit.CHAPTER, chapter)
    locator = _PAGES.sub(" ", in_figures(locator))
    steps = []
    named = _STEP.groupindex
    for found in _STEP.finditer(locator):
        unit = next(unit for unit in Unit if unit.value in named and found[unit.value] is not None)
        written = _TRAILING_NUMBER.search(found[unit.value])
        number = None if written is None else _value(written[0])
        last = None if found["last"] is None else _value(found["last"])
        if number is None or (found["last"] is not None and last is None):
            return ()
        steps.append(Place(unit, number, last))
    left = re.findall(r"[^\W_]+", _STEP.sub(" ", locator))
    read = not any(word.isdigit() or _value(word) is not None for word in left)
    return tuple(steps) if read and len({step.unit for step in steps}) == len(steps) else ()


def in_figures(locator: str) -> str:
    """Return a locator with counts in words turned to figures: `Part Two` as `Part 2`."""
    locator = _AHEAD.sub(lambda found: _figure(found, found[1], found[2]), locator)
    return _BEHIND.sub(lambda found: _figure(found, found[2], found[1]), locator)


def _figure(found: re.Match[str], unit: str, word: str) -> str:
    letters = unicodedata.normalize("NFKD", word.casefold())
    bare = "".join(letter for letter in letters if not unicodedata.combining(letter))
    number = _COUNT_OF.get(bare)
    return found[0] if number is None else f"{unit} {number}"


def _value(written: str) -> int | None:
    return int(written) if written.isdecimal() else roman(written)
