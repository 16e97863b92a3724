"""Which way a document's language writes its dates, told by its commonest words."""

from collections import Counter
from collections.abc import Iterable

from cards.intake.wording import folded

MAX_WORDS = 4_000
"""Words looked at: twice a digest's."""
_ENGLISH = frozenset("the and of to is that his he her who they with was are it for not".split())
_OTHERS = frozenset(
    "der die das und ist nicht ein eine mit sich zu den von "
    "le la les des est et une dans qui que il elle du pas "
    "el los las del y con por una para no se su "
    "il lo gli di che non per sono della e un "
    "os as da do em um uma com nao dos ao "
    "het een van en niet zijn op ik hij wat".split()
)
"""Articles, joints and auxiliaries of German, French, Spanish, Italian, Portuguese, Dutch."""


def writes_day_first(texts: Iterable[str]) -> bool:
    """Tell whether texts are in a language that always writes the day before the month.

    English does so in one country and not in another, and so gives False.
    """
    counts: Counter[str] = Counter()
    for text in texts:
        counts.update(folded(text[:MAX_WORDS]).split())
        if counts.total() > MAX_WORDS:
            break
    english = sum(counts[word] for word in _ENGLISH)
    others = sum(counts[word] for word in _OTHERS)
    return others > english
