"""A reader looks back on a year of what their books asked."""

from datetime import date

from cards.errors import Invalid
from cards.yearly import Facts, Review, review_of
from service.use_cases.ports import Desk
from service.use_cases.standing import stands_on

FIRST_YEAR = 1900
"""The earliest year looked back on; nobody's library is older."""


def yearly_review(desk: Desk, year: int | None = None) -> Review:
    """Return the review of a year, as it stood on its last day, or stands today while it runs.

    Args:
        desk: the door's desk.
        year: which; None for the one that runs, in January for the one before.

    Raises:
        Invalid: the year has not begun yet, or lies before all libraries.
    """
    with desk.store.reading() as work:
        today = work.readers.get(desk.reader).days.of(desk.now())
        if year is None:
            year = today.year - 1 if today.month == 1 else today.year
        if not FIRST_YEAR <= year <= today.year:
            raise Invalid(
                f"A year from {FIRST_YEAR} to {today.year} can be looked back on, not {year}.",
                where="year",
            )
        last = min(date(year, 12, 31), today)
        commitments = work.commitments.all(desk.reader)
        ids = [each.commitment.id for each in commitments]
        before = stands_on(work, desk.reader, commitments, date(year - 1, 12, 31))
        after = stands_on(work, desk.reader, commitments, last)
        decisions = work.decisions.of(desk.reader, ids)
        check_ins = work.check_ins.since(desk.reader, dict.fromkeys(after, date(year, 1, 1)))
    return review_of(
        year,
        last,
        (
            Facts(
                commitment=each.commitment,
                digest_id=each.digest_id,
                title=each.title,
                author=each.author,
                text=each.text,
                before=before.get(each.commitment.id),
                after=after[each.commitment.id],
                decisions=tuple(decisions.get(each.commitment.id, ())),
                check_ins=tuple(check_ins.get(each.commitment.id, ())),
            )
            for each in commitments
            if each.commitment.id in after
        ),
    )
