"""How many deeds: "two letters", "ask three people"; not the traits of one, "ten pages"."""

from cards.wording.line import Line, words

_TRAITS = frozenset(
    """line lines page pages word words sentence sentences verse verses stanza stanzas paragraph
    paragraphs syllable syllables mile miles kilometre kilometres kilometer kilometers km metre
    metres meter meters step steps lap laps length lengths yard yards foot feet inch
    breath breaths push ups pushups press pressups repetition repetitions reps sit squats squat set
    sets minute minutes hour hours second seconds percent per cent degree degrees pound pounds
    euro euros dollar dollars penny pence kilo kilos gram grams ounce ounces litre litres
    point points thing things reason reasons idea ideas thought thoughts fact facts detail
    details item items blessing blessings example examples argument arguments part half side
    sides row rows bar bars scale scales song's column columns day days week weeks month months
    year years night nights evening evenings morning mornings time times way ways more less
    of least most  side piece bit moment eye hand""".split()
)
"""What is measured in a deed and is not a deed of its own. Common practice, no published
source; "one line" is the example every adviser on such wording gives."""
_NOT_BEFORE = frozenset(
    """for with of in at than about from on under over after before within until by into as among
    between my our his her their your these those the first last chapter chapters page pages p
    pp book books acts parts verses lectures essays lessons act part psalm number no canto
    hymn section line lines step through like versus plus onto past around against its whose
    not all class room form
    grade week day point note step track exercise""".split()
)
_OWNERS = frozenset("the my our these his her their".split())
_SETS = _OWNERS | {"those"}
_LEADING = frozenset("to each every".split())
_PHRASAL = frozenset(
    """knock hand send turn bring put fill invite pay call give have pass take try move
    carry win""".split()
)
_MEETING = frozenset("meet talk speak chat lunch coffee".split())
"""What is done with two people is done twice, as asking two people is."""
_MEETINGS = words(
    r"(?:at|in|during|on|after|before)?(?: )?(?:each of |every 1 of )?(?:the|my"
    r"|our) (?:next|coming|following) (?P<n>\d{1,2})(?: [^\W\d_]+(?: ')?)? "
    r"(?P<noun>[^\W\d_]+s)"
)
_TIMES = words(
    r"(?:on )?(?P<n>\d{1,3}) (?:more |different |separate )?"
    r"(?:times|occasions|days|evenings|mornings|afternoons|nights|lunchtimes)|"
    r"(?P<once>(?:only |just |at "
    r"least )?once)(?! (?:i|we|you|he|she|they|it|the|my|a|there|this|that)"
    r"(?!\S))"
)


def take_times(line: Line) -> int | None:
    """Take "three times", "once" from a line; None without."""
    found = line.take(_TIMES)
    return None if found is None else max(1, int(found["n"] or 1))


def take_meetings(line: Line) -> int | None:
    """Take "at each of the next two meetings" from a line; None without."""
    found = line.take(_MEETINGS)
    return None if found is None else max(1, int(found["n"]))


def count_of(line: Line, *, cadenced: bool) -> int | None:
    """Return how many deeds what is left of a line counts, or None when it counts none.

    The number stands before what the deed is done to, not after "for" or "with", nor before
    a unit of length, time or text: "cook for two friends" and "read ten pages" are one deed.
    A known set counts in a one-off, "return the three books", and is one deed where a cadence
    is named, "walk the two dogs each morning".
    """
    found_words = line.left.split()
    for at, word in enumerate(found_words):
        if not word.isdigit() or not 1 <= int(word) <= 999:
            continue
        before = found_words[at - 1] if at else ""
        earlier = found_words[at - 2] if at > 1 else ""
        phrasal = (before in {"in", "on", "over"} and earlier in _PHRASAL) or (
            before == "with" and earlier in _MEETING
        )
        each = before in _OWNERS and found_words[max(0, at - 3) : at - 1] == ["each", "of"]
        if not (cadenced or each) and before in _SETS and earlier not in _LEADING:
            before, earlier = earlier, found_words[at - 3] if at > 2 else ""
            phrasal = before in {"in", "on", "over"} and earlier in _PHRASAL
        each = each and "1" not in found_words[:at]  # "one kind word to each" counts the word
        if (before in _NOT_BEFORE and not phrasal and not each) or (
            before == "to" and at and _length(found_words[at + 1 :])
        ):
            continue
        noun = _noun(found_words[at + 1 : at + 4])
        if noun is not None:
            return int(word)
    return None


_JOINING = frozenset(
    """. , ; : ! ? ( ) ~ a an the and or but to for with in on at by from my his her our their
    when before after until who whom that which i we about without of""".split()
)


def _length(following: list[str]) -> bool:
    return bool(following) and following[0] in _TRAITS


def _noun(following: list[str]) -> str | None:
    """Return the noun a number counts, or None when it counts a trait or nothing."""
    phrase: list[str] = []
    for word in following:
        if word == "of" and not phrase:
            return "of"
        if word in _JOINING or word.isdigit() or word == "'s":
            break
        phrase.append(word)
    if not phrase or any(word in _TRAITS for word in phrase[:3]):
        return None
    return phrase[-1]
