"""The graded answers' own digests, turned round word by word, are never marked above hazy.

Source of the digests: `tests/corpus_of_answers/`. That what says the opposite is never more
than hazy is what the sitting was asked to meet; the pairs of contraries below are everyday
English, chosen apart from those the marking knows.
"""

import re

import pytest

from tests.reference.graded_answers import CORPUS, entries, suggested

CONTRARIES = dict(
    pair.split("/")
    for pair in """always/never never/always good/bad true/false false/true rich/poor poor/rich
    love/hate life/death live/die survive/perish strong/weak weak/strong near/far far/near
    best/worst dead/living enemy/friend friend/enemy cruel/kind kind/cruel gentle/harsh harsh/gentle
    without/with free/bound proud/humble alone/together public/private useful/useless wins/loses
    marries/jilts stay/leave leaves/joins loves/hates hatred/love pride/humility honest/dishonest
    just/unjust equal/unequal happy/unhappy wrong/right begins/ends lost/found""".split()
)
_FEWEST = 40


def sources(kind):
    """Return the words of every digest of a kind in the corpus, each once."""
    return list(dict.fromkeys(entry["source"] for entry in entries(CORPUS, kind)))


def better_than_hazy(kind, source, said):
    """Tell whether what is said of some words of a digest is marked clear or vivid."""
    entry = {"source": source, "before": "It begins.", "answer": said}
    return suggested(kind, entry) not in {"blank", "hazy"}


def test_a_contrary_in_the_digests_own_words_is_never_above_hazy():
    """One word of two pages, and every other as it stands."""
    turned = [
        (kind, source, re.sub(rf"\b{word}\b", contrary, source, count=1))
        for kind in ("theme", "next")
        for source in sources(kind)
        for word, contrary in CONTRARIES.items()
        if re.search(rf"\b{word}\b", source) and not re.search(rf"\b{contrary}\b", source)
    ]
    assert len(turned) >= _FEWEST
    assert [said for kind, source, said in turned if better_than_hazy(kind, source, said)] == []


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Raffles", "Bulstrode"),
        ("Bitzer", "Gradgrind"),
        ("Margaret", "Thornton"),
        ("crew", "Starbuck"),
        ("father", "son"),
    ],
)
def test_two_who_change_places_are_never_above_hazy(one, other):
    """Whoever does it and to whom it is done, and every other word as it stands."""
    source = next(text for text in sources("next") if one in text and other in text)
    said = source.replace(one, "…").replace(other, one).replace("…", other)
    assert not better_than_hazy("next", source, said)
