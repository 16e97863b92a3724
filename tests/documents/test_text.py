"""Bare text: encodings, typed lists, wrapped lines, front matter."""

import time

import pytest

from service.documents.front_matter import split_front_matter
from service.documents.reader import PandocDocuments
from service.documents.text import decoded, lists_marked, rejoined


@pytest.mark.parametrize(
    "content",
    [
        "Né à Zürich – “là”".encode(),
        "Né à Zürich – “là”".encode("utf-8-sig"),
        "Né à Zürich – “là”".encode("utf-16"),
        b"\xfe\xff" + "Né à Zürich – “là”".encode("utf-16-be"),
        "Né à Zürich – “là”".encode("cp1252"),
    ],
    ids=["UTF-8", "UTF-8 with mark", "UTF-16", "UTF-16 big-endian", "Windows-1252"],
)
def test_encodings(content: bytes):
    """Text is read in the encoding it is in."""
    assert decoded("a.txt", content) == "Né à Zürich – “là”"


def test_line_ends():
    """Line ends of every system become one."""
    assert decoded("a.txt", b"a\r\nb\rc\nd") == "a\nb\nc\nd"


def test_wrapped_prose_is_joined():
    """Lines a program broke are joined; the last may be short."""
    text = (
        "A man goes to the woods to live deliberately, strips life to\n"
        "its needs, and comes back able to live anywhere he likes, for\n"
        "good.\n\nNext."
    )
    assert rejoined(text).split("\n")[0].endswith("anywhere he likes, for good.")
    assert rejoined(text).endswith("\n\nNext.")


def test_verse_lists_labels_and_quotations_are_not_joined():
    """Lines that could have taken the next word, or that open something, stay lines."""
    for text in (
        "The world was all before them, where to choose\nTheir place of rest, and Providence",
        "- a rather long item that goes on to the edge of the page\n- another",
        "Title: a rather long title that goes on to the edge of the page\nAuthor: Someone",
        "“A rather long quotation that goes on to the edge of it.” (p. 5)\n“Another.” (p. 7)",
    ):
        assert rejoined(text) == text


def test_text_that_was_never_wrapped_stays(documents: PandocDocuments):
    """Where paragraphs are lines of any length, no lines are joined."""
    text = "word " * 60 + "\nsecond line\n"
    assert rejoined(text) == text
    assert documents.read("a.txt", text.encode()).blocks[0].text.endswith("word\nsecond line")


def test_plain_text_keeps_what_looks_like_markup(documents: PandocDocuments):
    """Angle brackets and backslashes in plain text are words."""
    blocks = documents.read("a.txt", b"if a <b> c\n\n<div>\nx\n").blocks
    assert [block.text for block in blocks] == ["if a <b> c", "<div>\nx"]


def test_typed_bullets_are_items(documents: PandocDocuments):
    """Bullets people paste count as list marks."""
    blocks = documents.read("a.txt", "• one\n• two\n".encode()).blocks
    assert [(block.shape, block.text) for block in blocks] == [("item", "one"), ("item", "two")]


@pytest.mark.parametrize("suffix", ["md", "txt"])
def test_lines_that_were_typed_stay_lines(documents: PandocDocuments, suffix: str):
    """Labels, capital lines and numbers start lines of their own in Markdown as in plain text."""
    text = "Title: A\n**Author:** B\n\nTHEME\nMany lives.\n\na) one\nb) two\n"
    texts = [block.text for block in documents.read(f"x.{suffix}", text.encode()).blocks]
    assert texts == ["Title: A\nAuthor: B", "THEME\nMany lives.", "a) one\nb) two"]


def test_wrapped_quotations_are_joined(documents: PandocDocuments):
    """A quotation that an editor wrapped behind its marks is one line; verse keeps its lines."""
    text = (
        "> I went to the woods because I wished to live deliberately,\n"
        "> to front only the essential facts of life, and see if I\n"
        "> could not learn what it had to teach.\n\n"
        "> The mind is its own place, and in itself\n"
        "> Can make a Heaven of Hell\n"
    )
    blocks = documents.read("x.md", text.encode()).blocks
    assert "\n" not in blocks[0].text
    assert blocks[1].text.split("\n")[1] == "Can make a Heaven of Hell"


def test_tables_without_outer_bars_stay_tables(documents: PandocDocuments):
    """Rows of a table are never joined."""
    row = "a fairly long cell with many words | another long cell with words"
    blocks = documents.read("x.md", f"{row}\n---|---\n{row}\n{row}\n".encode()).blocks
    assert [block.shape for block in blocks] == ["row"] * 3


def test_front_matter():
    """Keys and values between dashes are properties, and values may hold colons."""
    text = (
        "---\nTitle: Walden: or, Life in the Woods\nauthors:\n  - A B\n  - 'C D'\npages: 352\n"
        "tags: [x, y]\n---\nBody\n"
    )
    properties, body = split_front_matter(text)
    assert properties == {
        "title": "Walden: or, Life in the Woods",
        "authors": "A B, C D",
        "pages": "352",
        "tags": "x, y",
    }
    assert body == "Body\n"


@pytest.mark.parametrize("text", ["---\nno pairs\n---\nBody", "---\ntitle: x\nBody", "", "Body"])
def test_text_without_front_matter_is_left_whole(text: str):
    """A rule of dashes at the top is no front matter unless it closes over pairs."""
    assert split_front_matter(text) == ({}, text)


@pytest.mark.parametrize("name", ["x.md", "x.txt"])
def test_the_largest_text_is_read_in_linear_time(documents: PandocDocuments, name: str):
    """A megabyte of short items takes about four times what a quarter of it takes."""

    def taken(items: int) -> float:
        text = "# W\n\n## Points\n\n" + "".join(
            f"- item {number} {'word ' * 38}\n" for number in range(items)
        )
        started = time.process_time()
        assert len(documents.read(name, text.encode()).blocks) == items + 2
        return time.process_time() - started

    assert min(taken(5_000) for _ in range(2)) < 8 * min(taken(1_250) for _ in range(2))


def test_dashes_in_front_of_items_are_bullets():
    """Lines that open with a dash one after another are a list; a locator behind one is none."""
    assert lists_marked("Points\n\n– One\n  more\n– Two\n") == "Points\n\n- One\n  more\n- Two\n"
    placed = "Words of the book.\n– Homer\n– p. 5\n"
    assert lists_marked(placed) == placed
    assert lists_marked("– alone\n") == "– alone\n"
