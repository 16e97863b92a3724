"""Invented commitments, decisions, re-readings and talks for the tests of the store."""

from dataclasses import replace
from uuid import uuid4

from cards.commitments import Act, Commitment, Decision, Measure, Period
from cards.parts import KeptDigest, PartKind
from cards.rereading import Rereading
from cards.talk import Talk
from tests.store.libraries import NOW, TODAY

WEEKLY = Measure(period=Period.WEEK, on=("SU",))


def a_commitment(book: KeptDigest) -> Commitment:
    """Return the first commitment of a book, made and entered today."""
    part = book.held(PartKind.COMMITMENT)[0]
    return Commitment(part.id, part.text, TODAY, TODAY, WEEKLY)


def a_decision(book: KeptDigest, act: Act = Act.RENEW) -> Decision:
    """Return a decision about it."""
    commitment = book.held(PartKind.COMMITMENT)[0].id
    decided = Decision(uuid4(), commitment, Act.RENEW, TODAY, NOW, TODAY, words="On Sundays.")
    return replace(decided, act=act)


def a_rereading(book: KeptDigest) -> Rereading:
    """Return a re-reading of a book."""
    return Rereading(uuid4(), book.id, TODAY, NOW, TODAY, "pp. 3-9", 20, "", (book.parts[0].id,))


def a_talk(book: KeptDigest) -> Talk:
    """Return a talk about a book."""
    return Talk(uuid4(), book.id, TODAY, NOW, TODAY, "A neighbour", 75, "We differ on the end.")
