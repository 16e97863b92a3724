"""Every file that can not be read is refused in one sentence that says what to do."""

import io
import zipfile

import pytest

from cards.errors import (
    DocumentBroken,
    DocumentEmpty,
    DocumentLocked,
    DocumentRefused,
    DocumentTooLarge,
    DocumentTooSlow,
    DocumentUnsupported,
)
from service.documents import worker
from service.documents.archives import open_parts, packed
from service.documents.reader import PandocDocuments
from tests.documents.files import DIGEST, OLE, archive, made, odt, parts_of

PNG = b"\x89PNG\r\n\x1a\n" + b"\x00" * 100
WORD_PARTS = ("[Content_Types].xml", "_rels/.rels")


def utf16(name: str) -> bytes:
    """Return a stream's name as compound files write it."""
    return name.encode("utf-16-le")


def swollen(size: int) -> bytes:
    """Return a Word document whose text part is one long run of blanks."""
    parts = parts_of(made("Text.\n", "docx"))
    parts["word/document.xml"] = parts["word/document.xml"].replace(
        b"Text.", b" " * size + b"Text."
    )
    return archive(dict(parts))


def encrypted() -> bytes:
    """Return an archive whose entries say that they are encrypted."""
    content = bytearray(archive({"word/document.xml": "<x/>"}))
    content[6] |= 1
    content[content.index(b"PK\x01\x02") + 8] |= 1
    return bytes(content)


def lying() -> bytes:
    """Return an archive whose directory says less than unpacking gives."""
    content = archive({"word/document.xml": b"<x>" + b"a" * 5000 + b"</x>"})
    return content.replace((5007).to_bytes(4, "little"), (10).to_bytes(4, "little"))


CASES = {
    "empty": ("a.docx", b"", DocumentEmpty, "empty"),
    "blank text": ("a.txt", b" \n\t\n", DocumentEmpty, "empty"),
    "a page without words": ("a.html", b"<html><body></body></html>", DocumentEmpty, "empty"),
    "a picture named .docx": ("a.docx", PNG, DocumentBroken, "picture (PNG)"),
    "a picture named .txt": ("a.txt", b"\xff\xd8\xff\xe0" + b"\x00" * 9, DocumentBroken, "JPEG"),
    "a picture": ("a.png", PNG, DocumentUnsupported, "picture"),
    "a PDF": ("a.pdf", b"%PDF-1.7\n", DocumentUnsupported, "PDF"),
    "a PDF named .docx": ("a.docx", b"%PDF-1.7\n", DocumentBroken, "PDF"),
    "an old Word document": ("a.doc", OLE + b"\x00" * 600, DocumentUnsupported, "old Word"),
    "an old Word document named .docx": (
        "a.docx",
        OLE + b"\x00" * 600 + utf16("WordDocument"),
        DocumentUnsupported,
        "old Word",
    ),
    "a password": (
        "a.docx",
        OLE + b"\x00" * 600 + utf16("EncryptedPackage"),
        DocumentLocked,
        "password",
    ),
    "an unclear compound file": (
        "a.docx",
        OLE + b"\x00" * 600,
        DocumentLocked,
        "old Word document",
    ),
    "an encrypted archive": ("a.docx", encrypted(), DocumentLocked, "password"),
    "an encrypted OpenDocument text": (
        "a.odt",
        odt("", manifest="<encryption-data/>"),
        DocumentLocked,
        "password",
    ),
    "an archive of something else": (
        "a.docx",
        archive({"xl/workbook.xml": "<x/>"}),
        DocumentBroken,
        "word/document.xml",
    ),
    "an OpenDocument text without text": (
        "a.odt",
        archive({"mimetype": "application/vnd.oasis.opendocument.text"}),
        DocumentBroken,
        "content.xml",
    ),
    "a zip": ("a.zip", archive({"a.txt": "x"}), DocumentUnsupported, "archive"),
    "an empty archive": ("a.docx", archive({}), DocumentBroken, "word/document.xml"),
    "text named .docx": ("a.docx", b"Just words.", DocumentBroken, "not a Word (.docx) document"),
    "text named .rtf": ("a.rtf", b"Just words.", DocumentBroken, "not an RTF document"),
    "an unknown ending": ("a.csv", b"a,b\n", DocumentUnsupported, "kind"),
    "binary junk named .txt": ("a.txt", bytes(range(256)) * 20, DocumentBroken, "not hold text"),
    "binary junk named .md": ("a.md", bytes(range(1, 32)) * 20, DocumentBroken, "not hold text"),
    "a text part that is no XML": (
        "a.docx",
        archive({"word/document.xml": "not xml", **dict.fromkeys(WORD_PARTS, "<x/>")}),
        DocumentBroken,
        "damaged",
    ),
    "an OpenDocument text part that is no XML": (
        "a.odt",
        archive({"mimetype": "application/vnd.oasis.opendocument.text", "content.xml": "<x>"}),
        DocumentBroken,
        "damaged",
    ),
    "sizes that lie": ("a.docx", lying(), DocumentBroken, "damaged"),
    "too many parts": (
        "a.docx",
        archive({f"x/{n}.bin": b"" for n in range(2_001)}),
        DocumentTooLarge,
        "unpacks",
    ),
    "50 MB of text": ("a.txt", b"word " * 10_000_000, DocumentTooLarge, "20 MB"),
    "3 MB of text": ("a.txt", b"word " * 600_000, DocumentTooLarge, "1 MB"),
    "30,000 paragraphs": ("a.md", b"x\n\n" * 30_000, DocumentTooLarge, "30000 paragraphs"),
    "a bomb of 60 MB": ("a.docx", swollen(60_000_000), DocumentTooLarge, "unpacks"),
    "a bomb of 3 MB": ("a.docx", swollen(3_000_000), DocumentTooLarge, "unpacks"),
}


@pytest.mark.parametrize("case", CASES)
def test_what_can_not_be_read_is_refused_in_words(documents: PandocDocuments, case: str):
    """Each kind of unreadable file is refused as what it is, by name, in one or two sentences."""
    name, content, refusal, words = CASES[case]
    with pytest.raises(refusal) as refused:
        documents.read(name, content)
    message = refused.value.message
    assert words in message
    assert f"“{name}”" in message
    assert message.endswith(".")
    assert "/tmp" not in message
    assert refused.value.where == "file"


@pytest.mark.parametrize("suffix", ["docx", "odt"])
@pytest.mark.parametrize("share", [0.05, 0.3, 0.6, 0.95])
def test_a_truncated_archive_is_broken(documents: PandocDocuments, suffix: str, share: float):
    """An archive cut anywhere is refused as cut short or damaged."""
    content = made(DIGEST, suffix)
    with pytest.raises(DocumentBroken, match="cut short or damaged"):
        documents.read(f"a.{suffix}", content[: int(len(content) * share)])


def test_every_flipped_byte_is_read_or_refused(documents: PandocDocuments):
    """Damage anywhere in an archive ends in a document or in a refusal, never in another error."""
    content = made("Text.\n", "docx")
    refused = 0
    for place in range(0, len(content), max(1, len(content) // 60)):
        damaged = content[:place] + bytes([content[place] ^ 0xFF]) + content[place + 1 :]
        try:
            documents.read("a.docx", damaged)
        except DocumentRefused:
            refused += 1
    assert refused > 0


def test_a_bomb_within_a_bomb_is_never_opened(documents: PandocDocuments):
    """An archive inside the archive is left packed, however much it would unpack to."""
    parts = parts_of(made("Text.\n", "docx"))
    inner = archive({"word/document.xml": b" " * 50_000_000})
    parts["word/embeddings/inner.docx"] = inner
    assert documents.read("a.docx", archive(dict(parts))).blocks[0].text == "Text."


def test_memory_is_bounded(monkeypatch: pytest.MonkeyPatch):
    """A document that needs more memory than allowed, here 64 MB, is refused as too large."""
    monkeypatch.setattr(worker, "MEMORY", 64 * 1024 * 1024)
    parts = parts_of(made("Text.\n", "docx"))
    head, tail = parts["word/document.xml"].split(b"<w:body>")
    many = b"".join(
        b"<w:p><w:r><w:t>%d</w:t></w:r><w:r><w:rPr><w:b/></w:rPr><w:t>x</w:t></w:r></w:p>" % n
        for n in range(19_000)
    )
    parts["word/document.xml"] = head + b"<w:body>" + many + tail
    with pytest.raises(DocumentTooLarge, match="more room than a two-page digest"):
        PandocDocuments(seconds=60).read("a.docx", archive(dict(parts)))


def test_time_is_bounded():
    """A document not read within the limit is refused as too slow, with the limit in the words."""
    with pytest.raises(DocumentTooSlow, match=r"within 0\.001 seconds"):
        PandocDocuments(seconds=0.001).read("a.docx", made(DIGEST, "docx"))


def test_nesting_is_bounded(documents: PandocDocuments):
    """Thousands of levels of quotation are refused as damaged, and break nothing."""
    with pytest.raises(DocumentRefused):
        documents.read("a.md", b">" * 5_000 + b" deep\n")
    with pytest.raises(DocumentRefused):
        documents.read("a.html", b"<blockquote>" * 3_000 + b"deep")


def test_broken_rtf_is_read_or_refused(documents: PandocDocuments):
    """RTF junk gives what words it has or a refusal, never another error or an empty document."""
    for junk in (b"{\\rtf1 {{{{", b"{\\rtf1\\bin99999 x}", b"{\\rtf1 " + bytes(range(128, 256))):
        try:
            blocks = documents.read("a.rtf", junk).blocks
        except DocumentRefused:
            continue
        assert blocks


def test_external_entities_are_not_resolved(documents: PandocDocuments):
    """A document whose entities point at files of the machine is refused whole."""
    entity = '<!DOCTYPE x [<!ENTITY leak SYSTEM "file:///etc/passwd">]>'
    parts = parts_of(odt('<text:p text:style-name="Title">A &leak; B</text:p>'))
    parts["content.xml"] = entity.encode() + parts["content.xml"]
    with pytest.raises(DocumentBroken):
        documents.read("a.odt", archive(dict(parts)))


def test_entities_that_swell_are_refused(documents: PandocDocuments):
    """Entities built on entities do not unfold."""
    entities = "".join(f'<!ENTITY e{n} "{f"&e{n - 1};" * 10}">' for n in range(1, 10))
    parts = parts_of(odt("<text:p>&e9;</text:p>"))
    doctype = f'<!DOCTYPE x [<!ENTITY e0 "lol">{entities}]>'
    parts["content.xml"] = doctype.encode() + parts["content.xml"]
    with pytest.raises(DocumentRefused):
        documents.read("a.odt", archive(dict(parts)))


def test_the_archive_handed_on_holds_text_parts_alone():
    """Pictures are taken out before pandoc sees the archive, and the media type comes first."""
    kind, parts = open_parts(
        "a.odt", archive({**parts_of(odt("<text:p>x</text:p>")), "p.png": PNG})
    )
    assert kind.name == "ODT"
    with zipfile.ZipFile(io.BytesIO(packed(parts))) as opened:
        assert opened.namelist()[0] == "mimetype"
        assert "p.png" not in opened.namelist()
