"""Headings that say only that a digest, or a part about the book, follows, and are no title.

The list is common practice, no published source.
"""

from cards.intake.wording import folded

_GENERIC = frozenset(
    folded(line)
    for line in (
        *(
            "digest",
            "my digest",
            "book digest",
            "a digest",
            "digest of a book",
            "notes",
            "my notes",
        ),
        *("reading notes", "book notes", "book report", "book", "the book", "about the book"),
        *("facts", "book facts", "book data", "information", "book information", "book info"),
        *("angaben", "buchangaben", "buchdaten", "informations", "données", "datos", "dati"),
        *("datos del libro", "dati del libro", "dados", "dados do livro", "informazioni"),
        *("información", "informações", "gegevens", "boekgegevens", "informatie"),
        *("details", "book details", "lesenotizen", "notizen", "notes de lecture", "untitled"),
        *("document", "finished book", "a finished book", "reading digest", "my reading digest"),
        *("digesto", "mein digest", "lesenotiz", "lektürenotiz", "buchnotiz", "fiche de lecture"),
        *("ma fiche de lecture", "ficha de lectura", "ficha de leitura", "scheda di lettura"),
        *("scheda libro", "notas de lectura", "notas de leitura", "appunti di lettura", "appunti"),
        *("leesverslag", "boekverslag", "leesnotities", "note di lettura", "notes on a book"),
    )
)
_OF = frozenset("of on from for about zu von uber sur de du sobre del di su da van over".split())
"""Words behind which, on a line of its own, the title follows."""


def is_generic(text: str) -> bool:
    """Tell whether a heading says only that a digest follows."""
    words = folded(text).lstrip("0123456789 ")
    first, _, last = words.rpartition(" ")
    return words in _GENERIC or (last in _OF and first in _GENERIC)
