"""Which words announce which part of a digest.

Readers head the parts of a digest as they like. A heading made only of words
known here and of words that add nothing (*my*, *key*, *from the book*) is sure;
one that holds a known word among others is likely, and counts only where it
looks like a heading. The lists are common practice, no published source.
"""

import re
from dataclasses import dataclass
from enum import StrEnum

from rapidfuzz import fuzz, process

from cards.intake.wording import folded

MAX_HEADING = 80
"""Characters in a line that may be a heading."""
_MAX_SURE = 8
_MAX_LIKELY = 10
_MIN_MISSPELT = 6
_CLOSE_ENOUGH = 86


class Part(StrEnum):
    """A part of a digest that a heading can announce."""

    THEME = "theme"
    POINTS = "points"
    COMMITMENTS = "commitments"
    QUOTATIONS = "quotations"
    JUDGEMENT = "judgement"


@dataclass(frozen=True, slots=True)
class Announced:
    """The part a heading announces, and whether it can mean nothing else."""

    part: Part
    sure: bool


_KEYWORDS = {
    Part.THEME: (
        "summary summaries gist theme synopsis overview abstract nutshell essence thesis premise "
        "unity brief message précis "
        "zusammenfassung kurzfassung kern thema kernaussage inhaltsangabe "
        "résumé synthèse thème essentiel "
        "resumen tema síntesis riassunto sintesi resumo samenvatting kort strekking"
    ),
    Part.POINTS: (
        "idea ideas point points insight insights argument arguments plot outline takeaway "
        "takeaways lesson lessons event events stage stages step steps structure claim claims "
        "proposition propositions thoughts "
        "ideen punkte gedanken erkenntnisse einsichten handlung gliederung argumente kernpunkte "
        "hauptgedanken kerngedanken hauptpunkte stationen "
        "idées intrigue étapes puntos argumentos trama idee punti argomenti ideias pontos enredo "
        "ideeën punten inzichten argumenten verhaallijn hoofdpunten"
    ),
    Part.COMMITMENTS: (
        "commitment commitments resolution resolutions resolve resolves pledge pledges promise "
        "promises action actions todo todos vow vows intention intentions "
        "vorsätze vorsatz verpflichtungen verpflichtung selbstverpflichtungen maßnahmen "
        "engagement engagements résolutions compromiso compromisos propósitos resoluciones "
        "impegni impegno propositi compromissos voornemens beloften verplichtingen"
    ),
    Part.QUOTATIONS: (
        "quote quotes quotation quotations passage passages excerpt excerpts extract extracts "
        "citation citations zitat zitate textstellen belegstellen extraits citas pasajes "
        "citazioni brani citações trechos passagens citaten fragmenten"
    ),
    Part.JUDGEMENT: (
        "judgement judgment verdict opinion assessment evaluation critique criticism appraisal "
        "view review agreement disagreement agree disagree "
        "urteil bewertung meinung einschätzung jugement avis juicio opinión valoración giudizio "
        "opinione juízo opinião julgamento oordeel mening"
    ),
}
_PHRASES = {
    Part.THEME: (
        "in brief|in short|in a nutshell|what it comes to|what the book comes to|what it all comes "
        "to|what it is about|what the book is about|what the book says|what it says|the book in "
        "one paragraph|the book in one sentence|in one paragraph|in a paragraph|in one sentence|"
        "in a sentence|main idea|central idea|the big idea|big idea|the main point|main point|main "
        "argument|central argument|about the book|about|the whole|as a whole|"
        "worum es geht|kurz gesagt|in kürze|en bref|de quoi il "
        "s'agit|en breve|en resumen|in breve|em resumo|em breve|in het kort|waar het over gaat|"
        "idée principale|idea principal|hauptgedanke|kerngedanke"
    ),
    Part.POINTS: (
        "what carries it|what holds it up|what happens|story line|storyline|the story|story|"
        "by what stages|how it goes|how the book goes|"
        "main argument in points|table of ideas"
    ),
    Part.COMMITMENTS: (
        "what i will do|what i'll do|what i am going to do|what i'm going to do|what will i do|"
        "i will|to do|to dos|asks of me|what it asks|what it asks of me|what the book asks|what "
        "the book asks of me|what it asks me to do|next steps|action points|action items|action "
        "steps|what of it|what i want to do|what to do|things to do|what i shall do|i commit to|"
        "was ich tun werde|was ich mache|ce que je vais faire|ce que je ferai|lo que haré|lo que "
        "voy a hacer|cosa farò|o que vou fazer|wat ik ga doen"
    ),
    Part.QUOTATIONS: (
        "words to keep|words worth keeping|worth keeping|lines to keep|lines worth keeping|"
        "sentences to keep|in its own words|in the author's words|in his own words|in her own "
        "words|in the book's own words|the book's own words|words of the book|lines i kept|"
        "favourite lines|favorite lines|memorable lines"
    ),
    Part.JUDGEMENT: (
        "what i think|what i think of it|what i thought|agree or not|agree or disagree|do i agree|"
        "where i agree|where i disagree|is it true|my take|was ich davon halte|ce que j'en pense|"
        "lo que pienso|cosa ne penso|o que penso|wat ik ervan vind"
    ),
}
_VERDICTS = frozenset(
    folded(f"{lead} {verdict}")
    for lead in ("", "i", "we", "where i", "partly", "mostly", "i partly", "i mostly", "wholly")
    for verdict in (
        "agree",
        "disagree",
        "agreed",
        "disagreed",
        "suspend",
        "suspended",
        "suspending",
    )
)
_FILLERS = frozenset(
    folded(
        "the a an my our your key main central major chief leading big core best favourite "
        "favorite favourites favorites notable memorable important selected some few several top "
        "book books in of from to for and on with it its this that author authors s worth keeping "
        "remembering i made liked loved noted kept have want short general whole personal final "
        "overall order one two three four five six seven eight nine ten twelve paragraph sentence "
        "text story list chosen chief direct "
        "die der das den dem ein eine "
        "wichtige wichtigste wichtigsten meine mein zentrale und aus zum buch "
        "le la les l mes mon ma du des de un une principal principale principales principaux cles "
        "cle et livre el los las mis mi y del libro lo gli miei mie mio principali e os as o meus "
        "minhas meu do da livro het een mijn belangrijkste en uit boek"
    ).split()
)
_JOINTS = frozenset(
    folded(
        "of from in and with to for by on von aus und mit zu de du des et dans y del e di en uit "
        "van"
    ).split()
)
_PART_OF = {word: part for part, words in _KEYWORDS.items() for word in folded(words).split()}
_PART_OF_PHRASE = {
    folded(phrase): part for part, phrases in _PHRASES.items() for phrase in phrases.split("|")
}
_LONG_KEYWORDS = tuple(word for word in _PART_OF if len(word) >= _MIN_MISSPELT)
_NUMBERING = re.compile(r"^[\s#*_>]*(?:\(?(?:\d{1,2}|[ivxIVX]{1,4}|[a-hA-H])[.):]\s+)?")
_ASIDE = re.compile(r"[(\[][^()\[\]]{0,40}[)\]]")


def is_verdict(text: str) -> bool:
    """Tell whether words are a verdict themselves, and no mere name of the judgement's part."""
    return folded(text) in _VERDICTS


def part_named(text: str) -> Announced | None:
    """Return the part a heading's words announce, or None."""
    text = text.strip()
    if len(text) > MAX_HEADING or "\n" in text:
        return None
    words = folded(_ASIDE.sub(" ", _NUMBERING.sub("", text, count=1)))
    if words in _VERDICTS:
        return Announced(Part.JUDGEMENT, sure=True)
    if words in _PART_OF_PHRASE:
        return Announced(_PART_OF_PHRASE[words], sure=True)
    tokens = words.split()
    if not tokens or len(tokens) > _MAX_LIKELY:
        return None
    part = _part_of(tokens)
    if part is None:
        return None
    known = all(token in _PART_OF or token in _FILLERS or token.isdigit() for token in tokens)
    return Announced(part, sure=known and len(tokens) <= _MAX_SURE)


def unfilled(text: str) -> set[str]:
    """Return the words of a heading that say something: without *the*, *my*, *in one paragraph*.

    A word that is a filler beside others, as *story* is, stays where it is alone.
    """
    words = folded(_ASIDE.sub(" ", _NUMBERING.sub("", text, count=1))).split()
    return {word for word in words if word not in _FILLERS} or set(words[-1:])


def misspelt(text: str) -> Announced | None:
    """Return the part a heading of one to three words announces despite a typing error."""
    tokens = folded(_NUMBERING.sub("", text[:MAX_HEADING], count=1)).split()
    if not 1 <= len(tokens) <= 3 or "\n" in text.strip():
        return None
    for token in tokens:
        if len(token) < _MIN_MISSPELT:
            continue
        found = process.extractOne(
            token, _LONG_KEYWORDS, scorer=fuzz.ratio, score_cutoff=_CLOSE_ENOUGH
        )
        if found is not None:
            return Announced(_PART_OF[found[0]], sure=False)
    return None


def _part_of(tokens: list[str]) -> Part | None:
    """Return the part of the head noun: the last known word before the first joint."""
    head = next((i for i, token in enumerate(tokens) if i and token in _JOINTS), len(tokens))
    for token in [*reversed(tokens[:head]), *tokens[head:]]:
        if token in _PART_OF:
            return _PART_OF[token]
    return None
