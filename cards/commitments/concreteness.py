"""Whether a commitment is an act someone could see done, in the imperative or with "I will"."""

import re
from dataclasses import dataclass

from cards.commitments.line import line_of
from cards.commitments.verbs import (
    ABSTRACT,
    ABSTRACT_ENDINGS,
    ACTS,
    IMPERATIVE_OPENERS,
    LIGHT,
    STATES,
)


@dataclass(frozen=True, slots=True)
class Act:
    """The act a commitment promises.

    Attributes:
        concrete: whether it is one someone could see done, and promised.
        promised: whether it is in the imperative or with "I will".
        verb: its verb as written, or None.
        trying: whether only an attempt or an aim is promised.
    """

    concrete: bool
    promised: bool
    verb: str | None
    trying: bool = False


_WILL = re.compile(
    r"(?<!\S)(?:i|we) (?:will|shall|am going to|are going to|promise to|vow to"
    r"|pledge to|resolve to|undertake to|commit to)(?!\S)"
)
_NO_PROMISE = re.compile(
    r"^(?:[^,;.]*, )?(?:i|we|one|you|people|readers) (?:(?:really|also|just) )?"
    r"(?:want|would|should|could|might|may|must|ought|need|have|had|hope|wish"
    r"|like|plan|intend|mean|aim|try|think|feel|believe|am|was|were|can|do|did"
    r"|never|always|often|used|know|love)(?!\S)"
)
_AIM = re.compile(
    r"(?:i|we)? ?(?:aim|try|plan|intend|strive|attempt|endeavour|endeavor|seek"
    r"|want|hope|do my best|make an effort|make every effort|work) (?:to|at) "
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
_LATER = re.compile(
    r"(?:^| )(?:and|then|by|or|but|instead|, |; |\. )(?: then| instead| also| to"
    r"| i will)? (?P<verb>[a-z]+)(?= (?P<next>\S+)|$)"
)
_VISIBLE_BEING = re.compile(
    r"(?:be|stay|remain|keep|get) (?:up|home|out|back|outside|indoors|in bed|out "
    r"of bed|in my|in the|at (?:the|my|home|church|mass|work|table|least \d)|at "
    r"@|on the (?!lookout|alert|way to being)|the 1th (?:to|1 to|person to)|the "
    r"last to|there|silent(?! and calm)|quiet (?:for|until)|seated|offline"
    r"|present at|by the|off (?:the|my|social|line)|away from|on time|in by"
    r"|asleep by|at my|with (?:my|the|her|him)|dressed|washed|early for|punctual"
    r"|standing)(?!\S)"
)
_MANNER = frozenset(
    "kindly patiently gently respectfully thoughtfully mindfully simply fully "
    "lovingly wisely".split()
)


def act_of(text: str, *, measured: bool) -> Act:
    """Return the act a commitment promises.

    Args:
        text: the commitment.
        measured: whether it has a measure; an attempt with one is taken as the act.
    """
    line = line_of(text).replace(" :", " ,")
    clause, promised = _main_clause(line)
    trying = False
    if not promised:
        aim = _AIM.match(clause)
        if aim is not None and not clause.startswith(("i want", "i hope", "want", "hope")):
            trying, promised = True, measured
            clause = clause[aim.end() :]
    else:
        aim = re.match(
            r"(?:try|attempt|aim|strive|endeavour|endeavor|seek|do my best|make an "
            r"effort|make every effort|work) (?:to|at) ",
            clause,
        )
        if aim is not None:
            trying = True
            clause = clause[aim.end() :]
    seen, verb, imperative = _seen(clause, stated=promised)
    promised = promised or imperative
    concrete = promised and seen and (measured or not trying)
    return Act(concrete, promised, verb, trying)


def _main_clause(line: str) -> tuple[str, bool]:
    """Return the words from the act on, and whether "I will" leads them in."""
    will = _WILL.search(line)
    if will is not None:
        return line[will.end() :].strip(" ,"), True
    clause = line.strip(" ,.")
    for _ in range(4):
        lead = _LEADING.match(clause) or _BARE_LEAD.match(clause)
        if lead is None or not clause[lead.end() :].strip(" .,"):
            break
        if (
            lead.re is _LEADING
            and _head_is_verb(clause)
            and clause.split()[0] not in {"on", "in", "at", "by"}
        ):
            break
        clause = clause[lead.end() :].strip(" ,")
    return clause, False


def _head_is_verb(clause: str) -> bool:
    return clause.split(maxsplit=1)[0] in {"to"} and False


def _seen(clause: str, *, stated: bool) -> tuple[bool, str | None, bool]:
    """Tell whether a clause is an act someone could see, its verb, and whether it is imperative."""
    if not stated and _NO_PROMISE.match(clause):
        return False, None, False
    words = clause.split()
    if not words:
        return False, None, False
    if words[0] == "to" and len(words) > 1:
        words = words[1:]
        clause = " ".join(words)
    if words[0] == "let" and words[1:2] == ["us"]:
        words = words[2:] or ["let"]
        clause = " ".join(words)
    if words[0] in {"no", "nothing"} and not stated:
        return _nothing_of(words), words[0], True
    if _VISIBLE_BEING.match(clause):
        return True, words[0], True
    inner = clause
    for _ in range(4):
        wrapped = _WRAPPERS.match(inner)
        if wrapped is None:
            break
        rest = inner[wrapped.end() :]
        head = rest.split()[0]
        if (
            wrapped[0].endswith(("to ", "from ", "of ", "and ", "by "))
            or _stem(head) in ACTS | STATES
            or wrapped[0].strip()
            in {
                "not",
                "never",
                "no longer",
                "do not",
                "always",
                "only",
                "first",
                "1th",
                "also",
                "then",
                "please",
                "just",
                "again",
                "deliberately",
                "personally",
                "at least",
            }
        ):
            inner = rest
            inner = inner.removeprefix("to ")
            continue
        break
    if _VISIBLE_BEING.match(inner):
        return True, inner.split()[0], True
    verb = _stem(inner.split()[0])
    rest_words = inner.split()[1:]
    imperative = _is_imperative(verb, rest_words, wrapped=inner != clause) or stated
    if _acted(verb, rest_words):
        return True, verb, imperative
    if imperative and _acts_later(inner):
        return True, verb, imperative
    return False, verb, imperative


def _is_imperative(verb: str, rest: list[str], *, wrapped: bool) -> bool:
    if verb in STATES or wrapped:
        return True
    if verb in ACTS:
        return rest[:1] not in (["is"], ["are"], ["was"], ["makes"], ["matters"], ["of"])
    if verb.endswith(ABSTRACT_ENDINGS) or verb in ABSTRACT:
        return False
    return (
        bool(rest)
        and (rest[0] in IMPERATIVE_OPENERS or rest[0].isdigit())
        and verb.isalpha()
        and verb not in IMPERATIVE_OPENERS
        and verb not in _NEVER_VERBS
    )


_NEVER_VERBS = frozenset(
    """i we he she they it there who what which why how greater better deeper stronger life people
    nothing everything patience books words reading writing walking being having doing going
    lots plenty much many few several always courage friendship""".split()
)


def _stem(word: str) -> str:
    """Return the base of a gerund, as "writing" of write; other words as they are."""
    known = ACTS | STATES
    if word in known or not word.endswith("ing") or len(word) < 5:
        return word
    base = word[:-3]
    for candidate in (base, base + "e", base[:-1] if base[-1:] == base[-2:-1] else base):
        if candidate in known:
            return candidate
    return word


def _acted(verb: str, rest: list[str]) -> bool:
    """Tell whether a verb with what follows is an act someone could see."""
    near = [
        word for word in rest[:6] if word not in {"the", "my", "a", "an", "of", "to", "for", "and"}
    ]
    until = _phrase(near)
    abstract = any(word in ABSTRACT or word.endswith(ABSTRACT_ENDINGS) for word in near[:3])
    if verb in STATES:
        return _redeemed(verb, rest, until)
    if verb == "let" and rest[:1] == ["go"] and rest[1:2] in (["of"], [], ["."]):
        return False
    if verb == "give" and rest[:1] == ["up"] and rest[1:2] in ([], ["."]):
        return False
    if verb == "work" and rest[:1] == ["on"] and (abstract or "myself" in rest):
        return False
    if verb == "spend" and rest[:1] in (["more"], ["less"]) and rest[1:2] in (["time"], ["energy"]):
        return False
    if verb in {"exercise", "practise", "practice"}:
        until = [word for word in until if word not in {"more", "less", "better"}]
    if verb in LIGHT and any(
        word in ABSTRACT or word.endswith(ABSTRACT_ENDINGS) for word in until[:3]
    ):
        return _light_but_seen(verb, rest, until)
    if (
        verb in {"listen", "speak", "talk", "read", "eat", "work"}
        and rest[:1]
        and rest[0] in {"better", *_MANNER}
    ):
        return verb in {"read", "eat"}
    if verb in {"listen", "help", "support", "serve", "lead"} and all(
        word
        in {
            "more",
            "people",
            "others",
            "better",
            "other",
            ".",
            "everyone",
            "everybody",
            "carefully",
        }
        for word in rest
    ):
        return verb == "help"
    return verb in ACTS or verb.isalpha()


def _phrase(near: list[str]) -> list[str]:
    """Return the words up to the first preposition, mark or clause."""
    phrase: list[str] = []
    for word in near:
        if word in {
            "in",
            "at",
            "on",
            "by",
            "with",
            "from",
            "when",
            "before",
            "after",
            ",",
            ".",
            "until",
            "who",
            "about",
            "every",
            "each",
            "while",
            "if",
            "as",
        }:
            break
        phrase.append(word)
    return phrase


def _light_but_seen(verb: str, rest: list[str], phrase: list[str]) -> bool:
    """Tell whether a light verb's object is a thing after all ("take my time sheet")."""
    if (
        verb in {"take", "make", "set"}
        and "time" in phrase
        and re.search(r"\bto (?:walk|write|call|read)", " ".join(rest))
    ):
        return True
    if verb in {"give", "offer"} and "time" in phrase and any(word.isdigit() for word in rest):
        return True
    return (
        verb in {"raise", "set"}
        and phrase[:1] != ["more"]
        and "time" not in phrase
        and "better" not in phrase
        and "less" not in phrase
        and not set(phrase) & {"good", "expectations", "boundaries"}
    )


def _redeemed(verb: str, rest: list[str], phrase: list[str]) -> bool:
    """Tell whether a verb of mind or being is an act by what it is done with."""
    said = " ".join(rest)
    abstract = any(word in ABSTRACT or word.endswith(ABSTRACT_ENDINGS) for word in phrase[:3])
    if verb in {"balance", "manage"}:
        return bool(set(phrase) & {"book", "books", "account", "accounts", "budget", "budgets"})
    if verb == "learn":
        return not (
            abstract
            or said.startswith(
                (
                    "to be",
                    "to feel",
                    "to accept",
                    "to love",
                    "to trust",
                    "from",
                    "more about",
                    "to live",
                    "how to be",
                    "to let",
                    "patience",
                    "to think",
                    "to appreciate",
                )
            )
        )
    if verb == "have":
        return (
            bool(rest)
            and not abstract
            and rest[0] not in {"more", "less", "faith"}
            and not said.startswith(
                ("an open", "a better", "a more", "a positive", "no fear", "fewer", "higher")
            )
        )
    if verb == "get":
        return (
            bool(rest)
            and rest[0]
            not in {
                "better",
                "more",
                "less",
                "angry",
                "over",
                "closer",
                "used",
                "organised",
                "fit",
                "healthy",
                "along",
                "on",
                "in",
            }
        ) or said.startswith(("in touch", "on the bus", "on my"))
    if verb == "look":
        return (
            bool(rest)
            and rest[0] in {"up", "at", "through", "out", "in"}
            and not abstract
            and not said.startswith(("at the bright", "at things", "at life", "in myself"))
        )
    if verb in {
        "find",
        "see",
        "hold",
        "bear",
        "welcome",
        "accept",
        "reduce",
        "limit",
        "build",
        "raise",
        "increase",
        "question",
        "examine",
        "attend",
        "explore",
        "stand",
        "forgive",
        "mind",
        "master",
    }:
        visible = {
            "stand": {"up", "at", "in", "on", "by", "for"},
            "hold": {"the", "a", "an", "our", "my", "her", "his"},
            "see": {"the", "a", "my", "one", "1", "2", "3"},
        }
        if verb in {"forgive", "mind", "question", "examine", "bear", "master", "explore"}:
            return False
        if abstract or not rest:
            return False
        if verb in visible:
            return rest[0] in visible[verb] or rest[0].isdigit()
        if verb in {"find", "build", "accept", "raise", "welcome", "attend"}:
            return (
                rest[0] in {"the", "a", "an", "my", "out", "to"}
                or rest[0].isdigit()
                or verb in {"attend"}
            )
        return any(word.isdigit() for word in rest)
    if verb == "imagine" or verb == "work-on":
        return False
    if verb in {"stay", "remain"}:
        return (
            bool(rest)
            and rest[0]
            in {
                "home",
                "at",
                "with",
                "for",
                "in",
                "off",
                "out",
                "away",
                "until",
                "behind",
                "up",
                "silent",
                "indoors",
                "seated",
            }
            and not said.startswith(
                ("in the moment", "in touch with my feelings", "at peace", "in control")
            )
        )
    if verb in {"live", "act", "like", "need", "want"}:
        return verb == "live" and rest[:1] == ["on"] and any(word.isdigit() for word in rest)
    return False


def _acts_later(clause: str) -> bool:
    """Tell whether a state of mind is followed by an act: "reflect ..., and write ..."."""
    for found in _LATER.finditer(clause):
        word = found["verb"]
        verb = _stem(word)
        if verb in _PLAIN_ACTS and (
            word != verb
            or found["next"] is None
            or found["next"] in IMPERATIVE_OPENERS
            or found["next"].isdigit()
            or verb in {"write", "call", "ask", "tell", "say"}
        ):
            return True
    return False


_PLAIN_ACTS = frozenset(
    """write call ask tell say send read walk note phone ring visit invite thank list record give help
    draw sing cook buy pay put post speak email text join go take leave make set turn share""".split()
)


def _nothing_of(words: list[str]) -> bool:
    """Tell whether "no ..." forbids something that can be seen."""
    after = words[1:4]
    return (
        bool(after)
        and not any(
            word in ABSTRACT - {"people"} or word.endswith(ABSTRACT_ENDINGS)
            for word in after[:1]
            if word != "more"
        )
        and not (
            after[:1] == ["more"]
            and any(
                word in ABSTRACT or (word.endswith(("ing",)) and _stem(word) in STATES)
                for word in after[1:3]
            )
        )
    )
