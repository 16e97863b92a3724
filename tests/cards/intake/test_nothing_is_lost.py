"""No words vanish: each is in the digest or in a notice, whatever line it stands on."""

import re
from collections.abc import Iterator
from itertools import count, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cards.digest import Digest
from cards.errors import CatchwordError
from cards.intake import Understood, understand_all
from cards.intake.blocks import Block, Document, Shape
from cards.intake.headings import part_named
from tests.cards.intake.blocks_of import understood

WORDS = [
    f"{first}{middle}{last}"
    for first, middle, last in product(("zor", "vab", "quu", "wob"), "aeiou", ("bek", "dun", "gif"))
]
"""Words of no language, which are no heading, label, unit or numeral."""
LINES = st.sampled_from(
    [
        *("Read: 3 March 2025. {} {}, 579 pages. ISBN 978-0-14-143962-4", "{}, 579 pages, {}"),
        *("Finished: 12 May 2025, {}", "Finished: {} 2 May 2025", "finished 12 May 2025, {} {}"),
        *(
            "Edition: 512 pages, {} {}",
            "Edition: {}",
            "Translated by {} {}. 214 pages.",
            "{}, 2003",
        ),
        *("Title: {}", "Author: {} {}", "Author: {}, 300 pages", "Pages: 12 {}", "Pages: {}"),
        *(
            "ISBN: {}",
            "ISBN: 978-0-14-143962-4 ({})",
            "{} by {} {}",
            "by {}",
            "{}\n{}",
            "12 May {}",
        ),
        *("Summary: {} {}", "Agree: {}", "Points: {}; {}", "Quotes: “{}” (p. 4), {}", "Theme. {}"),
        *("“{} {}” (p. 5)", "“{}” — {}, ch. 3", "“{}” (p. 5)\n({} {})", "“{}”\n— {}", "— {} {}"),
        *("{} (p. 8)", "p. 5: {}", "(p. 4)", "ch. 3", "{}: {}", "{} – {}", "{}. {} {}", "{} {} {}"),
        *(
            "{} (ch. 2)\n(p. 3)",
            "{}\n“{}” (p. 9)",
            "I will:\n{}",
            "{}:",
            "{} [{}]",
            "- {}",
            "1. {}",
        ),
        *("Summary", "Points", "Commitments", "Quotations", "Judgement", "Argument", "Disagree"),
        *("Chapter 3: {}", "Chapter 2", "Details", "{}", "The argument of {}", "DETAILS OF {}"),
        *("{}\t{}", "{}\tp. 5\t{}", "Page\t{}", "Pages\t352\t{}", "1\t{}\tp. 3\tch. 2", "1848\t{}"),
        *("Quote\tPage\tNote", "Points\t{}\n{}", "\t{}", "{}\t{}\t{}\t{}", "2\t3", "after point 1"),
        "{} {} {} {} {} {} {} {} {} {} {} {} {} {} {} {}",
    ]
)
SHAPES = st.sampled_from(
    [
        *[(Shape.PARAGRAPH, 0, False)] * 4,
        (Shape.PARAGRAPH, 0, True),
        (Shape.HEADING, 1, False),
        *[(Shape.HEADING, 2, False)] * 2,
        (Shape.HEADING, 3, False),
        *[(Shape.ITEM, 1, False)] * 2,
        (Shape.ITEM, 2, False),
        (Shape.QUOTE, 0, False),
        *[(Shape.ROW, 0, False)] * 2,
    ]
)


@st.composite
def documents(draw: st.DrawFn) -> Document:
    """Documents of lines in any order and any shape, no word in them twice."""
    number = count(draw(st.integers(0, 40)))
    capital = draw(st.booleans())
    blocks = []
    for line, (shape, level, strong) in draw(st.lists(st.tuples(LINES, SHAPES), max_size=9)):

        def word(_: re.Match[str]) -> str:
            at = next(number)
            return (WORDS[at % 60] + "x" * (at // 60)).capitalize() if capital else WORDS[at % 60]

        text = re.sub(r"\{\}", word, line)
        blocks.append(Block(shape, text, level=level, strong=strong))
    style = draw(st.sampled_from(["", "Title", "Subtitle", "Author"]))
    blocks[:1] = [Block(b.shape, b.text, b.level, None, b.strong, style) for b in blocks[:1]]
    return Document(draw(st.sampled_from(["book.docx", "book.md"])), tuple(blocks))


def said(found: Understood) -> str:
    """Return all words of a digest and of its notices."""
    digest = found.digest
    parts = [
        *(digest.title, digest.author, digest.edition, digest.isbn, digest.theme),
        digest.judgement,
        *(words for part in (*digest.points, *digest.quotations) for words in _words(part)),
        *(commitment.text for commitment in digest.commitments),
        *(notice.message for notice in found.notices),
    ]
    return " ".join(" ".join(filter(None, parts)).split()).casefold()


def _words(part: object) -> tuple[str | None, str | None]:
    return getattr(part, "text", None), getattr(part, "locator", None)


@settings(max_examples=500, deadline=None)
@given(document=documents())
def test_every_word_is_kept_or_told_of(document: Document):
    """Each word is in the digest, in a heading that announces a part, or in what a notice says."""
    try:
        found = understand_all(document)
    except CatchwordError:
        return
    everything = " ".join(map(said, found))
    for block in document.blocks:
        if part_named(block.text.rstrip(":")) is not None:
            continue
        begun = " ".join(block.text.replace("\t", ", ").split())[:40].casefold()
        for word in re.findall(r"(?:zor|vab|quu|wob)\w+", block.text.casefold()):
            assert word in everything or begun in everything, (word, block, document, found)


def parts_of(digest: Digest) -> Iterator[tuple[str, str]]:
    """Yield each part's name with its words."""
    for name in ("title", "author", "edition", "theme", "judgement"):
        words = getattr(digest, name)
        if words:
            yield name, words
    for name in ("points", "commitments", "quotations"):
        for number, part in enumerate(getattr(digest, name), 1):
            yield f"{name} {number}", part.text
            yield f"{name} {number}", " ".join(_words(part)[1:] if _words(part)[1] else ())


@settings(max_examples=250, deadline=None)
@given(document=documents())
def test_every_word_has_a_source_or_is_left(document: Document):
    """Each word of the document is in the words of a part or among those left, and no other."""
    try:
        everything = understand_all(document)
    except CatchwordError:
        return
    told = " ".join(
        words
        for found in everything
        for words in (*(source.words for source in found.sources), *found.left)
    ).casefold()
    for block in document.blocks:
        for word in re.findall(r"\w+", block.text.casefold()):
            assert word in told, (word, block)


@settings(max_examples=250, deadline=None)
@given(document=documents())
def test_a_source_holds_the_words_of_its_part(document: Document):
    """Each word of a part stands in the words it is said to come from."""
    try:
        everything = understand_all(document)
    except CatchwordError:
        return
    for found in everything:
        sources = {source.part: source.words.casefold() for source in found.sources}
        for part, words in parts_of(found.digest):
            for word in re.findall(r"(?:zor|vab|quu|wob)\w+", words.casefold()):
                assert word in sources.get(part, ""), (part, word, found)


def test_the_words_each_part_came_from():
    """Sources stand in the order of the digest, with markers, locators and headings in them."""
    found = understood(
        """
        # Walden by Henry Thoreau
        Finished: 12 May 2025, on the train
        ## In short
        He went.
        ## Points
        ### Chapter 2
        1. One
        2. Two (p. 9)
        ## Quotes
        | Words | Page | After
        | “Simplify.” | 12 | 1
        ## Cover
        Green cloth
        """
    )
    assert [(source.part, source.words) for source in found.sources] == [
        ("title", "Walden by Henry Thoreau"),
        ("author", "Walden by Henry Thoreau"),
        ("finished_on", "Finished: 12 May 2025, on the train"),
        ("theme", "In short\nHe went."),
        ("points", "Points\nChapter 2"),
        ("points 1", "Chapter 2\n1. One"),
        ("points 2", "2. Two (p. 9)"),
        ("quotations", "Quotes\nWords\tPage\tAfter"),
        ("quotations 1", "“Simplify.”\t12\t1"),
        ("document", "Cover"),
    ]
    assert found.left == ("on the train", "Green cloth")


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("# W\n## Quotes\n| “Q.” | p. 5 | lovely", "lovely"),
        ("# W\n## Quotes\n“Q.” (p. 5)\n(Finale)", "Finale"),
        ("# W\n## Quotes\n- “Q.” (p. 5)\n— Dorothea", "Dorothea"),
        ("# W\n## Points\n| 1848 | Revolution", "1848"),
        ("# W\n## Points\n| One | ch. 2 | p. 5", "p. 5"),
        ("# W\n## Points\n- One (p. 8)\n-- ch. 2", "p. 8"),
        ("# W\n## Points\n### Chapter 3: The Pond\n- One", "The Pond"),
        ("# W\n## Summary\nx\n## Lend it to Anna", "Lend it to Anna"),
        ("# W\n## Summary\nx\n## Disagree\nHe is wrong.", "Disagree: He is wrong."),
    ],
)
def test_words_that_used_to_vanish(text: str, word: str):
    """Cells, second places, years, chapter names and bare headings are kept or told of."""
    assert word.casefold() in said(understood(text))
