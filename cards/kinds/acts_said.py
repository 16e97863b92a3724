"""The words of a commitment by what they are for: the act, its cue, its term."""

import re
from dataclasses import dataclass

from cards.kinds.words import NEGATIONS

_MEAL = r"breakfast|lunch|dinner|supper|tea|table|bedtime|bed|home|work|school|church"
_CUE = re.compile(
    r"(?<!\S)(?:(?:when|whenever|if|after|before|while|as soon as|each time|every time|once"
    r"|on \S+ing|on my way|on the way|upon) [^,;:.~]*"
    rf"|(?:at|over|during|with) (?:the |my )?(?:{_MEAL})(?!\S))"
)
_ACT_AFTER_CUE = re.compile(r"(?<!\S)(?:i|we) (?:will|shall|am going to|are going to)(?!\S)")
_TERM = re.compile(r"(?<!\S)(?:until|as long as|up to|so long as) [^,;:.]*")
_PART_OF_DAY = re.compile(
    r"(?<!\S)(morning|evening|afternoon|night|noon|dawn|dusk|tonight)s?(?!\S)"
)
_SAME_PART = {"tonight": "night"}
_TIE = re.compile(r"(?<!\S)(before|after)(?! (?:that|this|which)(?!\S))(?!\S)")
"""What ties an act to its cue; "and after that" leads on to the next act instead."""
_CLAUSE = re.compile(
    r"[,;:.!?()]|(?<!\S)(?:that|which|who|whom|whose|what|where|when|whenever|if|because|before"
    r"|after|until|while|than|unless|though|although)(?!\S)|(?<!\S)(?:i|we) (?:will|shall)(?!\S)"
)
_OF_ITS_OWN = re.compile(r"[,;:.!?()]|(?:i|we) (?:will|shall)")
_WAITED_FOR = re.compile(r"(?<!\S)(?:wait|waiting) [^,;:.]*\Z")
"""Where "before ..." is no cue but what is waited with: "wait a day before I write"."""
LEFT_UNDONE = frozenset(
    """without stop stopping quit quitting avoid avoiding refrain refraining abstain abstaining
    cease ceasing wait waiting refuse refusing skip skipping""".split()
)
"""Words that leave a deed undone. To wait before it is not to do it before."""

_KEPT_OFF = re.compile(
    r"(?<!\S)(?:leav(?:e|ing) (?:\S+ ){1,4}alone|(?:keep|keeping|stay|staying) (?:away|off|out)"
    r"|(?:give|giving) up|(?:go|going|do|doing) without)(?!\S)"
)


@dataclass(frozen=True, slots=True)
class Said:
    """The words of a commitment, plain, by what they are for.

    Attributes:
        act: what is done, to whom, of what.
        cue: when, after what, in which situation.
        term: until what.
        parts_of_day: "morning", "evening".
        undone: whether it is the leaving undone of something.
        tie: "before" or "after" where the act is tied so to its cue, or "".
    """

    act: str
    cue: str
    term: str
    parts_of_day: frozenset[str]
    undone: bool
    tie: str = ""


def said_in(line: str, left: str) -> Said:
    """Part the words of a commitment.

    Args:
        line: its plain words, all of them.
        left: the same, "~" standing for what can be measured.
    """
    cues: list[str] = []
    act, at = "", 0
    for found in _CUE.finditer(left):
        if found[0].startswith("before") and _WAITED_FOR.search(left, 0, found.start()):
            continue
        promise = _ACT_AFTER_CUE.search(found[0])
        end = found.start() + promise.start() if promise else found.end()
        cues.append(left[found.start() : end])
        act += left[at : found.start()]
        at = end
    act += left[at:]
    terms = " ".join(_TERM.findall(act))
    parts = frozenset(_SAME_PART.get(part, part) for part in _PART_OF_DAY.findall(line))
    rest = _PART_OF_DAY.sub(" ", _TERM.sub(" ", act))
    cue = _PART_OF_DAY.sub(" ", " ".join(cues))
    ties = _TIE.findall(cue)
    return Said(rest, cue, terms, parts, _undone(line), ties[0] if len(ties) == 1 else "")


def _undone(line: str) -> bool:
    """Tell whether a clause that is not subordinate holds a negation."""
    own, at = True, 0
    for found in _CLAUSE.finditer(line):
        if own and _negated(line[at : found.start()]):
            return True
        own, at = _OF_ITS_OWN.fullmatch(found[0]) is not None, found.end()
    return own and _negated(line[at:])


def _negated(clause: str) -> bool:
    """Tell whether a clause leaves its deed undone; not to wait, not to stop is to do it."""
    said = frozenset(clause.split())
    kept_off = _KEPT_OFF.search(clause) is not None or not said.isdisjoint(LEFT_UNDONE)
    return kept_off != (not said.isdisjoint(NEGATIONS))
