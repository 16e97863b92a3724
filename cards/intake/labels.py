"""Labels in front of a line: `Author: ...`, and which facts of the book they name."""

import re
from collections.abc import Iterator
from enum import StrEnum

from cards.intake.wording import folded

MAX_LABEL = 60
"""Characters before the colon of a label."""


class Fact(StrEnum):
    """A fact of the book that a label can name."""

    TITLE = "title"
    AUTHOR = "author"
    EDITION = "edition"
    ISBN = "isbn"
    PAGES = "pages"
    FINISHED = "finished_on"


_LABELS = {
    Fact.TITLE: (
        "title|book|book title|the book|name of the book|title of the book|work|titel|buch|"
        "buchtitel|"
        "titel des buches|werk|titre|livre|titre du livre|oeuvre|titulo|libro|titulo del libro|"
        "obra|"
        "titolo|titolo del libro|opera|livro|titulo do livro|boek|boektitel|titel van het boek"
    ),
    Fact.AUTHOR: (
        "author|authors|by|written by|writer|autor|autorin|autoren|verfasser|auteur|auteurs|"
        "autores|autora|autore|autori|schrijver|schrijfster|verfasserin|auteure|autrice|author s|"
        "author name|name of author|name of the author|geschrieben von|ecrit par|escrito por|"
        "scritto da|geschreven door|von|par|por|door"
    ),
    Fact.ISBN: "isbn|isbn 10|isbn 13|isbn10|isbn13",
    Fact.PAGES: (
        "pages|page count|number of pages|no of pages|length|pp|seiten|seitenzahl|umfang|"
        "nombre de pages|paginas|numero de paginas|pagine|numero di pagine|aantal pagina s|pagina "
        "s|"
        "extent|total pages|pages in all|number of pp|no pages|pg count|anzahl seiten|anzahl der "
        "seiten|"
        "seitenanzahl|zahl der seiten|nb de pages|nb pages|longueur|extension|n de paginas|num "
        "paginas|"
        "no de paginas|n o de paginas|total de paginas|pags|pag|pagg|n pagine|num pagine|lunghezza|"
        "extensao|aantal paginas|aantal bladzijden|bladzijden|omvang|lengte"
    ),
    Fact.FINISHED: (
        "finished|finished on|finished reading|date finished|finish date|completed|completed on|"
        "date completed|read|read on|date read|finished_on|done|ended|"
        "beendet|beendet am|gelesen|gelesen am|ausgelesen|ausgelesen am|fini|fini le|lu le|termine|"
        "termine le|date de lecture|terminado|terminado el|leido|leido el|terminado em|lido em|"
        "lido|finito|finito il|letto|letto il|uitgelezen|uitgelezen op|gelezen|gelezen op|"
        "date of finishing|date of reading|date ended|end date|ended on|finished it|finished it on|"
        "i finished it|i finished it on|finishing date|when finished|when i finished|when read|"
        "reading finished|reading completed|dates read|last read|closed|closed on|done on|"
        "fertig|fertig am|fertiggelesen|durchgelesen|durchgelesen am|zu ende gelesen|"
        "zu ende gelesen am|abgeschlossen|abgeschlossen am|lesedatum|gelesen bis|ende der lekture|"
        "lekture beendet|lekture beendet am|acheve|acheve le|lu|fini de lire|fini de lire le|"
        "fin de lecture|fin de la lecture|lecture terminee|lecture terminee le|date de fin|"
        "acabado|acabado el|terminado de leer|terminado de leer el|fin de lectura|fecha de lectura|"
        "fecha de fin|concluido|concluido em|concluida em|acabado em|leitura concluida|"
        "leitura concluida em|data de leitura|data de conclusao|fim da leitura|terminada em|"
        "terminato|terminato il|concluso|concluso il|finito di leggere|finito di leggere il|"
        "fine lettura|data di lettura|lettura finita|lettura finita il|leesdatum|uit|uit op|"
        "klaar|klaar op|beeindigd|beeindigd op|datum uitgelezen"
    ),
}
_BOTH = frozenset(
    "title and author|title author|author and title|author title|book and author|titel und autor|"
    "titel autor|autor und titel|titre et auteur|titre auteur|auteur et titre|titulo y autor|"
    "titulo autor|autor y titulo|titolo e autore|titolo autore|autore e titolo|titulo e autor|"
    "autor e titulo|titel en auteur|titel auteur|auteur en titel".split("|")
)
"""Labels of a title and an author in one, in lower case and without accents."""
_DETAILS = frozenset(
    folded(label)
    for label in (
        "edition|this edition|my edition|the edition|publisher|published|published by|format|"
        "details|copy|my copy|ausgabe|verlag|edicion|editorial|editeur|edizione|editore|edicao|"
        "editora|uitgave|uitgever|translator|translated by|translation|editor|edited by|"
        "illustrated by|introduction by|ubersetzer|traducteur|year|year of publication|"
        "first published"
    ).split("|")
)
_SAYING = {
    Fact.FINISHED: frozenset(
        folded(
            "finished finish finishing read reading completed completion ended end beendet gelesen "
            "ausgelesen ende lektüre fini terminé terminée achevé lu lecture fin terminado leído "
            "lectura terminación finalización fine lettura letto finito terminato lido leitura fim "
            "término conclusão concluído uitgelezen gelezen einde lezing"
        ).split()
    ),
    Fact.PAGES: frozenset(
        folded("pages seiten seitenzahl páginas pagine paginas bladzijden").split()
    ),
}
"""Words one of which a label of several words has to hold for a fact."""
_BESIDE = {
    Fact.FINISHED: frozenset(
        folded(
            "date day data datum tag jour fecha día dia giorno dag on of the in i my it book was "
            "when am der des du de la le les del di della do da den il el em op van het een "
            "buch buches livre libro livro boek"
        ).split()
    ),
    Fact.PAGES: frozenset(
        folded(
            "number no total count of the in my this edition copy book numero número totale total "
            "nombre anzahl gesamt aantal totaal di de del des der dell edizione edición edição "
            "libro livro livre buch boek het do da la le"
        ).split()
    ),
}
"""Words that may stand beside them."""
_MAX_SAYING = 6
"""Words of such a label."""
_NUMBERING = re.compile(r"^\s*\(?(?:\d{1,2}|[IVX]{1,4})[.)]\s+")
_FACT_OF = {folded(label): fact for fact, labels in _LABELS.items() for label in labels.split("|")}


def fact_label(label: str) -> Fact | None:
    """Return the fact a label names, or None."""
    if len(label) > MAX_LABEL:
        return None
    words = folded(_NUMBERING.sub("", label, count=1))
    fact = Fact.TITLE if words in _BOTH else _FACT_OF.get(words)
    said = words.split()
    if fact is not None or not 1 < len(said) <= _MAX_SAYING:
        return fact
    return next((fact for fact in _SAYING if _says(fact, frozenset(said))), None)


def _says(fact: Fact, said: frozenset[str]) -> bool:
    """Tell whether words are of a fact and of nothing else: `Data di fine lettura`."""
    return not said.isdisjoint(_SAYING[fact]) and said <= _SAYING[fact] | _BESIDE[fact]


def names_both(label: str) -> bool:
    """Tell whether a label stands before a title and its author in one."""
    return len(label) <= MAX_LABEL and folded(label) in _BOTH


def is_detail_label(label: str) -> bool:
    """Tell whether a label opens what is said of an edition: `Edition: 264 pages`."""
    return len(label) <= MAX_LABEL and folded(label) in _DETAILS


def label_split(text: str) -> Iterator[tuple[str, str]]:
    """Yield the ways to read a text as a label and what follows it.

    A label ends with a colon, a dash with spaces around it, or, in run-in heads,
    a full stop.
    """
    head = text[: MAX_LABEL + 4].split("\n", 1)[0]
    for sign in (":", "：", " – ", " — ", " - ", ". "):
        label, found, _ = head.partition(sign)
        label = label.strip(' *_#“”"')
        rest = text[text.index(sign) + len(sign) :].strip() if found else ""
        if label.count("(") > label.count(")"):
            continue
        if found and label and rest and len(label) <= MAX_LABEL:
            yield label, rest
