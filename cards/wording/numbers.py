"""Numbers in words: "twenty-five", "a dozen", "the third", as digits in the line.

English, up to 999: a commitment that counts further counts in figures.
"""

_UNITS = dict(
    zip(
        "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen "
        "fifteen sixteen seventeen eighteen nineteen".split(),
        range(20),
        strict=True,
    )
)
_TENS = dict(
    zip(
        "twenty thirty forty fifty sixty seventy eighty ninety".split(),
        range(20, 100, 10),
        strict=True,
    )
) | {"fourty": 40}
_ORDINALS = {
    "first": 1,
    "second": 2,
    "third": 3,
    "fourth": 4,
    "fifth": 5,
    "sixth": 6,
    "seventh": 7,
    "eighth": 8,
    "ninth": 9,
    "tenth": 10,
    "eleventh": 11,
    "twelfth": 12,
    "thirteenth": 13,
    "fourteenth": 14,
    "fifteenth": 15,
    "sixteenth": 16,
    "seventeenth": 17,
    "eighteenth": 18,
    "nineteenth": 19,
    "twentieth": 20,
    "thirtieth": 30,
}
_ARTICLES = frozenset({"a", "an"})


def in_figures(words: list[str]) -> list[str]:
    """Return the words with every number in words turned to figures; ordinals end in "th".

    "a dozen letters" gives "12 letters", "half a dozen" gives "6", "a couple of" gives
    "2", "the twenty-first" (in two words) gives "the 21th".
    """
    said: list[str] = []
    at = 0
    while at < len(words):
        number, used = _number(words, at)
        if used:
            said.append(number)
        else:
            said.append(words[at])
            used = 1
        at += used
    return said


def _number(words: list[str], at: int) -> tuple[str, int]:
    """Return the number that begins at a word, and how many words it takes; 0 for none."""
    several = _several(words, at)
    if several[1]:
        return several
    value, used = _hundreds(words, at)
    after = _word(words, at + used)
    if after in _ORDINALS and _ORDINALS[after] < 10 and used and value % 10 == 0 and value:
        return f"{value + _ORDINALS[after]}th", used + 1
    if used:
        return (str(value * 12), used + 1) if after == "dozen" else (str(value), used)
    word = words[at]
    before = _word(words, at - 1)
    counted = before.isdigit() or before in _UNITS or before in _TENS
    if word in _ORDINALS and not (word == "second" and counted):
        return f"{_ORDINALS[word]}th", 1
    return "", 0


def _several(words: list[str], at: int) -> tuple[str, int]:
    """Read "a dozen", "half a dozen", "a score of", "a couple of"."""
    here, then, last = (_word(words, at + step) for step in range(3))
    if here == "half" and then in _ARTICLES and last == "dozen":
        return "6", 3
    lead = 1 if here in _ARTICLES else 0
    noun = _word(words, at + lead)
    if noun == "dozen" and lead:
        return "12", 2
    if noun == "score" and lead and _word(words, at + 2) == "of":
        return "20", 3
    if noun == "couple" and (lead or _word(words, at + 1) == "of"):
        used = lead + 1
        return "2", used + (_word(words, at + used) == "of")
    return "", 0


def _hundreds(words: list[str], at: int) -> tuple[int, int]:
    value, used = _below_hundred(words, at)
    if not used and words[at] in _ARTICLES and _word(words, at + 1) == "hundred":
        value, used = 1, 1
    if not used or _word(words, at + used) != "hundred":
        return value, used
    value, used = value * 100, used + 1
    skip = 1 if _word(words, at + used) == "and" else 0
    rest, more = _below_hundred(words, at + used + skip)
    return (value + rest, used + skip + more) if more else (value, used)


def _below_hundred(words: list[str], at: int) -> tuple[int, int]:
    word = _word(words, at)
    if word in _UNITS:
        return _UNITS[word], 1
    if word not in _TENS:
        return 0, 0
    unit = _UNITS.get(_word(words, at + 1), 0)
    return (_TENS[word] + unit, 2) if 0 < unit < 10 else (_TENS[word], 1)


def _word(words: list[str], at: int) -> str:
    return words[at] if 0 <= at < len(words) else ""
