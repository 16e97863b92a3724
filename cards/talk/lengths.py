"""The lengths of a talk, and the minutes each part of it gets."""

from collections.abc import Collection
from enum import IntEnum, StrEnum

from cards.errors import Invalid


class Length(IntEnum):
    """The minutes a talk is laid out for."""

    READ_IT = 80
    """With someone who read the book."""
    DID_NOT = 15
    """With someone who did not."""


def length_of(minutes: int) -> Length:
    """Return the length of so many minutes.

    Raises:
        Invalid: no talk is laid out for so many.
    """
    try:
        return Length(minutes)
    except ValueError:
        raise Invalid(
            "A talk is laid out for 80 minutes with someone who read the book, or for 15 with "
            "someone who did not.",
            where="minutes",
        ) from None


class Stage(StrEnum):
    """One part of a talk."""

    REPORT = "report"
    THEME = "theme"
    ORDER = "order"
    PLACING = "placing"
    JUDGEMENT = "judgement"
    RESOLVING = "resolving"
    POINTS = "points"
    READING = "reading"
    BACK = "back"


MINUTES: dict[Length, dict[Stage, int]] = {
    Length.READ_IT: {
        Stage.REPORT: 10,
        Stage.THEME: 10,
        Stage.ORDER: 20,
        Stage.PLACING: 15,
        Stage.JUDGEMENT: 15,
        Stage.RESOLVING: 10,
    },
    Length.DID_NOT: {
        Stage.THEME: 3,
        Stage.POINTS: 4,
        Stage.READING: 2,
        Stage.REPORT: 4,
        Stage.BACK: 2,
    },
}
"""The whole of each, in the order it is gone through. Both are proposals and no published
result: the first is the project's own agenda for two, of the length at which readers of a survey
were content (reference, part 5: 75 minutes and more); the second is proportioned here."""


def spread(length: Length, present: Collection[Stage]) -> dict[Stage, int]:
    """Return the minutes of the stages that are there, those of the others spread over them.

    In proportion, in whole minutes that add up to the length: by largest remainder (Hamilton's
    method of apportionment; from memory), of equal ones the earlier first.
    """
    whole = {stage: share for stage, share in MINUTES[length].items() if stage in present}
    total = sum(whole.values())
    given = {stage: share * length // total for stage, share in whole.items()}
    left = length - sum(given.values())
    for stage in sorted(whole, key=lambda each: -(whole[each] * length % total))[:left]:
        given[stage] += 1
    return given
