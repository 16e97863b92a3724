"""The text of a book out of plain text and HTML: chapters as they are printed, pages, refusals."""

from time import process_time

import pytest

from cards.errors import DocumentBroken, DocumentEmpty, DocumentTooLarge, DocumentUnsupported
from cards.proving import BookText
from cards.proving.text import MAX_CHARACTERS
from service.documents.book_texts import BookTexts
from service.documents.book_texts.bounds import MAX_FILE

PROSE = "It was a dark and stormy night, and the rain fell in torrents, except at intervals.\n"


def read(text: str, name: str = "book.txt") -> BookText:
    """Read a text."""
    return BookTexts().read(name, text.encode())


def chapters(text: str, name: str = "book.txt") -> list[tuple[int, str]]:
    """Return numbers and titles of the chapters of a text."""
    return [(chapter.number, chapter.title) for chapter in read(text, name).chapters]


def with_prose(*headings: str) -> str:
    """Return a text in which prose stands under each heading."""
    return "\n\n".join(f"{heading}\n\n{PROSE}" for heading in headings)


@pytest.mark.parametrize(
    "headings",
    [
        ("CHAPTER I.", "CHAPTER II.", "CHAPTER III."),
        ("Chapter 1", "Chapter 2"),
        ("CHAPTER 1. Loomings.", "CHAPTER 2. The Carpet-Bag."),
        ("Chapter One", "Chapter Two"),
        ("Chapter the First", "Chapter the Second"),
        ("Kapitel 1", "Kapitel 2"),
        ("CHAPITRE I", "CHAPITRE II"),
        ("I", "II", "III"),
        ("1.", "2.", "3."),
        ("Letter 1", "Letter 2"),
        ("VOLUME I CHAPTER I", "VOLUME I CHAPTER II", "VOLUME II. CHAPTER I."),
        ("Book the First, Chapter the First", "Book the Second. Chapter 1"),
        ("CHAPTER 56. Of the Less Erroneous Pictures of Whales, and the True\nPictures.",),
    ],
)
def test_headings_as_they_are_printed(headings: tuple[str, ...]):
    """A paragraph worded as the heading of a chapter begins one, whatever its numerals."""
    made = chapters(with_prose(*headings))
    assert made == [
        (number, heading.replace("\n", " ")) for number, heading in enumerate(headings, 1)
    ]


def test_chapters_count_through_volumes():
    """Volumes and books stand before the titles of their chapters; the count goes on."""
    text = with_prose(
        "VOLUME I\n\nCHAPTER I", "CHAPTER II", "VOLUME II\n\nCHAPTER I", "BOOK III.\n\nCHAPTER I"
    )
    assert chapters(text) == [
        (1, "VOLUME I, CHAPTER I"),
        (2, "VOLUME I, CHAPTER II"),
        (3, "VOLUME II, CHAPTER I"),
        (4, "BOOK III, CHAPTER I"),
    ]


def test_a_title_below_belongs_to_its_heading():
    """A line in capitals right under a heading is the title of the chapter."""
    assert chapters(with_prose("CHAPTER I\n\nTHE WHITE WHALE")) == [
        (1, "CHAPTER I THE WHITE WHALE")
    ]


def test_a_list_of_contents_is_no_chapter():
    """Headings listed with nothing between them are contents; the book's own are its chapters."""
    listed = "CONTENTS\n\nCHAPTER I\n\nCHAPTER II\n\nCHAPTER III\n\n"
    assert chapters(listed + with_prose("CHAPTER I", "CHAPTER II", "CHAPTER III")) == [
        (1, "CHAPTER I"),
        (2, "CHAPTER II"),
        (3, "CHAPTER III"),
    ]


@pytest.mark.parametrize(
    "line",
    [
        "Chapter 5 of the book was read to me by my brother, who could not stop laughing,",
        "The first act was over. Now she hoped for some beneficial change; and,",
        "Part of the crew had gone.",
        "Part of the letter 2 was lost",
        "Chapter 5 was the dullest.",
        "I",
    ],
)
def test_prose_is_no_heading(line: str):
    """A sentence that begins as a heading might, or one numeral, divides nothing."""
    assert chapters(f"{PROSE}\n{line}\n\n{PROSE}") == []


def test_marks_of_pages_are_taken_out():
    """Marks a transcriber put in for pages give the pages, and are none of the words."""
    book = read("The whale [Pg ix] was\n[Pg 1] white.")
    assert book.text == "The whale was\nwhite."
    assert [(page.label, book.text[page.start :].split()[0]) for page in book.pages] == [
        ("ix", "was"),
        ("1", "white."),
    ]


def test_a_distributors_frame_is_left_out():
    """What stands before the line that starts a book, and after the one that ends it, is not it."""
    book = read(
        f"Title: Emma\nAuthor: Jane Austen\n\n*** START OF THE BOOK EMMA ***\n{PROSE}"
        "*** END OF THE BOOK EMMA ***\nLicence and more."
    )
    assert book.text == PROSE
    assert (book.title, book.author) == ("Emma", "Jane Austen")


def test_a_title_page_is_read():
    """Title and author are the first lines where the second is "by" somebody."""
    book = read(f"EMMA\n\nBy Jane Austen\n\nISBN 978-0-306-40615-7\n\n{with_prose('CHAPTER I')}")
    assert (book.title, book.author, book.isbn) == ("EMMA", "Jane Austen", "9780306406157")


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_encodings(encoding: str):
    """A text is read in whatever encoding a program left it."""
    book = BookTexts().read("book.txt", "Überdies – “naïve”.\r\nZwei.".encode(encoding))
    assert book.text == "Überdies – “naïve”.\nZwei."


def test_a_stray_nul_is_no_word():
    """A NUL in a text is dropped; the words around it are read."""
    assert "\x00" not in read("The white\x00 whale.").text


def test_other_scripts():
    """Texts in scripts from right to left, and without spaces, come whole."""
    for text in ("بسم الله الرحمن", "日本語の本です。", "ספר הבריאה"):
        assert read(text).text == text


def test_a_page_of_html():
    """Headings are chapters, scripts and styles no words, marks of pages pages."""
    page = (
        "<!DOCTYPE html><html><head><title>Emma</title><style>p{}</style></head><body>"
        "<h1>EMMA</h1><h2>CHAPTER I</h2><p onclick='x()'>Handsome, <em>clever</em>,"
        "<span class='pagenum'>[Pg 2]</span> and rich</p><script>steal()</script>"
        "<h2>CHAPTER II</h2><p>Mr. Weston</p></body></html>"
    )
    for name in ("emma.html", "emma.txt"):
        book = read(page, name)
        assert book.text == (
            "EMMA\n\nCHAPTER I\n\nHandsome, clever, and rich\n\nCHAPTER II\n\nMr. Weston"
        )
        assert book.title == "Emma"
        assert [chapter.title for chapter in book.chapters] == ["CHAPTER I", "CHAPTER II"]
        assert [page.label for page in book.pages] == ["2"]


def test_a_declared_encoding_of_html_is_heeded():
    """A page in an old encoding that says so is read in it."""
    page = "<html><head><meta charset='koi8-r'></head><body><p>Война</p></body></html>"
    assert BookTexts().read("war.html", page.encode("koi8-r")).text == "Война"


@pytest.mark.parametrize(
    ("name", "content", "refusal", "says"),
    [
        ("book.txt", b"", DocumentEmpty, "no words"),
        ("book.txt", b" \n\x00 ", DocumentEmpty, "no words"),
        ("book.txt", b"... --- ...", DocumentEmpty, "no words"),
        ("book.txt", bytes(range(256)) * 10, DocumentBroken, "does not hold text"),
        ("book.txt", b"a" * (MAX_FILE + 1), DocumentTooLarge, "64 MB"),
        ("book.txt", b"a " * (MAX_CHARACTERS // 2 + 1), DocumentTooLarge, "20 million"),
        ("book.pdf", b"%PDF-1.7", DocumentUnsupported, "no book is read"),
        ("book.html", b"<html></html>", DocumentEmpty, "no words"),
        ("../../evil\x07.pdf", b"x", DocumentUnsupported, "evil .pdf"),
    ],
    ids=range(9),
)
def test_what_is_no_book_is_refused(name: str, content: bytes, refusal: type[Exception], says: str):
    """Each is refused in one sentence that says what is wrong, and what to do."""
    with pytest.raises(refusal, match=says):
        BookTexts().read(name, content)


@pytest.mark.parametrize("declared", ["idna", "undefined", "punycode", "unicode_escape", "utf-16"])
def test_a_codec_that_is_no_encoding_of_books_is_not_heeded(declared: str):
    """A page that declares what is none of its bytes' encodings is read as Windows-1252."""
    page = f"<?xml version='1.0' encoding='{declared}'?><html><body><p>café</p></body></html>"
    assert BookTexts().read("cafe.html", page.encode("cp1252")).text == "café"


def test_volumes_without_chapters_take_no_longer():
    """Sixteen thousand headings of acts with nothing below them are read as quickly as prose."""
    begun = process_time()
    assert read("Act 1\n\n" * 16_000).chapters == ()
    # A tenth of a second here; it took fifty.
    assert process_time() - begun < 5
