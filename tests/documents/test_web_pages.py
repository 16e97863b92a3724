"""Pages saved by programs: notes in place, boxes as signs, nothing lost in between."""

import pytest

from cards.intake.blocks import Block, Shape
from service.documents.reader import PandocDocuments

LIBREOFFICE = """<p>She leaves.<a class="sdfootnoteanc" name="sdfootnote1anc"
href="#sdfootnote1sym"><sup>1</sup></a> He stays.</p>
<div id="sdfootnote1"><p class="sdfootnote"><a class="sdfootnotesym" name="sdfootnote1sym"
href="#sdfootnote1anc">1</a>p.&nbsp;5</p></div>"""
WORD = """<p class=MsoNormal>She leaves.<a style='mso-footnote-id:ftn1' href="#_ftn1"
name="_ftnref1" title=""><span class=MsoFootnoteReference>[1]</span></a> He stays.</p>
<div style='mso-element:footnote' id=ftn1><p class=MsoFootnoteText><a href="#_ftnref1"
name="_ftn1" title=""><span class=MsoFootnoteReference>[1]</span></a> p.&nbsp;5</p></div>"""
ENDNOTES = """<p>She leaves.<sup class="footnote-ref"><a href="#fn1" id="fnref1">[1]</a></sup>
He stays.</p><hr><section><ol><li id="fn1"><p>p.&nbsp;5 <a href="#fnref1">↩︎</a></p></li></ol>
</section>"""


@pytest.mark.parametrize("page", [LIBREOFFICE, WORD, ENDNOTES], ids=["sd", "mso", "end"])
def test_notes_of_every_make_stand_in_place(documents: PandocDocuments, page: str):
    """A note and its number that link to each other come together, and no number is left."""
    blocks = documents.read("x.html", page.encode()).blocks
    assert [block.text.replace("\xa0", " ").replace("\n", " ") for block in blocks] == [
        "She leaves. [p. 5] He stays."
    ]


def test_links_within_a_page_are_no_notes(documents: PandocDocuments):
    """A table of contents, and links one way, keep their words and what they lead to."""
    page = (
        '<ul><li><a href="#a" name="top">1</a></li></ul><h2 id="a">Points</h2><p>One</p>'
        '<p>See <a href="#nowhere">2</a> and <a href="#a">3</a>.</p>'
    )
    texts = [block.text for block in documents.read("x.html", page.encode()).blocks]
    assert texts == ["1", "Points", "One", "See 2 and 3."]


def test_boxes_to_tick_are_signs(documents: PandocDocuments):
    """A box in a list leaves its line an item, ticked or not; other fields leave nothing."""
    page = (
        '<ul><li><input type=checkbox> Walk</li><li><label><INPUT CHECKED TYPE="checkbox">Swim'
        '</label></li></ul><p><input type="text" value="x">Rest</p>'
    )
    assert documents.read("x.html", page.encode()).blocks == (
        Block(Shape.ITEM, "☐ Walk", level=1),
        Block(Shape.ITEM, "☒ Swim", level=1),
        Block(Shape.PARAGRAPH, "Rest"),
    )


def test_the_parts_of_a_page_are_read_in_their_places(documents: PandocDocuments):
    """Words in a page's header, main part, aside and footer are words of the document."""
    page = (
        "<body><header><h1>Iliad</h1><p>Homer</p></header><main><p>One</p></main>"
        "<article><header><h2>Points</h2></header><p>Two</p><aside>Three</aside></article>"
        "<footer>Four</footer></body>"
    )
    texts = [block.text for block in documents.read("x.html", page.encode()).blocks]
    assert texts == ["Iliad", "Homer", "One", "Points", "Two", "Three", "Four"]


def test_pages_that_close_nothing(documents: PandocDocuments):
    """Paragraphs, items, cells and terms whose ends were left out are told apart all the same."""
    page = (
        "<h1>Emma<p>One<p>Two<ul><li>a<li>b<ul><li>c</ul></ul><table><tr><td>d<td>e<tr><td>f<td>g"
        "</table><dl><dt>T<dd>U<dt>V<dd>W</dl>"
    )
    texts = [
        (block.shape.value, block.level, block.text)
        for block in documents.read("x.html", page.encode()).blocks
    ]
    assert texts[-9:] == [
        ("item", 1, "a"),
        ("item", 1, "b"),
        ("item", 2, "c"),
        ("row", 0, "d\te"),
        ("row", 0, "f\tg"),
        ("paragraph", 0, "T"),
        ("paragraph", 0, "U"),
        ("paragraph", 0, "V"),
        ("paragraph", 0, "W"),
    ]


def test_line_breaks_stay(documents: PandocDocuments):
    """A break typed within a paragraph is a new line."""
    blocks = documents.read("x.html", b"<p>The mind is its own place<br>and in itself</p>").blocks
    assert blocks[0].text == "The mind is its own place\nand in itself"


def test_a_page_says_who_wrote_it(documents: PandocDocuments):
    """Title and author in a page's head are its properties."""
    page = b'<html><head><title>Emma</title><meta name="author" content="Austen"></head><p>x</p>'
    found = documents.read("x.html", page).properties
    assert (found["title"], found["author"]) == ("Emma", "Austen")


def test_headings_of_libreoffice_s_rtf_are_headings(documents: PandocDocuments):
    """A heading that stands in a list without numbers, as LibreOffice writes it, is a heading."""
    text = (
        rb"{\rtf1\ansi{\stylesheet{\s1\outlinelevel0 Heading 1;}}"
        rb"\pard\plain \s1\ilvl0\outlinelevel0\sb240{\listtext\pard\plain \tab}\ls1 \li0 Points\par"
        rb"\pard\plain \ls2\ilvl0 One\par}"
    )
    blocks = documents.read("x.rtf", text).blocks
    assert [(block.shape, block.text, block.level) for block in blocks] == [
        (Shape.HEADING, "Points", 1),
        (Shape.ITEM, "One", 1),
    ]
