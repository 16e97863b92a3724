"""How a commitment stands, in plain words: the rule and the figures, never blame."""

from collections.abc import Callable, Sequence
from datetime import timedelta

from cards.commitments.cutting import Span
from cards.commitments.day_words import (
    day_in_words,
    in_letters,
    span_in_words,
    spans_in_words,
    times_in_words,
)
from cards.commitments.measure import Measure, Period
from cards.commitments.measure_words import measure_in_words
from cards.commitments.pace import JUDGED
from cards.commitments.stand import LIVE, Pace, Rule, Stand
from cards.commitments.windows import NOTHING_DONE, Kept, Window, last_to_report

__all__ = ["measure_in_words", "progress", "told"]

_DAY = timedelta(days=1)


def told(stand: Stand) -> str:
    """Return one or two sentences that say the rule a pace follows from, and its figures.

    A reason a reader gave stands in them as it was typed.
    """
    return _SENTENCES[stand.rule](stand)


def progress(stand: Stand) -> str | None:
    """Return how far the running period is: "2 of 3 this week".

    Where more was done than was asked, both are said: "7 this year, 1 was asked".

    None where nothing is counted: without a measure, while it is paused, and once it is over.
    """
    measure = stand.life.term.measure
    if measure is None or stand.pace not in LIVE or stand.pace is Pace.PAUSED:
        return None
    if measure.period is Period.ONCE:
        return f"{stand.done} of {stand.due} done" if stand.due > 1 else None
    if stand.now is None:
        return None
    done, due = stand.now.done, stand.now.due
    if done > due:
        return f"{done} {_now(measure)}, {due} {'was' if due == 1 else 'were'} asked"
    return f"{done} of {due} {_now(measure)}"


def _now(measure: Measure) -> str:
    if measure.every > 1:
        return f"in these {in_letters(measure.every)} {measure.period}s"
    return "today" if measure.period is Period.DAY else f"this {measure.period}"


def _not_closed(stand: Stand) -> str:
    start = stand.life.term.start
    if start > stand.day:
        return f"It begins on {day_in_words(start)}."
    waiting = [each for each in stand.windows if not each.closed and each.periods]
    if not waiting:
        # The running period may have begun before one could be asked, and not be judged at all.
        return "Nothing is due yet." if stand.now is None else "Nothing is judged yet."
    days = _days(stand, waiting[-1])
    until = last_to_report(waiting[-1].span.last)
    return (
        f"Nothing is judged yet: {span_in_words(days)} can be reported on until "
        f"{day_in_words(until)}."
    )


def _last_kept(stand: Stand) -> str:
    last = _judged(stand)[0]
    return f"Kept {_over(_days(stand, last))}: {_figures(stand, last)}."


def _last_not_kept(stand: Stand) -> str:
    judged = _judged(stand)
    last = judged[0]
    days = _days(stand, last)
    if last.came_to is Kept.PARTLY:
        figures = _figures(stand, last)
        return f"Partly kept {_over(days)}{'' if figures.startswith('0 ') else ': ' + figures}."
    said = (
        f"Nothing was said about {span_in_words(days)}."
        if last.came_to is Kept.SILENT
        else f"It was missed {_over(days)}."
    )
    if len(judged) == JUDGED and all(each.came_to in NOTHING_DONE for each in judged):
        return f"{said} Something was done since."
    return f"{said} One such {_stretch(stand.life.term.measure)} does no harm."


def _two_without(stand: Stand) -> str:
    later, earlier = _judged(stand)
    spans = [_days(stand, earlier), _days(stand, later)]
    stretch = _stretch(stand.life.term.measure)
    stretches = stretch + ("es" if stretch.endswith("h") and stretch != "month" else "s")
    if (spans[1].first - spans[0].last) > _DAY:
        stretches += " that count"
    if earlier.came_to is not later.came_to:
        first, second = (
            f"{span_in_words(span)} was missed"
            if each.came_to is Kept.MISSED
            else f"nothing was said about {span_in_words(span)}"
            for each, span in zip((earlier, later), spans, strict=True)
        )
        return f"Of the last two {stretches}, {first}, and {second}."
    if later.came_to is Kept.MISSED:
        return f"The last two {stretches}, {spans_in_words(spans)}, were missed."
    return f"Nothing was said about the last two {stretches}, {spans_in_words(spans)}."


def _nothing_at_all(stand: Stand) -> str:
    ended = f"It ended on {day_in_words(stand.ends_on or stand.day)}"
    if stand.nothing_said:
        return f"{ended}, and what came of it was not said."
    return f"{ended}, with {_of_all(stand)} kept."


def _by_date(stand: Stand) -> str:
    return f"{_so_far(stand)}Due by {day_in_words(stand.ends_on or stand.day)}."


def _finished(stand: Stand) -> str:
    return "Done." if stand.due == 1 else f"Done: {_of(stand.done, stand.due)}."


def _overdue(stand: Stand) -> str:
    deadline = stand.ends_on or stand.day
    return f"{_so_far(stand)}Overdue since {day_in_words(deadline + _DAY)}."


def _long_overdue(stand: Stand) -> str:
    deadline = stand.ends_on or stand.day
    days = (stand.day - deadline).days
    since = day_in_words(deadline + _DAY)
    return f"{_so_far(stand)}Overdue since {since}, {days} days by now."


def _moved_often(stand: Stand) -> str:
    moved = times_in_words(stand.life.term.moves)
    return f"Its day was moved {moved}, now to {day_in_words(stand.ends_on or stand.day)}."


def _paused(stand: Stand) -> str:
    if stand.day < stand.life.asked_from:
        return f"It is asked about from {day_in_words(stand.life.asked_from)} on."
    pause = max(
        (each for each in stand.life.pauses if each.first <= stand.day <= each.last),
        key=lambda each: each.last,
    )
    if pause.last == pause.last.max:
        return f"Paused since {day_in_words(pause.first)}, until you take it up again."
    return f"Paused until {day_in_words(pause.last)}."


def _past_on_arrival(stand: Stand) -> str:
    ended = day_in_words(stand.ends_on or stand.day)
    return f"It was over on {ended}, before it came in: what came of it is yours to say."


def _over_with_figures(stand: Stand) -> str:
    if not stand.due:
        return f"It ended on {day_in_words(stand.ends_on or stand.day)}; nothing in it was counted."
    measure = stand.life.term.measure
    where = "on" if measure is not None and measure.period is Period.DAY else "in"
    return f"Kept {where} {_of_all(stand)}."


def _closed(stand: Stand) -> str:
    decision = stand.life.closed
    if decision is None:
        return _over_with_figures(stand)
    figures = f", {_of_all(stand)}" if stand.done else ""
    return f"You closed it on {day_in_words(decision.day)}: {decision.outcome}{figures}."


def _released(stand: Stand) -> str:
    decision = stand.life.released
    if decision is None:
        return "Released."
    return f"Released on {day_in_words(decision.day)}: {decision.words}"


def _judged(stand: Stand) -> Sequence[Window]:
    """Return the windows a running commitment was judged by, the latest first."""
    return [each for each in stand.windows if each.counts][:JUDGED]


def _days(stand: Stand, window: Window) -> Span:
    """Return the days a window is told by: those of its month or year, where it has one."""
    measure = stand.life.term.measure
    if measure is not None and measure.period in {Period.MONTH, Period.YEAR}:
        return window.periods[-1].span
    return window.span


def _over(days: Span) -> str:
    said = span_in_words(days)
    if days.first == days.last:
        return f"on {said}"
    return f"from {said}" if " to " in said else f"in {said}"


def _figures(stand: Stand, window: Window) -> str:
    if len(window.periods) == 1:
        return _of(window.periods[0].done, window.periods[0].due)
    measure = stand.life.term.measure
    of = f"{window.kept_periods} of {len(window.periods)}"
    return f"{of} days" if measure is not None and measure.every == 1 else of


def _of(done: int, due: int) -> str:
    """Return so many of so many: what was done beyond what was due is no part of it."""
    return f"{min(done, due)} of {due}"


def _of_all(stand: Stand) -> str:
    measure = stand.life.term.measure
    of = f"{stand.done} of {stand.due}"
    if measure is None or measure.every > 1 or measure.period is Period.ONCE:
        return of
    return f"{of} {measure.period}{'' if stand.due == 1 else 's'}"


def _so_far(stand: Stand) -> str:
    return f"{stand.done} of {stand.due} done. " if stand.due > 1 else ""


def _stretch(measure: Measure | None) -> str:
    """Return the name of a window: a week, a month, a year, or else a stretch."""
    if measure is None or measure.period is Period.ONCE:
        return "stretch"
    if measure.period is Period.DAY:
        return "week" if measure.every <= 7 else "stretch"
    return measure.period.value if measure.every == 1 else "stretch"


_SENTENCES: dict[Rule, Callable[[Stand], str]] = {
    Rule.NOT_CLOSED: _not_closed,
    Rule.LAST_KEPT: _last_kept,
    Rule.LAST_NOT_KEPT: _last_not_kept,
    Rule.TWO_WITHOUT: _two_without,
    Rule.NOTHING_AT_ALL: _nothing_at_all,
    Rule.BY_DATE: _by_date,
    Rule.FINISHED: _finished,
    Rule.OVERDUE: _overdue,
    Rule.LONG_OVERDUE: _long_overdue,
    Rule.MOVED_OFTEN: _moved_often,
    Rule.PAUSED: _paused,
    Rule.PAST_ON_ARRIVAL: _past_on_arrival,
    Rule.ALL_KEPT: _over_with_figures,
    Rule.SOME_KEPT: _over_with_figures,
    Rule.CLOSED: _closed,
    Rule.RELEASED: _released,
}
