"""All figures of retention, told from the tallies."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from uuid import UUID

from cards.commitments.windows import Kept
from cards.kinds.base import KindName
from cards.retention.agreement import Agreements, agreements_of
from cards.retention.forgetting import Forgetting, forgetting_of
from cards.retention.kept_months import MonthKept, months_kept
from cards.retention.known import KnownNow, Recall, known_now
from cards.retention.quality import Quality, quality_of
from cards.retention.reading import read
from cards.retention.shares import Share, share_of
from cards.retention.survival import Survival, survival_of
from cards.retention.tally import Tallies, total


@dataclass(frozen=True, slots=True)
class Retention:
    """What came back when asked, how well it was foreseen, and what is known now.

    Attributes:
        target: the retention aimed for.
        answers: all there are, also those that are no recall of what was asked on an
            earlier day: first answers, and further ones of a day.
        whole: of all that counts.
        books: by digest; those with an answer that counts.
        kinds: by kind, in the order of kinds; those with an answer that counts.
        months: by `YYYY-MM`, in order; those with an answer that counts.
        quality: how well it was predicted; None where nothing was.
        forgetting: by the age of the memory, of all kinds.
        forgetting_by_kind: the same by kind, those with an answer that counts.
        survival: the time to the first blank by kind, those with an answer.
        agreements: the reader's grade against the mark.
        known: what is known now.
        kept: commitments kept, by month, in order.
    """

    target: float
    answers: int
    whole: Share
    books: dict[UUID, Share]
    kinds: dict[KindName, Share]
    months: dict[str, Share]
    quality: Quality | None
    forgetting: Forgetting
    forgetting_by_kind: dict[KindName, Forgetting]
    survival: dict[KindName, Survival]
    agreements: Agreements
    known: KnownNow
    kept: tuple[MonthKept, ...]


def figures(
    tallies: Tallies,
    target: float,
    items: Iterable[Recall] = (),
    windows: Iterable[tuple[date, Kept]] = (),
) -> Retention:
    """Return all figures of retention; the work does not grow with the number of answers.

    Args:
        tallies: of all answers to all items (`cards.retention.tallying`).
        target: the retention aimed for, as a probability.
        items: those that are not retired, as they stand today.
        windows: of all commitments (`cards.retention.kept_months.judged_windows`).
    """
    sorts = read(tallies)
    kinds = [kind for kind in KindName if kind in sorts.ages]
    return Retention(
        target,
        total(sorts.everything.values()).n,
        share_of(sorts.whole()),
        {digest_id: share_of(tally) for digest_id, tally in sorts.books.items()},
        {kind: share_of(sorts.of_kind(kind)) for kind in kinds},
        {month: share_of(tally) for month, tally in sorts.months.items()},
        quality_of(sorts, target),
        forgetting_of(sorts.by_age()),
        {kind: forgetting_of(sorts.ages[kind]) for kind in kinds},
        {kind: survival_of(sorts.survivals[kind]) for kind in KindName if kind in sorts.survivals},
        agreements_of(sorts.marks),
        known_now(items),
        months_kept(windows),
    )
