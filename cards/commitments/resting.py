"""From which day a commitment is over, so that it is no longer recalled of itself."""

from datetime import date, timedelta

from cards.commitments.stand import LIVE, Rule, Stand
from cards.commitments.windows import last_to_report


def rests_from(stand: Stand) -> date | None:
    """Return the first day a commitment rests on as things stand, or None while it is open.

    One with an end rests once that end is closed, whatever came of it, unless it is renewed;
    a one-off by a day stays until it is finished or released.
    """
    if stand.pace not in LIVE or stand.rule is Rule.NOTHING_AT_ALL:
        return stand.day
    if stand.ends_on is None or stand.life.term.once:
        return None
    last = last_to_report(stand.ends_on)
    return last if last == date.max else last + timedelta(days=1)
