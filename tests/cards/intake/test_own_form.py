"""Our own written form, in blocks: what is written is taken at its word."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cards.digest import Digest, Point, Quotation
from cards.errors import NothingRecognised
from cards.intake.blocks import Block, Document, Shape
from cards.intake.own_blocks import MARK, Role, blocks_of_digest, place_line, place_said
from cards.intake.own_form import own_form
from cards.intake.own_words import OWN_WORDS, language_of, words_for
from tests.property.written_digests import any_digests, texts


@settings(max_examples=60)
@given(digest=any_digests(), language=st.sampled_from(sorted(OWN_WORDS)))
def test_blocks_read_back(digest: Digest, language: str):
    """Whatever a digest holds and in whatever language it is headed, its blocks are it again."""
    document = Document("x", blocks_of_digest(digest, language), {MARK: "1"})
    found = own_form(document)
    assert found is not None
    assert found.digest == digest
    assert found.left == ()


@given(
    locator=st.none() | texts(),
    after=st.none() | st.integers(0, 500),
    language=st.sampled_from(sorted(OWN_WORDS)),
)
def test_the_line_of_a_place_reads_back(locator: str | None, after: int | None, language: str):
    """A locator that looks like what is said of a point does not pass for it."""
    assert place_said(place_line(locator, after, words_for(language))) == (locator, after)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("p. 54, after point 2", ("p. 54", 2)),
        ("S. 5 · vor allen Punkten", ("S. 5", 0)),
        ("ch. 3; after point 12", ("ch. 3", 12)),
        ("after point 7", (None, 7)),
        ("p. 54", ("p. 54", None)),
        ("no locator", (None, None)),
    ],
)
def test_places_as_readers_write_them(line: str, said: tuple[str | None, int | None]):
    """A comma does as well as our own dot between a locator and its point."""
    assert place_said(line) == said


def test_any_other_document_is_left_to_the_others():
    """Without the mark, of a later version, or without a style of ours, it is none of ours."""
    blocks = blocks_of_digest(Digest(title="A", theme="It ends."))
    assert own_form(Document("x", blocks)) is None
    assert own_form(Document("x", blocks, {MARK: "2"})) is None
    assert own_form(Document("x", (Block(Shape.PARAGRAPH, "a"),), {MARK: "1"})) is None


def test_an_emptied_one_is_refused():
    """A document of ours of which only the title is left is refused in a sentence."""
    blocks = (Block(Shape.HEADING, "Emma", level=1, style=Role.TITLE),)
    with pytest.raises(NothingRecognised, match="Nothing of the digest is left in “x”"):
        own_form(Document("x", blocks, {MARK: "1"}))


def test_each_part_beside_its_words():
    """The words each part came from are told, the line of its place with them."""
    digest = Digest(
        title="Emma",
        author="Jane Austen",
        pages=474,
        theme="She is wrong.",
        points=(Point("She paints Harriet.", "ch. 6"),),
        quotations=(Quotation("Seldom, very seldom", "p. 431", 1),),
    )
    found = own_form(Document("x", blocks_of_digest(digest), {MARK: "1"}))
    assert found is not None
    assert found.sources == (
        ("title", "Emma"),
        ("author", "Jane Austen"),
        ("pages", "Pages: 474"),
        ("theme", "She is wrong."),
        ("points 1", "She paints Harriet.\nch. 6"),
        ("quotations 1", "Seldom, very seldom\np. 431 · after point 1"),
    )
    assert found.notices == ()


@pytest.mark.parametrize(
    ("text", "language"),
    [
        ("A man goes to the woods and lives there, and it is good.", "en"),
        ("Ein Mann geht in den Wald und lebt dort, und das ist gut.", "de"),
        ("Un homme va dans les bois et il y vit, et c'est une leçon pour les autres.", "fr"),
        ("Un hombre se va al bosque y vive en él, y los otros no lo siguen.", "es"),
        ("Un uomo va nel bosco e non è solo, perché gli alberi sono con lui.", "it"),
        ("Um homem vai para o bosque e não é uma fuga, mas um regresso da alma.", "pt"),
        ("Een man gaat naar het bos en zijn leven wordt er niet minder van.", "nl"),
        ("μῆνιν ἄειδε θεὰ", "el"),
        ("Мысль изречённая есть ложь", "ru"),
        ("道可道，非常道", "zh"),
        ("いろはにほへと", "ja"),
        ("בראשית ברא", "he"),
        ("Walden", "en"),
        ("", "en"),
    ],
)
def test_the_language_of_a_text(text: str, language: str):
    """The seven languages of the headings are told apart by small words, others by letters."""
    assert language_of(text) == language
