"""Advice on a digest: what is said of each part, and that good digests are left alone."""

from datetime import date
from importlib import resources

import pytest

from cards.advice import (
    FEWEST_WORDS_OF_A_THEME,
    MOST_WORDS_OF_A_THEME,
    WORDS_A_PAGE,
    advice_on,
    is_sentence,
)
from cards.digest import Commitment, Digest, Notice, Point, Quotation
from cards.intake import understand
from service.documents.reader import PandocDocuments

TODAY = date(2026, 11, 25)
THEME = (
    "A weaver who has lost his faith and his gold finds both again in a child, and the village "
    "that feared him comes in at his door."
)


def digest(**parts: object) -> Digest:
    """A digest that deserves no advice, but for the parts given."""
    good: dict[str, object] = {
        "title": "Silas Marner",
        "theme": THEME,
        "points": (
            Point("The lot falls on Marner, and he leaves the town.", "p. 12"),
            Point("The child comes to his hearth.", "p. 110"),
        ),
        "commitments": (Commitment("Invite a neighbour to tea every Sunday."),),
        "quotations": (
            Quotation("In old days there were angels.", "p. 131"),
            Quotation("The gods of the hearth exist for us still.", "p. 139"),
        ),
    }
    return Digest(**(good | parts))  # type: ignore[arg-type] # the parts are of their own kinds


def parts_of(notices: tuple[Notice, ...]) -> list[str]:
    """Return the part each notice is about."""
    return [notice.part for notice in notices]


def test_a_good_digest_is_left_alone() -> None:
    """Nothing is said of a digest in which nothing is amiss."""
    assert advice_on(digest(), TODAY) == ()


@pytest.mark.parametrize(
    ("parts", "where", "said"),
    [
        ({"theme": "Gold is lost and a child is found."}, "theme", "about a line"),
        ({"theme": "word " * (MOST_WORDS_OF_A_THEME + 1)}, "theme", "more than half a page"),
        ({"points": (Point("The weaver's gold"),)}, "points 1", "a heading rather than"),
        (
            {"quotations": (Quotation("No lantern has drained a ditch."),)},
            "quotations 1",
            "no locator",
        ),
        (
            {"quotations": (Quotation("word " * (WORDS_A_PAGE + 1), "p. 3"),)},
            "quotations",
            f"have {WORDS_A_PAGE + 1} words",
        ),
    ],
)
def test_each_fault_is_said_once_of_its_part(
    parts: dict[str, object], where: str, said: str
) -> None:
    """A fault gives one notice, of the part it is in, in a sentence that says what to do."""
    (notice,) = advice_on(digest(**parts), TODAY)
    assert notice.part == where
    assert said in notice.message
    assert notice.message.endswith(".")


def test_the_bounds_of_a_theme_are_its_own_words() -> None:
    """A theme of exactly the fewest or the most words is neither a line nor half a page."""
    for words in (FEWEST_WORDS_OF_A_THEME, MOST_WORDS_OF_A_THEME):
        assert advice_on(digest(theme="word " * words), TODAY) == ()


@pytest.mark.parametrize(
    ("locators", "out"),
    [
        (("p. 12", "p. 80", "p. 150"), []),
        (("p. 12", "p. 12", "pp. 12-14"), []),
        (("p. 80", "p. 12", "p. 150"), [2]),
        (("p. 80", None, "p. 12"), [3]),
        (("ch. 3", "ch. 16", "ch. 2"), [3]),
        (("Book V, ch. 2", "Book V, ch. 1"), [2]),
        (("Book I, ch. 9", "Book II, ch. 1"), []),
        (("p. ix", "p. 12", "p. 3"), [3]),
        (("p. 80", "ch. 2"), []),
        (("the end", "p. 1"), []),
    ],
)
def test_what_stands_out_of_the_books_order_is_named(
    locators: tuple[str | None, ...], out: list[int]
) -> None:
    """A point or a quotation before the one above it is named, where both places can be told."""
    points = tuple(Point("The child comes to his hearth.", locator) for locator in locators)
    quoted = tuple(Quotation("The gods exist for us still.", locator) for locator in locators)
    said = advice_on(digest(points=points, quotations=()), TODAY)
    assert parts_of(said) == [f"points {number}" for number in out]
    said = advice_on(digest(points=(), quotations=quoted), TODAY)
    moved = [notice.part for notice in said if "locator:" not in notice.message]
    assert moved == [f"quotations {number}" for number in out]


@pytest.mark.parametrize(
    "point",
    [
        "Dunstan takes the gold; Raveloe begins to pity.",
        "Fifteen years of weaving: the guineas become his company.",
        "The child on the hearth; he names her for his mother.",
        "Nobody believed him.",
        "Marner hoards.",
        "A captain signs on hands for a whaling voyage, and tells them what he hunts.",
        "Wer schweigt, stimmt zu.",
        "La lettre change son jugement.",
        "白鯨を追う",
    ],
)
def test_a_sentence_is_not_taken_for_a_heading(point: str) -> None:
    """Points that claim or tell something are sentences, in whatever language."""
    assert is_sentence(point)


@pytest.mark.parametrize(
    "point",
    ["The weaver", "The theft of the gold", "Childhood", "A second chance", "The white whale"],
)
def test_a_heading_is_no_sentence(point: str) -> None:
    """A few words without a verb are a heading."""
    assert not is_sentence(point)


def test_commitments_are_read_on_the_day_the_book_was_finished() -> None:
    """A digest with that day is read relative to it, another to the day given."""
    commitment = Commitment("Be kinder.")
    said = advice_on(digest(commitments=(commitment,)), TODAY)
    assert set(parts_of(said)) == {"commitments 1"}
    bygone = digest(
        commitments=(Commitment("Call my sister by 29 February 2024."),),
        finished_on=date(2024, 2, 1),
    )
    assert advice_on(bygone, TODAY) == ()


def test_cautions_are_not_repeated_as_advice() -> None:
    """A commitment that touches health carries its caution elsewhere; advice is on wording."""
    said = digest(commitments=(Commitment("Take the tablets after breakfast every day."),))
    assert advice_on(said, TODAY) == ()


def test_the_demo_library_is_advised_on_what_it_deserves() -> None:
    """Only quotations without a locator, and commitments without a measure, are named there."""
    documents = PandocDocuments()
    folder = resources.files("service.documents") / "demo_library"
    said: dict[str, list[str]] = {}
    for file in folder.iterdir():
        if file.name.endswith(".txt"):
            continue
        understood = understand(documents.read(file.name, file.read_bytes()))
        notices = advice_on(understood.digest, TODAY)
        said[file.name] = sorted({notice.part for notice in notices})
        measured = [notice for notice in notices if notice.part.startswith("commitments")]
        assert all("not measurable" in n.message or "word it so" in n.message for n in measured)
    assert len(said) == 10
    assert said["pride-and-prejudice.md"] == [
        "commitments 1",
        "quotations 1",
        "quotations 2",
        "quotations 3",
        "quotations 4",
    ]
    others = {part for name, parts in said.items() if name[0] != "p" for part in parts}
    assert all(part.startswith("commitments") for part in others)
