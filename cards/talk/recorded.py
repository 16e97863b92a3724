"""What was recorded of a commitment, in the few words a talk has room for."""

from cards.commitments import Pace, Stand
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
        return f"{stand.pace}, {stand.done} of {stand.due} kept"
    counted = [each for each in stand.windows if each.counts]
    if not counted:
        return stand.pace.value
    kept = sum(each.came_to is Kept.KEPT for each in counted)
    last = "last one" if len(counted) == 1 else f"last {len(counted)}"
    return f"{stand.pace}; of the {last} counted, {kept} kept"
