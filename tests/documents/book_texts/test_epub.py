"""The text of a book out of an EPUB: order, chapters, pages, and what is refused."""

import zipfile
from itertools import product
from time import process_time

import pytest

from cards.errors import (
    DocumentBroken,
    DocumentEmpty,
    DocumentLocked,
    DocumentTooLarge,
    DocumentUnsupported,
)
from cards.proving import BookText
from service.documents.book_texts import BookTexts
from tests.documents.book_texts.epubs import CONTAINER, XHTML, archive, epub, package, page

NAV = '<item id="nav" href="nav.xhtml" properties="nav" media-type="application/xhtml+xml"/>'
NCX = '<item id="ncx" href="toc.ncx" media-type="application/x-dtbncx+xml"/>'
ENCRYPTION = (
    '<encryption xmlns="urn:oasis:names:tc:opendocument:xmlns:container" '
    'xmlns:enc="http://www.w3.org/2001/04/xmlenc#"><enc:EncryptedData>'
    '<enc:EncryptionMethod Algorithm="{}"/><enc:CipherData><enc:CipherReference '
    'URI="OEBPS/page0.xhtml"/></enc:CipherData></enc:EncryptedData></encryption>'
)


def read(content: bytes, name: str = "whale.epub") -> BookText:
    """Read an EPUB."""
    return BookTexts().read(name, content)


def nav(body: str) -> str:
    """Return a navigation document."""
    return f"{XHTML}<body>{body}</body></html>"


def test_the_spine_gives_the_order():
    """Pages are read in the order of the spine, paragraphs parted by a blank line."""
    book = read(
        epub(["<p>Call me\n  <i>Ishmael</i>.</p><p>Some years ago</p>", "<p>never mind</p>"])
    )
    assert book.text == "Call me Ishmael.\n\nSome years ago\n\nnever mind"
    assert (book.title, book.author) == ("The Whale", "Herman Melville")


def test_what_no_reader_sees_is_left_out():
    """Scripts, styles, pictures, navigation and the numbers of notes are no words of the book."""
    body = (
        "<script>alert(1)</script><style>p {}</style><nav><ol><li>One</li></ol></nav>"
        '<p>a whale<sup>12</sup> or<a epub:type="noteref" href="#n">3</a> fish'
        '<svg xmlns="http://www.w3.org/2000/svg"><text>drawn</text></svg></p>'
    )
    assert read(epub([body])).text == "a whale or fish"


def test_numbers_of_notes_that_are_only_links():
    """An older EPUB's link to a note is no word; a link with words is."""
    body = '<p>a whale<a href="n.xhtml#n1">1</a> or <a href="n.xhtml#f">fish</a></p>'
    assert read(epub([body])).text == "a whale or fish"


def test_the_title_of_the_book_heads_no_chapter():
    """A title page named as the book is named is not its first chapter."""
    book = read(epub([f"<h1>{name}</h1><p>x</p>" for name in ("The Whale", "Loomings", "Ahab")]))
    assert [chapter.title for chapter in book.chapters] == ["Loomings", "Ahab"]


def test_line_breaks_and_words_in_parts():
    """A break stays a break, and a word in two elements stays one word."""
    assert read(epub(["<p>the <b>w</b>hale<br/>and I</p>"])).text == "the whale\nand I"


@pytest.mark.parametrize(
    "said",
    ["urn:isbn:9780306406157", "978-0-306-40615-7", "ISBN:0-306-40615-2"],
)
def test_an_isbn_among_the_identifiers(said: str):
    """A sound ISBN is read from whatever identifier holds it; an unsound one is none."""
    more = f"<dc:identifier>urn:uuid:1</dc:identifier><dc:identifier>{said}</dc:identifier>"
    assert read(epub(["<p>x</p>"], metadata=more)).isbn in {"9780306406157", "0306406152"}
    wrong = "<dc:identifier>urn:isbn:9780306406158</dc:identifier>"
    assert read(epub(["<p>x</p>"], metadata=wrong)).isbn is None


def test_chapters_by_the_navigation_document():
    """Chapters are those the contents name, front matter left out, volumes put before them."""
    contents = nav(
        '<nav epub:type="toc"><ol><li><a href="page0.xhtml">Title Page</a></li>'
        '<li><a href="page1.xhtml">Volume I</a><ol>'
        '<li><a href="page1.xhtml#c1">Chapter I. Loomings</a></li>'
        '<li><a href="page1.xhtml#c2">Chapter II. The Carpet-Bag</a></li></ol></li>'
        '<li><a href="page2.xhtml">Volume II</a><ol>'
        '<li><a href="page2.xhtml#c1">Chapter I. The Spouter-Inn</a></li></ol></li></ol></nav>'
    )
    book = read(
        epub(
            [
                "<p>THE WHALE</p>",
                '<h1>Volume I</h1><h2 id="c1">I</h2><p>one</p><h2 id="c2">II</h2><p>two</p>',
                '<h1>Volume II</h1><h2 id="c1">I</h2><p>three</p>',
            ],
            {"OEBPS/nav.xhtml": contents},
            items=NAV,
        ),
    )
    assert [(chapter.number, chapter.title) for chapter in book.chapters] == [
        (1, "Volume I, Chapter I. Loomings"),
        (2, "Volume I, Chapter II. The Carpet-Bag"),
        (3, "Volume II, Chapter I. The Spouter-Inn"),
    ]
    assert [book.text[chapter.start : chapter.end].split()[1] for chapter in book.chapters] == [
        "one",
        "two",
        "three",
    ]


def test_chapters_and_pages_by_the_older_contents():
    """An EPUB 2 names its chapters, and its pages, in its NCX."""
    chapters = {"Loomings": "page0.xhtml", "The Carpet-Bag": "page1.xhtml"}
    pages = {"ix": "page0.xhtml#a", "1": "page1.xhtml#b"}
    points, targets = (
        "".join(
            f"<{name}><navLabel><text>{label}</text></navLabel><content src='{path}'/></{name}>"
            for label, path in lines.items()
        )
        for name, lines in (("navPoint", chapters), ("pageTarget", pages))
    )
    ncx = (
        '<ncx xmlns="http://www.daisy.org/z3986/2005/ncx/">'
        f"<navMap>{points}</navMap><pageList>{targets}</pageList></ncx>"
    )
    book = read(
        epub(
            ['<p id="a">one</p>', '<p>two <span id="b"/>three</p>'],
            {"OEBPS/toc.ncx": ncx},
            items=NCX,
            spine='toc="ncx"',
        )
    )
    assert [chapter.title for chapter in book.chapters] == ["Loomings", "The Carpet-Bag"]
    assert [(mark.label, book.text[mark.start :].split()[0]) for mark in book.pages] == [
        ("ix", "one"),
        ("1", "three"),
    ]


@pytest.mark.parametrize(
    "mark",
    [
        '<span epub:type="pagebreak" title="54" id="x"/>',
        '<span epub:type="pagebreak" id="x">54</span>',
        '<span role="doc-pagebreak" aria-label="Page 54"></span>',
        '<a class="pagenum" id="Page_54">[Pg 54]</a>',
        '<span epub:type="pagebreak" id="page54"></span>',
    ],
)
def test_page_marks_of_every_make(mark: str):
    """A mark gives its page and none of the book's words, in the middle of a word or not."""
    book = read(epub([f"<p>a white wh{mark}ale</p>"]))
    assert book.text == "a white whale"
    assert [(page.label, book.text[page.start :]) for page in book.pages] == [("54", "ale")]


def test_headings_stand_in_for_missing_contents():
    """Without contents the headings of the pages are the chapters."""
    book = read(epub(["<h2>Chapter 1</h2><p>a</p>", "<h2>Chapter 2</h2><p>b</p>"]))
    assert [chapter.title for chapter in book.chapters] == ["Chapter 1", "Chapter 2"]


@pytest.mark.parametrize(
    ("body", "text"),
    [
        ("<p>a &nbsp;b &mdash; c &amp; d</p>", "a b — c & d"),
        ("<p>un<b>closed <i>tags</p><p>more", "unclosed tags\n\nmore"),
        ("<p>5 < 6 & 7</p>", "5 < 6 & 7"),
        ('<p>a<a id="x"/>b</p><div/><p>c</p>', "ab\n\nc"),
        ("<p>&unknown; word</p>", "&unknown; word"),
    ],
)
def test_broken_pages_are_read_leniently(body: str, text: str):
    """Entities of HTML, unclosed tags and stray signs cost none of the words."""
    made = epub(["<p>x</p>"], {"OEBPS/page0.xhtml": f"{XHTML}<body>{body}</body></html>"})
    assert read(made).text == text


def test_entities_of_its_own_are_not_resolved():
    """What a page declares is cut out before it is parsed: neither files nor bombs come in."""
    body = (
        '<!DOCTYPE html [<!ENTITY a "lol"><!ENTITY b "&a;&a;&a;&a;&a;&a;">'
        '<!ENTITY secret SYSTEM "file:///etc/passwd">]>'
        f"{XHTML}<body><p>x&b;&secret;y</p></body></html>"
    )
    text = read(epub(["<p>x</p>"], {"OEBPS/page0.xhtml": body})).text
    assert "lol" not in text
    assert "root" not in text
    assert text.startswith("x")


def test_names_that_lead_outside_are_only_names():
    """Paths beyond the archive are looked up nowhere; the rest of the book is read."""
    made = archive(
        {
            "META-INF/container.xml": CONTAINER,
            "OEBPS/package.opf": package(["../../../etc/passwd", "/etc/passwd", "a.xhtml"]),
            "OEBPS/a.xhtml": page("<p>the whale</p>"),
            "../../../etc/passwd": page("<p>outside</p>"),
            "/etc/passwd": page("<p>outside</p>"),
        }
    )
    assert read(made).text == "the whale"


def test_fonts_may_be_obscured_and_words_may_not():
    """An obscured font is no lock; anything else that is encrypted is, and is said to be."""
    font = ENCRYPTION.format("http://www.idpf.org/2008/embedding")
    assert read(epub(["<p>x</p>"], {"META-INF/encryption.xml": font})).text == "x"
    for lock in (
        {
            "META-INF/encryption.xml": ENCRYPTION.format(
                "http://www.w3.org/2001/04/xmlenc#aes128-cbc"
            )
        },
        {"META-INF/encryption.xml": "<broken"},
        {"META-INF/rights.xml": "<rights/>"},
    ):
        with pytest.raises(DocumentLocked, match="DRM"):
            read(epub(["<p>x</p>"], lock))


def test_ten_thousand_pages_are_read():
    """A book of ten thousand files is read whole."""
    book = read(epub([f"<p>page {number}</p>" for number in range(10_000)]))
    assert book.text.count("page") == 10_000
    assert book.text.endswith("page 9999")


SOUND = epub(["<p>the whale</p>"])


@pytest.mark.parametrize(
    ("content", "refusal", "says"),
    [
        (b"", DocumentEmpty, "no words"),
        (b"PK\x03\x04 and no more", DocumentBroken, "damaged"),
        (SOUND[: len(SOUND) // 2], DocumentBroken, "damaged"),
        (b"Call me Ishmael.", DocumentBroken, "no EPUB"),
        (archive({"a.txt": "x"}), DocumentBroken, "container.xml"),
        (archive({"META-INF/container.xml": "<broken"}), DocumentBroken, "damaged"),
        (archive({"META-INF/container.xml": "<container/>"}), DocumentBroken, "names no package"),
        (archive({"META-INF/container.xml": CONTAINER}), DocumentBroken, "package.opf"),
        (
            archive({"META-INF/container.xml": CONTAINER, "OEBPS/package.opf": "<a"}),
            DocumentBroken,
            "package document is damaged",
        ),
        (epub([]), DocumentBroken, "names no page"),
        (epub(["<p> </p>"]), DocumentEmpty, "no words"),
        (
            epub(["<p>x</p>"], {"OEBPS/page0.xhtml": page("a" * 40_000_000)}),
            DocumentTooLarge,
            "far more than a book",
        ),
        (
            archive({f"{number}.xhtml": "" for number in range(25_001)}),
            DocumentTooLarge,
            "far more than a book",
        ),
    ],
    ids=range(13),
)
def test_what_is_no_book_is_refused(content: bytes, refusal: type[Exception], says: str):
    """Each is refused in one sentence that says what is wrong, and what to do."""
    with pytest.raises(refusal, match=says):
        read(content)


def test_damage_inside_is_refused():
    """A part that does not unpack to what the archive says makes the file a damaged one."""
    at = SOUND.index(b"OEBPS/package.opf") + 40
    with pytest.raises(DocumentBroken, match="damaged"):
        read(SOUND[:at] + bytes(20) + SOUND[at + 20 :])


def test_an_archive_of_something_else_is_not_read():
    """A zip that is no EPUB is refused as such."""
    with pytest.raises(DocumentUnsupported, match="archive"):
        read(b"PK\x03\x04" + bytes(300), "digests.zip")


def test_a_page_nested_without_end_costs_only_itself():
    """A page whose elements stand in one another thousandfold does not take the others along."""
    deep = "<div>" * 5_000 + "deep" + "</div>" * 5_000
    assert "the whale" in read(epub(["<p>the whale</p>", deep])).text


def test_a_break_before_words_drops_none_of_them():
    """An element that is only broken before holds the book's words, and counts no page."""
    book = read(
        epub(['<div class="pagebreak" id="pb_3"><p>The whale was white that day.</p></div>'])
    )
    assert book.text == "The whale was white that day."
    assert book.pages == ()


@pytest.mark.parametrize(
    "body",
    [
        "<p><a" + " x" * 200_000 + "<b>whale</b>",
        "<p><a" + ' x="y"' * 100_000 + " whale",
        "<p>&" * 100_000 + "whale",
        "<!DOCTYPE [" * 50_000 + "whale",
        "<p>" + " \n" * 500_000 + "whale",
    ],
    ids=range(5),
)
def test_markup_made_to_take_long_does_not(body: str):
    """Half-open tags, entities and declarations by the thousand are read or refused at once."""
    made = epub(["<p>white whale</p>", "<p>x</p>"], {"OEBPS/page1.xhtml": body})
    assert "white whale" in read(made).text


@pytest.mark.parametrize(
    "body",
    [
        "<!DOCTYPE[" * 5_000 + "<p>whale</p>",
        "<sup>" * 240 + "whale " * 160_000 + "</sup>" * 240,
        '<span class="pagenum">' * 240 + "whale " * 160_000 + "</span>" * 240,
    ],
    ids=["declarations", "notes", "marks"],
)
def test_what_stands_in_one_another_is_read_once(body: str):
    """A page that asks for all its words at every depth, or opens declarations, takes no longer."""
    made = epub(["<p>white whale</p>"], {"OEBPS/page0.xhtml": f"{XHTML}<body>{body}</body></html>"})
    begun = process_time()
    assert "whale" in read(made).text
    # A tenth of a second here; it took three.
    assert process_time() - begun < 1


def test_contents_in_one_another_are_read_once():
    """Contents that stand in contents without end are those of the outermost."""
    deep = '<nav epub:type="toc toc toc">' * 200 + "<b>a</b>" * 50_000 + "</nav>" * 200
    begun = process_time()
    read(epub(["<p>whale</p>"], {"OEBPS/nav.xhtml": nav(deep)}, items=NAV))
    # A tenth of a second here; it took fifteen.
    assert process_time() - begun < 3


def test_one_part_is_one_page_however_it_is_spelt():
    """A spine that names one part again and again, in capitals and small letters, reads it once."""
    spellings = ["".join(pair) for pair in product("pP", "aA", "gG", "eE")]
    names = [f"{name}.xhtml" for name in spellings]
    book = read(
        archive(
            {
                "META-INF/container.xml": CONTAINER,
                "OEBPS/package.opf": package(names * 3),
                "OEBPS/Page.xhtml": page("<p>the whale</p>"),
            }
        )
    )
    assert book.text == "the whale"


@pytest.mark.parametrize("packing", [zipfile.ZIP_LZMA, zipfile.ZIP_BZIP2])
def test_an_unusual_packing_is_refused(packing: int):
    """Parts packed otherwise than EPUB has them (3.3, 4.2.2) are not unpacked, sound or not."""
    sound = archive({"META-INF/container.xml": CONTAINER}, packing)
    at = sound.index(b"container.xml") + 22
    for content in (sound, sound[:at] + bytes(30) + sound[at + 30 :]):
        with pytest.raises(DocumentBroken, match="damaged"):
            read(content)


def test_a_directory_of_hundred_thousands_is_refused_unread():
    """An archive that lists more files than a book can have is refused before the list is read."""
    with pytest.raises(DocumentTooLarge, match="far more than a book"):
        read(SOUND + b"PK\x01\x02" * 50_001)


def test_signs_named_in_capitals_open_no_element():
    """`&LT;` is a sign like `&lt;`."""
    body = "<html><body><p>a &LT;b&GT; whale &AMP;amp; more</p></body></html>"
    assert BookTexts().read("w.html", body.encode()).text == "a <b> whale &amp; more"
