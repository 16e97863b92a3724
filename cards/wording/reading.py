"""What each reader takes from the words of a commitment, before it is put together."""

import re
from dataclasses import dataclass, replace
from datetime import date

from cards.commitments.measure import Period
from cards.wording.bare_days import take_days, take_next_times
from cards.wording.cadence import Cadence, named_days
from cards.wording.cadences import take_cadence
from cards.wording.cues import Cue, Tie
from cards.wording.deeds import count_of, take_meetings, take_times
from cards.wording.durations import take_clock, take_minutes
from cards.wording.lengths import Term
from cards.wording.line import GAP, Line, line_of, words
from cards.wording.parts_of_day import hours_named
from cards.wording.situations import cadence_of_clause
from cards.wording.terms import take_length

_VAGUE = words(
    r"(?:every|once in a|each|1 in a) (?:so often|now and (?:then|again)|while"
    r"|blue moon|chance(?: (?:i|we) get)?|opportunity|way|bit|possible \w+|time"
    r"|aspect|inch|moment|word|step|reason|thing|1 of (?:us|them|you))"
    r"|from time to time|now and (?:then|again)|1 of these days|1 day(?= ?[.]|$)|some ?day|as "
    r"(?:often|much|soon|many|well) as (?:possible|i can|we can)|at the end of "
    r"the day|in the long run|once more|every (?:person|guest|child|student"
    r"|patient|page|book|chapter|customer|meeting|lesson|letter|conversation"
    r"|pupil|visitor|member|call|email|message|decision|argument|purchase|shift"
    r"|class|1|room|stranger|neighbour|beggar)"
    r"|day to day|day in day out|the other day|these days|all day|any day|1 step "
    r"at|day 's work|(?:good|rainy|bad|new|busy|working) day"
    r"|1 by 1|in 1 (?:go|sitting)|for (?:a|1) (?:moment|while|bit|second|change)"
    r"|the 1 |1 who|1 's|more than once|at least"
)
_EACH_OCCASION = words(
    r"(?:at|after|before|in|during|on) (?:the (?:end|start|beginning|close) of )?(?:each|every)"
    r" (?:shift|meeting|lesson|class|conversation|visit|session|rehearsal|voyage|journey|trip"
    r"|call|round|service|concert|match|game|chapter)"
)
_SITUATED = re.compile(
    r"(?<!\S)(?:when|whenever|if|as soon as|each time|every time|while) [^,;:~]*"
)
_LEFT_UNDONE = (
    r"(?:not|never|no longer|stop|quit|refrain|abstain|give up|avoid|cease|go "
    r"without|do without|forgo|forego|keep off"
    r"|stay off)"
)
_NEGATIVE_HEAD = re.compile(
    r"^(?:[~.,;:]\s|(?:for|until|on|in|at|by|every|each|from|this|i|we|will|shall|do|am|going|to"
    rf"|please|~)\s)*(?:{_LEFT_UNDONE}|no|nothing)(?!\S)"
)
_ENDING = re.compile(r"(?<!\S)(?:stop|quit|give up|cease)(?!\S)")
_NEGATIVE_CLAUSE = re.compile(
    rf"(?<!\S)(?:i|we) (?:will|shall|am going to) {_LEFT_UNDONE}(?!\S)"
    r"|[,~:] (?:do not|never|no|stop|avoid) "
)
_NEXT_SPANS = re.compile(
    r"next \d+ (?:\S+ )?(?:day|night|evening|morning|afternoon|week|weekend|weekday|month"
    r"|quarter|year|time|minute|hour|lunchtime|\S+day)s?(?!\S)"
)
_PART_OF_DAY = re.compile(
    r"(?<!\S)(?:in the (?:morning|evening|afternoon)|at night|1th thing|last thing|of an evening"
    r"|before bed)(?!\S)"
)


@dataclass(frozen=True, slots=True)
class Said:
    """What was read of a commitment, each by the reader of its subject.

    Attributes:
        negative: whether something is to be left undone.
        ending: whether it is an end put to something, which by a day is done once.
        event: whether it is tied to what may or may not happen.
        habit: whether it is tied to what happens every day.
        clock: whether it names a time of the clock or a part of the day.
        occasions: "the next three times", "at the next two meetings"; or None.
        minutes: how long a deed lasts, or None.
        term: its length and end.
        cadence: how often, or None.
        times: "twice", "three times"; or None.
        hours: how many times of the clock it names side by side, 1 when it does not.
        days: its bare dates: first and last day, and whether it is a weekday.
        count: how many things the deed is done to, or None.
    """

    negative: bool
    ending: bool
    event: bool
    habit: bool
    clock: bool
    occasions: int | None
    minutes: int | None
    term: Term
    cadence: Cadence | None
    times: int | None
    hours: int
    days: list[tuple[date, date, bool]]
    count: int | None

    @property
    def open_ended(self) -> bool:
        """Whether neither a day nor a length is named."""
        return not self.days and self.term.deadline is None and self.term.count is None


def read(text: str, on: date, cue: Cue | None, *, act: bool) -> Said:
    """Let each reader take its own from the line; the order keeps one from another's words."""
    line = Line(text)
    negative = act and _negative(line)
    ending = _ENDING.search(line.whole) is not None
    event = cue is not None and cue.tie is Tie.EVENT
    situated, dated = cadence_of_clause(cue.words, on) if cue and event else (None, [])
    next_times = take_next_times(line)
    if cue is not None and event:
        line.forget(line_of(cue.words))
    event = event or _EACH_OCCASION.search(line.left) is not None
    line.left = _VAGUE.sub(GAP, line.left)
    hours = hours_named(line)
    clock = take_clock(line)
    occasions = next_times or _meetings(line)
    minutes = take_minutes(line)
    term = take_length(line, on)
    if event:
        _forget_what_follows(term, on)
    cadence = take_cadence(line) or situated
    if cue is not None and cue.tie is not Tie.TIME and cadence is not None:
        cadence = _on_its_day(cadence, cue)
    return Said(
        negative=negative,
        ending=ending,
        event=event,
        habit=cue is not None and cue.tie is Tie.HABIT,
        clock=clock or _PART_OF_DAY.search(line.left) is not None,
        occasions=occasions,
        minutes=minutes,
        term=term,
        cadence=cadence,
        times=cadence.times if cadence is not None else take_times(line),
        hours=hours,
        days=take_days(line, on) or dated,
        count=count_of(line, cadenced=cadence is not None),
    )


def _on_its_day(cadence: Cadence, cue: Cue) -> Cadence:
    """Add to a weekly cadence the weekday its occasion has: "at the Friday meeting"."""
    days = named_days(line_of(cue.words))
    if cadence.period is not Period.WEEK or cadence.on or len(days) != 1:
        return cadence
    return replace(cadence, on=days, times=cadence.times or 1)


def _forget_what_follows(term: Term, on: date) -> None:
    """Drop an end counted from an event that may never come: "within two days", "that day"."""
    if term.loose:
        term.count, term.unit, term.loose = None, "", False
    if term.deadline == on:
        term.deadline, term.bound = None, None


def _meetings(line: Line) -> int | None:
    """Take "at the next two meetings", unless the two are days, evenings or weeks."""
    return None if _NEXT_SPANS.search(line.left) else take_meetings(line)


def _negative(line: Line) -> bool:
    """Tell whether the deed is something left undone."""
    left = _SITUATED.sub(GAP, line.whole)
    return _NEGATIVE_HEAD.search(left) is not None or _NEGATIVE_CLAUSE.search(left) is not None
