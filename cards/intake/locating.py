"""Locators as readers write them beside their words: found, taken off, and tidied."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from cards.digest import MAX_LOCATOR
from cards.intake.wording import OPENING_MARKS
from cards.locators import COUNT_WORDS, COUNTED, roman

_NUMBER = r"(?:\d{1,5}|[ivxlcdmIVXLCDM]{1,9})(?!(?!ff?(?!\w))[^\W\d_])"
_RANGE = rf"{_NUMBER}(?:\s?(?:[-–—/]|to|bis)\s?{_NUMBER})?(?:\s?ff?(?:\.|(?!\w)))?"
_PAGE_UNITS = (
    r"pp|pgs|pg|p|pages|page|seiten|seite|s|págs|pág|pags|pag|pagg|páginas|página|paginas|pagina|"
    r"pagine|blz|bl|bladzijden|bladzijde"
)
_UNITS = (
    rf"{_PAGE_UNITS}|chapters|chapter|chap|chs|ch|kapitel|kap|chapitres|chapitre|capítulos|"
    r"capítulo|capitolo|capitoli|cap|hoofdstuk|hfdst|hfst|hst|sections|section|sect|sec|abschnitt|"
    r"sección|seção|sezione|sectie|books|book|bks|bk|buch|"
    r"livre|libro|livro|boek|parts|part|pts|pt|teil|partie|parte|deel|lines|line|ll|l|verses|verse|"
    r"vers|versos|verso|versi|zeilen|zeile|lignes|ligne|righe|riga|regels|regel|vss|vs|vv|"
    r"v|cantos|canto|gesang|chant|acts|act|akt|aufzug|acte|acto|atto|ato|bedrijf|scenes|scene|sc|"
    r"szene|auftritt|scène|escena|scena|cena|toneel|stanzas|stanza|strophe|estrofa|estrofe|strofa|"
    r"vols|vol|volume|band|bd|tome|tomo|t|locations|location|locs|loc|positions|position|pos|"
    r"letters|letter|brief|lettre|carta|lettera|essays|essay|"
    r"sonnets|sonnet|poems|poem|no|nr|paras|para|paragraph|paragraaf|abs|absatz|fol|lectures|"
    r"lecture|"
    r"vorlesung|days|day|tales|tale|phase|stave|meditation|dialogue|discourse|night|rima|rime|copla|psalm|ode|"
    r"elegy|"
    r"eclogue|sura|hymn|fable|adventure|giornata|jornada|nacht|nuit|rule|question|article|art|"
    r"note|lib|prose|metre|meter|epistles|epistle|ep|fragment|aphorisms|aphorism|maxim|pensée|prop"
)
_UNIT_FORM = (
    rf"(?:(?:{_UNITS})(?:\.\s?#?|\s#?|(?=\d))|[§¶]{{1,2}}\s?){_RANGE}"
    rf"(?:\s?(?:,|&|and|und|et)\s?{_RANGE}(?![\w.]))*"
)
_NAMED = (
    r"finale|prologue|epilogue|preface|introduction|foreword|afterword|conclusion|postscript|"
    r"prelude|coda|appendix|epigraph|dedication|opening|ending|motto|vorwort|nachwort|einleitung|"
    r"schluss|prolog|epilog|préface|avant-propos|postface|prólogo|epílogo|prefacio|prefazione|"
    r"prologo|epilogo|voorwoord|nawoord|prologue|épilogue|conclusión|conclusão|conclusione|slot|"
    r"inleiding|introducción|introdução|introduzione|finale"
)
_WORDED = rf"(?:{COUNTED})\s(?:the\s)?(?:{COUNT_WORDS})|(?:{COUNT_WORDS})\s(?:{COUNTED})"
_ORDERED = (
    r"\d{1,3}\.\s?(?:kapitel|buch|teil|akt|aufzug|gesang|abschnitt|brief|szene)|"
    r"\d{1,3}(?:st|nd|rd|th)\s(?:chapter|book|part|letter|canto|act|scene|section)"
)
_LED = re.compile(
    r"(?:at|on|from|see|cf|vgl|siehe|auf|voir|vedi|cfr|zie|op|véase)\b\.?\s+(?=\D|\d{1,3}\s?%)",
    re.IGNORECASE,
)
"""Words in front of a place that add nothing to it: *see p. 54*, *at 54%*."""
_ONE = re.compile(
    rf"(?:(?-i:[IVXLC]{{1,6}})(?=,\s?(?:§|{_UNITS}))|"
    rf"(?-i:[IVXLC]{{1,6}})(?:,\s?(?:\d{{1,4}}|(?-i:[ivxlc]{{1,7}}))){{1,2}}(?![\w])|{_UNIT_FORM}|{_WORDED}|{_ORDERED}|"
    rf"(?-i:[IVXLC]{{1,6}})(?:\.(?:\d{{1,4}}|(?-i:[ivxlc]{{1,6}}))){{1,2}}(?![\w.])|\d{{1,3}}\s?%|\d{{1,4}}[a-e]\d{{0,2}}|"
    rf"\d{{1,3}}(?:[.:]\d{{1,4}}){{1,3}}(?:[-–]\d{{1,4}})?|{_NAMED})",
    re.IGNORECASE,
)
_SEPARATOR = re.compile(r"\s*(?:[,;/|·]|\band\b)?\s*")
_BARE = re.compile(r"(\d{1,4})(?:\s?[-–]\s?(\d{1,4}))?")
_AFTER = re.compile(
    r"(?:(?:stands?|comes?|goes|belongs)\s)?(?P<word>after|before|under|to|nach|hinter|vor|après|"
    r"avant|tras|después de|después del|despues del|antes de|antes del|dopo|prima di|prima del|"
    r"depois de|depois do|antes do|após|na|voor)?\s?"
    r"(?:(?:dem|den|le|el|il|o|het)\s)?(?:all\s(?P<all>points?|ideas?)|"
    r"(?:the\s)?(?:points?|ideas?|punkt|punto|ponto|punt|insight|event|step)\s?(?:no\.?\s?)?#?"
    r"(?P<number>\d{1,3}))",
    re.IGNORECASE,
)
_BEFORE = frozenset({"before", "vor", "avant", "antes", "prima", "voor"})
_AFTER_NUMBER = re.compile(r"(?:stands?\s)?after\s#?(?P<number>\d{1,3})", re.IGNORECASE)
_HEAD_END = re.compile(
    rf"\s*[:|\t]\s*|\s[–—-]\s*|\.\s+|\s*,\s+(?=[{re.escape(OPENING_MARKS)}])"
    rf"|\s+(?=[{re.escape(OPENING_MARKS)}])"
)
"""What may stand between a locator and the words behind it."""
_DIRECT = re.compile(
    rf"((?:(?:pp?|pgs?|chs?|chap|S|[ck]ap|Kap|blz|págs?|pag|[Bb]k|pt|ll?|vv?)\.|"
    rf"[§¶]{{1,2}})\s?{_NUMBER}"
    rf"(?:\s?[-–]\s?{_NUMBER})?)\s+(?=[^\W\d_a-zäöüàéèêçñ])"
)
"""A place with its unit cut short, right in front of words that open like a sentence."""
_SURE_SIGNS = frozenset({":", "–", "—", "-", "|"})
"""Signs behind a bare number that make it a page, and no number of a row."""
_HOUSE_NUMBER = re.compile(r"(?:no|nr|n°|nº|№)\b", re.IGNORECASE)
"""A number that behind a comma belongs to the words: of a house, as in an address."""
_CLOSED = re.compile(r"[”“»«›‹’\"」』❞]\s*[,.;:–—-]?\s*$")
_TAIL_START = re.compile(r"[.,;:!?…)\]”“»›’‘\"'«]\s*$|\s[-–—~]{1,2}\s*$")
_LAST_YEARLESS = 1400
"""A bare number in brackets up to this is a page; beyond it, as likely a year."""
_TAIL = 90
"""Characters at a text's end, or at its beginning, in which a locator is looked for."""
_UNIT_END = r"(?:\.\s?#?|\s#?|(?=\d))(?=[\divxlcdm])"
_PAGE_FORM = re.compile(rf"^(?:{_PAGE_UNITS}){_UNIT_END}", re.IGNORECASE)
_CHAPTER_FORM = re.compile(rf"^(?:chapter|chap|ch){_UNIT_END}", re.IGNORECASE)
_ENGLISH_PAGES = frozenset({"p", "pg", "page", "pp", "pgs", "pages"})


@dataclass(frozen=True, slots=True)
class Located:
    """A text, and what was taken off it.

    Attributes:
        text: without its locator.
        locator: tidied, or None.
        after: the number of the point it is said to stand after, or None.
    """

    text: str
    locator: str | None = None
    after: int | None = None


def locator_in(written: str) -> Located | None:
    """Return what a stretch that is nothing but a locator says, or None when it is more."""
    written = written.strip(" \t\n()[]{}.,;:–—-~*_")
    if not written or len(written) > _TAIL:
        return None
    bare = _BARE.fullmatch(written)
    if bare is not None:
        if int(bare[1]) > _LAST_YEARLESS:
            return None
        return Located("", f"p. {bare[1]}" if bare[2] is None else f"pp. {bare[1]}-{bare[2]}")
    found: list[str] = []
    after: int | None = None
    led = _LED.match(written)
    position = 0 if led is None else led.end()
    while position < len(written):
        said = _AFTER.match(written, position) or _AFTER_NUMBER.match(written, position)
        if said is not None and _ends(written, said.end()):
            after = _point(said)
            position = said.end()
        elif (one := _ONE.match(written, position)) is not None and _ends(written, one.end()):
            found.append(one[0])
            position = one.end()
        else:
            return None
        separator = _SEPARATOR.match(written, position)
        position = separator.end() if separator is not None else position
    return Located("", ", ".join(map(tidied_locator, found)) or None, after)


def tidied_locator(locator: str) -> str:
    """Return a locator in the usual short form: `pg 12` as `p. 12`, `§ 5` as `§5`."""
    locator = re.sub(r"\s+", " ", locator.strip())
    locator = re.sub(r"(?<=[\divxlcdm])\s?(?:[–—-]|\bto\b)\s?(?=[\divxlcdm])", "-", locator)
    locator = re.sub(r"([§¶])\s", r"\1", locator)
    unit = _PAGE_FORM.match(locator)
    if unit is not None:
        word = unit[0].strip(" .#").lower()
        if word in _ENGLISH_PAGES:
            rest = locator[unit.end() :]
            several = "-" in rest or "," in rest or "&" in rest or " and " in rest
            return ("pp. " if several else "p. ") + rest
        if word == "s":
            return "S. " + locator[unit.end() :]
    return _CHAPTER_FORM.sub("ch. ", locator)


def joined(locators: Iterable[str | None]) -> str | None:
    """Return several things said of one place as one locator, each once."""
    said = dict.fromkeys(locator for locator in locators if locator)
    return ", ".join(said)[:MAX_LOCATOR] or None


def split_end(text: str, *, free: bool = False) -> Located:
    """Take a locator off the end of a text.

    Args:
        text: the words, with or without one.
        free: whether brackets after the end of a sentence hold a locator whatever
            is in them (`Finale`, a chapter's name), as they do after quotations.
    """
    text = text.rstrip()
    bracketed = _bracketed_end(text)
    if bracketed is not None:
        before, inside = bracketed
        found = locator_in(inside)
        if found is not None:
            return _with_more(before, found)
        if (named := _named_place(before, inside)) is not None:
            return named
        if free and _CLOSED.search(before[-6:]) and inside.islower() and roman(inside):
            return Located(before.rstrip(" –—-"), f"p. {inside}")
        if free and _names_a_place(before, inside):
            return Located(before.rstrip(" –—-"), inside.strip())
        if locator_in(inside.rpartition(",")[2]) is not None:
            return Located(text)
    return _unbracketed_end(text, free=free)


def _named_place(before: str, inside: str) -> Located | None:
    """Return a place that is a chapter's name and a number: `(Spring, p. 299)`."""
    name, _, number = inside.rpartition(",")
    said = locator_in(number)
    short = 0 < len(name.split()) <= 8 and name.strip()[:1].isupper()
    if said is None or said.locator is None or not short or not number.strip()[:1].isalpha():
        return None
    return Located(before.rstrip(" –—-"), f"{name.strip()}, {said.locator}", said.after)


def split_start(text: str) -> Located:
    """Take a locator off the beginning of a text: `p. 54: ...`, `(p. 54) ...`."""
    opening = re.match(r"\s*[(\[]([^()\[\]]{1,60})[)\]]\s*[:–—-]?\s*", text)
    if opening is not None and opening.end() < len(text):
        found = locator_in(opening[1])
        if found is not None:
            return Located(text[opening.end() :], found.locator, found.after)
    for sign in _HEAD_END.finditer(text[:_TAIL]):
        head, rest = text[: sign.start()], text[sign.end() :]
        bare = _BARE.fullmatch(head.strip()) is not None
        if not rest or (bare and not (rest[0] in OPENING_MARKS and sign[0].strip() in _SURE_SIGNS)):
            continue
        if (found := locator_in(head)) is not None:
            return Located(rest, found.locator, found.after)
    if (direct := _DIRECT.match(text)) is not None:
        found = locator_in(direct[1])
        if found is not None:
            return Located(text[direct.end() :], found.locator, found.after)
    return Located(text)


def _with_more(before: str, found: Located) -> Located:
    """Look once more before a bracket that said one thing for the other: `(p. 4) (after 2)`."""
    before = before.rstrip()
    more = _bracketed_end(before)
    second = locator_in(more[1]) if more is not None else None
    if more is not None and second is not None:
        return Located(
            more[0].rstrip(" –—-"),
            joined((second.locator, found.locator)),
            found.after if found.after is not None else second.after,
        )
    if found.locator is None:
        second = _unbracketed_end(before)
        return Located(second.text, second.locator, found.after)
    return Located(before.rstrip(" –—-"), found.locator, found.after)


def _bracketed_end(text: str) -> tuple[str, str] | None:
    stripped = text.rstrip(" .,;:")
    if not stripped or stripped[-1] not in ")]":
        return None
    opening = "(" if stripped[-1] == ")" else "["
    start = stripped.rfind(opening, max(0, len(stripped) - _TAIL))
    if start <= 0:
        return None
    before = stripped[:start].rstrip()
    ending = text[len(stripped) :].strip()
    if before and ending[:1] == "." and before[-1].isalnum():
        before += "."
    return before, stripped[start + 1 : -1]


def _unbracketed_end(text: str, *, free: bool = False) -> Located:
    """Take off a locator that follows the end of a sentence, a closing mark or a dash."""
    window = max(0, len(text) - _TAIL)
    for found in re.finditer(r"\s|[-–—]", text[window:]):
        start = window + found.end()
        before = text[: window + found.start() + 1]
        if not _TAIL_START.search(before[-4:]):
            continue
        tail = text[start:]
        bare = _BARE.fullmatch(tail.strip(" .()[]")) is not None
        if bare and not (free and _CLOSED.search(before[-6:])):
            continue
        if before.rstrip().endswith(",") and _HOUSE_NUMBER.match(tail):
            continue
        said = locator_in(tail)
        if said is not None:
            return Located(before.rstrip(" \n,;:–—-~"), said.locator, said.after)
    return Located(text)


def _names_a_place(before: str, inside: str) -> bool:
    inside = inside.strip()
    return (
        bool(before)
        and before[-1] in ".!?…”“»›’‘\"'«,;—–-"
        and 0 < len(inside.split()) <= 8
        and (inside[0].isupper() or inside[0].isdigit())
    )


def _point(said: re.Match[str]) -> int | None:
    groups = said.groupdict()
    word = (groups.get("word") or "after").lower()
    before = word.split(" ", maxsplit=1)[0] in _BEFORE
    if groups.get("all") is not None:
        return 0 if before else None
    number = int(groups["number"])
    return max(0, number - 1) if before else number


def _ends(text: str, position: int) -> bool:
    return position >= len(text) or not (text[position].isalnum() or text[position] == "_")
