"""Commitments with their facts, for the tests of the yearly review."""

from datetime import UTC, date, datetime, time
from uuid import UUID, uuid5

from cards.commitments import Act, CheckIn, Commitment, Decision, Measure, Outcome, pace_of
from cards.yearly import Facts

_SPACE = UUID(int=1)


def check_in(of: UUID, day: date, outcome: Outcome = Outcome.KEPT) -> CheckIn:
    """Return a check-in reported in the evening of its own day."""
    at = datetime.combine(day, time(20), UTC)
    return CheckIn(uuid5(of, f"{day} {outcome}"), of, outcome, day, at, day)


def decision(of: UUID, act: Act, day: date, **more: object) -> Decision:
    """Return a decision recorded on the day it holds from."""
    at = datetime.combine(day, time(9), UTC)
    return Decision(uuid5(of, f"{day} {act}"), of, act, day, at, day, **more)


def facts(
    text: str,
    book: str = "Walden",
    made: date = date(2026, 1, 5),
    measure: Measure | None = None,
    *,
    decisions: tuple[tuple[Act, date, dict[str, object]], ...] = (),
    kept: tuple[date, ...] = (),
    missed: tuple[date, ...] = (),
    last: date = date(2026, 12, 31),
) -> Facts:
    """Return what is known of one commitment for the year of `last`."""
    of = uuid5(_SPACE, f"{book} {text}")
    made_it = Commitment(of, text, made, made, measure)
    decided = tuple(decision(of, act, day, **more) for act, day, more in decisions)
    said = tuple(check_in(of, day) for day in kept)
    said += tuple(check_in(of, day, Outcome.MISSED) for day in missed)
    eve = date(last.year - 1, 12, 31)
    return Facts(
        commitment=made_it,
        digest_id=uuid5(_SPACE, book),
        title=book,
        author=None,
        text=next((each.words for each in reversed(decided) if each.act is Act.REWORD), text),
        before=pace_of(made_it, decided, said, eve) if made <= eve else None,
        after=pace_of(made_it, decided, said, last),
        decisions=decided,
        check_ins=said,
    )
