"""A commitment said again, held against it slot by slot: act, measure, cue, term, the rest."""

from dataclasses import dataclass, field

from cards.kinds.acts_said import LEFT_UNDONE, Said, said_in
from cards.kinds.amounts import Amount, Measurable, measurable, singular
from cards.kinds.attempted import FAINT, Attempted
from cards.kinds.contraries import contraries_of
from cards.kinds.instead import is_exchanged
from cards.kinds.irregular import base_of
from cards.kinds.measures_held import facts_of, wrong_measures
from cards.kinds.words import HIT, NEGATIONS, WORD, content_words, fold_word, stem_of, stems

_REST = 0.75
"""Share of the act's words above which nothing of it is missing."""
_NO_ACT = (
    frozenset(
        """minute hour day night week month quarter year weekday weekend time once twice thrice next
    this last each every daily weekly monthly yearly least most whole full another really
    actually also anyone someone everyone something anything thing way i'll within during
    occasion
    monday tuesday wednesday thursday friday saturday sunday""".split()
    )
    | NEGATIONS
)
"""Words that say how much or when, which is compared as such, or hardly anything."""
_REUSED = 0.75
"""Share of an act's words, the shorter one's, above which it is told in the very same."""
_NEAR = 3
"""Words after a "not" among which its deed is: "will not ever call"."""
_FEWEST = 2
"""Words of an act, its verb among them, in which a longer act is known again: a verb alone
("write", "tell") belongs to many."""
_WAIT = "wait"
"""What whoever leaves a thing undone until then says in other words."""


@dataclass(slots=True)
class Held:
    """What an attempt holds of a commitment, slot by slot.

    Attributes:
        act: whether the act is there.
        turned: whether it is turned round.
        perhaps: whether that is told by a "not" put in alone, among other words than its own.
        wrong: what can be measured and is wrong or missing, in words: "how often".
        cue, term, rest: whether those are there; true where there are none.
    """

    act: bool
    turned: bool
    cue: bool
    term: bool
    rest: bool
    perhaps: bool
    wrong: list[str] = field(default_factory=list)


def hold(commitment: str, attempt: str, shown: str) -> Held:
    """Hold an attempt against a commitment.

    Args:
        commitment: its words.
        attempt: what the reader wrote.
        shown: the words of the cue, which are not asked again.
    """
    wanted, given = measurable(commitment), measurable(attempt)
    ours, theirs = said_in(wanted.line, wanted.left), said_in(given.line, given.left)
    cued, words = stems(shown), Attempted(given.left)
    wrong = wrong_measures(wanted, given, ours, theirs)
    whole = _act(ours, wanted)
    act = [word for word in whole if stem_of(word) not in cued] or whole
    measured = bool(facts_of(wanted) & facts_of(given)) or not facts_of(wanted)
    waited = measured and theirs.undone
    told = words.told_in_turns(wanted.left)
    hits = [
        word
        for word in whole
        if word in told or words.holds(word) or words.opposes(word) or (waited and word == _WAIT)
    ]
    share = len([word for word in act if word in hits]) / len(act)
    telling = [word for word in act if word not in FAINT] or act
    things = [each for each in wanted.amounts if _counted_alike(each, given)]
    led = whole[0] in hits and len(hits) + len(things) >= _FEWEST
    by_not = ours.undone != theirs.undone
    otherwise = (
        _exchanged(ours, theirs)
        or is_exchanged(wanted.line, given.line)
        or _contrary(commitment, attempt)
    )
    return Held(
        act=led or share > HIT or (share == HIT and measured and act[0] not in hits),
        turned=by_not or otherwise,
        perhaps=not otherwise
        and theirs.undone
        and not _reused(whole, _act(theirs, given))
        and not _leaves(whole, given.line),
        cue=_there(ours.cue, words, cued) and ours.parts_of_day <= theirs.parts_of_day,
        term=_there(ours.term, words, cued),
        rest=len([word for word in telling if word in hits]) > _REST * len(telling),
        wrong=wrong,
    )


def _counted_alike(amount: Amount, given: Measurable) -> bool:
    """Tell whether what is counted is named, or the very number of it said."""
    if amount.number != 1 and any(amount.same(each) for each in given.amounts):
        return True
    return not set(given.line.split()).isdisjoint(amount.things)


def _act(said: Said, measured: Measurable) -> list[str]:
    """Return the words that carry an act, once each, in order; all its words where none does."""
    counted = {thing for each in measured.amounts if each.unit for thing in each.things[:1]}
    words = [word for word in _content(said.act) if singular(word) not in counted]
    return words or [found[0] for found in WORD.finditer(said.act)] or [said.act]


def _reused(ours: list[str], theirs: list[str]) -> bool:
    """Tell whether an act is said in the very words of another, so that a "not" turns it round.

    Who says the opposite changes little else; who says the same in other words says some of it
    with a "not" as well: "without looking", "I don't stop".
    """
    one, other = (
        {stem_of(base_of(word)) for word in words if word not in LEFT_UNDONE}
        for words in (ours, theirs)
    )
    return len(one & other) > _REUSED * min(len(one), len(other))


def _leaves(act: list[str], attempt: str) -> bool:
    """Tell whether a word of an act follows a "not" or a "stop" of an attempt, in its clause."""
    words = attempt.split()
    for place, word in enumerate(words):
        if word in NEGATIONS or word in LEFT_UNDONE:
            following = words[place + 1 : place + 1 + _NEAR]
            ends = (n for n, each in enumerate(following) if not each.isalnum() or each == "but")
            left = Attempted(" ".join(following[: next(ends, _NEAR)]))
            if any(map(left.holds, act)):
                return True
    return False


def _content(text: str) -> list[str]:
    said = (fold_word(text[token.start : token.end]) for token in content_words(text))
    once = {singular(word): word for word in said}
    return [word for one, word in once.items() if one not in _NO_ACT and len(word) > 1]


def _there(slot: str, words: Attempted, cued: frozenset[str]) -> bool:
    wanted = [word for word in _content(slot) if stem_of(word) not in cued]
    return sum(map(words.holds, wanted)) >= HIT * len(wanted)


def _exchanged(ours: Said, theirs: Said) -> bool:
    """Tell whether what comes first is to come after: "before I judge, ask", "judge before I ask".

    Either act and cue have changed places, or "before" and "after" have; where both have, it
    is the same again.
    """
    if not (ours.tie and theirs.tie):
        return False
    act, cue = Attempted(theirs.act), Attempted(theirs.cue)
    kept = _share(ours.act, act) + _share(ours.cue, cue)
    crossed = _share(ours.act, cue) + _share(ours.cue, act)
    if max(kept, crossed) < 2 * HIT:
        return False
    return (crossed > kept) == (ours.tie == theirs.tie)


def _share(slot: str, words: Attempted) -> float:
    wanted = _content(slot)
    return sum(map(words.holds, wanted)) / max(1, len(wanted))


def _contrary(commitment: str, attempt: str) -> bool:
    """Tell whether a word of one stands against its contrary in the other.

    A word that both hold is not against anything: "strengths and weaknesses" are in both.
    """
    ours, theirs = Attempted(commitment), Attempted(attempt)
    missed = {stem_of(word) for word in _content(commitment) if not theirs.holds(word)}
    put_in = {stem_of(word) for word in _content(attempt) if not ours.holds(word)}
    return any(not contraries_of(stem).isdisjoint(put_in) for stem in missed)
