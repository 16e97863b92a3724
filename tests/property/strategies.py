"""What the properties are searched over: histories, digests, edits, texts."""

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise
from uuid import UUID
from zoneinfo import available_timezones

from hypothesis import strategies as st

from cards.answers import GRADES, Answer
from cards.digest import Commitment, Digest, Point, Quotation
from cards.errors import InvalidDigest
from cards.schedule import HIGHEST_TARGET, LOWEST_TARGET

ITEM = UUID("00000000-0000-4000-8000-00000000000a")
START = date(2020, 1, 1)

item_ids = st.uuids()
grades = st.sampled_from(GRADES)
targets = st.floats(LOWEST_TARGET, HIGHEST_TARGET)
gaps = st.one_of(st.just(0), st.integers(1, 14), st.integers(15, 400), st.integers(401, 2_500))
zones = st.sampled_from(sorted(available_timezones() - {"localtime", "posixrules"}))


@st.composite
def histories(draw: st.DrawFn, *, min_size: int = 1, max_size: int = 12) -> list[Answer]:
    """Answers to one item in the order they happened, several on a day among them."""
    steps = draw(st.lists(st.tuples(gaps, grades), min_size=min_size, max_size=max_size))
    answers: list[Answer] = []
    day = START
    for number, (gap, grade) in enumerate(steps):
        day += timedelta(days=gap)
        at = datetime.combine(day, time(12), UTC) + timedelta(minutes=number)
        answers.append(Answer(UUID(int=number + 1), ITEM, grade, at, day))
    return answers


SENTENCES = """Pride hears its own voice before any other
    A letter read twice can unmake a year of certainty
    Gardens forgive whoever returns to them in spring
    The whale answers no question that Ahab puts to it
    Silence at table taught the children more than sermons
    Debts of gratitude weigh heavier than debts of gold
    Whoever rules the granary rules the winter
    Plough one acre well rather than seven badly
    Ask the quietest person in the room what they think
    Keep a lantern lit for the brother who left
    Thunder frightened nobody but the prophets of fair weather
    Exile sharpened her language and dulled her hope
    Visit Hanne every other Thursday and bring bread
    Machines freed their hands, idleness bound their minds
    Justice arrives on foot where mercy rides ahead
    No bridge is crossed by those who only measure it""".split("\n")
sentences = st.sampled_from([sentence.strip() for sentence in SENTENCES])

locators = st.one_of(
    st.none(),
    st.integers(1, 400).map(lambda page: f"p. {page}"),
    st.integers(1, 60).map(lambda chapter: f"ch. {chapter}"),
)


@st.composite
def digests(draw: st.DrawFn) -> Digest:
    """A digest whose parts are unlike each other, as two points of one book are."""
    texts = draw(st.lists(sentences, min_size=1, max_size=9, unique=True))
    cuts = sorted(draw(st.tuples(st.integers(0, len(texts)), st.integers(0, len(texts)))))
    (points, commitments), quotations = (
        [texts[a:b] for a, b in pairwise((0, *cuts))],
        texts[cuts[1] :],
    )
    after = st.one_of(st.none(), st.integers(0, len(points)))
    return Digest(
        title=draw(st.sampled_from(["A Book", "Walden", "Emma"])),
        author=draw(st.sampled_from([None, "Jane Austen"])),
        pages=draw(st.one_of(st.none(), st.integers(400, 900))),
        theme=draw(st.one_of(st.none(), sentences)),
        points=tuple(Point(text, draw(locators)) for text in points),
        commitments=tuple(Commitment(text) for text in commitments),
        quotations=tuple(Quotation(text, draw(locators), draw(after)) for text in quotations),
    )


@st.composite
def mistyped(draw: st.DrawFn, text: str) -> str:
    """A text with one letter dropped, doubled, replaced or swapped with its neighbour."""
    at = draw(st.integers(0, len(text) - 2))
    before, letter, after = text[:at], text[at], text[at + 1 :]
    return draw(
        st.sampled_from(
            [
                before + after,
                before + letter + letter + after,
                before + "q" + after,
                before + after[0] + letter + after[1:],
            ]
        )
    )


@st.composite
def with_a_typing_error(draw: st.DrawFn, digest: Digest) -> Digest:
    """A digest with one typing error in every part."""

    def spoiled(parts: tuple) -> tuple:
        return tuple(replace(part, text=draw(mistyped(part.text))) for part in parts)

    return replace(
        digest,
        theme=None if digest.theme is None else draw(mistyped(digest.theme)),
        points=spoiled(digest.points),
        commitments=spoiled(digest.commitments),
        quotations=spoiled(digest.quotations),
    )


hostile = st.one_of(
    st.text(max_size=400),
    st.text(alphabet="ab .;:!?()–—\n'’“\"-_0123456789", max_size=400),
)
"""Texts of any characters, and of those that the reading of texts turns on."""


def _can_be_kept(text: str) -> bool:
    try:
        Digest("A Book", theme=text)
    except InvalidDigest:
        return False
    return True


hostile_words = hostile.filter(_can_be_kept)
"""Those of them that a part of a digest can hold."""
