"""Whether a verb with what follows it is an act someone could see done."""

import re

from cards.wording.senses import INVISIBLE_WITH, VISIBLE_WITH
from cards.wording.verbs import (
    ABSTRACT,
    ABSTRACT_ENDINGS,
    ACTS,
    IMPERATIVE_OPENERS,
    LIGHT,
    NEVER_VERBS,
    STATES,
    stem,
)

_VISIBLE_BEING = re.compile(
    r"(?:be|stay|remain|keep|get) (?:up|home|out|back|outside|indoors|in bed|out "
    r"of bed|in my|in the|at (?:the|my|home|church|mass|work|table|least \d)|at "
    r"@|on the (?!lookout|alert|way to being)|the 1th (?:to|1 to|person to)|the "
    r"last to|there|silent(?! and calm)|quiet (?:for|until)|seated|offline"
    r"|present at|by the|off (?:the|my|social|line)|away from|on time|in by"
    r"|asleep by|at my|with (?:my|the|her|him)|dressed|washed|early for|punctual (?:at|for|to)"
    r"|standing)(?!\S)"
)
_LATER = re.compile(
    r"(?:^| )(?:and|then|by|or|but|instead|, |; |\. )(?: then| instead| also| to"
    r"| i will)? (?P<verb>[a-z]+)(?= (?P<next>\S+)|$)"
)
_PLAIN_ACTS = frozenset(
    """write call ask tell say send read walk note phone ring visit invite thank list
    record give help draw sing cook buy pay put post speak email text join go take
    leave make set turn share""".split()
)
_TIME_TO_ACT = re.compile(r"\btime to (?:walk|write|call|read)")
_NOT_SET = frozenset("time better less good expectations boundaries".split())
_PHRASE_ENDS = frozenset(
    "in at on by with from when before after , . until who about every each while if as".split()
)
_ARTICLES = frozenset("the my a an of to for and".split())


def is_visible_being(clause: str) -> bool:
    """Tell whether a clause is of being somewhere: "be in bed by ten", "stay at the table"."""
    return _VISIBLE_BEING.match(clause) is not None


def is_seen(verb: str, rest: list[str]) -> bool:
    """Tell whether a verb with the words after it is an act someone could see."""
    phrase = _phrase(rest)
    said = " ".join(rest)
    qualities = _qualities(phrase[:4])
    abstract = any(word != "people" for word in qualities)
    abstract = abstract or phrase[:1] == ["people"]
    if verb in STATES:
        visible = VISIBLE_WITH.get(verb)
        abstract = any(word not in _DEGREES for word in qualities)
        return visible is not None and visible.match(said) is not None and not abstract
    if _is_figure(verb, said, phrase):
        return False
    if verb == "give" and phrase in (["more"], ["less"]):
        return True
    if verb in {"exercise", "practise", "practice"}:
        abstract = any(word not in _DEGREES for word in qualities)
    if verb in LIGHT and abstract:
        return _seen_after_all(verb, said, phrase)
    return verb in ACTS or verb.isalpha()


def _qualities(phrase: list[str]) -> list[str]:
    """Return the qualities among the first three words; in "heart pills" there is none."""
    following = [*phrase[1:4], ""]
    return [
        word
        for word, then in zip(phrase[:3], following, strict=False)
        if is_quality(word)
        and not _is_chamber(phrase, word)
        and not (_PLURAL.fullmatch(then) and not is_quality(then))
    ]


def _is_chamber(phrase: list[str], word: str) -> bool:
    """Tell "the spare room" from "room" and "more room"."""
    return word == "room" and phrase[0] not in {"room", *_DEGREES}


_PLURAL = re.compile(r"(?!as|this|others|always|towards|things|its)[^\W\d_]+[^s]s")


def _is_figure(verb: str, said: str, phrase: list[str]) -> bool:
    """Tell whether an act is only a figure of speech: "mend my ways", "carry hope"."""
    unseen = INVISIBLE_WITH.get(verb)
    if unseen is not None and unseen.match(said):
        return True
    whole_life = phrase[:1] == ["life"] and all(
        word in _DEGREES or word.endswith("ly") for word in phrase[1:2]
    )
    if whole_life and verb not in _OF_LIFE:
        return True
    return verb in _DONE_WITH_QUALITIES and any(word in _PURE for word in phrase[:3])


_OF_LIFE = frozenset(
    "write read tell draw paint describe discuss record narrate study insure".split()
)
"""What may be done to a life on paper."""
_DONE_WITH_QUALITIES = frozenset(
    "choose drop share carry follow change open break lower lift return spread answer own win draw"
    " fight".split()
)
_PURE = ABSTRACT - frozenset(
    """time room space people good best better benefit stock charge change changes most more less
    world life lives interest value balance control character heart fun care""".split()
)
"""Qualities that no other sense of the word can be seen in."""
_DEGREES = frozenset(("more", "less", "better"))


def is_quality(word: str) -> bool:
    """Tell whether a word names a quality or a state of mind."""
    return word in ABSTRACT or word.endswith(ABSTRACT_ENDINGS)


def _phrase(rest: list[str]) -> list[str]:
    """Return the words up to the first preposition, mark or clause, without articles."""
    phrase: list[str] = []
    for word in (word for word in rest[:6] if word not in _ARTICLES):
        if word in _PHRASE_ENDS:
            break
        if word == "than":
            return phrase[:-1]
        phrase.append(word)
    return phrase


def _seen_after_all(verb: str, said: str, phrase: list[str]) -> bool:
    """Tell whether a light verb's abstract object is a thing after all."""
    if "time" in phrase:
        numbered = any(word.isdigit() for word in said.split())
        return bool(_TIME_TO_ACT.search(said)) or (verb in {"give", "offer"} and numbered)
    return verb in {"raise", "set"} and phrase[:1] != ["more"] and not _NOT_SET & set(phrase)


def is_imperative(verb: str, rest: list[str]) -> bool:
    """Tell whether a verb at the head of a clause commands, rather than names."""
    if verb in STATES:
        return True
    if verb in ACTS:
        return rest[:1] not in (["is"], ["are"], ["was"], ["makes"], ["matters"], ["of"])
    if is_quality(verb) or verb in IMPERATIVE_OPENERS | NEVER_VERBS or not verb.isalpha():
        return False
    owned = rest[1:2] == ["'s"]
    return bool(rest) and (owned or rest[0] in IMPERATIVE_OPENERS or rest[0].isdigit())


def acts_later(clause: str) -> bool:
    """Tell whether a state of mind is followed by an act: "reflect ..., and write ..."."""
    for found in _LATER.finditer(clause):
        verb = stem(found["verb"])
        if verb not in _PLAIN_ACTS:
            continue
        following = found["next"]
        if (
            found["verb"] != verb
            or following is None
            or following in IMPERATIVE_OPENERS
            or following.isdigit()
            or verb in _ALWAYS_VERBS
        ):
            return True
    return False


_ALWAYS_VERBS = frozenset("write call ask tell say".split())


def forbids_what_is_seen(clause: str) -> bool:
    """Tell whether "no ..." forbids something that can be seen: "no phone at table"."""
    following = clause.split()[1:4]
    if not following:
        return False
    if following[0] == "more":
        return not any(is_quality(word) or stem(word) in STATES for word in following[1:3])
    return following[0] == "people" or not is_quality(following[0])
