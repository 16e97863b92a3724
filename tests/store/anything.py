"""Anything the store may be given to keep, made by hypothesis."""

from collections.abc import Sequence
from datetime import UTC
from hashlib import sha256
from uuid import UUID

from hypothesis import strategies as st

from cards.answers import Answer, Grade
from cards.commitments import Act, CheckIn, Decision, Measure, Outcome, Period
from cards.commitments.check_ins import MOST_DEEDS
from cards.digest import Notice
from cards.intake import Source
from cards.parts import Care, KeptDigest, Part, PartKind
from cards.proving import Anchor, BookText, Chapter, PageMark
from cards.rereading import Rereading
from cards.schedule import Memory
from cards.talk import Talk
from service.use_cases.records import (
    BookFile,
    Cause,
    Draft,
    Original,
    Reader,
    ReaderId,
    Version,
)

# Everything both databases promise to keep: any character but NUL and halves of pairs.
words = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\x00"))
some_words = words.filter(bool)
instants = st.datetimes(timezones=st.just(UTC))
days = st.dates()
grades = st.sampled_from(Grade)
shares = st.floats(0, 1)


@st.composite
def parts(draw: st.DrawFn) -> Part:
    """Any part a digest can hold."""
    return Part(
        draw(st.uuids()),
        draw(st.sampled_from(PartKind)),
        draw(st.integers(1, 500)),
        draw(some_words),
        draw(st.none() | some_words),
        draw(st.none() | st.integers(0, 500)),
        draw(st.booleans()),
    )


books = st.builds(
    KeptDigest,
    id=st.uuids(),
    title=some_words,
    author=st.none() | some_words,
    edition=st.none() | some_words,
    isbn=st.none() | st.from_regex(r"\A[0-9]{13}\Z"),
    pages=st.none() | st.integers(1, 50_000),
    finished_on=st.none() | days,
    judgement=st.none() | some_words,
    parts=st.lists(parts(), max_size=6, unique_by=lambda part: part.id).map(tuple),
    removed=st.booleans(),
    revision=st.integers(1, 2**31 - 1),
    care=st.sampled_from(Care),
)
memories = st.builds(
    Memory,
    stability=st.floats(0, exclude_min=True, allow_infinity=False, allow_nan=False),
    difficulty=st.floats(1, 10),
    first_day=days,
    last_day=days,
    last_grade=grades,
    answers=st.integers(1, 2**31 - 1),
    due_on=days,
)


def answers(items: Sequence[UUID]) -> st.SearchStrategy[Answer]:
    """Any answer to one of some items."""
    return st.builds(
        Answer,
        id=st.uuids(),
        item_id=st.sampled_from(items),
        grade=grades,
        answered_at=instants,
        day=days,
        attempt=words,
        suggested=st.none() | grades,
        predicted=st.none() | shares,
    )


def check_ins(commitment: UUID) -> st.SearchStrategy[CheckIn]:
    """Any check-in on a commitment."""
    return st.builds(
        CheckIn,
        id=st.uuids(),
        commitment_id=st.just(commitment),
        outcome=st.just(Outcome.PARTLY),
        day=days,
        reported_at=instants,
        reported_on=days,
        note=words,
        count=st.none() | st.integers(0, MOST_DEEDS),
        witness=words,
    ) | st.builds(
        CheckIn,
        id=st.uuids(),
        commitment_id=st.just(commitment),
        outcome=st.sampled_from(Outcome),
        day=days,
        reported_at=instants,
        reported_on=days,
    )


measures = st.builds(
    Measure,
    times=st.integers(1, 1000),
    period=st.sampled_from(Period),
    every=st.integers(1, 1000),
    on=st.sets(st.sampled_from(["MO", "-1FR", "2SU"])).map(tuple),
    periods=st.none() | st.integers(1, 1000),
    deadline=st.none() | days,
    minutes=st.none() | st.integers(1, 1000),
)


def decisions(commitment: UUID) -> st.SearchStrategy[Decision]:
    """Any decision about a commitment."""
    return st.builds(
        Decision,
        id=st.uuids(),
        commitment_id=st.just(commitment),
        act=st.sampled_from([Act.START, Act.MEASURE, Act.RENEW, Act.HALVE, Act.RESUME, Act.CLOSE]),
        day=days,
        decided_at=instants,
        decided_on=days,
        measure=measures,
        until=st.none() | days,
        outcome=st.sampled_from(Outcome),
        words=words,
    )


def rereadings(digest: UUID) -> st.SearchStrategy[Rereading]:
    """Any re-reading of a book."""
    return st.builds(
        Rereading,
        id=st.uuids(),
        digest_id=st.just(digest),
        day=days,
        reported_at=instants,
        reported_on=days,
        pages=words,
        minutes=st.none() | st.integers(1, 1000),
        note=words,
        items=st.lists(st.uuids(), max_size=4).map(tuple),
    )


def talks(digest: UUID) -> st.SearchStrategy[Talk]:
    """Any talk about a book."""
    return st.builds(
        Talk,
        id=st.uuids(),
        digest_id=st.just(digest),
        day=days,
        reported_at=instants,
        reported_on=days,
        listener=words,
        minutes=st.none() | st.integers(1, 1000),
        note=words,
    )


settings_of_readers = st.builds(
    Reader,
    id=st.uuids().map(ReaderId),
    time_zone=st.sampled_from(["UTC", "Europe/London", "Pacific/Chatham"]),
    turns_at=st.integers(0, 23),
    target=st.floats(0.7, 0.97),
    unasked_a_day=st.integers(0, 100),
    revision=st.integers(1, 2**31 - 1),
)
files = st.builds(
    lambda name, content, added_at: Original(name, content, sha256(content).hexdigest(), added_at),
    some_words,
    st.binary(max_size=4096),
    instants,
)
sha256s = st.from_regex(r"\A[0-9a-f]{64}\Z")
drafts = st.builds(
    Draft,
    id=st.uuids(),
    # A field may hold a NUL too: it is written as JSON, and a form keeps what is typed.
    typed=st.dictionaries(some_words, words | st.just("a\x00b"), max_size=5),
    begun_at=instants,
    changed_at=instants,
    file=st.none() | some_words,
    number=st.integers(1, 10_000),
    sources=st.lists(st.builds(Source, words, words), max_size=4).map(tuple),
    left=st.lists(words, max_size=4).map(tuple),
    notices=st.lists(st.builds(Notice, words, words), max_size=4).map(tuple),
    revision=st.integers(1, 2**31 - 1),
)
versions = st.builds(Version, kept_at=instants, cause=st.sampled_from(Cause), kept=books)
any_text = st.text(st.characters(exclude_categories=[]))


@st.composite
def book_texts(draw: st.DrawFn) -> BookText:
    """Any text of a book, halves of pairs and all, with chapters and pages in order inside it."""
    text = draw(any_text)
    places = st.lists(st.integers(0, len(text)), max_size=6).map(sorted)
    cuts = draw(places)
    titled = [draw(any_text) for _ in cuts[1::2]]
    return BookText(
        title=draw(st.none() | any_text),
        author=draw(st.none() | any_text),
        isbn=draw(st.none() | any_text),
        text=text,
        chapters=tuple(
            Chapter(number, title, start, end)
            for number, (title, start, end) in enumerate(
                zip(titled, cuts[::2], cuts[1::2], strict=False), 1
            )
        ),
        pages=tuple(PageMark(draw(any_text), start) for start in draw(places)),
    )


book_files = st.builds(
    BookFile, name=some_words, sha256=sha256s, added_at=instants, text=book_texts()
)
offsets = st.integers(0, 2**31 - 1)
anchors = st.builds(
    lambda ends, **rest: Anchor(start=min(ends), end=max(ends), **rest),
    ends=st.tuples(offsets, offsets),
    exact=words,
    prefix=words,
    suffix=words,
    fraction=shares,
    chapter=st.none() | st.integers(1, 5_000),
    page=st.none() | words,
    source=sha256s,
)
