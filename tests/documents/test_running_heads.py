"""Page headers and footers arrive as properties, without the numbers of pages."""

import pytest

from service.documents.reader import PandocDocuments
from tests.documents.files import archive, made, odt, parts_of

SPACE = 'xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"'
FIELD = (
    '<w:r><w:fldChar w:fldCharType="begin"/></w:r><w:r><w:instrText> {0} </w:instrText></w:r>'
    '<w:r><w:fldChar w:fldCharType="separate"/></w:r><w:r><w:t>3</w:t></w:r>'
    '<w:r><w:fldChar w:fldCharType="end"/></w:r>'
)


def run(words: str) -> str:
    """Return a run of Word's."""
    return f'<w:r><w:t xml:space="preserve">{words}</w:t></w:r>'


def with_heads(**heads: str) -> bytes:
    """Return a Word document with parts such as `header1`, each given by its paragraphs."""
    parts = {
        f"word/{name}.xml": f"<w:hdr {SPACE}>{inner}</w:hdr>".encode()
        for name, inner in heads.items()
    }
    return archive({**parts_of(made("Text.\n", "docx")), **parts})


@pytest.mark.parametrize(
    ("inner", "words"),
    [
        (run("Emma") + "<w:r><w:tab/></w:r>" + run("Jane Austen"), "Emma\tJane Austen"),
        (run("Emma – Page ") + FIELD.format("PAGE"), "Emma"),
        (
            run("Emma<w:br/>").replace("<w:br/>", "") + "<w:r><w:br/></w:r>" + run("by Austen"),
            "Emma\nby Austen",
        ),
        (
            run("Page ") + FIELD.format("PAGE") + run(" of ") + FIELD.format("NUMPAGES"),
            None,
        ),
        (run("Seite ") + FIELD.format("PAGE \\* MERGEFORMAT") + run(" von 9, Emma"), "von 9, Emma"),
        (FIELD.format("TITLE") + run(" by Austen"), "3 by Austen"),
        (
            f'<w:fldSimple w:instr=" PAGE "><w:r><w:t>3</w:t></w:r></w:fldSimple>{run(" Emma")}',
            "Emma",
        ),
        (f"<w:r><w:delText>Gone</w:delText></w:r>{run('Emma')}", "Emma"),
    ],
)
def test_headers_of_word(documents: PandocDocuments, inner: str, words: str | None):
    """Words, tabs and line breaks stay; page numbers go, with the words around them."""
    found = documents.read("x.docx", with_heads(header1=f"<w:p>{inner}</w:p>")).properties
    assert found.get("header") == words


def test_each_line_of_word_is_given_once(documents: PandocDocuments):
    """Headers of first, even and other pages, and the footers, each line once, in order."""
    found = documents.read(
        "x.docx",
        with_heads(
            header1=f"<w:p>{run('Emma')}</w:p><w:p>{run('Jane Austen')}</w:p>",
            header2=f"<w:p>{run('Emma')}</w:p><w:p/>",
            footer1=f"<w:p>{run('Read in May')}</w:p>",
            footer2="<broken",
        ),
    ).properties
    assert (found["header"], found["footer"]) == ("Emma\nJane Austen", "Read in May")


def test_headers_of_open_document(documents: PandocDocuments):
    """The same from an OpenDocument file's master pages."""
    parts = parts_of(odt("<text:p>Text.</text:p>"))
    master = (
        "<office:master-styles><style:master-page><style:header><text:p>Emma<text:tab/>Page "
        "<text:page-number>3</text:page-number> of <text:page-count>9</text:page-count></text:p>"
        "<text:p>Jane<text:s/><text:span>Austen</text:span></text:p></style:header>"
        "<style:footer-left><text:p>Read in May</text:p></style:footer-left></style:master-page>"
        "</office:master-styles></office:document-styles>"
    )
    styles = parts["styles.xml"].replace(b"</office:document-styles>", master.encode())
    found = documents.read("x.odt", archive({**parts, "styles.xml": styles})).properties
    assert found == {"header": "Emma\nJane Austen", "footer": "Read in May"}


def test_headers_of_a_page_libreoffice_saved(documents: PandocDocuments):
    """What LibreOffice writes of its headers into a page is no part of the text."""
    page = (
        '<div title="header"><p>Emma</p></div><p>Text.</p><div title="footer"><p>Page '
        "<sdfield type=PAGE subtype=RANDOM format=PAGE>1</sdfield></p><p>Read in May</p></div>"
    )
    found = documents.read("x.html", page.encode())
    assert [block.text for block in found.blocks] == ["Text."]
    assert found.properties == {"header": "Emma", "footer": "Read in May"}


def test_no_header_is_no_property(documents: PandocDocuments):
    """A document without headers says nothing of them."""
    assert "header" not in documents.read("x.docx", made("Text.\n", "docx")).properties
    assert "header" not in documents.read("x.odt", made("Text.\n", "odt")).properties
