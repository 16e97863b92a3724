"""What a blank template says in each place, and taking it out again where it was left standing."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from cards.intake.blocks import Block, Shape
from cards.intake.own_blocks import Role
from cards.intake.own_words import OWN_WORDS, words_for


@dataclass(frozen=True, slots=True)
class OwnHints:
    """What stands in the places of a template, to be written over.

    Attributes:
        title, author, edition, isbn, pages, finished, theme, point, point_place,
            commitment, judgement, quotation, quotation_place: the hint in each place.
        another: stands in the second place and the third of those that take several.
    """

    title: str
    author: str
    edition: str
    isbn: str
    pages: str
    finished: str
    theme: str
    point: str
    point_place: str
    commitment: str
    judgement: str
    quotation: str
    quotation_place: str
    another: str


OWN_HINTS = {
    "en": OwnHints(
        title="[Title of the book]",
        author="[Author]",
        edition="[publisher, year, translator]",
        isbn="[the number on the back]",
        pages="[how many]",
        finished="[the day you finished it]",
        theme="[What the book comes to, and by what stages: one paragraph.]",
        point="[An idea or event that carries the theme, in a sentence, in the book's order.]",
        point_place="[page or chapter]",
        commitment="[What the book asks you to do: to whom or to what, when, and how often.]",
        judgement="[Do you agree, disagree or suspend judgement, and why?]",
        quotation="[Words worth keeping, exactly as they are printed.]",
        quotation_place="[page, after point number]",
        another="[Another.]",
    ),
    "de": OwnHints(
        title="[Titel des Buches]",
        author="[Verfasser]",
        edition="[Verlag, Jahr, Übersetzung]",
        isbn="[die Nummer auf der Rückseite]",
        pages="[wie viele]",
        finished="[der Tag, an dem du fertig warst]",
        theme="[Worauf das Buch hinausläuft, und in welchen Schritten: ein Absatz.]",
        point="[Ein Gedanke oder Ereignis, das das Thema trägt, als Satz, wie im Buch gereiht.]",
        point_place="[Seite oder Kapitel]",
        commitment="[Was das Buch von dir verlangt: wem oder was gilt es, wann und wie oft.]",
        judgement="[Stimmst du zu, widersprichst du, lässt du es offen, und warum?]",
        quotation="[Worte, die du behalten willst, genau wie sie gedruckt sind.]",
        quotation_place="[Seite, nach Punkt Nummer]",
        another="[Noch etwas.]",
    ),
    "fr": OwnHints(
        title="[Titre du livre]",
        author="[Auteur]",
        edition="[éditeur, année, traduction]",
        isbn="[le numéro au dos]",
        pages="[combien]",
        finished="[le jour où vous l'avez terminé]",
        theme="[À quoi le livre aboutit, et par quelles étapes : un paragraphe.]",
        point="[Une idée ou un fait qui porte le thème, en une phrase, dans l'ordre du livre.]",
        point_place="[page ou chapitre]",
        commitment="[Ce que le livre vous demande de faire : envers qui ou quoi, quand, combien.]",
        judgement="[Êtes-vous d'accord, ou non, ou en suspens, et pourquoi ?]",
        quotation="[Des mots à garder, exactement comme ils sont imprimés.]",
        quotation_place="[page, après le point numéro]",
        another="[Encore un.]",
    ),
    "es": OwnHints(
        title="[Título del libro]",
        author="[Autor]",
        edition="[editorial, año, traducción]",
        isbn="[el número de la contraportada]",
        pages="[cuántas]",
        finished="[el día en que lo terminaste]",
        theme="[A qué llega el libro y por qué etapas: un párrafo.]",
        point="[Una idea o un hecho que sostiene el tema, en una frase, en el orden del libro.]",
        point_place="[página o capítulo]",
        commitment="[Lo que el libro te pide hacer: a quién o a qué, cuándo y cuántas veces.]",
        judgement="[¿Estás de acuerdo, en desacuerdo o en suspenso, y por qué?]",
        quotation="[Palabras que guardar, tal como están impresas.]",
        quotation_place="[página, tras el punto número]",
        another="[Otro más.]",
    ),
    "it": OwnHints(
        title="[Titolo del libro]",
        author="[Autore]",
        edition="[editore, anno, traduzione]",
        isbn="[il numero sul retro]",
        pages="[quante]",
        finished="[il giorno in cui l'hai finito]",
        theme="[A che cosa arriva il libro, e per quali tappe: un paragrafo.]",
        point="[Un'idea o un fatto che regge il tema, in una frase, nell'ordine del libro.]",
        point_place="[pagina o capitolo]",
        commitment="[Che cosa il libro ti chiede di fare: a chi, a che cosa, quando, quanto.]",
        judgement="[Sei d'accordo, in disaccordo o in dubbio, e perché?]",
        quotation="[Parole da tenere, proprio come sono stampate.]",
        quotation_place="[pagina, dopo il punto numero]",
        another="[Un altro.]",
    ),
    "pt": OwnHints(
        title="[Título do livro]",
        author="[Autor]",
        edition="[editora, ano, tradução]",
        isbn="[o número na contracapa]",
        pages="[quantas]",
        finished="[o dia em que o terminou]",
        theme="[A que chega o livro, e por que etapas: um parágrafo.]",
        point="[Uma ideia ou um facto que sustenta o tema, numa frase, pela ordem do livro.]",
        point_place="[página ou capítulo]",
        commitment="[O que o livro lhe pede que faça: a quem ou a quê, quando e quantas vezes.]",
        judgement="[Concorda, discorda ou suspende o juízo, e porquê?]",
        quotation="[Palavras a guardar, tal como estão impressas.]",
        quotation_place="[página, depois do ponto número]",
        another="[Mais um.]",
    ),
    "nl": OwnHints(
        title="[Titel van het boek]",
        author="[Schrijver]",
        edition="[uitgever, jaar, vertaling]",
        isbn="[het nummer op de achterkant]",
        pages="[hoeveel]",
        finished="[de dag waarop je het uit had]",
        theme="[Waar het boek op neerkomt, en langs welke stappen: één alinea.]",
        point="[Een gedachte of gebeurtenis die het thema draagt, in een zin, zoals in het boek.]",
        point_place="[bladzijde of hoofdstuk]",
        commitment="[Wat het boek van je vraagt: voor wie of wat, wanneer en hoe vaak.]",
        judgement="[Ben je het eens, oneens of laat je het open, en waarom?]",
        quotation="[Woorden om te bewaren, precies zoals ze gedrukt staan.]",
        quotation_place="[bladzijde, na punt nummer]",
        another="[Nog een.]",
    ),
}
"""By language (ISO 639-1)."""

assert OWN_HINTS.keys() == OWN_WORDS.keys()
_PLACES = 3
"""Places for points and for quotations in a template; a reader makes more by going on writing."""
_ALL = sorted(
    {
        getattr(hints, name)
        for hints in OWN_HINTS.values()
        for name in OwnHints.__dataclass_fields__
    },
    key=len,
    reverse=True,
)


def template_blocks(language: str) -> tuple[Block, ...]:
    """Return the blocks of a blank template in one of the languages of `OWN_HINTS`."""
    return tuple(
        Block(
            Shape.HEADING if role in {Role.TITLE, Role.SECTION} else Shape.PARAGRAPH,
            text,
            level={Role.TITLE: 1, Role.SECTION: 2}.get(role, 0),
            style=role.value,
        )
        for role, text in _places(language)
    )


def without_hints(blocks: Sequence[Block]) -> Iterator[Block]:
    """Yield the blocks of a template without what it said itself, and without empty places."""
    for block in blocks:
        text = block.text
        for hint in _ALL:
            text = text.replace(hint, "")
        if text.strip():
            yield block if text == block.text else replace(block, text=text.strip())


def _places(language: str) -> Iterator[tuple[Role, str]]:
    words, hints = words_for(language), OWN_HINTS[language]
    yield Role.TITLE, hints.title
    yield Role.AUTHOR, hints.author
    yield Role.FACT, f"{words.edition}: {hints.edition}"
    yield Role.FACT, f"{words.isbn}: {hints.isbn}"
    yield Role.FACT, f"{words.pages}: {hints.pages}"
    yield Role.FACT, f"{words.finished}: {hints.finished}"
    yield Role.SECTION, words.theme
    yield Role.THEME, hints.theme
    yield Role.SECTION, words.points
    for number in range(_PLACES):
        yield Role.POINT, hints.another if number else hints.point
        yield Role.POINT_PLACE, hints.point_place
    yield Role.SECTION, words.commitments
    for number in range(_PLACES):
        yield Role.COMMITMENT, hints.another if number else hints.commitment
    yield Role.SECTION, words.judgement
    yield Role.JUDGEMENT, hints.judgement
    yield Role.SECTION, words.quotations
    for number in range(_PLACES):
        yield Role.QUOTATION, hints.another if number else hints.quotation
        yield Role.QUOTATION_PLACE, hints.quotation_place
