"""The words of a commitment from its act on, without what leads it in.

"For two weeks, before supper, I will remember to call ..." comes down to "call ...".
"""

import re

from cards.wording.verbs import ACTS, STATES, stem

_WILL = re.compile(
    r"(?<!\S)(?:i|we) (?:will|shall|am going to|are going to|promise to|vow to"
    r"|pledge to|resolve to|undertake to|commit to)(?!\S)"
)
_LEADING = re.compile(
    r"^(?:(?:when|whenever|if|as soon as|before|after|while|on|in|at|by|for|from"
    r"|until|once|every|each|during|over|starting|beginning|within|twice|\d+ "
    r"times|next|this|tomorrow|today|tonight|daily|weekly|monthly|yearly|first "
    r"thing|last thing|with|throughout|upon|as|instead of|rather than|without"
    r"|the|all|between|because|since|to|having|right|wherever|where|monday"
    r"|mondays|tuesday|tuesdays|wednesday|wednesdays|thursday|thursdays|friday"
    r"|fridays|saturday|saturdays|sunday|sundays|weekdays|weekends|weekday"
    r"|weekend|morning|evening|mornings|evenings|alternate|no later than|not "
    r"later than|\d+|come|some|also|therefore|so|and|even|the next|once|starting"
    r"|exactly|lent|advent|\d+th|last)(?!\S)[^,:;]*[,:;] )"
)
_BARE_LEAD = re.compile(
    r"^(?:(?:every|each)(?: other| single| 2th| 3th| second)? (?:day|week|month"
    r"|year|morning|evening|night|afternoon|weekday|weekend|sunday|monday"
    r"|tuesday|wednesday|thursday|friday|saturday|quarter)(?: (?:morning|evening"
    r"|night|afternoon))?"
    r"|on (?:mondays?|tuesdays?|wednesdays?|thursdays?|fridays?|saturdays?"
    r"|sundays?|weekdays|weekends)(?: (?:mornings?|evenings?|nights?"
    r"|afternoons?))?(?: and (?:mondays?|tuesdays?|wednesdays?|thursdays?"
    r"|fridays?|saturdays?|sundays?)(?: (?:mornings?|evenings?|nights?"
    r"|afternoons?))?)?|once a (?:day|week|month|quarter|year)|\d+ times a "
    r"(?:day|week|month|year)|daily|weekly|tomorrow(?: morning| evening)?|today"
    r"|tonight"
    r"|by (?:tomorrow|(?:this |next )?(?:monday|tuesday|wednesday|thursday"
    r"|friday|saturday|sunday))|(?:this|next) (?:week|month|year|weekend|monday"
    r"|tuesday|wednesday|thursday|friday|saturday|sunday)(?: (?:morning|evening"
    r"|afternoon))?|after (?:breakfast|lunch|dinner|supper|work)|before (?:bed"
    r"|breakfast|lunch|dinner|supper|work)|at (?:breakfast|lunch|dinner|supper"
    r"|night|bedtime)|always|please|for \d+ (?:days|weeks|months|evenings)|for a "
    r"(?:week|month|year)|first thing in the morning|in the (?:morning|evening"
    r"|mornings|evenings|afternoon)|(?!reply|apply|comply|supply|rely|fly"
    r"|multiply|assembly|family|july)[a-z]{3,}ly|sometimes|often|now and then)[ "
    r",]+"
)
_WRAPPERS = re.compile(
    r"^(?:(?:remember|begin|start|continue|make sure|be sure|take the time|take "
    r"time|make time|find time|set aside time|make it a (?:habit|rule|practice)"
    r"|make a (?:habit|point|practice)|get into the habit|take care|take the "
    r"trouble|see to it|not forget|do not forget|go|sit down|stop|give up|leave "
    r"off|go on|keep|keep on|avoid|refrain from|quit|allow myself|let myself|get "
    r"up and|do not|not|never|no longer|always|only|first|\d+th|also|then|help "
    r"to|help|dare|volunteer|offer|agree|ask|learn|practise|practice|each time"
    r"|please|just|again|deliberately|personally|at least|try) (?:that i |of |to "
    r"|by |from |and |how to )?)(?=[a-z])"
)
_ADVERBS = frozenset(
    (
        *"not never always only first 1th also then please just again".split(),
        *("deliberately", "personally", "no longer", "do not", "at least"),
    )
)
"""Words before a verb that leave it the verb; other wrappers end in "to", "of" or the like."""
_DEPTH = 4
"""Leads and wrappers that are taken off one after the other; nobody piles up more."""


def promised_by_will(line: str) -> str | None:
    """Return the words after "I will", or None where it is not said."""
    will = _WILL.search(line)
    return None if will is None else line[will.end() :].strip(" ,")


def without_leads(line: str) -> str:
    """Return a line without the phrases before its act: "Every evening, at home, ..."."""
    clause = line.strip(" ,.")
    for _ in range(_DEPTH):
        lead = _LEADING.match(clause) or _BARE_LEAD.match(clause)
        if lead is None or not clause[lead.end() :].strip(" .,"):
            break
        clause = clause[lead.end() :].strip(" ,")
    return clause


def without_wrappers(clause: str) -> str:
    """Return a clause from its own verb on: "remember to call Anna" is "call Anna"."""
    clause = clause.removeprefix("to ").removeprefix("let us ")
    for _ in range(_DEPTH):
        wrapped = _WRAPPERS.match(clause)
        if wrapped is None:
            break
        inner = clause[wrapped.end() :]
        leads_on = wrapped[0].endswith(("to ", "from ", "of ", "and ", "by "))
        if wrapped[0].endswith("from ") and wrapped[0].startswith("learn"):
            break
        known = stem(inner.split(maxsplit=1)[0]) in ACTS | STATES
        if not (leads_on or known or wrapped[0].strip() in _ADVERBS):
            break
        clause = inner.removeprefix("to ")
    return clause
