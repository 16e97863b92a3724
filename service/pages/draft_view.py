"""What the page of a draft shows: its form, what is said beside each part, what was left."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime
from uuid import UUID
from zoneinfo import ZoneInfo

from cards.digest import Digest, Notice, Point, Quotation
from cards.intake import unplaced
from cards.intake.heading_words import MAX_HEADING
from cards.intake.telling import asked
from cards.intake.wording import excerpt
from cards.parts import Care, KeptDigest
from service.pages.budget_words import Bar
from service.pages.digest_form import LISTS, DigestForm
from service.pages.fields import Faults
from service.pages.form_digest import as_far_as_it_goes
from service.pages.placing import Placing, placing
from service.pages.wording import day_in_words
from service.pages.worth import Remark, worth_of
from service.use_cases.add_digest import ANOTHER_READING
from service.use_cases.looking_over import already_kept
from service.use_cases.ports import Desk
from service.use_cases.preferences import show_reader
from service.use_cases.price import price_of, prices_in_words
from service.use_cases.records import Draft


@dataclass(frozen=True, slots=True)
class Left:
    """Words of the document that stand in no part of the form.

    Attributes:
        source: what a row takes as its source that takes them in.
        words: as they stood.
        heading: whether they may be a heading of the reader's own.
        out: whether they were understood, and taken out here.
    """

    source: str
    words: str
    heading: bool
    out: bool


@dataclass(frozen=True, slots=True)
class DraftView:
    """The page of a draft.

    Attributes:
        id: of the draft.
        revision: at which the form was opened; 0 when it is not begun.
        draft: as it is kept, None when it is not begun.
        form: the fields as typed.
        faults: what is wrong, by field.
        bars: how much of the two pages it takes; empty while nothing can be measured.
        over: which pages are over, in a sentence, or "".
        remarks: what is said beside each row, by its stem, and each fact, by its name.
        beside: the words of the document each row came from, by its stem, and each fact.
        left: the words of the document that stand nowhere in the form.
        headings: its lines that only arrange it, each with what names it; one may be a
            heading of the reader's own.
        line: the standing plot line, or None.
        known: the digests of the same book in the library.
        reading: whether it is rather another reading of the book than a correction.
        saved: when it was saved, in words, "" when it is not.
        prices: what keeping the book would cost at each care, in words; empty while nothing
            can be asked of it.
    """

    id: UUID
    revision: int
    draft: Draft | None
    form: DigestForm
    faults: Faults
    bars: tuple[Bar, ...]
    over: str
    remarks: Mapping[str, tuple[Remark, ...]]
    beside: Mapping[str, str]
    left: tuple[Left, ...]
    headings: tuple[tuple[str, str], ...]
    line: Placing | None
    known: tuple[KeptDigest, ...]
    reading: bool
    saved: str
    prices: Mapping[Care, str] = field(default_factory=dict)


def view_of(
    desk: Desk, draft_id: UUID, draft: Draft | None, form: DigestForm, faults: Faults | None = None
) -> DraftView:
    """Return what the page of a draft shows."""
    digest = as_far_as_it_goes(form)
    handed_in = draft is not None and draft.file is not None
    worth = worth_of(desk, form, digest, _asked(digest) if digest and handed_in else ())
    remarks = _remarks(form, draft)
    for where, said in worth.remarks.items():
        remarks[where] += said
    titled = digest is not None and form.facts["title"].strip()
    known = already_kept(desk, digest) if digest is not None and titled else ()
    return DraftView(
        id=draft_id,
        revision=0 if draft is None else draft.revision,
        draft=draft,
        form=form,
        faults=faults or {},
        bars=worth.bars,
        over=worth.over,
        remarks={where: tuple(said) for where, said in remarks.items()},
        beside=_beside(form, draft),
        left=tuple(_left(form, draft)),
        headings=tuple(headings_of(draft).items()),
        line=placing(form),
        known=known,
        reading=digest is not None and _rather_a_reading(digest, known),
        saved="" if draft is None else _when(desk, draft.changed_at),
        prices={} if digest is None else prices_in_words(price_of(desk, digest)),
    )


def words_left(form: DigestForm, draft: Draft) -> dict[str, str]:
    """Return the words of the document that stand nowhere in a form, by their source."""
    return {left.source: left.words for left in _left(form, draft)}


def headings_of(draft: Draft | None) -> dict[str, str]:
    """Return the lines of a document that only arrange it and may be headings: `document 2`."""
    arranging = "" if draft is None else _words(draft).get("document", "")
    lines = dict.fromkeys(line.strip() for line in arranging.split("\n") if _may_head(line))
    return {f"document {number}": line for number, line in enumerate(lines, 1)}


def claimed(form: DigestForm) -> set[str]:
    """Return which words of the document stand in the form: `theme`, `points 3`, `left 2`."""
    said = [form.facts[f"{name}-source"] for name in ("theme", "judgement")]
    said += [row.source for name in LISTS for row in form.rows[name] if row.text.strip()]
    return {each for source in said for each in source.split(",") if each}


def _words(draft: Draft) -> dict[str, str]:
    found = {f"left {number}": words for number, words in enumerate(draft.left, 1)}
    for source in draft.sources:
        known = found.get(source.part)
        found[source.part] = source.words if known is None else f"{known}\n{source.words}"
    return found


def _beside(form: DigestForm, draft: Draft | None) -> dict[str, str]:
    if draft is None or draft.file is None:
        return {}
    words = _words(draft)
    found = {
        name: words[name]
        for name in ("title", "author", "edition", "isbn", "pages", "finished_on", *LISTS)
        if name in words
    }
    sourced = {name: form.facts[f"{name}-source"] for name in ("theme", "judgement")}
    sourced |= {f"{name}-{row.key}": row.source for name in LISTS for row in form.rows[name]}
    for where, source in sourced.items():
        said = [words[each] for each in source.split(",") if each in words]
        if said:
            found[where] = "\n".join(said)
    return found


def _left(form: DigestForm, draft: Draft | None) -> Iterable[Left]:
    if draft is None:
        return
    taken = claimed(form)
    for place, words in enumerate(draft.left, 1):
        if f"left {place}" not in taken:
            yield Left(f"left {place}", words, _may_head(words), out=False)
    for source in draft.sources:
        name, _, number = source.part.partition(" ")
        part = name in ("theme", "judgement") or (name in LISTS and number != "")
        if part and source.part not in taken:
            yield Left(source.part, source.words, heading=False, out=True)


def _may_head(words: str) -> bool:
    """Tell whether words may be a heading: one short line that ends no sentence."""
    line = words.strip()
    return (
        line != ""
        and "\n" not in line
        and len(line) <= MAX_HEADING
        and not line.endswith((".", "!", ",", ";"))
    )


def _remarks(form: DigestForm, draft: Draft | None) -> defaultdict[str, list[Remark]]:
    """Return what the reading of the file told, beside what it is about and still is true of."""
    told: defaultdict[str, list[Remark]] = defaultdict(list)
    if draft is None:
        return told
    rows = {
        source: (f"{name}-{row.key}", row)
        for name in LISTS
        for row in form.rows[name]
        for source in row.source.split(",")
        if row.text.strip()
    }
    sources = {source.part for source in draft.sources}
    for notice in draft.notices:
        where, row = rows.get(notice.part, (notice.part, None))
        gone = row is None and notice.part.partition(" ")[2] != ""
        filled = notice.part not in sources and form.facts.get(notice.part, "").strip()
        repeated = notice.message in _ASKED or any(
            f"“{excerpt(words)}”" in notice.message for words in draft.left
        )
        if not gone and not filled and not repeated:
            told[where].append(Remark("told", notice.message))
    return told


_ASKED = {
    notice.message
    for notice in asked(Digest("—", points=(Point("—"),), quotations=(Quotation("—"),)))
}
"""What the reading of a file asks about quotations; it is asked again as the form stands now."""


def _asked(digest: Digest) -> Iterable[Notice]:
    """Yield the question of each quotation of which nothing says where it stands."""
    for number, quotation in enumerate(digest.quotations, 1):
        if digest.points and quotation.after is None:
            yield unplaced(number)


def _rather_a_reading(digest: Digest, known: Iterable[KeptDigest]) -> bool:
    """Tell whether the book was finished a season or more from every known time."""
    days = [each.finished_on for each in known]
    if digest.finished_on is None or not days or None in days:
        return False
    return all(abs((digest.finished_on - day).days) >= ANOTHER_READING for day in days if day)


def _when(desk: Desk, at: datetime) -> str:
    """Return an instant as the reader's clock shows it, with the day when it is not today's."""
    reader = show_reader(desk)
    zone = ZoneInfo(reader.time_zone)
    local = at.replace(tzinfo=at.tzinfo or UTC).astimezone(zone)
    clock = f"{local:%H:%M}"
    if local.date() == desk.now().astimezone(zone).date():
        return clock
    return f"{clock} on {day_in_words(local.date())}"
