"""Words that turn a sentence round when one stands for the other."""

from collections.abc import Iterable
from functools import lru_cache

from cards.kinds.words import NEGATIONS, stems

_CONTRACTED = frozenset(
    """dont doesnt didnt isnt arent wasnt werent hasnt havent hadnt cant couldnt shouldnt
    wouldnt wont shant mustnt neednt mightnt""".split()
)
"""Negations as folding leaves them, without an apostrophe."""
_PREFIXES = ("un", "in", "im", "il", "ir", "dis", "non", "mis", "dys", "a")
_ROOT = 3
_PAIRS = """all/none always/never always/seldom often/seldom often/rarely more/less most/least
    many/few every/no everything/nothing everybody/nobody everyone/nobody good/bad
    good/evil better/worse best/worst right/wrong true/false truth/lie love/hate
    love/hatred rich/poor wealth/poverty strong/weak strength/weakness life/death live/die
    birth/death war/peace friend/enemy friend/foe virtue/vice wise/foolish wisdom/folly
    happy/unhappy happy/miserable happiness/misery hope/despair joy/sorrow light/dark
    light/darkness day/night first/last begin/end beginning/end before/after with/without
    up/down high/low above/below rise/fall open/shut open/closed win/lose victory/defeat
    begin/finish give/take buy/sell near/far early/late young/old new/old hot/cold
    fast/slow quick/slow easy/hard easy/difficult great/small big/small large/small
    long/short heaven/hell praise/blame reward/punish remember/forget accept/refuse
    accept/reject allow/forbid freedom/slavery free/slave master/servant pride/humility
    proud/humble brave/cowardly courage/cowardice guilty/innocent saint/sinner
    success/failure succeed/fail increase/decrease gain/loss full/empty same/different
    man/woman husband/wife agree/refuse keep/break build/destroy create/destroy save/waste
    safe/dangerous public/private present/absent sooner/later inside/outside north/south
    east/west left/right live/death""".split()
"""Everyday pairs of contraries, of our own choosing; there are more than any list holds."""


def opposed(ours: Iterable[str], theirs: Iterable[str]) -> bool:
    """Tell whether words in error on either side turn the sense round.

    A negation put in or left out does, a word against its contrary, and one with a negative
    prefix against the same without.

    Args:
        ours: words of the text that were not given, folded.
        theirs: words that were given in their place, folded.
    """
    mine, other = frozenset(ours), frozenset(theirs)
    if not (mine | other).isdisjoint(NEGATIONS | _CONTRACTED):
        return True
    if _prefixed(mine, other) or _prefixed(other, mine):
        return True
    contraries = _contraries()
    given = {_stem(word) for word in other}
    return any(not contraries.get(_stem(word), frozenset()).isdisjoint(given) for word in mine)


def _prefixed(ones: frozenset[str], others: frozenset[str]) -> bool:
    return any(
        f"{prefix}{one}" in others for one in ones if len(one) >= _ROOT for prefix in _PREFIXES
    )


def _stem(word: str) -> str:
    return next(iter(stems(word)), word)


@lru_cache(maxsize=1)
def _contraries() -> dict[str, frozenset[str]]:
    found: dict[str, frozenset[str]] = {}
    for pair in _PAIRS:
        one, other = map(_stem, pair.split("/"))
        found[one] = found.get(one, frozenset()) | {other}
        found[other] = found.get(other, frozenset()) | {one}
    return found
