"""The situation a commitment is tied to: "when the bell rings", "after breakfast"."""

import re
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from cards.wording.dates import day_or_span
from cards.wording.line import line_of, plain


class Tie(StrEnum):
    """What a cue ties the deed to."""

    HABIT = "habit"
    EVENT = "event"
    TIME = "time"


@dataclass(frozen=True, slots=True)
class Cue:
    """The words of the situation.

    Attributes:
        words: as the reader wrote them, without the comma after them.
        tie: `habit` for what happens every day without fail (waking, breakfast), so that
            it makes a daily cadence of its own; `event` for what may or may not happen;
            `time` for a part of the day or week.
        start: where the words begin in the plain text.
        end: where they end.
    """

    words: str
    tie: Tie
    start: int
    end: int


_ANY_DAY = date(2001, 1, 1)
_CLAUSE = (
    r"(?:when(?:ever)?|if|as soon as|each time|every time|any time|the next time"
    r"|the moment|while|whilst|in case|once (?=I |we |the |my ))"
)
_FRONTED = (
    r"the (?:council|board|court|judge|bench|magistrates?|committee|class|congregation|mirror|altar"
    r"|public|whole|others|rest)\b"
)
"""Whom or what one stands before, which is no time."""
_LEADING_CLAUSE = re.compile(
    rf"(?:^|(?<=[.;,:] )|(?<=\band ))(?P<cue>(?:{_CLAUSE}|(?:before|after) (?=I "
    r"|we |the |my |he |she |they |any |each |every |a |an |[A-Z]|\w+ing "
    rf"))\b[^,;:]{{2,160}}?)(?:,|(?= then I\b)|(?= I(?: will|'ll| shall)\b))",
    re.IGNORECASE,
)
_TRAILING_CLAUSE = re.compile(
    rf"(?<!\bas)\s(?P<cue>(?:{_CLAUSE}|before (?!{_FRONTED})(?=I |we |the |my "
    r"|he |she |they |any|going "
    r"|leaving |starting |opening |speaking |answering |replying |deciding "
    r"|buying |eating |sleeping )|after (?=I |we |the |my |each |every |any "
    rf"|finishing |reading |coming ))\b[^,;:.]{{2,160}}?)\s*(?=[.,;:!]|$)",
    re.IGNORECASE,
)
_PHRASE = re.compile(
    r"(?<!\w)(?P<cue>(?:right |just |immediately |directly |first thing "
    r"|straight )?(?:after|before|at|over|during|on|upon|with|in|by)"
    r" (?:(?:the|my|our|every|each|first|morning|evening|family|an?|Sunday"
    r"|Friday|school|work) ){0,3}"
    r"(?:breakfast|lunch|dinner|supper|tea|teatime|bed|bedtime|waking(?: up)?"
    r"|getting up|rising|coffee|work|prayers?|grace|meals?|mealtimes?|sleep"
    r"|going to bed"
    r"|brushing my teeth|shower|commute|sunrise|sunset|dusk|dawn|lunchtime|lunch "
    r"break|walk home|way (?:to|home|back)[^,;.]{0,40}|train(?: (?:to"
    r"|home)[^,;.]{0,30})?"
    r"|bus(?: (?:to|home)[^,;.]{0,30})?|meeting|meetings|shift|shifts|class"
    r"|lesson|lessons|service|mass|church|assembly))(?!\w)"
    r"|(?<!\w)within [^,;.]{2,30} of (?:waking(?: up)?|getting up|rising|getting "
    r"home|coming home|breakfast|lunch|dinner|supper)(?!\w)|(?<!\w)(?:first "
    r"thing(?: in the morning| each morning| every morning)?|last thing(?: at "
    r"night)?)(?!\w)",
    re.IGNORECASE,
)
_IN_ALL = re.compile(
    r"(?:in|with|on|by) (?:(?:the|my|our|an?|all) )?(?:work|sleep|prayers?"
    r"|school)\b",
    re.IGNORECASE,
)
_DAY = r"(?:Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)days?"
_TIME = re.compile(
    r"(?<!\w)(?P<cue>(?:(?:on|every|each|this|next|in the|at|of a|in) )?(?:"
    r"(?:the )?(?:first|second|third|fourth|last|other|alternate) )?"
    rf"(?:{_DAY}(?:(?:,? (?:and|or|to|through)|,) {_DAY})*(?: (?:mornings?|evenings?|nights?"
    r"|afternoons?|lunchtimes?))?|(?:week(?:day|end)s? )?(?:mornings?|evenings?"
    r"|nights?|afternoons?)|weekdays?|weekends?)"
    r"(?: of (?:each|every|the) month)?)(?!\w)"
    r"|(?<!\w)(?:at|before|after|by) (?:\d{1,2}(?:[:.]\d\d)?(?: ?[ap]\.?m\b)?"
    r"|noon|midnight|midday|one|two|three|four|five|six|seven|eight|nine|ten"
    r"|eleven|twelve)(?: o'clock)?(?=\s*(?:[,.;!]|$| in the | at night| each | "
    r"every | on ))",
    re.IGNORECASE,
)
_ROUTINE = re.compile(
    r"(?<!\S)(?:wakes?|waking|get up|getting up|getting out of bed|get out of "
    r"bed|rise|rising|go to bed|going to bed|going to sleep|fall asleep|go to "
    r"sleep|before bed|in bed|bedtime|before sleep(?:ing)?"
    r"|breakfast|lunch|dinner|supper|meals?|brush(?:ing)? my teeth|shower"
    r"|teatime|lunch break|lunchtime|coffee"
    r"|(?:come|coming|get|getting|arrive|walk|walking|drive|ride) (?:back )?home"
    r"(?: from)?|leave (?:for|home|the house|work)|leaving (?:for|home|the house"
    r"|work)|(?:after|before) work|finish work|start work|(?:to|from) work"
    r"|commute|sit down to (?:work|eat|breakfast|dinner|supper)|first thing|last "
    r"thing|turn(?:ing)? (?:out|off) the light|put out the light|lights out"
    r"|kettle|sunrise|sunset|dusk|dawn|in the morning|in the evening|at night"
    r"|open(?:ing)? my (?:laptop|inbox|mail|email|e mail)|get dressed|way home"
    r"|way to (?:work|school)"
    r"|put(?:ting)? the (?:children|kids|baby) to bed|(?:children|kids) are "
    r"(?:asleep|in bed))(?!\S)"
)
_NOT_ROUTINE = re.compile(
    r"(?<!\S)(?:if|with (?:him|her|friends|[^\W\d_]+ 's)|someone|somebody|anyone"
    r"|invited|invites|cannot|can not|angry|late|next|alone|guests?)(?!\S)"
)


_IS_BARE = re.compile(r"mornings?|evenings?|nights?|afternoons?|weekdays?|weekends?")
_BOUNDS = re.compile(
    r"\b(?:by|before|until|till|from|starting|beginning|than|through|since|last"
    r"|free|keep)(?: the| next| this)? $",
    re.IGNORECASE,
)


def find_cue(text: str) -> Cue | None:
    """Return the situation a commitment names, or None.

    A clause ("when ...") says more than a phrase ("at breakfast"), and that more than a
    part of the day or week.
    """
    said = plain(text)
    for pattern in (_LEADING_CLAUSE, _TRAILING_CLAUSE):
        for found in pattern.finditer(said):
            if _is_date(found["cue"]):
                continue
            return _cue(found, _clause_tie(found["cue"]))
    for found in _PHRASE.finditer(said):
        words = found["cue"] or found[0]
        tie = Tie.HABIT if _ROUTINE.search(line_of(words)) else Tie.EVENT
        if (
            re.match(r"(?:with|in|by|on|at)\b", words, re.IGNORECASE)
            and tie is Tie.EVENT
            and not re.match(r"(?:at|on|in)\b", words, re.IGNORECASE)
        ):
            continue
        if _IN_ALL.match(words):
            continue
        return _cue(found, tie)
    for timed in _TIME.finditer(said):
        if not _IS_BARE.fullmatch(timed[0]) and not _BOUNDS.search(said[: timed.start()]):
            return _cue(timed, Tie.TIME)
    return None


def _is_date(clause: str) -> bool:
    """Tell whether "before ..." names a day ("before the month is out") and no situation."""
    _, _, rest = line_of(clause).partition(" ")
    return day_or_span(rest, _ANY_DAY) is not None


def _cue(found: re.Match[str], tie: Tie) -> Cue:
    group = "cue" if found["cue"] is not None else 0
    words = found[group].strip(" ,")
    return Cue(words, tie, found.start(group), found.start(group) + len(words))


def _clause_tie(words: str) -> Tie:
    line = line_of(words)
    if _ROUTINE.search(line) and not _NOT_ROUTINE.search(line):
        return Tie.HABIT
    return Tie.EVENT
