"""What Catchword writes, opened by programs that know nothing of it."""

import json
import subprocess
import unicodedata
from pathlib import Path

import pypandoc
import pytest

from cards.digest import Commitment, Digest, Point, Quotation
from cards.intake import understand
from cards.intake.own_blocks import blocks_of_digest
from service.documents.press.escaping import escaped
from service.documents.press.markdown import markdown
from service.documents.press.press import Press
from service.documents.reader import PandocDocuments
from service.use_cases.records import Form
from tests.documents.press.digests import ILIAD, MARNER, WERTHER
from tests.office import convert, libreoffice
from tests.property.written_digests import AWKWARD

ODD = Digest(
    title="Theme",
    author="Points",
    theme="a line\nand another\n\nc  d\te",
    judgement="# no heading",
    points=(Point("see there (p. 9)"), Point("two\n\nparts", "p. 1 · after point 2")),
    commitments=(Commitment("“Quoted”"),),
    quotations=(
        Quotation("“In marks”"),
        Quotation("verse\n   and more", "ch. 1", 2),
        Quotation("בראשית ברא", "p. 4", 0),
    ),
)


def shown(*texts: str) -> list[str]:
    """What a reader of CommonMark shows of Markdown, each text a paragraph of one document."""
    tree = subprocess.run(
        [pypandoc.get_pandoc_path(), "--from", "commonmark", "--to", "json"],
        input="\n\n".join(texts).encode(),
        capture_output=True,
        check=True,
    ).stdout
    paragraphs = json.loads(tree)["blocks"]
    letters = {"Space": " ", "SoftBreak": " ", "LineBreak": "\n"}
    assert {block["t"] for block in paragraphs} <= {"Para"}
    return [
        "".join(one["c"] if one["t"] == "Str" else letters[one["t"]] for one in block["c"])
        for block in paragraphs
    ]


def test_escaped_words_mean_themselves_in_commonmark():
    """Words that look like markup are shown as words by pandoc's own reader of CommonMark.

    Left out are those with spaces, separators or a byte order mark, which pandoc lays out itself.
    """
    apart = set("\n\t\u0085\u2028\ufeff")
    plain = [
        text for text in AWKWARD if not set(text) & apart and text == " ".join(text.split(" "))
    ]
    plain = [text for text in plain if "  " not in text and text == text.strip(" ")]
    assert len(plain) > 50
    said = shown(*map(escaped, plain))
    assert said == [unicodedata.normalize("NFC", text) for text in plain]


@pytest.fixture(scope="module")
def converted(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Digests as DOCX and ODT, opened in LibreOffice and saved again as each other's kind."""
    program = libreoffice()
    folder = tmp_path_factory.mktemp("converted")
    for digest in (MARNER, WERTHER, ILIAD, ODD):
        for form in (Form.DOCX, Form.ODT):
            (folder / f"{digest.title}.{form}").write_bytes(Press().write(digest, form))
    for form, other in (("docx", "odt"), ("odt", "docx")):
        convert(program, other, folder / other, *sorted(folder.glob(f"*.{form}")))
    return folder


@pytest.mark.parametrize("form", [Form.DOCX, Form.ODT])
@pytest.mark.parametrize("digest", [MARNER, WERTHER, ILIAD, ODD], ids=lambda one: one.title)
def test_saved_again_by_a_word_processor(
    documents: PandocDocuments, converted: Path, digest: Digest, form: Form
):
    """Opened in LibreOffice and saved as the other format, it is still the same digest."""
    content = (converted / form / f"{digest.title}.{form}").read_bytes()
    assert understand(documents.read(f"x.{form}", content)).digest == digest


def test_front_matter_is_yaml(press: Press):
    """Pandoc, whose reader is strict, reads the facts in the front matter as metadata."""
    tree = subprocess.run(
        [pypandoc.get_pandoc_path(), "--from", "commonmark+yaml_metadata_block", "--to", "json"],
        input=press.write(MARNER, Form.MARKDOWN),
        capture_output=True,
        check=True,
    ).stdout
    meta = json.loads(tree)["meta"]
    assert set(meta) == {"catchword", "title", "author", "edition", "isbn", "pages", "finished"}


@pytest.mark.parametrize("count", [1, 9, 10, 12])
def test_markdown_has_no_line_that_opens_anything_else(count: int):
    """Each part of a digest stands under its own heading, whatever number of points it has."""
    points = tuple(Point(f"{n}. point") for n in range(count))
    text = markdown(blocks_of_digest(Digest(title="A", points=points)))
    assert text.count("\n## ") == 1
    assert f"\n{count}. {count - 1}\\. point" in text
