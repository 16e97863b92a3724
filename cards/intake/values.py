"""The values of facts read off a line, each with the words that are left of the line."""

import re
from itertools import islice
from typing import NamedTuple

from cards.intake.dates import Written, last_day_in
from cards.intake.isbn import compact, is_isbn
from cards.intake.wording import folded

_FIGURES = r"\d{1,3}(?:[,.’'\s]\d{3})+(?!\d)|\d{1,6}"
_PAGE_WORDS = (
    r"(?:pages|pp\.?|(?:pgs?|p)(?:\.|(?=\s*(?:[,;|]|$)))|seiten|páginas|paginas|págs?\.?|pags?\.|pagine|pagg?\.|"
    r"pagina[’']?s|blz\.?|bladzijden|(?-i:S)\.?)(?!\w)"
)
_PAGES = re.compile(
    rf"(?<![\w.,-])(?:({_FIGURES})[\s-]?{_PAGE_WORDS}"
    rf"|(?:pages|pp\.|seiten|páginas|paginas|págs?\.|pagine|pagg\.|pagina[’']?s|bladzijden)\s*:?\s"
    rf"({_FIGURES})(?!\s?[-–,.]?\d))",
    re.IGNORECASE,
)
_COUNT = re.compile(
    rf"(?<!\d)(?<!\d[-–])({_FIGURES})(?!\d)(?!\s?[-–]\s?\d)(?!\s?(?:h|hours?|hrs?|min|minutes?|"
    rf"words?|stunden)\b)",
    re.IGNORECASE,
)
_ISBN = re.compile(
    r"\bISBN(?:[- ]?1[03](?![\d-]))?\s*:?\s*(\d[\dXx \-–]{8,18}[\dXx])", re.IGNORECASE
)
_NUMBER = re.compile(r"\d[\dXx \-–‐‑]{8,18}[\dXx]|\d[\dXx \-–‐‑]*[\dXx]")
_FINISHED = re.compile(
    r"\b(?:finished|finishing|completed|concluded|closed|read|done|ended|ausgelesen|durchgelesen|gelesen|beendet|"
    r"abgeschlossen|"
    r"fertig|lu|lue|fini|finie|terminé|terminée|achevé|achevée|terminado|terminada|acabado|leído|"
    r"leída|letto|letta|finito|finita|terminato|terminata|lido|lida|"
    r"concluído|concluída|acabei|terminei|acabé|concluso|conclusa|uitgelezen|gelezen)"
    r"(?:\s(?:reading|reread|evening|morning|night|of|late|early|with|it|to|end|on|in|again|the|book|am|"
    r"den|le|la|de|leer|lire|ler|di|leggere|el|il|"
    r"lectura|em|a|op|zu|lesen)){0,4}"
    r"(?:\s(?:entre|between|from|du|vom|tra|fra|dal|tussen|van))?"
    r"(?:\s(?:le|el|il|o|os|the)?\s?\d{1,2}\.?(?:\s[^\W\d_]+)?\s(?:and|to|until|e|y|et|und|bis|"
    r"au|a|al|en|"
    r"tot)(?:\s(?:zum|the|le|el|il|al|o))?(?=\s\d))?\s*:?\s+(?=.{0,40}\d{4})",
    re.IGNORECASE,
)
_IDLE = frozenset(
    folded(
        "on in at the of evening morning night afternoon late early am im le el il em op den der "
        "about ca circa approx approximately etwa "
        "environ pages pp isbn and und et reading finished read "
        "lecture lectura lettura leitura lektüre "
        "monday tuesday wednesday thursday friday saturday sunday mon tue wed thu fri sat sun "
        "montag dienstag mittwoch donnerstag freitag samstag sonntag lundi mardi mercredi jeudi "
        "vendredi samedi dimanche lunes martes miércoles jueves viernes sábado domingo lunedì "
        "martedì mercoledì giovedì venerdì sabato domenica maandag dinsdag woensdag donderdag "
        "vrijdag zaterdag zondag"
    ).split()
)
_MAX_SAID = 4
"""Times that a line may say when a book was read, of which one that gives a day counts."""
_NEAR_DAY = 40
"""Characters behind such a word in which its date stands."""
_EDGE = " ,;:.()[]–—-|·•"


class Isbn(NamedTuple):
    """An ISBN as written, and the line without it."""

    written: str
    rest: str


class Pages(NamedTuple):
    """A number of pages, and the line without it."""

    number: int
    rest: str


class Finished(NamedTuple):
    """The day a book was finished, or None where its words leave it open; they; what is left."""

    day: Written
    words: str
    rest: str


def isbn_off(text: str, *, labelled: bool = False) -> Isbn | None:
    """Take an ISBN off a line; one that is not `labelled` has `ISBN` in front of it."""
    found = (_NUMBER if labelled else _ISBN).search(text)
    if found is None:
        return None
    group = 0 if labelled else 1
    written = _of_right_length(found[group])
    return Isbn(written, _without(text, found.start(), found.start(group) + len(written)))


def pages_off(text: str, *, labelled: bool = False) -> Pages | None:
    """Take a number of pages off a line; one that is not `labelled` has the word behind it."""
    found = _PAGES.search(text)
    if found is None and labelled:
        found = _COUNT.search(text)
    if found is None:
        return None
    figures = next(filter(None, found.groups()))
    return Pages(int(re.sub(r"\D", "", figures)), _without(text, *found.span()))


def counted_off(text: str) -> Pages | None:
    """Take a number of pages with the word behind it off a line: `352 pages`, not `pages 352`."""
    found = _PAGES.search(text)
    return None if found is None or found[1] is None else pages_off(text)


def finished_off(text: str, *, labelled: bool = False, day_first: bool = False) -> Finished | None:
    """Take a date off a line; one that is not `labelled` has `finished` or `read` before it.

    See `date_in` for `day_first`.
    """
    start = at = 0
    if not labelled:
        spans = [found.span() for found in islice(_FINISHED.finditer(text), _MAX_SAID)]
        if not spans:
            return None
        start, at = min(spans, key=lambda span: _distance(text[span[1] :], day_first=day_first))
    written = last_day_in(text[at:], day_first=day_first)
    if written is None:
        return None
    before = text[at : at + written.start]
    begin = start if idle(before) else at + written.start
    words = text[at + written.start : at + written.end]
    return Finished(written, words, _without(text, begin, at + written.end))


def _distance(text: str, *, day_first: bool) -> int:
    """Return how many characters on a text says a day; more than any where it says none."""
    written = last_day_in(text[:_NEAR_DAY], day_first=day_first)
    return _NEAR_DAY if written is None or written.day is None else written.start


def fact_leads(text: str) -> bool:
    """Tell whether a line opens with a count of pages, or with `finished` and what follows."""
    return (_PAGES.match(text) or _FINISHED.match(text)) is not None


def idle(text: str) -> bool:
    """Tell whether words say nothing beside a fact: a weekday, a preposition."""
    return all(word in _IDLE for word in folded(text).split())


def _of_right_length(number: str) -> str:
    """Return a number without figures behind it that belong to something else."""
    for length in (13, 10):
        ends = [end for end in range(1, len(number) + 1) if len(compact(number[:end])) == length]
        if ends and is_isbn(number[: ends[0]]) and not number[ends[0] : ends[0] + 1].isdigit():
            return number[: ends[0]]
    return number


def _without(text: str, start: int, end: int) -> str:
    before, after = text[:start].rstrip(_EDGE), text[end:].lstrip(_EDGE)
    before, after = ("" if idle(part) else part for part in (before, after))
    return _balanced(f"{before}, {after}" if before and after else before or after)


def _balanced(text: str) -> str:
    """Return words out of which some were taken, with no bracket that lost its other half."""
    text = text.strip(" ,;:–—-")
    for opening, closing in ("()", "[]"):
        if text.count(closing) > text.count(opening):
            text = text.removesuffix(closing).rstrip()
        elif text.count(opening) > text.count(closing):
            text += closing
    return text
