"""Title, author and facts at the top of a digest."""

from datetime import date

import pytest

from cards.intake.blocks import Block, Document, Shape
from cards.intake.dates import Written, date_in
from cards.intake.title import named_in
from cards.intake.understanding import understand
from tests.cards.intake.blocks_of import blocks_of, understood

REST = "\n## Summary\nHe went."


@pytest.mark.parametrize(
    "top",
    [
        "# Walden by Henry David Thoreau",
        "# Walden, by Henry David Thoreau",
        "# Walden — Henry David Thoreau",
        "# Henry David Thoreau – Walden",
        "# Walden\nHenry David Thoreau",
        "# Walden\nby Henry David Thoreau",
        "# Walden (Henry David Thoreau, 1854)",
        "# Walden, Henry David Thoreau",
        "# Digest of Walden by Henry David Thoreau",
        "# “Walden” by Henry David Thoreau",
        "** Walden\nHenry David Thoreau",
        "Walden\nHenry David Thoreau",
        "Walden / Henry David Thoreau",
        "Walden by Henry David Thoreau",
        "Title: Walden\nAuthor: Henry David Thoreau",
        "Title: Walden / Author: Henry David Thoreau",
        "Title and author: Walden, Henry David Thoreau",
        "| Author / title | Henry David Thoreau: Walden",
        "Title: Walden | Author: Henry David Thoreau",
        "** Title: Walden\n** Author: Henry David Thoreau",
        "# Book digest\nTitle: Walden\nBy: Henry David Thoreau",
        "| Title | Walden\n| Author | Henry David Thoreau",
        "# Title\nWalden\n# Author\nHenry David Thoreau",
        "** Title\n- Walden\n** Author\n- Henry David Thoreau",
        "Titel: Walden\nAutor: Henry David Thoreau",
    ],
)
def test_title_and_author_however_written(top: str):
    """Title and author are told apart in every usual layout."""
    digest = understood(top + REST).digest
    assert (digest.title, digest.author) == ("Walden", "Henry David Thoreau")


@pytest.mark.parametrize(
    ("line", "title", "author"),
    [
        ("Pride and Prejudice by Jane Austen", "Pride and Prejudice", "Jane Austen"),
        ("Jane Austen — Pride and Prejudice", "Pride and Prejudice", "Jane Austen"),
        ("North by northwest", "North by northwest", None),
        ("Germinal, d’Émile Zola", "Germinal", "Émile Zola"),
        ("Notes on THE ODYSSEY", "THE ODYSSEY", None),
        ("Notes on “Emma” by Jane Austen", "Emma", "Jane Austen"),
        ("Notes on Nursing", "Notes on Nursing", None),
        ("Bird by Bird by Anne Lamott", "Bird by Bird", "Anne Lamott"),
        ("The Republic by Plato", "The Republic", "Plato"),
        ("Die Verwandlung von Franz Kafka", "Die Verwandlung", "Franz Kafka"),
        ("Letters to a Young Poet", "Letters to a Young Poet", None),
        ("Guns, Germs, and Steel", "Guns, Germs, and Steel", None),
        ("Walden (1854)", "Walden (1854)", None),
        ("Moby-Dick; or, The Whale", "Moby-Dick; or, The Whale", None),
        ("Self-Reliance — an essay", "Self-Reliance — an essay", None),
    ],
)
def test_title_lines(line: str, title: str, author: str | None):
    """A title that only looks like a title with its author stays whole."""
    named = named_in(line)
    assert (named.title, named.author) == (title, author)


def test_a_name_of_one_word_stands_right_under_the_title():
    """Plato alone on the line under the title is the author; other single words are not."""
    assert understood("# The Republic\nPlato" + REST).digest.author == "Plato"
    assert understood("# The Republic\nNovel" + REST).digest.author is None
    assert understood("# The Republic\n416 pages, lent\nPlato" + REST).digest.author is None


def test_styles_name_title_and_author():
    """Paragraphs in a document's own styles for them are title, subtitle and author."""
    blocks = (
        Block(Shape.PARAGRAPH, "Walden", style="Title"),
        Block(Shape.PARAGRAPH, "Life in the Woods", style="Subtitle"),
        Block(Shape.PARAGRAPH, "thoreau", style="Author"),
        *blocks_of(REST),
    )
    digest = understand(Document("x.docx", blocks)).digest
    assert (digest.title, digest.author) == ("Walden: Life in the Woods", "thoreau")


def test_front_matter_is_typed_by_hand_and_counts_first():
    """The properties of a Markdown file are its front matter, facts included."""
    digest = understood(
        "# Digest" + REST,
        "x.md",
        title="Walden",
        author="Thoreau",
        finished="2025-05-12",
        pages="352",
    ).digest
    assert (digest.title, digest.author, digest.pages) == ("Walden", "Thoreau", 352)
    assert digest.finished_on == date(2025, 5, 12)


def test_properties_of_word_processors_count_last():
    """A stale property overrules nothing, and a property's author counts only with its title."""
    digest = understood("# Walden" + REST, title="Old letter", author="The Reader").digest
    assert (digest.title, digest.author) == ("Walden", None)
    digest = understood(REST, title="Walden", author="Thoreau").digest
    assert (digest.title, digest.author) == ("Walden", "Thoreau")
    digest = understood(REST, "emma.docx", title="Document1", author="The Reader").digest
    assert (digest.title, digest.author) == ("emma", None)


def test_failing_all_the_file_name_stands_in():
    """Without a title the file's name is taken, and the reader is told."""
    found = understood(REST, "the_prince.docx")
    assert found.digest.title == "the prince"
    assert [notice.part for notice in found.notices] == ["author", "title"] or {
        "title",
        "author",
    } <= {notice.part for notice in found.notices}


def test_prose_without_a_heading_is_the_theme_only_without_one():
    """Unheaded prose at the top becomes the theme when there is none, else it is told of."""
    prose = "A man goes to the woods to live deliberately and comes back able to live anywhere."
    found = understood(f"# Walden\n{prose}\n## Points\n- One")
    assert found.digest.theme == prose
    assert any(notice.part == "theme" for notice in found.notices)
    found = understood(f"# Walden\n{prose}{REST}")
    assert found.digest.theme == "He went."
    assert any(
        notice.part == "document" and "A man goes" in notice.message for notice in found.notices
    )


@pytest.mark.parametrize(
    "lines",
    [
        "ISBN: 0-306-40615-2\nPages: 352\nFinished: 2025-05-12",
        "ISBN 0-306-40615-2, 352 pages, finished 12 May 2025",
        "352 pp. · ISBN-10: 0-306-40615-2 · Finished reading on May 12, 2025",
        "352 pages / Finished: 12.5.2025 / ISBN 0306406152",
        "| ISBN | 0-306-40615-2\n| Pages | 352\n| Finished on | 12 May 2025",
        "- ISBN: 0-306-40615-2\n- Page count: 352\n- Date finished: 12th of May, 2025",
        "Seiten: 352\nGelesen: 12. Mai 2025\nISBN 0 306 40615 2",
    ],
)
def test_facts_however_written(lines: str):
    """ISBN, pages and the day are read from lines, lists and tables."""
    digest = understood(f"# Walden\n{lines}{REST}").digest
    assert (digest.isbn, digest.pages) == ("0306406152", 352)
    assert digest.finished_on == date(2025, 5, 12)


def test_facts_after_the_parts():
    """A labelled line at the end of the digest still gives its fact, and is no quotation."""
    digest = understood("# W\n## Quotes\n- “Q.” (p. 5)\nFinished: 12 May 2025").digest
    assert digest.finished_on == date(2025, 5, 12)
    assert len(digest.quotations) == 1


def test_a_wrong_isbn_is_kept_with_a_notice():
    """A number whose check digit does not agree stays as written, and the reader is told."""
    found = understood("# W\nISBN: 0-306-40615-3" + REST)
    assert found.digest.isbn == "0306406153"
    assert [notice.part for notice in found.notices if notice.part == "isbn"] == ["isbn"]


def test_impossible_pages_are_told_of():
    """A number of pages no book has is not kept."""
    found = understood("# W\nPages: 999999" + REST)
    assert found.digest.pages is None
    assert any(notice.part == "pages" for notice in found.notices)


@pytest.mark.parametrize(
    ("written", "day"),
    [
        ("2025-05-12", date(2025, 5, 12)),
        ("12 May 2025", date(2025, 5, 12)),
        ("May 12, 2025", date(2025, 5, 12)),
        ("May 12th 2025", date(2025, 5, 12)),
        ("Monday, 12 May 2025", date(2025, 5, 12)),
        ("12.5.2025", date(2025, 5, 12)),
        ("12. Mai 2025", date(2025, 5, 12)),
        ("12 mai 2025", date(2025, 5, 12)),
        ("12 de mayo de 2025", date(2025, 5, 12)),
        ("12 maggio 2025", date(2025, 5, 12)),
        ("12 de maio de 2025", date(2025, 5, 12)),
        ("12 mei 2025", date(2025, 5, 12)),
        ("25/5/2025", date(2025, 5, 25)),
        ("5/25/2025", date(2025, 5, 25)),
        ("5/5/2025", date(2025, 5, 5)),
        ("3/4/2025", None),
        ("May 2025", None),
        ("2025", None),
        ("2025-02-30", None),
        ("31 June 2025", None),
    ],
)
def test_dates(written: str, day: date | None):
    """A day is read where the words leave no doubt, and left open where they do."""
    assert date_in(written) == Written(day)


def test_a_day_left_open_is_told_of():
    """A month alone gives no day and a notice; words without a date are no date."""
    found = understood("# W\nFinished: May 2025" + REST)
    assert found.digest.finished_on is None
    assert any(notice.part == "finished_on" for notice in found.notices)
    assert date_in("some day") is None
