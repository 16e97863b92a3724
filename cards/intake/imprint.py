"""Lines of a title page that name its makers: translator, publisher, edition, year.

A digest keeps them as its edition, and their names are not its author's. The words are
common practice, no published source.
"""

import re

from cards.intake.wording import folded

_MAKER = re.compile(
    r"(?:with )?(?:an? |the )?(?:new )?(?:(?:re)?translated|translation|edited|illustrated|"
    r"illustrations|introduced|introduction|foreword|preface|afterword|notes|selected|abridged|"
    r"narrated|read aloud|cover|übersetzt|übersetzung|herausgegeben|illustriert|traduit|traduction|"
    r"préface|traducido|traducción|prólogo|tradotto|traduzione|traduzido|tradução|vertaald|"
    r"vertaling)\b[^.]{0,60}?\s(?:by|von|par|por|da|di|door)\s+\S|(?:aus dem|from the) \w+ "
    r"(?:übersetzt |translated )?(?:von|by)\s|(?:trans|transl|ed|eds|tr|übers|hrsg|"
    r"trad)\.?:?\s(?=\S)",
    re.IGNORECASE,
)
_PUBLISHING = frozenset(
    folded(
        "press classics verlag publishers publishing publications éditions editions edition "
        "editorial editore editora uitgeverij paperback hardback hardcover ebook audiobook "
        "ausgabe auflage taschenbuch edición edizione edição uitgave druk éd ed verlags"
    ).split()
)
_HOUSES = frozenset(
    folded(
        "penguin macmillan everyman oxford cambridge norton vintage faber virago wordsworth dover "
        "signet modern folio gallimard flammarion garnier pléiade hachette reclam insel suhrkamp "
        "fischer rowohlt dtv hanser diogenes cátedra alianza austral aguilar losada einaudi "
        "mondadori "
        "feltrinelli rizzoli garzanti adelphi porto relógio querido meulenhoff atheneum kindle"
    ).split()
)
"""Words of publishers' names, of books that are in the public domain above all."""
_PRESS_AND_YEAR = re.compile(r"[^\W\d_].{1,80}?[,(:]\s*(?:1[4-9]|20)\d\d\)?\.?")


_PLAIN = frozenset(
    folded(label)
    for label in (
        "edition|this edition|my edition|the edition|publisher|published by|imprint|format|details|"
        "copy|my copy|ausgabe|meine ausgabe|verlag|edicion|editorial|editeur|maison d edition|"
        "edizione|editore|casa editrice|edicao|editora|uitgave|uitgever|uitgeverij|auflage|press"
    ).split("|")
)
"""Labels that add nothing to what follows them."""


def detail(label: str, value: str) -> str:
    """Return what is said of an edition behind a label: `Publisher: X` as X, `Translator: Y` whole.

    A label stays where what follows it would not say by itself what it is.
    """
    return value if folded(label) in _PLAIN else f"{label}: {value}"


def names_makers(text: str) -> bool:
    """Tell whether a line names a translator, an editor or the like: `Translated by X`."""
    return _MAKER.match(text.strip()) is not None


def is_publisher(text: str) -> bool:
    """Tell whether a text is a publisher's name that readers put without more beside a title."""
    return not _HOUSES.isdisjoint(folded(text).split())


def is_imprint_name(text: str) -> bool:
    """Tell whether a few words beside facts can be a publisher's name: `Penguin`, `Folio`."""
    words = text.strip(" .,;()").split()
    return 0 < len(words) <= 3 and words[0][:1].isupper() and not text.rstrip().endswith(("!", "?"))


def is_imprint(text: str) -> bool:
    """Tell whether a line says who made the edition, or who published it and when."""
    text = text.strip(" .*_()–—-")
    if len(text) > 120:
        return False
    words = folded(text).split()
    return (
        names_makers(text)
        or (len(words) <= 8 and not _PUBLISHING.isdisjoint(words))
        or (len(words) <= 6 and _PRESS_AND_YEAR.fullmatch(text) is not None)
    )


def may_be_of_imprint(piece: str) -> bool:
    """Tell whether a piece between commas may be of an imprint: a name, a year, an edition."""
    return is_imprint(piece) or is_imprint_name(piece) or piece.strip(" .").isdecimal()


def unbracketed(words: str) -> str:
    """Return words without one pair of brackets around the whole of them."""
    words = words.strip(" ,;")
    inside = words[1:].rstrip(" .").removesuffix(")")
    whole = words[:1] == "(" and words.rstrip(" .")[-1:] == ")" and "(" not in inside
    return inside.strip(" ,;") if whole and ")" not in inside else words
