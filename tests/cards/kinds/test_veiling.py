"""What of a quotation is hidden where its source is asked."""

import pytest

from cards.digest import Digest, Point
from cards.kinds.veiling import VEIL, Telling, share_left, veil
from tests.cards.digests import kept

POINTS = (
    Point("Darcy slights Elizabeth at the assembly"),
    Point("The letter shames Elizabeth Bennet, and Mr. Darcy waits"),
    Point("Lydia elopes from Brighton"),
)
BOOK = kept(Digest("Pride and Prejudice", author="Jane Austen", points=POINTS))


def veiled(text: str, book=BOOK) -> str:
    """Return a quotation of a book as it is shown."""
    return veil(text, Telling(book).of(text))


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("Vanity and pride are different things", "Vanity and ——— are different things"),
        ("A proud and prejudiced man", "A proud and ——— man"),
        ("He had told Elizabeth nothing", "He had told ——— nothing"),
        ("Elizabeth’s courage rises", "———’s courage rises"),
        ("Elizabeth Bennet laughed at it", "——— laughed at it"),
        ("Mr. Darcy danced only four dances", "———. ——— danced only four dances"),
        ("Lydia was Lydia still, untamed", "——— was ——— still, untamed"),
        ("Lydia! untamed, unabashed, wild", "———! untamed, unabashed, wild"),
        ("The park at Rosings was large", "The park at ——— was large"),
        ("Charlotte Lucas asked no more", "——— asked no more"),
        ("Letters were waited for by all", "Letters were waited for by all"),
        ("“It is settled,” he said. Nothing more", "“It is settled,” he said. Nothing more"),
    ],
)
def test_title_words_and_names_are_veiled_and_nothing_else(text, shown):
    """Words of title and author by their stem, capitals inside a sentence, names of the digest."""
    assert veiled(text).replace("Mr. ", "———. ") == shown


@pytest.mark.parametrize(
    ("title", "text", "shown"),
    [
        ("Les Misérables", "So long as miserables exist", "So long as ——— exist"),
        (
            "Walden; or, Life in the Woods",
            "I went to the woods to live",
            f"I went to the {VEIL} to live",
        ),
        ("Up to Us", "It is up to us to choose", "It is up to us to choose"),
        ("EMMA", "emma did not hear", f"{VEIL} did not hear"),
    ],
)
def test_a_title_is_veiled_however_it_is_written(title, text, shown):
    """Without regard to case, accents and endings; small words tell nothing."""
    assert veiled(text, kept(Digest(title, theme="A theme"))) == shown


def test_where_nouns_have_capitals_they_name_nobody():
    """In German a quotation stays readable; a name the digest has too is veiled."""
    points = (
        Point("Der Vater verlangt vom Sohn Gehorsam, und die Mutter schweigt im dunklen Zimmer"),
        Point("Gregor liegt am Morgen im Bett und hört den Regen auf dem Blech der Fenster"),
        Point("Am Ende fährt die Familie mit der Bahn ins Freie und denkt an die Zukunft"),
    )
    book = kept(Digest("Die Verwandlung", author="Franz Kafka", points=points))
    text = "Als Gregor Samsa aus unruhigen Träumen erwachte, fand er sich zu Ungeziefer verwandelt"
    shown = veiled(text, book)
    assert "Gregor" not in shown
    assert "Träumen" in shown
    assert "Ungeziefer" in shown


def test_a_veil_tells_no_length_and_joins_neighbours():
    """One word or three in a row look the same."""
    assert veil("a Ann b", frozenset({"ann"})) == f"a {VEIL} b"
    assert veil("Ann Lee Ann, Ann", frozenset({"ann", "lee"})) == f"{VEIL}, {VEIL}"


@pytest.mark.parametrize(
    ("text", "share"), [("whales swim", 1.0), ("Ann swims", 0.5), ("Ann", 0.0), ("it is", 0.0)]
)
def test_the_share_left_is_of_content_words(text, share):
    """Empty words can be read and tell nothing."""
    assert share_left(text, frozenset({"ann"})) == share
