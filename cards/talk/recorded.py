"""What was recorded of a commitment, in the few words a talk has room for."""

from cards.commitments import Pace, Stand
from cards.commitments.day_words import in_letters
from cards.commitments.windows import Kept


def recorded(stand: Stand | None) -> str:
    """Return the pace with its figures; where nothing is known, that."""
    if stand is None:
        return "nothing recorded"
    if stand.life.released is not None:
        return f"released: {stand.life.released.words}"
    if stand.pace is Pace.UNJUDGED:
        return "over before it was kept here; what came of it is still to be said"
    if stand.due:
        return f"{stand.pace}{_figures(stand)}"
    return f"{stand.pace}{_counted(stand)}"


def _counted(stand: Stand) -> str:
    counted = [each for each in stand.windows if each.counts]
    if not counted:
        return ""
    kept = sum(each.came_to is Kept.KEPT for each in counted)
    if len(counted) == 1:
        return f"; the last one counted was {'' if kept else 'not '}kept"
    many, said = in_letters(len(counted)), in_letters(kept) if kept else "none"
    return f"; of the last {many} counted, {said} kept"


def _figures(stand: Stand) -> str:
    if not stand.life.term.finishing:
        return f", {stand.done} of {stand.due} kept"
    # What was done beyond what was due is no part of it, and of a single deed the pace says all.
    if stand.due == 1:
        return ""
    done = "" if stand.pace is Pace.DONE else " done"
    return f", {min(stand.done, stand.due)} of {stand.due}{done}"
