"""The words of the forms Catchword writes itself, in the languages of the headings."""

import re
import unicodedata
from collections import Counter
from dataclasses import dataclass

_LEAST = 3
"""Small words of a language that must be met before a text counts as written in it."""


@dataclass(frozen=True, slots=True)
class OwnWords:
    """What stands on a written digest beside the reader's own words.

    Attributes:
        theme, points, commitments, quotations, judgement: the headings.
        edition, isbn, pages, finished: the labels of the facts.
        after: stands before the number of the point a quotation stands after.
        before: a quotation stands before all points.
        unsaid: nothing says after which point a quotation stands.
        unplaced: there is no locator.
    """

    theme: str
    points: str
    commitments: str
    quotations: str
    judgement: str
    edition: str
    isbn: str
    pages: str
    finished: str
    after: str
    before: str
    unsaid: str
    unplaced: str


OWN_WORDS = {
    "en": OwnWords(
        theme="Theme",
        points="Points",
        commitments="Commitments",
        quotations="Quotations",
        judgement="Judgement",
        edition="Edition",
        isbn="ISBN",
        pages="Pages",
        finished="Finished",
        after="after point",
        before="before all points",
        unsaid="point not said",
        unplaced="no locator",
    ),
    "de": OwnWords(
        theme="Thema",
        points="Punkte",
        commitments="Vorsätze",
        quotations="Zitate",
        judgement="Urteil",
        edition="Ausgabe",
        isbn="ISBN",
        pages="Seiten",
        finished="Gelesen",
        after="nach Punkt",
        before="vor allen Punkten",
        unsaid="Punkt nicht genannt",
        unplaced="ohne Stelle",
    ),
    "fr": OwnWords(
        theme="Thème",
        points="Idées",
        commitments="Engagements",
        quotations="Citations",
        judgement="Jugement",
        edition="Édition",
        isbn="ISBN",
        pages="Pages",
        finished="Terminé",
        after="après le point",
        before="avant tous les points",
        unsaid="point non précisé",
        unplaced="sans référence",
    ),
    "es": OwnWords(
        theme="Tema",
        points="Puntos",
        commitments="Compromisos",
        quotations="Citas",
        judgement="Juicio",
        edition="Edición",
        isbn="ISBN",
        pages="Páginas",
        finished="Terminado",
        after="tras el punto",
        before="antes de todos los puntos",
        unsaid="punto no indicado",
        unplaced="sin referencia",
    ),
    "it": OwnWords(
        theme="Sintesi",
        points="Punti",
        commitments="Impegni",
        quotations="Citazioni",
        judgement="Giudizio",
        edition="Edizione",
        isbn="ISBN",
        pages="Pagine",
        finished="Finito",
        after="dopo il punto",
        before="prima di tutti i punti",
        unsaid="punto non indicato",
        unplaced="senza riferimento",
    ),
    "pt": OwnWords(
        theme="Resumo",
        points="Pontos",
        commitments="Compromissos",
        quotations="Citações",
        judgement="Juízo",
        edition="Edição",
        isbn="ISBN",
        pages="Páginas",
        finished="Terminado",
        after="depois do ponto",
        before="antes de todos os pontos",
        unsaid="ponto não indicado",
        unplaced="sem referência",
    ),
    "nl": OwnWords(
        theme="Samenvatting",
        points="Punten",
        commitments="Voornemens",
        quotations="Citaten",
        judgement="Oordeel",
        edition="Uitgave",
        isbn="ISBN",
        pages="Pagina's",
        finished="Gelezen",
        after="na punt",
        before="vóór alle punten",
        unsaid="punt niet genoemd",
        unplaced="geen vindplaats",
    ),
}
"""By language (ISO 639-1)."""

_SMALL = {
    "en": "the and of to is that it in was his her with they not you my from by are which will",
    "de": "der die das und ist nicht ein eine zu den mit sich auf dem für von er sie ich wird",
    "fr": "le les et est une des que dans qui pas pour il elle sur ce du au nous avec sont",
    "es": "el los y las es una que del por con para su lo como pero más sus al se muy",
    "it": "il gli e è una che di per con non del della sono si nel come più le anche loro",
    "pt": "o os e é uma que do da para com não em por um mais as dos seu sua ao",
    "nl": "het een en van niet dat zijn op te met voor hij zij ik wordt aan ook er maar om",
}
"""Twenty of the commonest small words of each language; common practice, no published source."""
_LANGUAGES_OF: dict[str, list[str]] = {}
for _language, _words in _SMALL.items():
    for _word in _words.split():
        _LANGUAGES_OF.setdefault(_word, []).append(_language)
_SCRIPTS = {
    "GREEK": "el",
    "CYRILLIC": "ru",
    "HEBREW": "he",
    "ARABIC": "ar",
    "HIRAGANA": "ja",
    "KATAKANA": "ja",
    "HANGUL": "ko",
    "CJK": "zh",
}
_WORD = re.compile(r"[^\W\d_]+")


def language_of(text: str, default: str = "en") -> str:
    """Return the language a text is written in (ISO 639-1), by its small words and its letters.

    Latin letters are told apart by the commonest small words of seven languages;
    another script that most letters belong to stands for the best known language
    written in it. A text that tells too little is of the default language.
    """
    scripts = Counter(_script(letter) for letter in text if letter.isalpha())
    script, _ = scripts.most_common(1)[0] if scripts else ("", 0)
    if script == "CJK" and any(scripts[kana] for kana in ("HIRAGANA", "KATAKANA")):
        script = "HIRAGANA"
    if script in _SCRIPTS:
        return _SCRIPTS[script]
    counted: Counter[str] = Counter()
    for word in _WORD.findall(text.lower()):
        counted.update(_LANGUAGES_OF.get(word, ()))
    ranked = counted.most_common(2)
    if not ranked or ranked[0][1] < _LEAST:
        return default
    best, most = ranked[0]
    return default if len(ranked) > 1 and ranked[1][1] == most else best


def words_for(language: str) -> OwnWords:
    """Return the words of a language; the English ones where there are no others."""
    return OWN_WORDS.get(language, OWN_WORDS["en"])


def _script(letter: str) -> str:
    return "LATIN" if letter.isascii() else unicodedata.name(letter, "").split(" ")[0]
