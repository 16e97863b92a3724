"""A whole document understood, whatever is in it."""

import contextlib
import time
from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cards.digest import Commitment, Digest, Point, Quotation
from cards.errors import CatchwordError, InvalidDigest, NothingRecognised
from cards.intake import understand
from cards.intake.blocks import Block, Document, Shape
from tests.cards.intake.blocks_of import blocks_of, understood
from tests.cards.intake.digests import digests, written

FRAGMENTS = st.sampled_from(
    [
        *("Summary", "Points:", "QUOTES", "What I will do", "Judgement", "Title: x", "by", "p. 5"),
        *(
            "“",
            "”",
            "(after point 9)",
            "- ",
            "1. ",
            "a) ",
            "[x] ",
            "\n",
            "\t",
            " — ",
            "ISBN 123456789",
        ),
        *(
            "Finished: 99/99/9999",
            "999999 pages",
            "(",
            ")",
            "§",
            ".",
            "\x00",
            "\u200b",
            "é",
            "村上",
        ),
        *("54%", "Chapter III: ", "Author", "Page", "After", "ch.", "²", "٣", "\ud7ff", "ﬁ", "İ"),
    ]
)
TEXTS = st.one_of(
    st.lists(FRAGMENTS, max_size=8).map("".join),
    st.lists(FRAGMENTS, max_size=8).map(" ".join),
    st.text(max_size=60),
)
BLOCKS = st.builds(
    Block,
    shape=st.sampled_from(Shape),
    text=TEXTS,
    level=st.integers(0, 7),
    number=st.one_of(st.none(), st.integers(-1, 10**6)),
    strong=st.booleans(),
    style=st.sampled_from(["", "Title", "Subtitle", "Author", "Quote"]),
)
DOCUMENTS = st.builds(
    Document,
    name=st.one_of(st.sampled_from(["x.md", "x.docx", "", ".", ".md"]), TEXTS),
    blocks=st.lists(BLOCKS, max_size=14).map(tuple),
    properties=st.dictionaries(
        st.sampled_from(["title", "author", "isbn", "pages", "finished", "date"]), TEXTS, max_size=4
    ),
)


@settings(max_examples=500, deadline=None)
@given(document=DOCUMENTS)
def test_any_document_is_understood_or_refused(document: Document):
    """Arbitrary blocks give a valid digest with plain notices, or one of our own refusals."""
    try:
        found = understand(document)
    except CatchwordError:
        return
    assert isinstance(found.digest, Digest)
    assert all(notice.part and notice.message.strip() for notice in found.notices)
    assert all("\x00" not in notice.message for notice in found.notices)


@settings(max_examples=120, deadline=None)
@given(digest=digests())
def test_a_digest_written_down_reads_back_the_same(digest: Digest):
    """Title, author, facts and every part of a digest survive being written as blocks and read."""
    assert understand(Document("x.md", blocks_of(written(digest)))).digest == digest


@settings(max_examples=120, deadline=None)
@given(document=DOCUMENTS)
def test_understanding_twice_gives_the_same(document: Document):
    """The same document is always understood in the same way."""
    try:
        found = understand(document)
    except CatchwordError as refused:
        with pytest.raises(type(refused)):
            understand(document)
        return
    assert understand(document) == found


def test_the_whole_of_a_digest():
    """Every part and fact of one digest, with nothing to tell the reader."""
    found = understood(
        """
        # Walden by Henry David Thoreau
        ISBN 0-306-40615-2 · 352 pages · Finished 12 May 2025
        ## Summary
        He went.
        He came back.
        ## Points
        1. One (p. 8)
        2. Two (p. 55)
        ## Commitments
        - Walk.
        ## Quotations
        > “Simplify.” (p. 12)
        ## Judgement
        Agree.
        """
    )
    assert found.digest == Digest(
        title="Walden",
        author="Henry David Thoreau",
        isbn="0306406152",
        pages=352,
        finished_on=date(2025, 5, 12),
        theme="He went.\n\nHe came back.",
        judgement="Agree.",
        points=(Point("One", "p. 8"), Point("Two", "p. 55")),
        commitments=(Commitment("Walk."),),
        quotations=(Quotation("Simplify.", "p. 12", 1),),
    )
    assert found.notices == ()


@pytest.mark.parametrize(
    "text",
    [
        "",
        "Dear Anna,\nthank you for the long letter, which I have read twice already with pleasure.",
        "# Walden\n## Chapter 1\nHe went.",
        "# Walden\n## Summary",
        "# Walden\n## Points\n## Quotes\n- p. 5",
        "# Walden\n## Judgement\nAgree.",
    ],
)
def test_a_document_without_a_part_is_refused(text: str):
    """Without one part that can be asked about there is no digest, and the reader is told how."""
    with pytest.raises(NothingRecognised, match=r"“book\.docx”.*Summary.*Points.*Quotations"):
        understood(text)


def test_the_bounds_of_a_digest_hold():
    """What is far beyond two pages is refused by the digest itself."""
    with pytest.raises(InvalidDigest):
        understood("# W\n## Summary\n" + "word " * 5_000)
    with pytest.raises(InvalidDigest):
        understood("# W\n## Points\n" + "- one\n" * 501)


def test_missing_places_are_asked_for():
    """A quotation without a locator, or without a known point, is asked about by its number."""
    found = understood("# W\nby A B\n## Points\n- One\n## Quotes\n- “Q.”\n- “R.” (p. 5)")
    told = [(notice.part, notice.message.split(".")[0]) for notice in found.notices]
    assert told == [
        ("theme", "There is no theme"),
        ("quotations 1", "It has no locator"),
        ("quotations 1", "Nothing says after which point it stands"),
        ("quotations 2", "Nothing says after which point it stands"),
    ]


def test_no_words_are_dropped_in_silence():
    """Every word of a digest is in a part, in a fact or in a notice."""
    found = understood(
        "# Walden\nby H. Thoreau\nlent by Anna\n## Summary\nalpha\n## Points\nfirst:\n- beta\n"
        "- gamma\n## Quotes\nthese:\n- “delta”\n-- a remark\n## Cover\ngreen\n"
        "## What I will do\n- epsilon"
    )
    digest = found.digest
    kept = " ".join(
        [
            digest.theme or "",
            *(part.text for part in digest.points + digest.commitments + digest.quotations),
            *(notice.message for notice in found.notices),
        ]
    )
    for word in "lent Anna alpha first beta gamma these delta remark green epsilon".split():
        assert word in kept, word


@pytest.mark.parametrize(
    "text",
    [
        "“" * 20_000,
        "a. " * 10_000,
        "Title: " * 5_000,
        "- " * 10_000,
        "(p. 5) " * 5_000,
        "Summary " * 5_000,
        "\n".join(["“x” (p. 1)"] * 2_000),
        "\n".join(["i. x"] * 3_000),
        " by A" * 5_000,
        "ISBN " + "1 " * 10_000,
        "finished " * 5_000,
        "A, " * 8_000,
    ],
)
@pytest.mark.parametrize("shape", [Shape.PARAGRAPH, Shape.ITEM, Shape.QUOTE, Shape.ROW])
def test_hostile_words_take_no_time(text: str, shape: Shape):
    """Tens of thousands of half-made headings, labels and locators are read within two seconds."""
    blocks = (
        *blocks_of("# W"),
        Block(shape, text),
        *blocks_of("## Quotes"),
        Block(shape, text),
        *blocks_of("## Points"),
        Block(shape, text),
    )
    started = time.process_time()
    with contextlib.suppress(CatchwordError):
        understand(Document("x.md", blocks))
    assert time.process_time() - started < 2


def test_thousands_of_blocks_take_no_time():
    """Reading grows in step with the number of blocks."""
    text = (
        "# W\n## Points\n" + "- One (p. 5)\n> “Words” (p. 6)\n" * 450 + "## X\n" + "y z\n" * 20_000
    )
    blocks = blocks_of(text)
    started = time.process_time()
    assert len(understand(Document("x.md", blocks)).digest.points) == 450
    assert time.process_time() - started < 3
