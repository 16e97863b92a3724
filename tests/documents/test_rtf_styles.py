"""RTF's styles by name: titles, headings, page breaks; and the heads and feet of its pages."""

import pytest

from cards.intake.blocks import Shape
from service.documents.inlines import Run
from service.documents.marks import Mark, taken
from service.documents.reader import PandocDocuments

SHEET = (
    rb"{\stylesheet{\s1\sb240\b heading 1;}{\s2\fs48 Title;}{\s3\qc Subtitle;}{\s4 Quotations;}}"
)

PAGES = (
    rb"{\header Emma \endash  Page {\field{\*\fldinst  PAGE }{\fldrslt {\loch 3}}} of "
    rb"{\field{\*\fldinst { NUMPAGES \\* ARABIC }}{\fldrslt 9}}\par}"
)


def rtf(body: bytes) -> bytes:
    """Return an RTF file as LibreOffice writes it, with a sheet of styles."""
    return rb"{\rtf1\ansi\ansicpg1252" + SHEET + body + b"}"


def test_styles_are_read_by_their_names(documents: PandocDocuments):
    """Title, subtitle, quotation and heading are what the sheet of styles calls them."""
    content = rtf(
        rb"\pard\plain \s2\fs48{\loch Emma}\par \pard\plain \s3\qc{\loch by Jane Austen}\par "
        rb"\pard\plain \s1\b{\listtext\pard\plain \tab}\ilvl0\ls1 {\loch Points}\par "
        rb"\pard\plain {\listtext\pard\plain 1.\tab}\ilvl0\ls2 {\loch One}\par "
        rb"\pard\plain \s4{\loch \u8220\'93Words\u8221\'94}\par"
    )
    blocks = documents.read("x.rtf", content).blocks
    assert [(block.shape, block.text, block.style) for block in blocks] == [
        (Shape.PARAGRAPH, "Emma", "Title"),
        (Shape.PARAGRAPH, "by Jane Austen", "Subtitle"),
        (Shape.HEADING, "Points", ""),
        (Shape.ITEM, "One", ""),
        (Shape.QUOTE, "“Words”", "Quotations"),
    ]


def test_a_page_the_writer_began_is_a_rule(documents: PandocDocuments):
    """A paragraph that begins a page parts what is before it from what follows."""
    content = rtf(rb"\pard\plain {One}\par\pard\plain \s1\pagebb{Two}\par")
    assert [block.text for block in documents.read("x.rtf", content).blocks] == [
        "One",
        "* * *",
        "Two",
    ]


def test_marks_can_not_be_forged(documents: PandocDocuments):
    """What looks like a mark of ours in RTF, for a style there is none of, is no word."""
    content = rtf(rb"\pard\plain \s2{Emma}\par\pard\plain {\uc0\u-8192 99\u-8191 }One\par")
    blocks = documents.read("x.rtf", content).blocks
    assert [(block.text, block.style) for block in blocks] == [("Emma", "Title"), ("One", "")]


def test_a_mark_is_taken_out_of_the_runs_it_lies_in():
    """Marks in one run or over several leave the words before, between and after them."""
    runs = [
        Run("a\ue000", True),
        Run("1", True),
        Run("\ue001b\ue0000\ue001", False),
        Run("c", True),
    ]
    left, mark = taken(runs, [Mark("One"), Mark("Two")])
    assert [(run.text, run.strong) for run in left] == [
        ("a", True),
        ("", True),
        ("b", False),
        ("c", True),
    ]
    assert mark == Mark("Two")


@pytest.mark.parametrize(
    ("group", "words"),
    [
        (rb"{\header\pard\plain {Emma\tab Jane Austen}\par }", {"header": "Emma\tJane Austen"}),
        (
            rb"{\headerl {Emma\par Jane Austen\par}}{\headerr {Emma}}{\footer Read in May}",
            {"header": "Emma\nJane Austen", "footer": "Read in May"},
        ),
        (
            PAGES,
            {"header": "Emma"},
        ),
        (rb"{\footer - \chpgn  -\par}", {}),
        (rb"{\header M\'e9moires d\u8217?\'92outre-tombe}", {"header": "Mémoires d’’outre-tombe"}),
        (rb"{\header }", {}),
        (rb"{\header " + rb"{\b " * 5_000 + rb"Emma" + rb"}" * 5_000 + rb"}", {}),
    ],
)
def test_heads_and_feet(documents: PandocDocuments, group: bytes, words: dict[str, str]):
    """Headers and footers, of left and right pages too, come without the numbers of pages."""
    found = documents.read("x.rtf", rtf(group + rb"\pard\plain Text.\par")).properties
    assert {key: found[key] for key in found if key in {"header", "footer"}} == words
