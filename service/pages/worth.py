"""What a form makes of a digest: how it fills its two pages, and what is advised on each part."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from cards.digest import Digest, Notice
from service.pages.budget_words import Bar, bars, over_in_words
from service.pages.digest_form import DigestForm
from service.pages.form_digest import as_far_as_it_goes, stems
from service.use_cases.advice import advise
from service.use_cases.ports import Desk
from service.use_cases.telling import told_once
from service.use_cases.writing_out import measure


@dataclass(frozen=True, slots=True)
class Remark:
    """Something said beside a part: `told` by the reading of a file, `advice`, or a `cut`."""

    kind: str
    message: str


@dataclass(frozen=True, slots=True)
class Worth:
    """How a digest in a form would be kept.

    Attributes:
        bars: how much of the two pages it takes; empty while nothing can be measured.
        over: which pages are over, in a sentence, or "".
        remarks: what is said beside each row, by its stem, and each fact, by its name.
    """

    bars: tuple[Bar, ...] = ()
    over: str = ""
    remarks: Mapping[str, tuple[Remark, ...]] = field(default_factory=dict)


def worth_of(
    desk: Desk, form: DigestForm, digest: Digest | None, questions: Iterable[Notice] = ()
) -> Worth:
    """Return what a form makes of its digest, with questions on it told among the advice.

    `digest` is the form's own as far as it goes, None while that is nothing.
    """
    if digest is None:
        return Worth()
    budget = measure(desk, digest)
    cuts = [Notice(cut.part, cut.message) for cut in budget.cuts]
    shown = bars(budget)
    told, advice = told_once(questions, advise(desk, digest))
    places = stems(form)
    remarks: defaultdict[str, list[Remark]] = defaultdict(list)
    for kind, notices in (("told", told), ("advice", advice), ("cut", cuts)):
        for notice in notices:
            remarks[places.get(notice.part, notice.part)].append(Remark(kind, notice.message))
    return Worth(shown, over_in_words(shown), {at: tuple(said) for at, said in remarks.items()})


def worth_as_typed(desk: Desk, form: DigestForm) -> Worth:
    """Return what a form makes of its digest as far as that goes."""
    return worth_of(desk, form, as_far_as_it_goes(form))
