"""Properties of ordering, completing, telling sources and naming across books.

What counts as containing an answer: for a quotation to complete, a left-out word by its
stem; for one to be given by heart and for a linked title, half of its content words; for a
source, any word of three letters or more of its title or its author's name.
"""

from dataclasses import replace
from datetime import date
from time import process_time
from uuid import UUID

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cards.answers import Grade
from cards.digest import Digest, Point, Quotation
from cards.identity import keep
from cards.kinds.across import ACROSS
from cards.kinds.base import Asked, Attempt, Occasion, Shelved
from cards.kinds.complete import COMPLETE
from cards.kinds.naming import naming
from cards.kinds.order import ORDER
from cards.kinds.source import SOURCE
from cards.kinds.veiling import Telling, veil
from cards.kinds.wording import recite
from cards.kinds.words import content_words, fold_word, stems
from cards.parts import KeptDigest, Link, PartKind
from tests.cards.digests import kept, new_ids
from tests.property.strategies import digests, hostile, hostile_words, sentences

CHOICES = (ORDER, COMPLETE, SOURCE, ACROSS)
NAMES = {kind: kind.name for kind in CHOICES}.values()

TITLES = st.sampled_from(
    [
        "A Book",
        "Emma",
        "Walden",
        "Debts of Gratitude",
        "The Whale and the Prophet",
        "Silence",
        "It",
        "Thunder: A History of Fair Weather",
        "Die Brücke",
        "Les Misérables",
        "…",
    ]
)
AUTHORS = st.sampled_from(
    [None, "Jane Austen", "Austen, Jane", "Hanne Ahab", "Victor Hugo", "Lao Tzu", "鲁迅"]
)
DAYS = st.one_of(st.none(), st.dates(date(2020, 1, 1), date(2026, 1, 1)))
SPOILERS = st.sampled_from(
    ["Emma", "Walden’s", "Mr. Ahab", "Hugo", "debt", "Misérables", "Bridget"]
)


@st.composite
def quotations(draw: st.DrawFn) -> str:
    """One or two sentences with names and title words thrown in."""
    words = " ".join(draw(st.lists(sentences, min_size=1, max_size=2))).split()
    for spoiler in draw(st.lists(SPOILERS, max_size=2)):
        words.insert(draw(st.integers(0, len(words))), spoiler)
    return " ".join(words)


@st.composite
def libraries(draw: st.DrawFn) -> tuple[KeptDigest, tuple[Shelved, ...]]:
    """A digest with names in its quotations and links on its points, and the reader's shelf."""
    digest = draw(digests())
    own = tuple(
        Quotation(text, draw(st.sampled_from([None, "p. 54"])))
        for text in draw(st.lists(quotations(), max_size=3))
    )
    digest = replace(
        digest, title=draw(TITLES), author=draw(AUTHORS), quotations=own or digest.quotations
    )
    library = kept(digest)
    others = tuple(
        Shelved(UUID(int=5_000 + number), draw(TITLES), draw(AUTHORS), draw(DAYS))
        for number in range(draw(st.integers(0, 7)))
    )
    points = library.held(PartKind.POINT)
    whys = st.one_of(st.just(""), sentences)
    links = [
        Link(UUID(int=book.id.int + 4_000), point.id, book.id, book.title, book.author, draw(whys))
        for point in points
        for book in others
        if draw(st.integers(0, 5)) == 0
    ]
    shelf = (*others, Shelved(library.id, library.title, library.author, draw(DAYS)))
    return replace(library, links=tuple(links)), shelf


@st.composite
def occasions(draw: st.DrawFn) -> Occasion:
    """An asking of an item of one of the four kinds, or of a digest that makes none: rejected."""
    library, shelf = draw(libraries())
    made = [(kind, part) for kind in CHOICES for part in kind.sources(library)]
    kind, part = draw(st.sampled_from(made)) if made else (None, None)
    asked, held = draw(st.integers(0, 9)), draw(st.booleans())
    return (kind, Occasion(library, part, asked, held, shelf)) if kind else None


def askings(kind):
    """Return askings of one kind."""

    @st.composite
    def drawn(draw: st.DrawFn) -> list[Occasion]:
        library, shelf = draw(libraries())
        asked, held = draw(st.integers(0, 9)), draw(st.booleans())
        return [Occasion(library, part, asked, held, shelf) for part in kind.sources(library)]

    return drawn()


def full(kind, occasion: Occasion) -> Attempt:
    """Return the answer given back whole, in the way asked for."""
    cue, answer = kind.cue(occasion), kind.answer(occasion)
    match cue.asked[0]:
        case Asked.ORDER:
            return Attempt(order=answer.order)
        case Asked.BLANKS:
            return Attempt(blanks=answer.blanks)
        case Asked.BOOK:
            return Attempt(book=answer.book)
        case _:
            return Attempt(words=answer.words)


@given(askings(ORDER))
def test_points_are_never_shown_in_their_order_nor_with_their_pages(occasions):
    """The points shown are the digest's, ten at most, each once, and out of order."""
    for occasion in occasions:
        cue, answer = ORDER.cue(occasion), ORDER.answer(occasion)
        points = [part.text for part in occasion.digest.held(PartKind.POINT)]
        shown = [landmark.text for landmark in cue.landmarks]
        assert sorted(shown) == sorted(points)[: len(shown)] or set(shown) < set(points)
        assert [mark.number for mark in cue.landmarks] == list(range(1, len(shown) + 1))
        assert all(mark.page is None for mark in cue.landmarks)
        assert [shown[number - 1] for number in answer.order] == [p for p in points if p in shown]
        assert answer.order != tuple(range(1, len(shown) + 1))


@given(askings(COMPLETE))
def test_a_quotation_to_complete_never_holds_what_is_left_out(occasions):
    """No left-out word stands, by its stem, in what is shown; pieces and words make the whole."""
    for occasion in occasions:
        cue, answer = COMPLETE.cue(occasion), COMPLETE.answer(occasion)
        text = occasion.part.text
        if cue.pieces:
            assert len(cue.pieces) == len(answer.blanks) + 1
            woven = [cue.pieces[0]]
            for word, piece in zip(answer.blanks, cue.pieces[1:], strict=True):
                woven += [word, piece]
            assert "".join(woven) == text
            shown = stems(f"{cue.words}\n" + "\n".join(cue.pieces))
            assert answer.blanks
            assert shown.isdisjoint(stems(" ".join(answer.blanks)))
        else:
            begins = cue.words.removeprefix("“").split(" …”\n")[0]
            rest = stems(text.removeprefix(begins))
            assert text.startswith(begins)
            assert 2 * len(stems(cue.words) & rest) < len(rest)


@given(askings(SOURCE))
def test_a_quotation_whose_source_is_asked_names_neither_title_nor_author(occasions):
    """No word of three letters or more of either, by its stem; and half of it can be read.

    Nor another name, but where it begins the quotation and nothing tells that it is one.
    """
    for occasion in occasions:
        digest, cue = occasion.digest, SOURCE.cue(occasion)
        telling = {
            token.stem
            for token in content_words(f"{digest.title} {digest.author or ''}")
            if token.end - token.start > 2
        }
        assert stems(cue.words).isdisjoint(telling)
        after_the_first = cue.words.partition(" ")[2]
        assert "Ahab" not in after_the_first
        assert "Bridget" not in after_the_first
        read = content_words(cue.words)
        assert 2 * len(read) >= len(content_words(occasion.part.text))


@given(askings(SOURCE))
def test_the_right_book_stands_once_among_two_to_four_others(occasions):
    """Enough others, or the book is asked in words; no book of the same title page twice over."""
    for occasion in occasions:
        cue = SOURCE.cue(occasion)
        right = [book for book in cue.choices if book.id == occasion.digest.id]
        assert (cue.asked == (Asked.BOOK,)) is bool(cue.choices)
        if cue.choices:
            assert 3 <= len(cue.choices) <= 5
            assert len(right) == 1
            assert len({book.id for book in cue.choices}) == len(cue.choices)
            for book in cue.choices:
                grade = SOURCE.mark(occasion, Attempt(book=book.id)).grade
                assert (grade is Grade.CLEAR) is (book.id == occasion.digest.id)


@given(askings(ACROSS))
def test_a_point_never_names_the_book_it_is_linked_to(occasions):
    """Not half of the content words of any linked title stand in the cue."""
    for occasion in occasions:
        cue = ACROSS.cue(occasion)
        for link in occasion.digest.links:
            wanted = stems(link.title)
            if link.part_id == occasion.part.id and wanted:
                assert 2 * len(stems(cue.words) & wanted) < len(wanted)
        assert cue.choices == ()


@given(occasions())
def test_the_same_asking_shows_the_same(asking):
    """On whatever device it is made; and another asking may differ."""
    if asking is not None:
        kind, occasion = asking
        again = replace(occasion, shelf=tuple(reversed(occasion.shelf)))
        assert kind.cue(occasion) == kind.cue(replace(occasion))
        assert kind.cue(occasion) == kind.cue(again)
        assert kind.answer(occasion) == kind.answer(again)


@given(occasions())
def test_the_answer_given_back_whole_has_the_best_grade_there_is(asking):
    """Vivid; but clear for a book chosen among few, and hazy for three points in order."""
    if asking is None:
        return
    kind, occasion = asking
    grade = kind.mark(occasion, full(kind, occasion)).grade
    cue = kind.cue(occasion)
    if cue.asked == (Asked.BOOK,):
        assert grade is Grade.CLEAR
    elif kind is ORDER and len(cue.landmarks) == 3:
        assert grade is Grade.HAZY
    elif kind in (ORDER, COMPLETE):
        assert grade is Grade.VIVID
    else:
        assert grade in {Grade.CLEAR, Grade.VIVID}


@given(occasions())
def test_nothing_given_is_blank(asking):
    """Whatever is asked."""
    if asking is not None:
        kind, occasion = asking
        for nothing in (Attempt(), Attempt(words=" \n"), Attempt(blanks=("", " "))):
            assert kind.mark(occasion, nothing).grade is Grade.BLANK


numbers = st.lists(st.integers(-(10**30), 10**30) | st.integers(-1, 12), max_size=30).map(tuple)
attempts = st.builds(
    Attempt,
    words=hostile,
    order=numbers,
    blanks=st.lists(hostile, max_size=6).map(tuple),
    book=st.none() | st.uuids(),
)


def whole(words: str) -> tuple[KeptDigest, tuple[Shelved, ...]]:
    """Return a digest and a shelf made of the same words everywhere."""
    title = words.strip()[:500].strip()
    digest = keep(
        Digest(
            title,
            author=title,
            points=(Point(words), Point(f"{words} a"), Point(f"{words} b"), Point("Last")),
            quotations=(Quotation(words, "p. 5", 1), Quotation(f"One two {words} five six seven")),
        ),
        None,
        new_ids(),
    )
    shelf = tuple(Shelved(UUID(int=5_000 + n), title, title) for n in range(3))
    shelf += tuple(Shelved(UUID(int=6_000 + n), f"{title} {n}", "Other") for n in range(3))
    point = digest.held(PartKind.POINT)[0]
    links = tuple(Link(UUID(int=n), point.id, UUID(int=5_000), title, title, title) for n in (1, 2))
    return replace(digest, links=links), shelf


@settings(max_examples=400)
@given(hostile_words, attempts, st.integers(0, 9), st.booleans())
def test_marking_never_breaks(words, attempt, asked, held):
    """Whatever digest, shelf and attempt hold, they are cued, answered and marked."""
    digest, shelf = whole(words)
    for kind in CHOICES:
        for part in kind.sources(digest):
            occasion = Occasion(digest, part, asked, held, shelf)
            kind.cue(occasion)
            answer = kind.answer(occasion)
            mark = kind.mark(occasion, attempt)
            assert mark.reason
            for span in mark.answer_spans:
                assert 0 <= span.start < span.end <= len(answer.words)
            for span in mark.attempt_spans:
                assert 0 <= span.start < span.end <= len(attempt.words)
            for blank in answer.blanks:
                assert fold_word(blank)


HUGE = {
    "letters": "x" * 100_000,
    "words": "word " * 20_000,
    "controls": "\x00\x07\x1b[31m\u202e" * 12_500,
    "marks": "—“’…" * 25_000,
    "another script": "Кто говорит, что знает " * 4_500,
    "no spaces": "知之為知之不知為不知" * 10_000,
    "heaped accents": "e" + "\u0301" * 99_999,
    "emoji": "👩‍👩‍👧" * 20_000,
}


@pytest.mark.parametrize("what", HUGE)
@pytest.mark.parametrize("kind", CHOICES, ids=NAMES)
def test_an_attempt_of_a_hundred_thousand_characters_is_marked(kind, what):
    """As blank, since none of it is right; every way of giving it at once or alone."""
    digest, shelf = whole("Pride hears its own voice before any other does")
    text = HUGE[what]
    for part in kind.sources(digest):
        for held in (False, True):
            occasion = Occasion(digest, part, 6, held, shelf)
            for attempt in (
                Attempt(words=text),
                Attempt(blanks=(text,) * 50),
                Attempt(order=tuple(range(20, 10_020))),
                Attempt(words=text, blanks=(text,), order=(0, -1, 99), book=UUID(int=1)),
            ):
                assert kind.mark(occasion, attempt).grade is Grade.BLANK


PATHOLOGICAL = {
    "spaces": lambda n: "a" + " " * (n - 2) + "b",
    "capitals": lambda n: "A " * (n // 2),
    "names": lambda n: "Ann Lee " * (n // 8),
    "full stops": lambda n: "." * n,
    "sentences": lambda n: "No. " * (n // 4),
    "quotation marks": lambda n: "“" * n,
    "dashes": lambda n: "—" * n,
    "apostrophes": lambda n: "a'" * (n // 2),
    "one word": lambda n: "x" * n,
    "different words": lambda n: " ".join(f"w{i}" for i in range(n // 6)),
    "accents": lambda n: "é" * n,
}


def named(text: str) -> None:
    """Name a book in a text, of a title of the text's own first words."""
    naming(text, text[:400] or "A Book", text[-400:] or None)


def veiled(text: str) -> None:
    """Veil the names of a text that is the point of a digest too."""
    digest = kept(Digest("A Book", points=(Point(text or "x"),)))
    veil(text, Telling(digest).of(text))


READINGS = {
    "veiled": veiled,
    "named": named,
    "recited": lambda text: recite("one two three four five six", text),
}


def taken(reading, text) -> float:
    """Return the best time of three that a reading of a text takes, in seconds of the processor.

    Each time it is another text, so that nothing read before is remembered.
    """
    times = []
    for number in range(3):
        start = process_time()
        reading(f"{text[:-1]}{number}")
        times.append(process_time() - start)
    return min(times)


@pytest.mark.parametrize("text", PATHOLOGICAL)
@pytest.mark.parametrize("reading", READINGS)
def test_reading_a_text_takes_time_in_proportion_to_its_length(reading, text):
    """Eight times the characters take at most 32 times as long, where the square takes 64.

    Measured as a ratio, up to the 20,000 characters a part may have; the bound between the
    two is our own. A time under 2 ms is too short to tell.
    """
    make, read = PATHOLOGICAL[text], READINGS[reading]
    read(make(100))
    short, long = taken(read, make(2_500)), taken(read, make(20_000))
    assert long < 0.002 or long / max(short, 1e-5) < 32
