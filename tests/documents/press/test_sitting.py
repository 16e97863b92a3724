"""A sitting on paper as PDF."""

from dataclasses import replace
from datetime import UTC, date, datetime
from io import BytesIO
from uuid import UUID

import pytest
from pypdf import PdfReader

from cards.digest import Digest, Point, Quotation
from cards.errors import CannotPrint
from cards.items import KeptItem, items_of, occasion_of
from cards.kinds import KINDS
from cards.kinds.base import KindName, Shelved
from cards.parts import KeptDigest, Link, PartKind
from service.documents.press.press import Press
from service.documents.press.sitting import sitting_of
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
    return PrintedSheet(sheet, date(2026, 3, 1), tuple(lines))


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


def test_letters_no_font_has_are_refused_with_what_helps_for_a_sheet():
    """The refusal names them, and advises what helps one who wants to sit, not to write out."""
    sheet = printed(replace(kept(), title="Vergil \U00012000"), 1)
    with pytest.raises(CannotPrint, match="or sit on the screen instead") as refused:
        Press().sheet(sheet)
    assert "\U00012000" in refused.value.message
    assert "document" not in refused.value.message
    assert refused.value.where == "sheet"


def test_each_cue_names_its_book_once_at_the_most():
    """Where the points are put in order, the title stands once; whose words: not at all."""
    for line in printed(kept()).lines:
        (cue,) = sitting_of(replace(printed(kept()), lines=(line,)))["cues"]
        words = "" if cue["pieces"] else " ".join(" ".join(e["lines"]) for e in cue["words"])
        named = f"{words} {cue['book'] or ''}".count("Pride and Prejudice")
        assert named == (0 if line.kind is KindName.SOURCE else 1)


def test_it_is_tagged_and_titled():
    """PDF/UA: a title, a language, and tags, as the printed digest has them."""
    reader = PdfReader(BytesIO(Press().sheet(printed(kept(), 3))))
    assert reader.metadata is not None
    assert reader.metadata.title == "Sitting, 1 March 2026"
    assert reader.trailer["/Root"]["/MarkInfo"]["/Marked"]
    assert reader.trailer["/Root"]["/Lang"].startswith("en")


def below(reader: PdfReader) -> float:
    """Return how far the lowest words of any page stand above its lower edge, in points."""
    lowest: list[float] = []

    def visit(text: str, cm: list[float], tm: list[float], _font: object, _size: float) -> None:
        if text.strip():
            lowest.append(tm[4] * cm[1] + tm[5] * cm[3] + cm[5])

    for page in reader.pages:
        page.extract_text(visitor_text=visit)
    return min(lowest)


LONGEST = Digest(
    title="Much" * 120,
    author="Nobody " * 60,
    points=tuple(Point(f"Point {n} " + f"weighs{n} much " * 160, "p. 7") for n in range(1, 5)),
    quotations=(
        Quotation("".join(f"Word{n} goes on and on without a halt, " for n in range(400)), None, 2),
        Quotation("A" * 15_000 + " sentence that few would learn by heart, ever", "p. 9", 3),
    ),
)


@pytest.mark.parametrize("kind", [KindName.PLACE, KindName.ORDER, KindName.COMPLETE])
def test_an_item_taller_than_a_page_goes_on_overleaf(kind):
    """No words run off the foot of the page: the last point and the four grades are printed."""
    whole = printed(kept(LONGEST))
    for line in whole.lines:
        if line.kind is kind:
            sheet = replace(whole, lines=(line,))
            reader = PdfReader(BytesIO(Press().sheet(sheet)))
            words = " ".join(" ".join(pages(sheet)).split("Answers")[0].split())
            assert all(mark.text[-14:].strip() in words for mark in line.cue.landmarks)
            assert words.index("vivid") > max(map(words.rfind, ("weighs", "goes on")))
            assert below(reader) > 0


def test_what_fits_on_a_page_is_not_torn_apart():
    """Each of a usual digest's items has its question and its grades on one page."""
    sheet = printed(linked())
    whole = pages(sheet)
    begins = next(number for number, page in enumerate(whole) if page.startswith("Answers"))
    for page in whole[:begins]:
        questions = sum(page.count(question) for question in {e.cue.question for e in sheet.lines})
        assert page.count("hazy") == questions


def test_every_blank_of_a_long_quotation_is_printed():
    """Long stretches between blanks are cut and say so; what stands beside a blank is kept."""
    line = next(each for each in printed(kept(LONGEST)).lines if each.kind is KindName.COMPLETE)
    cue = sitting_of(replace(printed(kept(LONGEST)), lines=(line,)))["cues"][0]
    assert len(cue["pieces"]) == len(line.cue.pieces)
    assert sum(map(len, cue["pieces"])) < 3_000
    for whole, cut in zip(line.cue.pieces, cue["pieces"], strict=True):
        assert cut == whole or "[…]" in cut
        assert cut[-20:] == whole[-20:]


BARE = ("\u200d", "\u00ad", "\u034f", "\u20e3", "\u0301")


@pytest.mark.parametrize("upon", BARE)
def test_marks_that_stand_on_spaces_are_bounded(upon):
    """However many there are, the typesetter is handed few: its time grows with their square."""
    hostile = " ".join(
        f"{word}{f' {upon}' * 15}" for word in "sixty words have marks beside".split()
    )
    digest = kept()
    theme = replace(digest.held(PartKind.THEME)[0], text=hostile * 10)
    parts = tuple(theme if part.id == theme.id else part for part in digest.parts)
    sheet = printed(replace(digest, parts=parts, title=hostile), 1)
    (answer,) = sitting_of(sheet)["answers"]
    written = "".join(line for each in answer["words"] for line in each["lines"])
    assert 0 < written.count(upon) <= 30
    assert written.count("marks") == 10
    assert 0 < answer["source"].count(upon) <= 30


@pytest.mark.parametrize(
    "words",
    [
        "\u0645\u06cc\u200c\u062e\u0648\u0627\u0647\u0645 " * 60,
        "cafe\u0301 " * 100,
        "\u05d0\u05b8 \u200f\u05d1\u05b0 " * 90,
        "\U0001f469\u200d\U0001f52c " * 90,
    ],
)
def test_marks_that_stand_on_letters_are_all_printed(words):
    """Persian joined words, accents, Hebrew vowels, joined signs: written as they were."""
    digest = kept()
    theme = replace(digest.held(PartKind.THEME)[0], text=words.strip())
    parts = tuple(theme if part.id == theme.id else part for part in digest.parts)
    (answer,) = sitting_of(printed(replace(digest, parts=parts), 1))["answers"]
    assert "".join(line for each in answer["words"] for line in each["lines"]) == words.strip()
