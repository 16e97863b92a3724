"""A yearly review as PDF."""

from datetime import date
from io import BytesIO

from pypdf import PdfReader

from cards.commitments import Act, Measure, Period
from cards.yearly import Review, review_of
from service.documents.press.press import Press
from tests.cards.yearly.lives import facts

_LAST = date(2026, 12, 31)
_WEEKLY = Measure(1, Period.WEEK)


def words(review: Review) -> str:
    """Return all words of the printed review."""
    reader = PdfReader(BytesIO(Press().review(review)))
    return " ".join(" ".join(page.extract_text().split()) for page in reader.pages)


def test_it_tells_what_was_promised_kept_changed_and_what_next():
    """Each part of a review stands on paper, with its figures and the days of its changes."""
    known = [
        facts(
            "Read the news each morning",
            "Walden",
            measure=_WEEKLY,
            kept=(date(2026, 2, 1), date(2026, 2, 9)),
            decisions=((Act.PAUSE, date(2026, 3, 1), {"until": date(2026, 3, 31)}),),
        ),
        facts("Never read the news in the morning", "Emma", measure=_WEEKLY),
    ]
    told = words(review_of(2026, _LAST, known))
    for said in (
        "What the books asked in 2026",
        "As it stood on 31 December 2026",
        "2 commitments of 2 books; check-ins: 2 kept",
        "1 March 2026: Paused until 31 March 2026.",
        "One asks to do what the other asks not to",
        "Did you do it?",
    ):
        assert said in told


def test_a_year_without_commitments_prints_and_says_so():
    """An empty review is a page that says so."""
    assert "No book of the library asked for anything in it." in words(review_of(2026, _LAST, []))


def test_hostile_and_long_text_prints_literally():
    """What a reader wrote is never code of the typesetter's; what is long is cut and says so."""
    text = '#panic("no") $x$ *bold* ' + "word " * 2_000
    told = words(review_of(2026, _LAST, [facts(text, "#set page(fill: red)")]))
    assert '#panic("no") $x$ *bold*' in told
    assert "#set page(fill: red)" in told
    assert "[…]" in told


def test_it_is_tagged_and_titled():
    """PDF/UA: a title, a language, and tags, as the printed digest has them."""
    reader = PdfReader(BytesIO(Press().review(review_of(2026, _LAST, []))))
    assert reader.metadata is not None
    assert reader.metadata.title == "What the books asked in 2026"
    assert reader.trailer["/Root"]["/MarkInfo"]["/Marked"]
