"""A commitment said again, held against it slot by slot: act, measure, cue, term, the rest."""

from dataclasses import dataclass, field

from cards.kinds.acts_said import Said, said_in
from cards.kinds.alike import meanings, slip_of, slips
from cards.kinds.amounts import Amount, Measurable, measurable, singular
from cards.kinds.base import Span
from cards.kinds.contraries import contraries_of
from cards.kinds.same_deeds import deeds_of
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
_FAINT = frozenset("go went gone get got do did make made come came have take took".split())
"""Words that mean too many deeds to stand for another."""
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
        wrong: what can be measured and is wrong or missing, in words: "how often".
        cue, term, rest: whether those are there; true where there are none.
    """

    act: bool
    turned: bool
    cue: bool
    term: bool
    rest: bool
    wrong: list[str] = field(default_factory=list)


class Attempted:
    """The words of an attempt, to look words of a commitment up in."""

    def __init__(self, text: str) -> None:
        self.words = [fold_word(found[0]) for found in WORD.finditer(text)]
        self._means = frozenset[str]().union(*map(_senses, set(self.words)))
        self._slips: dict[str, str] = {}
        for word in set(self.words):
            for slip in slips(word):
                self._slips.setdefault(slip, word)

    def holds(self, word: str) -> bool:
        """Tell whether a word, one that means the same, or its misspelling is there."""
        folded = fold_word(word)
        if not _senses(folded).isdisjoint(self._means):
            return True
        near = (self._slips[slip] for slip in slips(folded) if slip in self._slips)
        return any(slip_of(given, folded) for given in near)


def _senses(word: str) -> frozenset[str]:
    stem = stem_of(word)
    return frozenset({stem}) if stem in _FAINT else meanings(word) | deeds_of(word)


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
    wrong = _wrong(wanted, given, ours, theirs)
    whole = _act(ours, wanted)
    act = [word for word in whole if stem_of(word) not in cued] or whole
    measured = bool(_facts(wanted) & _facts(given)) or not _facts(wanted)
    waited = measured and theirs.undone
    hits = [word for word in whole if words.holds(word) or (waited and word == _WAIT)]
    share = len([word for word in act if word in hits]) / len(act)
    things = [each for each in wanted.amounts if _counted_alike(each, given)]
    led = whole[0] in hits and len(hits) + len(things) >= _FEWEST
    return Held(
        act=led or share > HIT or (share == HIT and measured and act[0] not in hits),
        turned=ours.undone != theirs.undone or _contrary(commitment, attempt),
        cue=_there(ours.cue, words, cued) and ours.parts_of_day <= theirs.parts_of_day,
        term=_there(ours.term, words, cued),
        rest=share > _REST,
        wrong=wrong,
    )


def _counted_alike(amount: Amount, given: Measurable) -> bool:
    """Tell whether what is counted is named, or the very number of it said."""
    if amount.number != 1 and any(amount.same(each) for each in given.amounts):
        return True
    return not _words_of(given.line).isdisjoint(amount.things)


def _act(said: Said, measured: Measurable) -> list[str]:
    """Return the words that carry an act, once each, in order; all its words where none does."""
    counted = {thing for each in measured.amounts if each.unit for thing in each.things[:1]}
    words = [word for word in _content(said.act) if singular(word) not in counted]
    return words or [found[0] for found in WORD.finditer(said.act)] or [said.act]


def _content(text: str) -> list[str]:
    said = (fold_word(text[token.start : token.end]) for token in content_words(text))
    once = {singular(word): word for word in said}
    return [word for one, word in once.items() if one not in _NO_ACT]


def _there(slot: str, words: Attempted, cued: frozenset[str]) -> bool:
    wanted = [word for word in _content(slot) if stem_of(word) not in cued]
    return sum(map(words.holds, wanted)) >= HIT * len(wanted)


def _contrary(commitment: str, attempt: str) -> bool:
    """Tell whether a word of one stands against its contrary in the other.

    A word that both hold is not against anything: "strengths and weaknesses" are in both.
    """
    ours, theirs = Attempted(commitment), Attempted(attempt)
    missed = {stem_of(word) for word in _content(commitment) if not theirs.holds(word)}
    put_in = {stem_of(word) for word in _content(attempt) if not ours.holds(word)}
    return any(not contraries_of(stem).isdisjoint(put_in) for stem in missed)


def _facts(told: Measurable) -> frozenset[object]:
    """Return what a text measures, to be compared one by one."""
    amounts = ((each.number, each.unit) for each in told.amounts)
    days = told.days
    return frozenset(
        (*amounts, *told.periods, *told.ordinals, *told.hours, *days.dates, *days.years)
    ) | (days.feasts | days.weekdays)


def _wrong(wanted: Measurable, given: Measurable, ours: Said, theirs: Said) -> list[str]:
    """Return, in words, which of what can be measured is wrong or missing."""
    due, said = wanted.days, given.days
    another_part = ours.parts_of_day and theirs.parts_of_day.isdisjoint(ours.parts_of_day)
    often = given.periods | (frozenset({"week"}) if said.weekdays else frozenset())
    checks = (
        ("how much or how many", not _same_amounts(wanted, given)),
        ("how often", not wanted.periods <= often),
        (
            "on which days",
            due.weekdays != said.weekdays or not wanted.ordinals <= given.ordinals,
        ),
        (
            "at what time of day",
            not _same_hours(wanted, given) or bool(another_part and theirs.parts_of_day),
        ),
        (
            "from or until when",
            due.dates != said.dates or due.feasts != said.feasts or not due.years <= said.years,
        ),
    )
    return [what for what, is_wrong in checks if is_wrong]


def _same_hours(wanted: Measurable, given: Measurable) -> bool:
    return all(any(hour.same(each) for each in given.hours) for hour in wanted.hours)


def _same_amounts(wanted: Measurable, given: Measurable) -> bool:
    left = list(given.amounts)
    for amount in wanted.amounts:
        match = next((each for each in left if amount.same(each)), None)
        if match is not None:
            left.remove(match)
        elif not _one_is_told(amount, given):
            return False
    return not any(
        each.number != 1 and not any(each.same(amount) for amount in wanted.amounts)
        for each in left
    )


def _one_is_told(amount: Amount, given: Measurable) -> bool:
    """Tell whether one of a thing is told without a number: "a page", "the letter"."""
    if amount.number != 1:
        return False
    if not amount.things:
        return amount.unit == ""
    return not _words_of(given.left).isdisjoint(amount.things)


def _words_of(line: str) -> frozenset[str]:
    return frozenset(line.split())


def alike_in(text: str, other: str) -> tuple[Span, ...]:
    """Return the content words of a text, found in another or not."""
    words = Attempted(other)
    return tuple(
        Span(token.start, token.end, words.holds(text[token.start : token.end]))
        for token in content_words(text)
    )


def found_in(text: str, other: str) -> tuple[Span, ...]:
    """Return the stretches of a text that are in another, neighbours joined."""
    spans: list[Span] = []
    before = False
    for span in alike_in(text, other):
        if span.hit and before:
            spans[-1] = Span(spans[-1].start, span.end, hit=True)
        elif span.hit:
            spans.append(span)
        before = span.hit
    return tuple(spans)
