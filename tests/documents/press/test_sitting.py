"""A sitting on paper as PDF."""

from dataclasses import replace
from datetime import UTC, datetime
from io import BytesIO
from uuid import UUID

import pytest
from pypdf import PdfReader

from cards.items import KeptItem, items_of, occasion_of
from cards.kinds import KINDS
from cards.kinds.base import KindName, Shelved
from cards.parts import KeptDigest, Link, PartKind
from service.documents.press.press import Press
from service.use_cases.sitting_records import PrintedSheet, Sheet, SheetLine
from tests.cards.digests import kept

SHELF = tuple(Shelved(UUID(int=n), title) for n, title in ((1, "Emma"), (901, "Walden")))


def printed(digest: KeptDigest, most: int = 100) -> PrintedSheet:
    """Return a sheet with the items a digest makes."""
    lines = []
    for number, item in enumerate(items_of(digest)[:most], 1):
        occasion = occasion_of(KeptItem(item, None), digest, SHELF)
        kind = KINDS[item.kind]
        lines.append(
            SheetLine(
                number,
                item.id,
                item.kind,
                digest.title,
                digest.author,
                kind.cue(occasion),
                kind.answer(occasion),
            )
        )
    sheet = Sheet(UUID(int=7), datetime(2026, 3, 1, 8, tzinfo=UTC), 10, ())
    return PrintedSheet(sheet, tuple(lines))


def linked() -> KeptDigest:
    """Return the example digest, its first point linked to another book."""
    digest = kept()
    point = digest.held(PartKind.POINT)[0]
    return replace(digest, links=(Link(UUID(int=3), point.id, UUID(int=901), "Walden"),))


def pages(sheet: PrintedSheet) -> list[str]:
    """Return the words of each page."""
    reader = PdfReader(BytesIO(Press().sheet(sheet)))
    return [" ".join(page.extract_text().split()) for page in reader.pages]


def test_every_kind_is_printed_with_its_cue_and_its_answer():
    """All eight kinds have their question on the one side and their words on the other."""
    sheet = printed(linked())
    assert {line.kind for line in sheet.lines} == set(KindName)
    whole = pages(sheet)
    begins = next(number for number, page in enumerate(whole) if page.startswith("Answers"))
    cues, answers = " ".join(whole[:begins]), " ".join(whole[begins:])
    for line in sheet.lines:
        assert line.cue.question in cues
        assert f"{line.number}." in cues
        assert " ".join(line.answered.words.split())[:40] in answers


@pytest.mark.parametrize("most", [1, 4, 9, 40])
def test_answers_begin_on_an_even_page(most):
    """Printed on both sides, no side of the paper shows both cues and answers."""
    whole = pages(printed(linked(), most))
    begins = next(number for number, page in enumerate(whole, 1) if page.startswith("Answers"))
    assert begins % 2 == 0


def test_fonts_are_embedded():
    """Any printer sets it as it was set: every font's outlines are in the file."""
    reader = PdfReader(BytesIO(Press().sheet(printed(kept(), 9))))
    fonts = [
        font.get_object()["/DescendantFonts"][0].get_object()["/FontDescriptor"]
        for page in reader.pages
        for font in page["/Resources"].get("/Font", {}).values()
    ]
    assert fonts
    outlines = {"/FontFile2", "/FontFile3"}
    assert all(outlines & set(font.get_object()) for font in fonts)


def test_a_theme_is_nowhere_among_the_cues():
    """Whoever has not turned the paper over has not read the answer."""
    sheet = printed(kept(), 1)
    (line,) = sheet.lines
    assert line.kind is KindName.THEME
    first, *_ = pages(sheet)
    assert line.answered.words[:30] not in first


def test_hostile_text_prints_literally_and_in_time():
    """What a reader wrote is never code of the typesetter's, however long it is."""
    digest = kept()
    hostile = '#panic("no") $x$ *bold* \\ <label> @ref ' + "word " * 3_000
    theme = replace(digest.held(PartKind.THEME)[0], text=hostile)
    parts = tuple(theme if part.id == theme.id else part for part in digest.parts)
    sheet = printed(replace(digest, parts=parts, title="#set page(fill: red)"), 1)
    whole = " ".join(pages(sheet))
    assert '#panic("no") $x$ *bold*' in whole
    assert "#set page(fill: red)" in whole
    assert "[…]" in whole


def test_it_is_tagged_and_titled():
    """PDF/UA: a title, a language, and tags, as the printed digest has them."""
    reader = PdfReader(BytesIO(Press().sheet(printed(kept(), 3))))
    assert reader.metadata is not None
    assert reader.metadata.title == "Sitting, 1 March 2026"
    assert reader.trailer["/Root"]["/MarkInfo"]["/Marked"]
    assert reader.trailer["/Root"]["/Lang"].startswith("en")
