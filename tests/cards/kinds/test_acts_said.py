"""The words of a commitment by what they are for."""

import pytest

from cards.kinds.acts_said import said_in
from cards.kinds.amounts import measurable


def said(text):
    """Part the words of a text."""
    told = measurable(text)
    return said_in(told.line, told.left)


def test_a_commitment_is_parted_in_act_cue_and_term():
    """The cue may lead or trail; the term begins with until."""
    parted = said("When I begin a project, I will visit it weekly, until it can stand alone")
    assert "visit" in parted.act
    assert "project" in parted.cue
    assert "stand" in parted.term
    assert "stand" not in parted.act
    trailing = said("Read a psalm aloud before breakfast")
    assert ("psalm" in trailing.act, "breakfast" in trailing.cue) == (True, True)


def test_what_is_waited_with_belongs_to_the_act():
    """To wait before writing is about writing."""
    assert "write" in said("When angry, I will wait 24 hours before I write to him").act


@pytest.mark.parametrize(
    ("text", "undone"),
    [
        ("I will not complain to anyone", True),
        ("thirty days without moaning", True),
        ("Interrupt no one at breakfast", True),
        ("When angry I will not shout", True),
        ("leave the telephone alone until noon", True),
        ("keep away from the telephone", True),
        ("wait a day before I write", True),
        ("I will not wait before I write", False),
        ("I will never stop asking", False),
        ("write ten things that did not go well", False),
        ("read a paper whose views I don’t share", False),
        ("write to him before a day has passed", False),
        ("Read aloud at table", False),
    ],
)
def test_a_deed_left_undone_is_told_from_a_negation_elsewhere(text, undone):
    """A subordinate clause may be negated without the act being so."""
    assert said(text).undone is undone
