"""Whether a commitment says to whom, to what, where or when."""

import re

from cards.wording.concreteness import act_of
from cards.wording.cues import Cue
from cards.wording.line import line_of, plain
from cards.wording.spans import DAYS, MONTHS
from cards.wording.verbs import FILLERS, INTRANSITIVE, VAGUE_OBJECTS

_CLOCK = re.compile(
    r"(?<!\S)(?:@|\d{1,2} oclock|(?:at|by|before|after|until) (?:\d{1,2}|noon"
    r"|midnight|midday|sunrise|sunset|dawn|dusk)(?= (?:each|every|in|at|on|,|\.)"
    r"|$))(?!\S)"
)
_NAME = re.compile(r"(?<![.!?:\"“(] )(?<!^)(?<!^[\"“(])\b[A-Z][^\W\d_]+")
_NOT_NAMES = frozenset(
    """i monday tuesday wednesday thursday friday saturday sunday january february march
    april may june july august september october november december""".split()
)
_PLACE = re.compile(
    r"(?<!\S)(?:in|at|to|on|from|into|outside|inside|by|beside|near|under|around"
    r"|round|through) (?:the|my|our|a|an|his|her|their) (?!world|way|moment"
    r"|future|same|end|least|first|1th|day|week|month|year|next|last|better|good"
    r"|lot|more|long|morning|evening|night|rest|course|whole|habit|time|minute"
    r"|half)[^\W\d_]+"
    r"|(?<!\S)(?:at home|at work|to (?:work|school|church|town|market)"
    r"|at school|at church|in bed|outdoors|outside"
    r"|upstairs|indoors|by post|in town|at table|aloud|online)(?!\S)"
)
_OWNED = re.compile(
    r"(?<!\S)(?:my|our|his|her|their|your|[^\W\d_]+ 's) (?:own )?(?!best|own"
    r"|life|self|time|mind|day|days|heart|attitude|temper|habits|character"
    r"|thinking|patience|thoughts|feelings|emotions|ways|mistakes|failures|goals|goal|aim|rule|plan|intention|resolution"
    r"|promise|commitment|task|practice|dreams|potential|health|fitness"
    r"|wellbeing|well|inner|soul|spirit|behaviour|conduct|ego|fears|worries"
    r"|anger|relationships|priorities|values|goals|happiness|assumptions"
    r"|prejudices|beliefs|faith|weaknesses|strengths|horizons|knowledge"
    r"|self)[^\W\d_]+"
)
_GOOD_TURN = re.compile(
    r"(?<!\S)(?:what (?:i|we) can|(?:good|kind|nice|generous|new|unselfish|helpful|useful|creative"
    r"|brave|loving) (?:deed|turn|thing|act|action|work)s?)(?!\S)"
)
_TOWARDS = re.compile(
    r"(?<!\S)(?:with|to|towards|toward) the (?!world|people|others|fact|best"
    r"|future|moment|present|full|way|things?|idea|point|universe|poor|weak"
    r"|same)[^\W\d_]+"
)
_TO_SOME = re.compile(
    r"(?<!\S)(?:with|to|towards|toward) (?!others|strangers|things|humans|lots|goals|acts|works"
    r"|deeds|times|this|us|changes|emotions|feelings|setbacks|problems|difficulties)"
    r"(?:[^\W\d_]{2,}[^s\W\d_]s|children|men|women)(?!\S)"
)
"""Towards a sort of people or beasts: "with clerks", "to children"."""
_TO_THE = re.compile(
    r"(?<!\S)(?:trust|respect|forgive|honou?r|appreciate|remember|value) the (?!world|people"
    r"|moment|truth|process|journey|little|small|present|past|future|universe|best|good|things?"
    r"|fact|way|same|importance|power|value|beauty)[^\W\d_]+"
)
_AT_HOME = re.compile(r"(?<!\S)(?<!feel )at (?:home|school|church|table|court|sea|market)(?!\S)")
_DEGREE = re.compile(r"(?<!\S)(?:more|less|fewer|cut (?:down|back) on)(?! than)(?!\S)")
_DETERMINED = re.compile(r"(?<!\S)(?:the|this|that|these|those) (?:\S+ )?[^\W\d_]{3,}")
_MUCH = re.compile(
    r"(?<!\S)\d+ (?:\S+ )?(?:pages?|lines?|words?|verses?|miles?|kilometres?|km"
    r"|steps|laps|lengths|minutes?|hours?|chapters?|poems?)(?!\S)|half an hour"
    r"|an hour"
)


def is_specific(text: str, cue: Cue | None, *, minutes: bool, concrete: bool) -> bool:
    """Tell whether the words say to whom, to what, where or when.

    "Someone", "people" and "something" name nobody and nothing; a cadence ("every day")
    tells how often, not when; more of a thing in general ("more poetry") is none of it. An
    act that is whole by itself ("walk", "meditate") needs only its length.

    Args:
        text: the commitment.
        cue: the situation it is tied to.
        minutes: whether it says how long.
        concrete: whether it is an act; a state of mind needs somebody or something named.
    """
    if cue is not None:
        return True
    line = line_of(text)
    if not concrete:
        towards = (_TOWARDS, _TO_SOME, _TO_THE, _AT_HOME)
        return _named(text, line) or any(pattern.search(line) for pattern in towards)
    if _CLOCK.search(line) or _PLACE.search(line) or _named(text, line):
        return True
    verb = act_of(text, measured=True).verb or ""
    if verb in INTRANSITIVE and (minutes or _MUCH.search(line)):
        return True
    if _DEGREE.search(line) and not _DETERMINED.search(line):
        return False
    return bool(_objects(line, verb))


def _named(text: str, line: str) -> bool:
    """Tell whether somebody or something is named, or said to be somebody's."""
    if _OWNED.search(line):
        return True
    return any(name.casefold() not in _NOT_NAMES for name in _NAME.findall(plain(text)))


def _objects(line: str, verb: str) -> list[str]:
    """Return what is left when fillers, vague words, numbers, dates and the verb are gone."""
    line = _GOOD_TURN.sub(" ", line)
    gone = FILLERS | VAGUE_OBJECTS | set(DAYS) | set(MONTHS) | {verb, verb + "ing", verb + "s"}
    return [
        word
        for word in line.split()
        if word not in gone
        and not word[0].isdigit()
        and not word.startswith("=")
        and word not in _ABSTRACT_AIMS
        and not word.endswith(("ly", "ness", "ful"))
    ]


_ABSTRACT_AIMS = frozenset(
    """patient kind grateful honest generous brave courageous humble thankful present
    mindful calm open attentive tolerant thoughtful considerate positive productive
    happy healthy healthier loving forgiving disciplined organised organized become
    feel think remember appreciate improve develop cultivate practise practice
    patience courage gratitude compassion humility wisdom honesty listen person human
    friend being husband wife father mother reader listener start stop begin keep make
    sure want should would like hope aim strive effort best live fully moment joy
    happiness end weekend quarter fortnight until minutes hours minute hour morning
    tomorrow today tonight nothing always habit learn spend give get take help quiet
    active fit stay grow work responsibly responsible ambitious read selfish angry
    worry care mind judge judgemental judgmental trust respect myself yourself else
    whenever can possible important matters serious simple simplify balanced balance
    life lives quality regular think creative""".split()
)
