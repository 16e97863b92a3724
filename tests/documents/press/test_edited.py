"""A reader goes on writing in what Catchword wrote, and it is understood all the same."""

from dataclasses import replace

import pytest

from cards.digest import Commitment, Point, Quotation
from cards.intake import understand
from service.documents.press.press import Press
from service.documents.reader import PandocDocuments
from service.use_cases.records import Form
from tests.documents.press.archives import edited, without
from tests.documents.press.digests import MARNER

BODY = {Form.DOCX: "word/document.xml", Form.ODT: "content.xml"}
MARK = {Form.DOCX: "docProps/custom.xml", Form.ODT: "meta.xml"}


def paragraph(form: Form, style: str, text: str) -> str:
    """A paragraph as a word processor writes it."""
    if form is Form.DOCX:
        return (
            f'<w:p><w:pPr><w:pStyle w:val="{style.replace(" ", "")}"/></w:pPr>'
            f"<w:r><w:t>{text}</w:t></w:r></w:p>"
        )
    return f'<text:p text:style-name="{style.replace(" ", "_20_")}">{text}</text:p>'


@pytest.mark.parametrize("form", [Form.DOCX, Form.ODT])
def test_words_changed_are_the_new_words(documents: PandocDocuments, press: Press, form: Form):
    """A word put right in one point changes that point and nothing else."""
    content = edited(
        press.write(MARNER, form), BODY[form], lambda text: text.replace("of rain", "of fog")
    )
    points = list(MARNER.points)
    points[1] = Point("The gold is stolen on a night of fog.")
    found = understand(documents.read(f"x.{form.value}", content)).digest
    assert found == replace(MARNER, points=tuple(points))


@pytest.mark.parametrize("form", [Form.DOCX, Form.ODT])
def test_a_paragraph_added_in_our_style(documents: PandocDocuments, press: Press, form: Form):
    """Enter at the end of a point begins another, whose page is read where readers put it."""
    added = paragraph(form, "Catchword Point", "The stone pit is drained (ch. 18, p. 200)")
    quoted = paragraph(form, "Catchword Quotation", "“Now it is too late.” (p. 215)")
    mark = "A child is found asleep on the hearth."
    end = "</w:body>" if form is Form.DOCX else "</office:text>"

    def change(text: str) -> str:
        close = "</w:p>" if form is Form.DOCX else "</text:list-item></text:list>"
        head, tail = text.split(mark)
        before, after = tail.split(close, 1) if form is Form.ODT else tail.split(close, 2)[0:2]
        if form is Form.DOCX:
            rest = tail.split(close, 2)[2]
            tail = f"{before}{close}{after}{close}{added}{rest}"
        else:
            tail = f"{before}</text:list-item><text:list-item>{added}{close}{after}"
        return (head + mark + tail).replace(end, quoted + end)

    content = edited(press.write(MARNER, form), BODY[form], change)
    found = understand(documents.read(f"x.{form.value}", content)).digest
    assert found.points == (*MARNER.points, Point("The stone pit is drained", "ch. 18, p. 200"))
    assert found.quotations == (
        *MARNER.quotations,
        Quotation("Now it is too late.", "p. 215", 4),
    )


@pytest.mark.parametrize("form", [Form.DOCX, Form.ODT])
def test_a_heading_and_words_of_the_readers_own(
    documents: PandocDocuments, press: Press, form: Form
):
    """Plain paragraphs pasted under a heading of any document are read as there; others told."""
    plain = "Normal" if form is Form.DOCX else "Standard"
    more = paragraph(form, plain, "Stray words at the very end.")
    start = paragraph(form, "Catchword Section", "Commitments")
    deed = paragraph(form, plain, "Bake a loaf on Saturday.")
    nowhere = paragraph(form, "Catchword Section", "Shopping")
    end = "<w:sectPr>" if form is Form.DOCX else "</office:text>"
    content = edited(
        press.write(MARNER, form),
        BODY[form],
        lambda text: text.replace(end, f"{start}{deed}{nowhere}{more}{end}"),
    )
    understood = understand(documents.read(f"x.{form.value}", content))
    assert understood.digest.commitments == (
        *MARNER.commitments,
        Commitment("Bake a loaf on Saturday."),
    )
    assert understood.left == ("Shopping", "Stray words at the very end.")


@pytest.mark.parametrize("form", [Form.DOCX, Form.ODT])
def test_without_its_mark_it_is_read_as_any_document(
    documents: PandocDocuments, press: Press, form: Form
):
    """A document that lost our mark on its way still gives its title, points and quotations."""
    content = press.write(MARNER, form)
    content = (
        without(content, MARK[form])
        if form is Form.ODT
        else edited(content, MARK[form], lambda text: text.replace("catchword", "other"))
    )
    found = understand(documents.read(f"x.{form.value}", content)).digest
    assert found.title == "Silas Marner"
    assert found.author == "George Eliot"
    assert [point.text for point in found.points] == [point.text for point in MARNER.points]
    assert len(found.commitments) == 2
    assert len(found.quotations) == 3


def test_markdown_written_on(documents: PandocDocuments, press: Press):
    """Lines typed into the Markdown by hand are points, deeds and quotations like any."""
    text = press.write(MARNER, Form.MARKDOWN).decode()
    text = text.replace(
        "## Commitments", "4. The stone pit is *drained*\n   at last (p. 200)\n\n## Commitments"
    )
    text = text.replace("## Judgement", "* [ ] Bake a loaf on Saturday.\n\n## Judgement")
    text += "\n> “Now it is too late.”\n> (p. 215)\n"
    found = understand(documents.read("x.md", text.replace("\n", "\r\n").encode())).digest
    assert found == replace(
        MARNER,
        points=(*MARNER.points, Point("The stone pit is drained at last", "p. 200")),
        commitments=(*MARNER.commitments, Commitment("Bake a loaf on Saturday.")),
        quotations=(*MARNER.quotations, Quotation("Now it is too late.", "p. 215", 4)),
    )


def test_markdown_with_another_title_over_it(documents: PandocDocuments, press: Press):
    """The title over the text counts, and the reader is told of the other."""
    text = press.write(MARNER, Form.MARKDOWN).decode()
    understood = understand(
        documents.read("x.md", text.replace("# Silas Marner", "# Marner").encode())
    )
    assert understood.digest == replace(MARNER, title="Marner")
    assert understood.left == ("title: Silas Marner",)
    assert any("title: Silas Marner" in notice.message for notice in understood.notices)
