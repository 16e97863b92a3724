"""Quotations located in whole novels, against published words and computed places.

Sources: the texts in `novels/` (their README names the packages). The places were computed
from those texts by plain search after collapsing white space, independently of this code;
chapters as the printed headings count them.
"""

import random
from collections.abc import Iterator
from dataclasses import dataclass

import pytest

from cards.proving import BookText, fold_book, locate
from service.documents.book_texts import BookTexts
from tests.reference.books import EPUB, TITLES, book, folded

PLACES = [
    ("prideprejudice", "It is a truth universally acknowledged", 0.0001, 1),
    ("prideprejudice", "I declare after all there is no enjoyment like reading", 0.1306, 11),
    ("prideprejudice", "You must allow me to tell you how ardently", 0.4813, 34),
    ("prideprejudice", "Till this moment I never knew myself", 0.5338, 36),
    ("persuasion", "She had been forced into prudence", 0.1087, 4),
    ("persuasion", "You pierce my soul", 0.9365, 23),
    ("northangerabbey", "The person, be it gentleman or lady", 0.3927, 14),
    ("sensesensibility", "It is not time or opportunity", 0.1492, 12),
    ("mansfieldpark", "We have all a better guide in ourselves", 0.8661, 42),
    ("emma", "If I loved you less", 0.8839, 49),
    ("emma", "It was badly done, indeed!", 0.7680, 43),
    ("mobydick", "It is not down in any map", 0.0955, 12),
]
CHAPTERS = {
    "emma": 55,
    "mansfieldpark": 48,
    "mobydick": 135,
    "northangerabbey": 31,
    "persuasion": 24,
    "prideprejudice": 61,
    "sensesensibility": 50,
}
QUOTATIONS = 500
WRONG = 0.05
LETTERS = "abcdefghijklmnopqrstuvwxyz"


@pytest.mark.parametrize(("title", "words", "fraction", "chapter"), PLACES)
def test_published_words_are_placed(title: str, words: str, fraction: float, chapter: int):
    """Words a novel is known for are found exactly, to a thousandth of it, in their chapter."""
    found = locate(words, folded(title))
    assert found is not None
    assert found.score == 100
    assert not found.slips
    assert not found.ambiguous
    assert found.fraction == pytest.approx(fraction, abs=0.001)
    assert found.spot.chapter is not None
    assert found.spot.chapter.number == chapter


@pytest.mark.parametrize(("title", "chapters"), CHAPTERS.items())
def test_every_chapter_is_recognised(title: str, chapters: int):
    """A novel has as many chapters as it was printed with, in order."""
    assert [chapter.number for chapter in book(title).chapters] == list(range(1, chapters + 1))


def test_a_chapter_counts_through_the_volumes_and_within_its_own():
    """The 49th chapter of *Emma* is headed as the thirteenth of its third volume."""
    assert book("emma").chapters[48].title == "VOLUME III, CHAPTER XIII"


def test_a_famous_misquotation_is_not_there():
    """*Emma* has "It was badly done, indeed!" and nowhere the popular "Badly done, Emma"."""
    found = locate("Badly done, Emma", folded("emma"))
    assert found is None or found.score < 100


def test_an_apostrophe_may_be_straight_or_curly():
    """*Moby-Dick* is typeset with curly apostrophes and found with straight ones, none a slip."""
    found = locate("from hell's heart I stab at thee", folded("mobydick"))
    assert found is not None
    assert found.exact == "from hell’s heart I stab at thee"
    assert found.score == 100
    assert not found.slips


@dataclass(frozen=True)
class Sample:
    """Words of a novel as copied with errors, and between which offsets they stand in it."""

    title: str
    words: str
    start: int
    end: int


def samples() -> Iterator[Sample]:
    """Yield quotations of 8 to 60 words from all novels in turn, one character in twenty wrong."""
    chance = random.Random(1851)
    for number in range(QUOTATIONS):
        title = TITLES[number % len(TITLES)]
        text = book(title).text
        while True:
            start = chance.randrange(2000, len(text) - 5000)
            start = next(at for at in range(start, len(text)) if text[at].isspace())
            start = next(at for at in range(start, len(text)) if text[at].isalnum())
            words = text[start : start + 2000].split()[: chance.randint(8, 60)]
            end = start
            for word in words:
                end = text.index(word, end) + len(word)
            if "CHAPTER" not in text[start:end].upper():
                break
        yield Sample(title, _spoilt(" ".join(words), chance), start, end)


def _spoilt(words: str, chance: random.Random) -> str:
    spoilt = []
    for letter in words:
        kind = chance.choice("sdi") if chance.random() < WRONG else ""
        spoilt.append(
            {"s": chance.choice(LETTERS), "d": "", "i": letter + chance.choice(LETTERS)}.get(
                kind, letter
            )
        )
    return "".join(spoilt)


def others(sample: Sample) -> list[str]:
    """Return two more novels to look for a quotation in; over all of them, every other one."""
    number = TITLES.index(sample.title)
    step = 1 + sample.start % (len(TITLES) - 1)
    return [TITLES[(number + by) % len(TITLES)] for by in {step, len(TITLES) - step}]


def test_badly_copied_words_are_found_and_in_no_other_book():
    """At least 99 in 100 of 500 quotations are found in place, and none in another novel."""
    missed, wrong = [], []
    for sample in samples():
        found = locate(sample.words, folded(sample.title))
        shift = max(len(word) for word in sample.words.split()) + 2
        if (
            found is None
            or abs(found.start - sample.start) > shift
            or abs(found.end - sample.end) > shift
        ):
            missed.append(sample)
        wrong += [
            (sample, title)
            for title in others(sample)
            if locate(sample.words, folded(title)) is not None
        ]
    assert not wrong
    assert len(missed) <= QUOTATIONS // 100


def test_pages_come_from_the_page_marks_of_an_epub():
    """An EPUB 3 with 92 marks of printed pages gives each quotation the page it stands on."""
    text: BookText = BookTexts().read(EPUB.name, EPUB.read_bytes())
    labels = [page.label for page in text.pages]
    assert labels == [str(number) for number in range(169, 261)]
    found = locate("By almost common consent Hans Christian Andersen", fold_book(text))
    assert found is not None
    assert found.spot.pages == ("179",)
    assert found.spot.chapter is not None
    assert found.spot.chapter.title == "192 THE REAL PRINCESS"
