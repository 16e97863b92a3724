"""What was decided about a commitment, in plain words."""

from cards.commitments.day_words import day_in_words
from cards.commitments.decisions import Act, Decision
from cards.commitments.measure_words import measure_in_words

_SAID = {
    Act.START: "it counts from this day",
    Act.RESUME: "resumed",
    Act.RENEW: "renewed",
    Act.REWORD: "reworded",
    Act.RELEASE: "released",
}


def decision_in_words(decision: Decision) -> str:
    """Return what was decided: "paused until 3 March 2026", "halved: once a week"."""
    match decision.act:
        case Act.MEASURE | Act.HALVE if decision.measure is not None:
            name = "halved" if decision.act is Act.HALVE else "measure corrected"
            return f"{name}: {measure_in_words(decision.measure)}"
        case Act.PAUSE if decision.until is not None:
            return f"paused until {day_in_words(decision.until)}"
        case Act.MOVE if decision.until is not None:
            return f"moved to {day_in_words(decision.until)}"
        case Act.CLOSE if decision.outcome is not None:
            return f"left at that: {decision.outcome.value}"
        case Act.PAUSE:
            return "paused"
        case _:
            return _SAID.get(decision.act, decision.act.value)
