"""A text is read in the encoding its bytes are in, whatever it declares, and holds no controls."""

import pytest

from cards.errors import DocumentBroken
from service.documents.characters import cleaned
from service.documents.encodings import decoded_text
from service.documents.reader import PandocDocuments
from service.documents.text import decoded
from tests.documents.files import archive, odt, parts_of

WORDS = "Né à Zürich – “là”, 5 €\n"
GREEK = "Ἐν ἀρχῇ ἦν ὁ λόγος\n"
CHINESE = "學而時習之\n不亦說乎\n"


@pytest.mark.parametrize("encoding", ["utf-16-le", "utf-16-be"])
@pytest.mark.parametrize("text", [WORDS, GREEK, CHINESE, "Emma\n", "Em"])
def test_wide_text_without_a_mark(text: str, encoding: str):
    """UTF-16 is told by the side its zero bytes stand on, be its letters Latin or not."""
    assert decoded("a.txt", text.encode(encoding)) == text


@pytest.mark.parametrize("encoding", ["utf-32-le", "utf-32-be", "utf-16-le", "utf-8"])
def test_marks_at_the_beginning(encoding: str):
    """A byte order mark settles the encoding and is no part of the text."""
    assert decoded_text("\ufeffEmma".encode(encoding)) == "Emma"


def page(declared: str, encoding: str, words: str = WORDS) -> bytes:
    """Return a page in one encoding that declares another."""
    head = f'<html><head><meta http-equiv="Content-Type" content="text/html; charset={declared}">'
    return f"{head}</head><body><p>{words}</p></body></html>".encode(encoding)


@pytest.mark.parametrize(
    ("declared", "encoding"),
    [
        ("iso-8859-1", "utf-8"),
        ("windows-1251", "utf-8"),
        ("utf-16", "utf-8"),
        ("utf-8", "cp1252"),
        ("iso-8859-1", "cp1252"),
        ("us-ascii", "cp1252"),
        ("nonsense-9", "cp1252"),
        ("utf-7", "cp1252"),
        ("utf-16", "cp1252"),
        ("rot13", "cp1252"),
        ("utf-8", "utf-16"),
        ("utf-8", "utf-16-le"),
    ],
)
def test_pages_that_declare_what_they_are_not(
    documents: PandocDocuments, declared: str, encoding: str
):
    """What the bytes are wins over what the page says."""
    blocks = documents.read("a.html", page(declared, encoding)).blocks
    assert [block.text for block in blocks] == [WORDS.strip()]


@pytest.mark.parametrize(
    ("declared", "words"),
    [
        ("windows-1251", "Война и мир"),
        ("koi8-r", "Война и мир"),
        ("shift_jis", "吾輩は猫である"),
        ("gb2312", "红楼梦"),
        ("iso-8859-2", "Ďábel"),
    ],
)
def test_pages_that_declare_what_they_are(documents: PandocDocuments, declared: str, words: str):
    """A declaration that is true is followed where the bytes are no UTF-8."""
    assert documents.read("a.html", page(declared, declared, words)).blocks[0].text == words


def test_xml_declarations_count(documents: PandocDocuments):
    """A page that declares its encoding as XML does is read in it, or in what it is in."""
    for encoding in ("windows-1250", "utf-8"):
        text = '<?xml version="1.0" encoding="windows-1250"?><html><body><p>Ďábel</p></body></html>'
        assert documents.read("a.xhtml", text.encode(encoding)).blocks[0].text == "Ďábel"


def test_a_few_bytes_out_of_place_leave_a_text_what_it_is():
    """UTF-8 cut in the middle of a letter is UTF-8, and Windows-1252 with accents is not."""
    text = "Größe, Maß und Straße: " * 20
    assert decoded("a.txt", text.encode() + b"\xc3").startswith(text)
    assert decoded("a.txt", text.encode("cp1252")) == text


def test_halves_of_characters_are_joined_or_marked(documents: PandocDocuments):
    """Surrogates written one by one come together as one character, and alone as U+FFFD."""
    clef = "\ud834\udd1e".encode("utf-8", "surrogatepass")
    assert decoded("a.txt", b"a " + clef + b" b") == "a \U0001d11e b"
    for content in (
        b"a \xed\xa0\xb4 b",
        "a \ud834 b".encode("utf-16-le", "surrogatepass"),
    ):
        assert documents.read("a.txt", content).blocks[0].text == "a \ufffd b"
    for name, content in (("a.html", b"<p>a &#xD834; b</p>"), ("a.rtf", rb"{\rtf1 a \u-10188? b}")):
        text = documents.read(name, content).blocks[0].text
        assert not any(0xD800 <= ord(letter) < 0xE000 for letter in text)


def test_zero_bytes_are_dropped_or_the_file_is_refused(documents: PandocDocuments):
    """A few zero bytes, or a tail of them, are no words; more of them are no text."""
    assert documents.read("a.txt", b"Em\x00ma").blocks[0].text == "Emma"
    assert documents.read("a.txt", b"Emma" + b"\x00" * 4096).blocks[0].text == "Emma"
    assert documents.read("a.html", b"<p>Em\x00ma</p>").blocks[0].text == "Emma"
    with pytest.raises(DocumentBroken, match="does not hold text"):
        documents.read("a.md", b"E\x00\x00mm\x00a\x00\x00" * 20)


def test_breaks_of_every_kind_are_new_lines():
    """Vertical tabs, form feeds, U+0085, U+2028 and U+2029 are new lines; other controls go."""
    assert cleaned("a\x0bb\x0cc\x85d\u2028e\u2029f") == "a\nb\nc\nd\ne\nf"
    assert cleaned("a\x00b\x07c\x1bd\x7fe\x9ff\ufeffg\ufffeh\ud800i\tj\nk") == "abcdefghi\tj\nk"
    assert cleaned("a\r\nb\rc") == "a\nbc"


@pytest.mark.parametrize(
    ("name", "content"),
    [
        ("a.md", "One\u2028two\x07 &#7;&#x85;three".encode()),
        ("a.txt", "One\u2028two\x07\x0bthree".encode()),
        ("a.html", "<p>One\u2028two\x07&#12;three</p>".encode()),
        ("a.rtf", rb"{\rtf1 One\u8232?two\'07\line three\par}"),
        ("a.odt", odt("<text:p>One&#x2028;two&#x85;three</text:p>")),
    ],
)
def test_no_control_comes_through_any_format(documents: PandocDocuments, name: str, content: bytes):
    """Controls, as bytes or as entities, become new lines or nothing in every format."""
    text = documents.read(name, content).blocks[0].text
    assert text.split() == ["One", "two", "three"]
    assert "\n" in text
    assert not any(ord(letter) < 32 and letter not in "\t\n" for letter in text)
    assert not any(0x7F <= ord(letter) < 0xA0 for letter in text)


@pytest.mark.parametrize("suffix", ["docx", "odt", "html", "md", "txt"])
def test_right_to_left_and_cjk_words_are_intact(documents: PandocDocuments, suffix: str):
    """Hebrew and Arabic, with their marks of direction, and Chinese come through as they are."""
    from tests.documents.files import made  # noqa: PLC0415 - used here alone

    text = "# ספר איוב\n\nאֶרֶץ \u200fעוץ (p. 3)\n\nالكتاب\n\n論語 學而時習之,不亦說乎?\n"
    content = text.encode() if suffix in {"md", "txt"} else made(text, suffix)
    texts = [block.text for block in documents.read(f"x.{suffix}", content).blocks]
    assert texts == ["ספר איוב", "אֶרֶץ \u200fעוץ (p. 3)", "الكتاب", "論語 學而時習之,不亦說乎?"]


def test_properties_hold_no_controls(documents: PandocDocuments):
    """What a document says about itself is cleaned as its words are."""
    parts = parts_of(odt("<text:p>x</text:p>"))
    meta = (
        '<m xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:title>Wal&#x85;den&#x9F;</dc:title></m>'
    )
    assert documents.read("x.odt", archive({**parts, "meta.xml": meta})).properties == {
        "title": "Wal den"
    }
