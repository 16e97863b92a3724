"""The usual caution where a commitment touches health, medicine, money or the law.

Word lists, erring towards caution: a caution too many costs a line, one too few
could cost a reader dearly. Common practice, no published source.
"""

import re
from enum import StrEnum


class Matter(StrEnum):
    """What a commitment touches that can hurt someone."""

    HEALTH = "health"
    MONEY = "money"
    LAW = "law"


CAUTIONS = {
    Matter.HEALTH: "This touches your health. Talk to a doctor or another professional before you "
    "change anything, and do not stop a treatment on the word of a book.",
    Matter.MONEY: "This touches your money. Talk to a licensed adviser before you commit any you "
    "could not do without.",
    Matter.LAW: "This touches the law. Talk to a lawyer or another licensed adviser before "
    "you act.",
}

# Beginnings of words, so that "medic" meets medicine and medication; "=" marks whole words.
_WORDS = {
    Matter.HEALTH: """=medic medicin medicat medikament médic medisch doctor physician =pill =pills
        =tablet =tablets =dose =doses dosage =drug =drugs insulin antidepress antibiot therap
        psychiat surgery diet =fast =fasts fasting calori weight =kilos vitamin supplement alcohol
        =drink =drinks drinking =wine =beer smok cigaret tobacco nicotine =sleep insomnia blood
        pregnan diabet allerg =pain =pains exercise =run =runs running workout health disease
        illness depress anxiety suicid self-harm
        dentist hospital treatment vaccin =sugar arzt ärzt gesund santé salud saúde salute
        gezondheid""",
    Matter.MONEY: """=money invest =shares =stocks =bonds =fund =funds pension mortgage =loan
        =loans =debt =debts savings insurance =tax =taxes budget salary =wage =wages crypto gambl
        =bet =bets betting =bank =pounds =dollars =euros donat € £ $ =geld =argent =dinero
        =dinheiro =denaro
        =income =credit borrow =lend =lending""",
    Matter.LAW: """lawyer lawsuit solicitor attorney =sue =sues =suing =court divorce custody
        contract inherit probate tenan evict landlord =visa immigra =licence =license
        trademark copyright =police =legal =illegal =lease rechtsanwalt avocat
        abogad advogad avvocat""",
}


def _pattern(words: str) -> re.Pattern[str]:
    whole: list[str] = []
    begun: list[str] = []
    for word in words.split():
        (whole if "=" in word else begun).append(re.escape(word.strip("=")))
    return re.compile(
        rf"(?<!\w)(?:(?:{'|'.join(whole)})(?!\w)|(?:{'|'.join(begun)}))", re.IGNORECASE
    )


# "I will" is how commitments are worded; only "my will", "a will" is the document, and a
# testament is one unless it is the New or the Old.
_LAST_WILL = re.compile(
    r"(?<!\w)(?:(?:my|a|the|his|her|their|last) will(?!\w)|(?<!new )(?<!old )testament)",
    re.IGNORECASE,
)
_PATTERNS = {matter: _pattern(words) for matter, words in _WORDS.items()}


def matters(text: str) -> tuple[Matter, ...]:
    """Return what a text touches that can hurt someone, in a fixed order."""
    return tuple(
        matter
        for matter, pattern in _PATTERNS.items()
        if pattern.search(text) or (matter is Matter.LAW and _LAST_WILL.search(text))
    )


def caution(text: str) -> str | None:
    """Return the caution a commitment carries wherever it is shown, or None."""
    found = matters(text)
    return " ".join(CAUTIONS[matter] for matter in found) if found else None
