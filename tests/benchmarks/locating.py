"""Locating a badly copied quotation in *Moby-Dick* against rapidfuzz's own alignment of the pair.

The other way takes the same folded texts, so that it is spared all but the search itself, and
returns two offsets; ours also says chapter, share of the book, context and every slip.
"""

import random
from itertools import cycle

from rapidfuzz.fuzz import partial_ratio_alignment

from cards.proving import locate
from cards.proving.folding import fold
from tests.benchmarks.paired import Ratio, paired
from tests.reference.books import book, folded

LIMIT = 2.0
TITLE = "mobydick"
QUOTATIONS = 24
WORDS = (8, 60)
WRONG = 20
"""One character in so many is another."""


def quotations() -> list[str]:
    """Return stretches of the novel of 8 to 60 words, one character in twenty wrong."""
    chance = random.Random(1851)
    text = book(TITLE).text
    made = []
    for _ in range(QUOTATIONS):
        start = text.index(" ", chance.randrange(5000, len(text) - 5000)) + 1
        words = " ".join(text[start : start + 2000].split()[: chance.randint(*WORDS)])
        made.append("".join("x" if chance.randrange(WRONG) == 0 else letter for letter in words))
    return made


def measure(rounds: int = 48) -> Ratio:
    """Measure one quotation of several in turn, either way, in 1.2 million characters."""
    whole = folded(TITLE)
    made = quotations()
    ours, theirs = cycle(made), cycle([fold(each).text.strip() for each in made])

    def aligned() -> object:
        return partial_ratio_alignment(next(theirs), whole.folded.text)

    def located() -> object:
        found = locate(next(ours), whole)
        if found is None:
            raise RuntimeError("A quotation was not found.")
        return found

    return paired(located, aligned, rounds, warm=4)
