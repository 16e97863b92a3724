"""What to say of a commitment that is not yet concrete, specific and measurable."""

import re

from cards.wording.concreteness import Act
from cards.wording.line import line_of

_MORE = re.compile(
    r"(?<!\S)(?P<word>more|less|better|fewer|often|regularly|sometimes|as much as possible)(?!\S)"
)
_THINK = re.compile(
    r"(?<!\S)(?P<word>think about|reflect|consider|ponder|remember|keep in mind)(?!\S)"
)

NOT_CHECKED = (
    "The wording check reads English; this seems to be in {language}, so its wording is not "
    "checked."
)
UNSEEN = (
    "It is not concrete yet: it names a trait or a state of mind, which nobody could see done. "
    "Say what someone in the room would see you do."
)
UNPROMISED = (
    "It is not concrete yet: it is not put as a thing you will do. Begin with the act, or with "
    "“I will”."
)
TRYING = (
    "It is not concrete yet: it promises an attempt, and an attempt is always made. Say the act "
    "itself."
)
UNSPECIFIC = (
    "It is not specific yet: it names nobody and nothing in particular. Say to whom, to what, "
    "where or when, or it will wait for a better day."
)
UNMEASURED = (
    "It is not measurable yet: on a given day nobody could say whether it was done. Give it a "
    "count, a cadence such as “every Sunday”, or a day by which."
)


def advice_on_wording(
    text: str, act: Act, *, specific: bool, measured: bool, rewording: str | None
) -> list[str]:
    """Return sentences on what is missing, in the order concrete, specific, measurable."""
    said: list[str] = []
    line = line_of(text)
    thinking = _THINK.search(line)
    if not act.concrete:
        if act.trying:
            said.append(TRYING)
        elif act.promised:
            said.append(UNSEEN)
            if thinking is not None:
                said.append(
                    f"“{thinking['word'].capitalize()}” leaves nothing to be seen: say what you "
                    "will write, say or do when you have done it."
                )
        else:
            said.append(UNPROMISED)
    if not specific:
        said.append(UNSPECIFIC)
    if not measured:
        said.append(UNMEASURED)
        vague = _MORE.search(line)
        if vague is not None:
            said.append(
                f"“{vague['word'].capitalize()}” has no number: say how many, or how often."
            )
    if said and rewording is not None:
        said.append(f"You could word it so: “{rewording}”")
    return said
