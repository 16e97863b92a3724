"""Every format comes to the same blocks."""

import base64

import pytest

from cards.intake import understand
from cards.intake.blocks import Block, Shape
from service.documents.reader import PandocDocuments
from tests.documents.files import DIGEST, archive, made, odt, parts_of

FORMATS = ["docx", "odt", "rtf", "html", "md", "txt"]


def content_of(suffix: str) -> bytes:
    """Return the digest in one format."""
    return DIGEST.encode() if suffix in {"md", "txt"} else made(DIGEST, suffix)


@pytest.mark.parametrize("suffix", FORMATS)
def test_a_digest_means_the_same_in_every_format(documents: PandocDocuments, suffix: str):
    """One digest, written out in each format, is understood as the same digest."""
    digest = understand(documents.read(f"walden.{suffix}", content_of(suffix))).digest
    assert (digest.title, digest.author) == ("Walden", "Henry David Thoreau")
    assert (digest.isbn, digest.pages) == ("9780306406157", 352)
    assert str(digest.finished_on) == "2025-05-12"
    assert digest.theme == "A man goes to the woods to live deliberately."
    assert [(p.text, p.locator) for p in digest.points] == [
        ("Most lives are spent on needless labour", "p. 8"),
        ("A house costs six weeks of work", "p. 55"),
    ]
    assert [c.text for c in digest.commitments] == ["Walk an hour every day."]
    assert [(q.text, q.locator, q.after) for q in digest.quotations] == [
        ("I went to the woods because I wished to live deliberately.", "p. 88", 2),
        ("Simplify, simplify.", "p. 12", 1),
    ]


@pytest.mark.parametrize("suffix", ["docx", "html", "md"])
def test_shapes_are_kept(documents: PandocDocuments, suffix: str):
    """Headings, numbers, depths, quotations, rows and bold lines survive the way in."""
    text = (
        "# Title\n\n**Ideas**\n\n1.  one\n2.  two\n\n    -   deeper\n\n> kept\n\n"
        "| a | b |\n|---|---|\n| c | d |\n"
    )
    content = text.encode() if suffix == "md" else made(text, suffix)
    blocks = documents.read(f"x.{suffix}", content).blocks
    assert [(b.shape, b.text, b.level, b.number, b.strong) for b in blocks if b.style != "Title"][
        -8:
    ] == [
        (Shape.HEADING, "Title", 1, None, False),
        (Shape.PARAGRAPH, "Ideas", 0, None, True),
        (Shape.ITEM, "one", 1, 1, False),
        (Shape.ITEM, "two", 1, 2, False),
        (Shape.ITEM, "deeper", 2, None, False),
        (Shape.QUOTE, "kept", 0, None, False),
        (Shape.ROW, "a\tb", 0, None, False),
        (Shape.ROW, "c\td", 0, None, False),
    ]


def test_quotation_marks_breaks_and_notes(documents: PandocDocuments):
    """Straight quotation marks turn curly, typed breaks stay, and a footnote stands in brackets."""
    blocks = documents.read("x.md", b'She said "yes".[^1]\\\nAnd left.\n\n[^1]: p. 5\n').blocks
    assert [block.text for block in blocks] == ["She said “yes”. [p. 5]\nAnd left."]


@pytest.mark.parametrize("suffix", ["docx", "odt", "html", "md"])
def test_a_definition_list_is_a_bold_term_over_its_definitions(
    documents: PandocDocuments, suffix: str
):
    """A term comes as a bold paragraph, its one definition as it is, several as items.

    Word and OpenDocument files do not say where one definition ends and the next begins.
    """
    text = "Author\n:   Thoreau\n\nPoints\n:   One\n:   Two\n"
    content = text.encode() if suffix == "md" else made(text, suffix)
    blocks = documents.read(f"x.{suffix}", content).blocks
    found = [(block.shape, block.text, block.strong) for block in blocks]
    item = Shape.PARAGRAPH if suffix in {"docx", "odt"} else Shape.ITEM
    assert found == [
        (Shape.PARAGRAPH, "Author", True),
        (Shape.PARAGRAPH, "Thoreau", False),
        (Shape.PARAGRAPH, "Points", True),
        (item, "One", False),
        (item, "Two", False),
    ]


@pytest.mark.parametrize("suffix", ["docx", "odt", "html", "md"])
def test_a_line_across_the_page_is_a_rule(documents: PandocDocuments, suffix: str):
    """A line parts what is above it from what is below; one at the end parts nothing."""
    text = "One\n\n---\n\nTwo\n\n---\n"
    content = text.encode() if suffix == "md" else made(text, suffix)
    blocks = documents.read(f"x.{suffix}", content).blocks
    assert [block.text for block in blocks] == ["One", "* * *", "Two"]


@pytest.mark.parametrize("suffix", ["docx", "odt", "rtf", "html", "md"])
def test_a_footnote_stands_in_its_place(documents: PandocDocuments, suffix: str):
    """The words of a footnote stand in brackets where its number was."""
    text = "She left.[^1] He stayed.[^2]\n\n[^1]: p. 5\n\n[^2]: p. 7\n"
    content = text.encode() if suffix == "md" else made(text, suffix)
    blocks = documents.read(f"x.{suffix}", content).blocks
    texts = [block.text.replace("\xa0", " ") for block in blocks]
    assert texts == ["She left. [p. 5] He stayed. [p. 7]"]


@pytest.mark.parametrize("suffix", ["docx", "odt", "rtf", "html", "md"])
def test_boxes_to_tick_open_their_lines(documents: PandocDocuments, suffix: str):
    """A checklist keeps its boxes, ticked or not, in front of its lines."""
    text = "- [ ] Walk\n- [x] Swim\n"
    content = text.encode() if suffix == "md" else made(text, suffix)
    texts = [block.text for block in documents.read(f"x.{suffix}", content).blocks]
    assert [text.strip("•\t") for text in texts] in (
        ["☐ Walk", "☒ Swim"],
        ["[ ] Walk", "[x] Swim"],
    )


def test_words_in_text_boxes_follow_their_paragraph(documents: PandocDocuments):
    """What a text box holds is read once, in Word and in OpenDocument."""
    parts = parts_of(made("Before.\n\nAfter.\n", "docx"))
    inner = "<w:txbxContent><w:p><w:r><w:t>In the box</w:t></w:r></w:p></w:txbxContent>"
    choice = "http://schemas.openxmlformats.org/markup-compatibility/2006"
    box = (
        f'<mc:AlternateContent xmlns:mc="{choice}"><mc:Choice Requires="wps"><w:drawing>{inner}'
        f"</w:drawing></mc:Choice><mc:Fallback><w:pict>{inner}</w:pict></mc:Fallback>"
        "</mc:AlternateContent>"
    )
    words = parts["word/document.xml"].replace(b"</w:r></w:p>", f"{box}</w:r></w:p>".encode(), 1)
    content = archive({**parts, "word/document.xml": words})
    texts = [block.text for block in documents.read("x.docx", content).blocks]
    assert texts == ["Before.", "In the box", "After."]
    frame = (
        '<draw:frame xmlns:draw="urn:oasis:names:tc:opendocument:xmlns:drawing:1.0">'
        "<draw:text-box><text:p>In the box</text:p></draw:text-box></draw:frame>"
    )
    body = f"<text:p>Before.{frame}</text:p><text:p>After.</text:p>"
    texts = [block.text for block in documents.read("x.odt", odt(body)).blocks]
    assert texts == ["Before.", "In the box", "After."]


def test_a_page_break_is_a_rule(documents: PandocDocuments):
    """A page the writer told to begin parts what is before it from what follows."""
    parts = parts_of(made("One\n\nTwo\n", "docx"))
    words = parts["word/document.xml"]
    page = b'</w:t><w:br w:type="page"/><w:t>Two</w:t>'
    typed = words.replace(b"Two</w:t>", page)
    before = words.replace(b"<w:pPr>", b"<w:pPr><w:pageBreakBefore/>")
    contents = [
        ("x.docx", archive({**parts, "word/document.xml": each})) for each in (typed, before)
    ]
    style = (
        '<style:style style:name="P1" style:family="paragraph">'
        '<style:paragraph-properties fo:break-before="page"/></style:style>'
    )
    body = '<text:p text:style-name="P1">One</text:p><text:h text:style-name="P1">Two</text:h>'
    contents.append(("x.odt", odt(body, style)))
    for name, content in contents:
        texts = [block.text for block in documents.read(name, content).blocks]
        assert texts == ["One", "* * *", "Two"], name


def test_tab_stops_are_no_tabs_and_marks_can_not_be_forged_in_word(documents: PandocDocuments):
    """Only a tab typed in the text is one, and private-use characters of its own are gone."""
    parts = parts_of(made("Text.\n", "docx"))
    stops = '<w:pPr><w:tabs><w:tab w:val="left" w:pos="700"/></w:tabs></w:pPr>'
    paragraph = f"<w:p>{stops}<w:r><w:t>a\ue002b\ue003c</w:t><w:tab/><w:t>d</w:t></w:r></w:p>"
    words = parts["word/document.xml"].replace(b"<w:body>", f"<w:body>{paragraph}".encode())
    content = archive({**parts, "word/document.xml": words})
    assert documents.read("x.docx", content).blocks[0].text == "abc\td"


def test_word_styles_and_title_page_come_along(documents: PandocDocuments):
    """A Word document's title page stands on top as paragraphs in their styles."""
    content = made("---\ntitle: Walden\nauthor: H. D. Thoreau\n---\nText.\n", "docx")
    blocks = documents.read("x.docx", content).blocks
    assert [(b.text, b.style) for b in blocks[:2]] == [
        ("Walden", "Title"),
        ("H. D. Thoreau", "Author"),
    ]


def test_deleted_words_of_a_word_document_are_gone(documents: PandocDocuments):
    """What tracked changes deleted is not read, what they inserted is."""
    parts = parts_of(made("Kept.\n", "docx"))
    run = "<w:r><w:{0}>{1}</w:{0}></w:r>"
    who = 'w:author="x" w:date="2025-01-01T00:00:00Z"'
    changed = (
        f'<w:del w:id="1" {who}>{run.format("delText", "Gone")}</w:del>'
        f'<w:ins w:id="2" {who}>{run.format("t", "New")}</w:ins></w:p>'
    ).encode()
    parts["word/document.xml"] = parts["word/document.xml"].replace(b"</w:p>", changed, 1)
    blocks = documents.read("x.docx", archive(dict(parts))).blocks
    assert [block.text for block in blocks] == ["Kept.New"]


def test_open_document_styles_are_resolved(documents: PandocDocuments):
    """A paragraph made from a named style bears its name; headings and bold lines count as such."""
    styles = (
        '<style:style style:name="P1" style:family="paragraph" '
        'style:parent-style-name="Quotations"/>'
        '<style:style style:name="P2" style:family="paragraph" '
        'style:parent-style-name="Heading_20_2"/>'
        '<style:style style:name="P3" style:family="paragraph" style:parent-style-name="Standard">'
        '<style:text-properties fo:font-weight="bold"/></style:style>'
    )
    body = (
        '<text:p text:style-name="Title">Walden</text:p>'
        '<text:p text:style-name="P2">Summary</text:p>'
        '<text:p text:style-name="P1">Kept</text:p><text:p text:style-name="P3">Ideas</text:p>'
    )
    blocks = documents.read("x.odt", odt(body, styles)).blocks
    assert [(b.shape, b.text, b.style, b.strong) for b in blocks] == [
        (Shape.PARAGRAPH, "Walden", "Title", False),
        (Shape.HEADING, "Summary", "Heading 2", False),
        (Shape.QUOTE, "Kept", "Quotations", False),
        (Shape.PARAGRAPH, "Ideas", "Standard", True),
    ]


@pytest.mark.parametrize("suffix", ["docx", "odt", "html", "md"])
def test_a_quotation_inside_an_item_is_parted_from_it(documents: PandocDocuments, suffix: str):
    """A block quotation under a point in a list is the point's quotation in every format."""
    text = (
        "# W by A B\n\n## Points\n\n1.  One\n\n    > Words kept (p. 4)\n\n2.  Two\n\n"
        "    > “More words” (p. 9)\n\n    and so on\n"
    )
    content = text.encode() if suffix == "md" else made(text, suffix)
    digest = understand(documents.read(f"x.{suffix}", content)).digest
    assert [point.text for point in digest.points] == ["One", "Two\nand so on"]
    assert [(q.text, q.locator, q.after) for q in digest.quotations] == [
        ("Words kept", "p. 4", 1),
        ("More words", "p. 9", 2),
    ]


def test_open_document_deletions_and_forged_marks_are_gone(documents: PandocDocuments):
    """Tracked deletions are not read, and private-use characters can not pose as style marks."""
    body = (
        "<text:tracked-changes><text:changed-region><text:deletion><text:p>Gone</text:p>"
        "</text:deletion></text:changed-region></text:tracked-changes>"
        '<text:p text:style-name="Title">A</text:p>'
        '<text:p text:style-name="Standard">&#xE000;0&#xE001;B</text:p>'
    )
    blocks = documents.read("x.odt", odt(body)).blocks
    assert [(b.text, b.style) for b in blocks] == [("A", "Title"), ("0B", "Standard")]


def test_rtf_stand_ins_do_not_swallow_words(documents: PandocDocuments):
    """Words after a character with a bare stand-in are kept, under every count of stand-ins."""
    body = rb"\pard \u8220?quoted\u8221? and \uc0\u8220 bare\u8221  end\par"
    blocks = documents.read("x.rtf", rb"{\rtf1\ansi\ansicpg1252 " + body + b"}").blocks
    assert [block.text for block in blocks] == ["“quoted” and “bare” end"]


@pytest.mark.parametrize("suffix", ["rtf", "html", "docx"])
def test_pictures_cost_nothing(suffix: str):
    """A document with pictures of ten megabytes pasted in is read like one without."""
    picture = bytes(range(256)) * 40_000
    if suffix == "rtf":
        pasted = rb"{\pict\pngblip " + picture[:5_000_000].hex().encode() + rb"}"
        content = rb"{\rtf1\ansi Before\par " + pasted + rb"\par After\par}"
    elif suffix == "html":
        pasted = base64.b64encode(picture)
        content = b'<p>Before</p><img src="data:image/png;base64,' + pasted + b'"><p>After</p>'
    else:
        parts = parts_of(made("Before\n\nAfter\n", "docx"))
        content = archive({**parts, "word/media/image1.png": picture}, packed=False)
    blocks = PandocDocuments().read(f"x.{suffix}", content).blocks
    assert [block.text for block in blocks] == ["Before", "After"]


def test_properties_come_from_where_each_format_keeps_them(documents: PandocDocuments):
    """Core properties, meta.xml, HTML's head and front matter all arrive under the same keys."""
    text = "---\ntitle: Walden\nauthor: [H. D. Thoreau]\n---\n\nText.\n"
    for suffix in ("docx", "odt", "html"):
        properties = documents.read(f"x.{suffix}", made(text, suffix)).properties
        assert (properties["title"], properties["author"]) == ("Walden", "H. D. Thoreau"), suffix
    assert documents.read("x.md", text.encode()).properties == {
        "title": "Walden",
        "author": "H. D. Thoreau",
    }


def test_scripts_and_outside_references_are_not_followed(documents: PandocDocuments):
    """Scripts leave no words behind, and what a page includes from elsewhere is never fetched."""
    page = (
        "<html><head><script>stolen()</script></head><body><p>Kept.</p>"
        '<iframe src="file:///etc/hostname"></iframe><script src="http://127.0.0.1:9/x.js">run()'
        '</script><img src="http://127.0.0.1:9/x.png"><object data="http://127.0.0.1:9/"></object>'
    )
    blocks = documents.read("x.html", page.encode()).blocks
    assert [block.text for block in blocks] == ["Kept."]


def test_markdown_can_not_include_files(documents: PandocDocuments):
    """Raw markup and includes in Markdown give no words of other files."""
    text = b"Kept.\n\n<iframe src='/etc/hostname'></iframe>\n\n![](/etc/hostname)\n\n\\input{x}\n"
    texts = [block.text for block in documents.read("x.md", text).blocks]
    assert texts == ["Kept.", "\\input{x}"]


def test_html_under_a_plain_name_is_read_as_html(documents: PandocDocuments):
    """A page saved as .txt is read by what it is."""
    blocks = documents.read("x.txt", b"<!DOCTYPE html><html><body><h2>Hi</h2></body></html>").blocks
    assert blocks == (Block(Shape.HEADING, "Hi", level=2),)


def test_names_are_shown_without_folders(documents: PandocDocuments):
    """Only the last part of a path, in printable characters, is kept as a document's name."""
    assert documents.read("C:\\home\\a\n.txt", b"Words").name == "a .txt"
    assert documents.read("../../etc/x.md", b"Words").name == "x.md"


def test_markup_in_markdown_keeps_its_words(documents: PandocDocuments):
    """What a browser would show of HTML typed into Markdown is read; scripts are not."""
    page = (
        b"<details><summary>Gist</summary>\nHe <b>went</b> &amp; came<br>back.</details>\n\n"
        b"<table><tr><td>One</td><td>Two</td></tr></table>\n\n<!-- not this -->\n\n"
        b"<script>nor(this)</script>\n"
    )
    texts = [block.text for block in documents.read("x.md", page).blocks]
    assert texts == ["Gist", "He went & came\nback.", "One", "Two"]


def test_captions_and_long_notes_keep_their_words(documents: PandocDocuments):
    """A table's caption, a figure's, and every paragraph of a footnote are read."""
    page = (
        b"<table><caption>Points</caption><tr><td>1</td><td>One</td></tr></table>"
        b"<figure><img src='x.png'><figcaption>A map</figcaption></figure>"
    )
    texts = [block.text for block in documents.read("x.html", page).blocks]
    assert texts == ["Points", "1\tOne", "A map"]
    note = b"Words[^1]\n\n[^1]: p. 5\n\n    - in the notes\n"
    assert documents.read("x.md", note).blocks[0].text == "Words [p. 5 in the notes]"
