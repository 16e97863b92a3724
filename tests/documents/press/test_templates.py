"""Blank digests to fill in: refused while blank, read back perfectly when filled in."""

from datetime import date

import pytest

from cards.digest import Commitment, Digest, Point, Quotation
from cards.errors import CannotWrite, NothingRecognised
from cards.intake import understand
from cards.intake.own_hints import OWN_HINTS
from service.documents.press.press import Press
from service.documents.reader import PandocDocuments
from service.use_cases.records import Form
from tests.documents.press.archives import edited

FORMS = [Form.DOCX, Form.ODT, Form.MARKDOWN]
BODY = {Form.DOCX: "word/document.xml", Form.ODT: "content.xml"}
HINTS = OWN_HINTS["en"]
FILLED = {
    HINTS.title: ["Walden"],
    HINTS.author: ["Henry David Thoreau"],
    HINTS.edition: ["Ticknor and Fields, 1854"],
    HINTS.isbn: ["978-0-306-40615-7"],
    HINTS.pages: ["352"],
    HINTS.finished: ["12 May 2025"],
    HINTS.theme: ["A man goes to the woods to live deliberately, and comes back when he has."],
    HINTS.point: ["Most lives are spent on needless labour."],
    HINTS.point_place: ["p. 8", "p. 55", "p. 300"],
    HINTS.another: [
        *("A house costs six weeks of work.", "He leaves because he has other lives to live."),
        *("Own nothing new this month.", "On Saturdays I will bake one loaf."),
        *("The mass of men lead lives of quiet desperation.", "“Simplify, simplify.”"),
    ],
    HINTS.commitment: ["Walk an hour every day."],
    HINTS.judgement: ["Agree with the arithmetic, and suspend the rest."],
    HINTS.quotation: ["I went to the woods because I wished to live deliberately."],
    HINTS.quotation_place: ["p. 88, after point 2", "p. 7, before all points", "p. 89"],
}
DIGEST = Digest(
    title="Walden",
    author="Henry David Thoreau",
    edition="Ticknor and Fields, 1854",
    isbn="9780306406157",
    pages=352,
    finished_on=date(2025, 5, 12),
    theme=FILLED[HINTS.theme][0],
    judgement=FILLED[HINTS.judgement][0],
    points=(
        Point("Most lives are spent on needless labour.", "p. 8"),
        Point("A house costs six weeks of work.", "p. 55"),
        Point("He leaves because he has other lives to live.", "p. 300"),
    ),
    commitments=(
        Commitment("Walk an hour every day."),
        Commitment("Own nothing new this month."),
        Commitment("On Saturdays I will bake one loaf."),
    ),
    quotations=(
        Quotation(FILLED[HINTS.quotation][0], "p. 88", 2),
        Quotation("The mass of men lead lives of quiet desperation.", "p. 7", 0),
        Quotation("Simplify, simplify.", "p. 89", 2),
    ),
)


def filled_in(text: str, words: dict[str, list[str]]) -> str:
    """A template's text with its hints written over, each with what is left for it."""
    for hint, values in words.items():
        if hint == HINTS.title:
            text = text.replace(hint, values[0])
            continue
        for value in values:
            text = text.replace(hint, value, 1)
    return text


def filled(press: Press, form: Form, words: dict[str, list[str]]) -> bytes:
    """A template filled in."""
    blank = press.template(form)
    if form in BODY:
        return edited(blank, BODY[form], lambda text: filled_in(text, words))
    return filled_in(blank.decode(), words).encode()


@pytest.mark.parametrize("language", OWN_HINTS)
@pytest.mark.parametrize("form", FORMS)
def test_a_blank_one_is_refused(
    documents: PandocDocuments, press: Press, form: Form, language: str
):
    """Nothing was written in it, and the refusal says so in a sentence."""
    blank = press.template(form, language)
    with pytest.raises(NothingRecognised, match="is the blank template, and nothing has been"):
        understand(documents.read(f"digest.{form.value}", blank))


@pytest.mark.parametrize("form", FORMS)
def test_filled_in_it_reads_back(documents: PandocDocuments, press: Press, form: Form):
    """Every place written over is that part of the digest, and nothing is left over."""
    understood = understand(documents.read(f"mine.{form.value}", filled(press, form, FILLED)))
    assert understood.digest == DIGEST
    assert understood.left == ()


def test_places_typed_without_the_stars(documents: PandocDocuments, press: Press):
    """In Markdown the stars around a place may go, and it may stand in brackets."""
    text = filled_in(press.template(Form.MARKDOWN).decode(), FILLED)
    text = text.replace("*p. 8*", "page 8").replace(
        "*p. 88, after point 2*", "(p. 88; after point 2)"
    )
    assert understand(documents.read("mine.md", text.encode())).digest == DIGEST


@pytest.mark.parametrize("form", FORMS)
def test_what_is_left_standing_is_not_taken_in(
    documents: PandocDocuments, press: Press, form: Form
):
    """Hints nobody wrote over are no words of the digest; an unsaid title is the file's name."""
    words = {HINTS.theme: ["A man goes to the woods."], HINTS.point: ["He builds a house (p. 55)"]}
    content = filled(press, form, words)
    understood = understand(documents.read(f"walden.{form.value}", content))
    assert understood.digest == Digest(
        title="walden",
        theme="A man goes to the woods.",
        points=(Point("He builds a house", "p. 55"),),
    )
    assert understood.left == ()


def test_only_three_forms_and_seven_languages(press: Press):
    """A blank PDF, or one in a language there are no hints in, is refused in a sentence."""
    with pytest.raises(CannotWrite, match="DOCX, ODT or Markdown"):
        press.template(Form.PDF)
    with pytest.raises(CannotWrite, match="“la”"):
        press.template(Form.DOCX, "la")
