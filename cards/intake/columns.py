"""Rows that only name the columns of a table, and headings over the facts of a book.

The words are common practice, no published source.
"""

from cards.intake.blocks import Block
from cards.intake.heading_words import BUILT_IN, MAX_HEADING, HeadingWords
from cards.intake.headings import part_named
from cards.intake.vocabulary import FILLERS
from cards.intake.wording import folded

_COLUMNS = frozenset(
    folded(name)
    for name in (
        "letter|brief|lettre|carta|lettera|page|pages|p|pp|where|location|locator|place|chapter|"
        "source|after|after point|point|no|nr|"
        "number|part|field|content|text|value|when|by when|date|note|notes|words|section|what|line|"
        "quote|quotation|passage|idea|deadline|how often|done|status|ref|reference|pg|"
        "seite|seiten|s|kapitel|stelle|wo|nach|nach punkt|punkt|zitat|textstelle|wann|bis|datum|"
        "wert|"
        "feld|inhalt|wortlaut|notiz|idee|was|"
        "chapitre|ou|apres|numero|citation|valeur|champ|contenu|quand|texte|quoi|idee|"
        "pagina|pag|capitulo|cita|donde|despues|texto|valor|campo|contenido|cuando|fecha|nota|"
        "capitolo|citazione|dove|dopo|testo|valore|contenuto|quando|data|"
        "citacao|onde|depois|conteudo|ideia|"
        "che cosa|cosa|parole|atto|act|akt|acte|acto|ato|scene|scena|escena|szene|palabras|"
        "mots|worte|"
        "woorden|palavras|wat|que|o que|entro quando|book|libro|livre|buch|line|vers|verso|canto|"
        "blz|hoofdstuk|citaat|waar|na|tekst|waarde|veld|inhoud|wanneer|datum|idee"
    ).split("|")
) | {"", "#"}
"""Names of columns, in lower case and without accents."""
PLACE_COLUMNS = frozenset(
    folded(
        "letter brief lettre carta lettera page pages p pp pg where locator place chapter ch "
        "source ref section line book part seite "
        "seiten s kapitel stelle wo zeile chapitre ou livre partie pagina pag capitulo donde libro "
        "capitolo dove onde blz bladzijde hoofdstuk waar act canto"
    ).split()
)
"""Names of columns that hold places, in lower case and without accents."""
QUOTATION_COLUMNS = frozenset(
    folded(
        "quote quotation passage words text quotes quotations zitat textstelle wortlaut worte "
        "citation "
        "texte mots cita palabras texto citazione testo parole citacao palavras citaat woorden "
        "tekst"
    ).split()
)
"""Names of columns that hold quotations, in lower case and without accents."""
_MAX_COLUMNS = 16
"""Columns of a table that has a row to name them."""
_MAX_COLUMN_NAME = 5
"""Words in the name of a column that is not known, beside two that are."""
DETAILS = frozenset(
    folded(name)
    for name in (
        "details|book details|book|the book|buch|das buch|le livre|libro|el libro|il libro|livro|"
        "o livro|boek|het boek|edition|the edition|this edition|about the edition|about this copy|"
        "about the book itself|the copy|facts|book facts|data|bibliography|bibliographic details|"
        "publication details|imprint|angaben|buchangaben|ausgabe|zur ausgabe|daten|"
        "bibliographische angaben|detail|details du livre|edition utilisee|references|reference|"
        "datos|datos del libro|edicion|ficha|ficha bibliografica|dati|dati del libro|edizione|"
        "scheda|"
        "dados|dados do livro|edicao|gegevens|uitgave|boekgegevens"
    ).split("|")
)
"""Headings over facts of the book, in lower case and without accents."""
_DETAIL_NOUNS = frozenset(
    folded(
        "details edition copy facts data bibliography publication imprint colophon isbn "
        "angaben ausgabe buchdaten buchangaben exemplar édition exemplaire datos edición ejemplar "
        "ficha dati edizione esemplare scheda dados edição gegevens uitgave exemplaar "
        "information info metadata informationen informations données información informazioni "
        "informações informatie buchinfo boekgegevens"
    ).split()
)
_BESIDE_DETAILS = frozenset(
    folded(
        "about used read bibliographic book buch livre libro livro boek über zu sur sobre over"
    ).split()
)


def heads_details(text: str) -> bool:
    """Tell whether a line is a heading over facts of the book: `Details`, `About my copy`."""
    if len(text) > MAX_HEADING:
        return False
    words = folded(text)
    said = {word for word in words.split() if word not in FILLERS} - _BESIDE_DETAILS
    return words in DETAILS or (bool(said) and said <= _DETAIL_NOUNS)


def header_row(block: Block, words: HeadingWords = BUILT_IN) -> bool:
    """Tell whether a table row holds nothing but the names of columns."""
    if not 0 < block.text.count("\t") < _MAX_COLUMNS:
        return False
    cells = [folded(cell) or cell.strip() for cell in block.text.split("\t")]
    if not any(cells):
        return False
    known = [bool(cell) and (cell in _COLUMNS or _names_part(cell, words)) for cell in cells]
    if all(one or not cell for one, cell in zip(known, cells, strict=True)):
        return True
    return sum(known) > 1 and known[0] and all(map(_may_name_column, block.text.split("\t")))


def _may_name_column(cell: str) -> bool:
    words = cell.split()
    plain = not any(letter.isdigit() or letter in '“”„«»"' for letter in cell)
    return (
        len(words) <= _MAX_COLUMN_NAME
        and plain
        and not (cell.endswith((".", "!")) and len(words) > 1)
    )


def _names_part(cell: str, words: HeadingWords) -> bool:
    found = part_named(cell, words)
    return found is not None and found.sure
