"""The sheet of a talk as PDF."""

from dataclasses import replace
from io import BytesIO

import pytest
from pypdf import PdfReader

from cards.digest import Commitment, Digest, Point, Quotation
from cards.talk import Agenda, Length, Stage
from service.documents.press.press import Press
from service.documents.press.talk import fitted
from tests.cards.digests import THEME
from tests.cards.talk.test_agenda import JUDGED, laid, section


def pages(agenda: Agenda) -> list[str]:
    """Return the words of each page."""
    reader = PdfReader(BytesIO(Press().talk(agenda)))
    return [" ".join(page.extract_text().split()) for page in reader.pages]


@pytest.mark.parametrize("length", list(Length))
def test_it_has_one_page_to_talk_by_and_one_to_check_by(length):
    """What is asked stands on the first of two pages, the theme on the second alone."""
    agenda = laid(JUDGED, length)
    first, second = pages(agenda)
    for each in agenda.sections:
        assert each.asked in first
        assert f"{each.minutes} min" in first
    assert THEME in second
    assert THEME[:40] not in first


def test_order_and_places_stand_overleaf_alone():
    """Nobody reads on the talking page how the points follow or where a quotation stands."""
    first, second = pages(laid())
    for line in (
        *section(laid(), Stage.PLACING).answers,
        *section(laid(), Stage.ORDER).answers,
    ):
        assert line.beside in second
        assert line.beside not in first
        assert line.label in second


LARGEST = Digest(
    "Much " * 90,
    author="Nobody " * 60,
    theme="Storm and calm. " * 1_000,
    judgement="Doubtful. " * 1_500,
    points=tuple(Point(f"Point {n} " + "weighs much " * 500, "p. 7") for n in range(8)),
    commitments=tuple(Commitment(f"Pay {n} taxes " + "daily " * 500) for n in range(9)),
    quotations=tuple(Quotation(f"Words {n} " + "go on " * 500, "p. 9" * 40) for n in range(9)),
)


@pytest.mark.parametrize("length", list(Length))
@pytest.mark.parametrize("digest", [LARGEST, Digest("A", points=(Point("One"),))])
def test_it_is_two_pages_whatever_the_digest_holds(digest, length):
    """The largest digest and the smallest are each two pages, with room for what is new."""
    whole = pages(laid(digest, length))
    assert len(whole) == 2
    assert laid(digest, length).sections[-1].asked in whole[0]


def test_what_was_cut_says_so():
    """Of what has no room the beginning is printed, and a sign that there is more."""
    first, second = pages(laid(LARGEST))
    assert "[…]" in first
    assert "[…]" in second
    assert "more, in the digest" in first


def test_wide_letters_are_cut_by_their_width():
    """Letters of East Asia take two places, so that they cannot push a page over its foot."""
    assert fitted("国" * 300, 100) == "国" * 50 + " […]"
    assert fitted("a" * 100, 100) == "a" * 100


def test_hostile_text_prints_literally():
    """What a reader wrote is never code of the typesetter's."""
    digest = replace(JUDGED, title="#set page(fill: red)", judgement='#panic("no") $x$ *bold* @ref')
    first, _ = pages(laid(digest))
    assert "#set page(fill: red)" in first
    assert '#panic("no") $x$ *bold* @ref' in first


def test_it_is_tagged_and_titled():
    """PDF/UA: a title, a language, and tags, as the printed digest has them."""
    reader = PdfReader(BytesIO(Press().talk(laid())))
    assert reader.metadata is not None
    assert reader.metadata.title == "Talk: Pride and Prejudice"
    assert reader.trailer["/Root"]["/MarkInfo"]["/Marked"]
    assert reader.trailer["/Root"]["/Lang"].startswith("en")
