"""What is hostile, broken or absurd is read without harm or refused in a sentence, and soon."""

import re
import time
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cards.errors import DocumentBroken, DocumentRefused, DocumentUnsupported
from cards.intake.blocks import Shape
from service.documents.reader import PandocDocuments
from tests.documents.files import archive, made, odt, parts_of

LAUGHS = '<!ENTITY e0 "lol">' + "".join(
    f'<!ENTITY e{n} "{f"&e{n - 1};" * 10}">' for n in range(1, 10)
)
"""Ten entities, each ten times the one before: 3 GB of laughs (CVE-2003-1564)."""
OUTSIDE = '<!ENTITY e9 SYSTEM "file:///etc/passwd">'
SOON = 5.0
"""Seconds within which the absurd is refused on a busy machine; the bound a document has is ten."""
WORD = "word/document.xml"


def with_part(suffix: str, part: str, change: tuple[bytes, bytes]) -> bytes:
    """Return a document with a stretch of one part put otherwise."""
    parts = parts_of(made("---\ntitle: T\n---\nText.\n", suffix))
    assert change[0] in parts[part]
    return archive({**parts, part: parts[part].replace(*change, 1)})


@pytest.mark.parametrize("entities", [LAUGHS, OUTSIDE], ids=["swelling", "outside"])
@pytest.mark.parametrize(
    ("suffix", "part", "words"),
    [
        ("docx", WORD, "Text."),
        ("docx", "docProps/core.xml", "T"),
        ("docx", "word/styles.xml", "Normal"),
        ("docx", "word/footnotes.xml", "separator"),
        ("odt", "content.xml", "Text."),
        ("odt", "styles.xml", "Standard"),
        ("odt", "meta.xml", "T"),
    ],
)
@pytest.mark.parametrize("encoding", ["utf-8", "utf-16"])
def test_entities_in_any_part_are_refused(
    documents: PandocDocuments, suffix: str, part: str, words: str, entities: str, encoding: str
):
    """No part of a document may declare entities, whatever its encoding: none are unfolded."""
    parts = parts_of(made("---\ntitle: T\n---\nText.\n", suffix))
    text = parts[part].decode().partition("?>")[2] or parts[part].decode()
    text = text.replace(words, "&e9;", 1)
    said = f'<?xml version="1.0" encoding="{encoding}"?><!DOCTYPE x [{entities}]>{text}'
    content = archive({**parts, part: said.encode(encoding)})
    begin = time.monotonic()
    with pytest.raises(DocumentBroken) as refused:
        documents.read(f"x.{suffix}", content)
    assert "root:" not in refused.value.message
    assert time.monotonic() - begin < SOON


@pytest.mark.parametrize("entities", [LAUGHS, OUTSIDE], ids=["swelling", "outside"])
@pytest.mark.parametrize("name", ["x.html", "x.xhtml", "x.txt"])
def test_entities_of_a_page_are_words(documents: PandocDocuments, name: str, entities: str):
    """A page that declares entities is read as a browser reads it, which unfolds none."""
    page = f"<!DOCTYPE html [{entities}]><html><body><p>Kept &e9;</p></body></html>"
    blocks = documents.read(name, page.encode()).blocks
    assert sum(len(block.text) for block in blocks) < 2_000
    assert any("Kept &e9;" in block.text for block in blocks)
    assert not any("root:" in block.text for block in blocks)


@pytest.mark.parametrize("name", ["x.fodt", "x.xml", "x.svg"])
def test_bare_xml_is_of_no_kind_that_is_read(documents: PandocDocuments, name: str):
    """OpenDocument in one bare file, and XML of other kinds, are never parsed."""
    with pytest.raises(DocumentUnsupported, match="kind Catchword does not read"):
        documents.read(name, f"<!DOCTYPE x [{LAUGHS}]><x>&e9;</x>".encode())


def test_paths_in_a_document_s_archive_lead_nowhere(
    documents: PandocDocuments, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    """Parts with names that climb out of the archive touch no disk, and change no words."""
    monkeypatch.chdir(tmp_path)
    for suffix in ("docx", "odt"):
        parts: dict[str, bytes | str] = {**parts_of(made("Text.\n", suffix))}
        for path in ("../out.xml", "/tmp/out.xml", "..\\out.xml", "C:\\out.xml", "a/../../out.xml"):
            parts[path] = "<x/>"
        blocks = documents.read(f"../../x.{suffix}", archive(parts)).blocks
        assert [block.text for block in blocks] == ["Text."]
    assert list(tmp_path.iterdir()) == []


def test_what_a_document_points_at_is_not_followed(documents: PandocDocuments, tmp_path: Path):
    """Pictures, templates and inserted files that stand elsewhere are left where they are."""
    secret = tmp_path / "secret.xml"
    secret.write_text("SECRETWORDS")
    parts = parts_of(made("Text.\n", "docx"))
    rels = "word/_rels/document.xml.rels"
    office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
    more = "".join(
        f'<Relationship Id="out{n}" Type="{office}/{kind}" Target="file://{secret}" '
        'TargetMode="External"/>'
        for n, kind in enumerate(("image", "aFChunk", "subDocument", "attachedTemplate", "header"))
    )
    parts[rels] = parts[rels].replace(b"</Relationships>", f"{more}</Relationships>".encode())
    chunk = (
        f'<w:altChunk xmlns:r="{office}" r:id="out1"/><w:subDoc xmlns:r="{office}" r:id="out2"/>'
    )
    parts[WORD] = parts[WORD].replace(b"<w:body>", f"<w:body>{chunk}".encode())
    found = documents.read("x.docx", archive({**parts}))
    assert [block.text for block in found.blocks] == ["Text."]
    assert "SECRETWORDS" not in str(found)


def test_what_a_page_does_is_no_words(documents: PandocDocuments):
    """Scripts, handlers, styles, frames, forms and what is only for programs leave no words."""
    page = """
        <html><head><title>T</title><script>S1()</script><style>S2{}</style></head>
        <body onload="S3()"><p onclick="S4()" style="S5">Kept <a href="javascript:S6()">words</a>
        <img src=x onerror="S7()" alt="a picture"><svg onload="S8()"><text>S9</text></svg></p>
        <script type="text/plain">S10</script><template>S11</template><!-- S12 -->
        <iframe srcdoc="S13">S14</iframe><object data="S15">S16</object>
        <form><button>S17</button><select><option>S18</select><textarea>S19</textarea>
        <input value="S20"></form><SCRIPT>S21</SCRIPT>
        <style>S22</style ><p>Kept too</p><script>S23
        """
    found = documents.read("x.html", page.encode())
    told = " ".join(block.text for block in found.blocks)
    assert "Kept words" in told
    assert "Kept too" in told
    assert re.findall(r"S\d+", told) == []


def nested(opening: str, closing: str, levels: int = 10_000) -> str:
    """Return a word within so many levels."""
    return opening * levels + "deep" + closing * levels


ABSURD = {
    "quotations in Markdown": ("x.md", ">" * 10_000 + " deep\n"),
    "quotations in plain text": ("x.txt", ">" * 10_000 + " deep\n"),
    "lists in Markdown": ("x.md", "".join(f"{' ' * (2 * n)}- x\n" for n in range(700))),
    "divisions": ("x.html", nested("<div>", "</div>")),
    "lists": ("x.html", nested("<ul><li>", "</li></ul>")),
    "lists never closed": ("x.html", nested("<ul><li>", "")),
    "tables never closed": ("x.html", nested("<table><tr><td>", "")),
    "quotations never closed": ("x.html", nested("<blockquote>", "")),
    "letters never closed": ("x.html", nested("<b><i>", "")),
    "groups in RTF": ("x.rtf", "{\\rtf1 " + nested("{\\b ", "}") + "}"),
    "groups never closed": ("x.rtf", "{\\rtf1 " + nested("{", "")),
    "tags never ended": ("x.html", '<a href="' * 50_000),
    "brackets in Markdown": ("x.md", "[" * 4_000 + "a" + "](" * 4_000),
    "stars in Markdown": ("x.md", "*a _b " * 40_000),
    "comments never ended": ("x.html", "<!-- " * 50_000),
    "scripts never ended": ("x.html", "<script>" * 50_000),
}


@pytest.mark.parametrize("case", ABSURD)
def test_the_absurdly_deep_is_read_or_refused_soon(documents: PandocDocuments, case: str):
    """Ten thousand levels of anything end in words or in a sentence that names the file."""
    name, text = ABSURD[case]
    begin = time.monotonic()
    try:
        blocks, refusal = documents.read(name, text.encode()).blocks, None
    except DocumentRefused as error:
        blocks, refusal = (), error
    assert time.monotonic() - begin < SOON
    if refusal is None:
        assert blocks
    else:
        assert f"“{name}”" in refusal.message
        assert refusal.message.endswith(".")


@pytest.mark.parametrize(
    ("suffix", "opening", "closing"),
    [
        ("docx", "<w:tbl><w:tr><w:tc>", "</w:tc></w:tr></w:tbl>"),
        ("docx", "<w:sdt><w:sdtContent>", "</w:sdtContent></w:sdt>"),
        ("odt", "<text:list><text:list-item>", "</text:list-item></text:list>"),
        ("odt", "<text:section>", "</text:section>"),
    ],
)
def test_absurdly_deep_archives_are_refused(
    documents: PandocDocuments, suffix: str, opening: str, closing: str
):
    """Ten thousand tables, lists or sections in one another are no document."""
    if suffix == "docx":
        content = with_part("docx", WORD, (b"<w:p>", f"{nested(opening, closing)}<w:p>".encode()))
    else:
        content = odt(nested(opening, closing))
    with pytest.raises(DocumentBroken, match="damaged"):
        documents.read(f"x.{suffix}", content)


def test_nesting_people_do_is_read(documents: PandocDocuments):
    """Six levels of list, and a page in thirty divisions, are read to the innermost word."""
    text = "".join(f"{' ' * (4 * n)}-   level {n}\n\n" for n in range(6))
    for suffix in ("docx", "odt", "html", "md"):
        content = text.encode() if suffix == "md" else made(text, suffix)
        assert documents.read(f"x.{suffix}", content).blocks[-1].text == "level 5", suffix
    page = nested("<div>", "</div>", 30).encode()
    assert documents.read("x.html", page).blocks[0].text == "deep"


def test_nesting_is_named_as_what_is_wrong(documents: PandocDocuments):
    """The refusal of a deep document says that it is deep, not that it is damaged."""
    for name, text in (("x.html", nested("<ul><li>", "")), ("x.md", ">" * 10_000 + " deep")):
        with pytest.raises(DocumentBroken, match="nested far deeper"):
            documents.read(name, text.encode())


MARKUP = """
<p> </p> <ul> <li> <table> <td> <!-- --> <![CDATA[ <?x?> <a_href=#a_name=b>1</a> &#0; &e;
<div_title=header> <input_type=checkbox> {\\rtf1_ } { \\par_ \\'ff \\u8220? \\bin9_ \\ls1_
\\outlinelevel0 #_ >_ -_ 1._ |_a_| |-| --- [^1] [^1]:_ ``` Emma p._5 :_x
"""
STRANGE = ["\x00", "\ue0009\ue001", "\ue003", "\u2028", "\n\n", "\n", "\t"]
PIECES = st.sampled_from([*(piece.replace("_", " ") for piece in MARKUP.split()), *STRANGE])
CONTROLS = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff\ue000-\ue003]")


@settings(max_examples=150, deadline=None)
@given(
    suffix=st.sampled_from(["html", "md", "txt", "rtf"]),
    pieces=st.lists(PIECES | st.text(max_size=5), max_size=25),
    wide=st.sampled_from(["utf-8", "utf-16", "utf-16-le", "cp1252"]),
)
def test_whatever_is_typed_is_read_or_refused(
    documents: PandocDocuments, suffix: str, pieces: list[str], wide: str
):
    """Any jumble of markup comes to clean blocks or a refusal, in any format and encoding."""
    opening = {"rtf": "{\\rtf1 ", "html": "<html>"}.get(suffix, "")
    content = (opening + "".join(pieces)).encode(wide, errors="ignore")
    try:
        blocks = documents.read(f"x.{suffix}", content).blocks
    except DocumentRefused:
        return
    assert blocks
    for block in blocks:
        assert block.text.strip()
        assert CONTROLS.search(block.text) is None
        assert block.shape is Shape.ROW or block.text == block.text.strip()


@settings(max_examples=60, deadline=None)
@given(suffix=st.sampled_from(["html", "md", "txt", "rtf", "docx", "odt", "zip"]), junk=st.binary())
def test_whatever_the_bytes_are_they_are_read_or_refused(
    documents: PandocDocuments, suffix: str, junk: bytes
):
    """Any bytes, under any name, come to a document, a bundle or a refusal."""
    for content in (junk, b"PK\x03\x04" + junk, b"{\\rtf1" + junk):
        bundle = documents.unpack(f"x.{suffix}", content)
        if bundle is not None:
            assert all(file.content is not None or file.refusal is not None for file in bundle)
            continue
        try:
            assert documents.read(f"x.{suffix}", content).blocks
        except DocumentRefused as refusal:
            assert refusal.message  # noqa: PT017 - either will do
