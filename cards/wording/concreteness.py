"""Whether a commitment is an act someone could see done, in the imperative or with "I will"."""

import re
from dataclasses import dataclass

from cards.wording.acts import (
    acts_later,
    forbids_what_is_seen,
    is_imperative,
    is_seen,
    is_visible_being,
)
from cards.wording.clauses import promised_by_will, without_leads, without_wrappers
from cards.wording.line import line_of
from cards.wording.verbs import stem


@dataclass(frozen=True, slots=True)
class Act:
    """The act a commitment promises.

    Attributes:
        concrete: whether it is one someone could see done, and promised.
        promised: whether it is in the imperative or with "I will".
        verb: its verb in the base form, or None.
        trying: whether only an attempt or an aim is promised.
    """

    concrete: bool
    promised: bool
    verb: str | None
    trying: bool = False


_NO_PROMISE = re.compile(
    r"^(?:[^,;.]*, )?(?:i|we|one|you|people|readers) (?:(?:really|also|just) )?"
    r"(?:want|would|should|could|might|may|must|ought|need|have|had|hope|wish"
    r"|like|plan|intend|mean|aim|try|think|feel|believe|am|was|were|can|do|did"
    r"|never|always|often|used|know|love)(?!\S)"
)
_HEADED = re.compile(
    r"^(?:my|our|the) (?:new )?(?:rule|goal|aim|plan|intention|resolution|promise|commitment|task"
    r"|practice)(?: for [^,]{1,40}| this [^,\s]{1,20})? ?(?:,|is to|is|will be to) (?=\S)"
)
"""A name put before the act itself: "My rule: ...", "my goal is to ..."."""
_AIM = re.compile(
    r"(?:(?:i|we) )?(?P<how>aim|try|plan|intend|strive|attempt|endeavou?r|seek|do my best"
    r"|make an effort|make every effort|work) (?:to|at) "
)


def act_of(text: str, *, measured: bool) -> Act:
    """Return the act a commitment promises.

    Args:
        text: the commitment.
        measured: whether it has a measure; an attempt with one is taken as the act.
    """
    line = line_of(text).replace(" :", " ,")
    line = _HEADED.sub("", line)
    clause = promised_by_will(line)
    promised = clause is not None
    if clause is None:
        clause = without_leads(line)
    aim = _AIM.match(clause)
    trying = aim is not None
    if aim is not None:
        promised = promised or measured
        clause = clause[aim.end() :]
    seen, verb, imperative = _seen(clause, stated=promised)
    promised = promised or imperative
    return Act(promised and seen and (measured or not trying), promised, verb, trying)


def _seen(clause: str, *, stated: bool) -> tuple[bool, str | None, bool]:
    """Tell whether a clause can be seen done, its verb, and whether it is in the imperative."""
    if not clause or (not stated and _NO_PROMISE.match(clause)):
        return False, None, False
    if not stated and clause.startswith(("no ", "nothing ")):
        return forbids_what_is_seen(clause), clause.split(maxsplit=1)[0], True
    inner = without_wrappers(clause)
    if is_visible_being(clause) or is_visible_being(inner):
        return True, inner.split(maxsplit=1)[0], True
    head, *rest = inner.split()
    verb = stem(head)
    imperative = stated or inner != clause or is_imperative(verb, rest)
    return is_seen(verb, rest) or (imperative and acts_later(inner)), verb, imperative
