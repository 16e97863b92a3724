"""The sections a digest gives a talk; one it has nothing for is not there."""

from collections.abc import Callable, Mapping
from string import ascii_uppercase
from uuid import UUID

from cards.cautions import caution
from cards.commitments import Stand
from cards.parts import KeptDigest, Part, PartKind
from cards.talk.drawing import drawn, on_the_sheet, shows, shuffled, theme_of
from cards.talk.lengths import MINUTES, Length, Stage
from cards.talk.recorded import recorded
from cards.talk.section import Blank, Line, Section

MOST_REPORTED = 6
"""Commitments on a sheet: a minute and a half for each in the ten minutes."""
MOST_POINTS = 9
"""Points to be ordered: two minutes for each, and as many as find room on the page."""
MOST_PLACED = 5
"""Quotations to be placed: three minutes for each."""
_TOLD = 3
"""Points told to someone who did not read the book."""

Stands = Mapping[UUID, Stand]


def sections_of(kept: KeptDigest, stands: Stands, length: Length, seed: str) -> tuple[Section, ...]:
    """Return the sections of a talk, in their order."""
    makers: dict[Stage, Callable[[], Section | None]] = {
        Stage.REPORT: lambda: _report(kept, stands, length),
        Stage.THEME: lambda: _theme(kept, length),
        Stage.ORDER: lambda: _order(kept, seed),
        Stage.PLACING: lambda: _placing(kept, seed),
        Stage.JUDGEMENT: lambda: _judgement(kept),
        Stage.RESOLVING: _resolving,
        Stage.POINTS: lambda: _points(kept, seed),
        Stage.READING: lambda: _reading(kept, seed),
        Stage.BACK: lambda: _back(kept),
    }
    made = (makers[stage]() for stage in MINUTES[length])
    return tuple(section for section in made if section is not None)


def _report(kept: KeptDigest, stands: Stands, length: Length) -> Section | None:
    parts = on_the_sheet(kept, PartKind.COMMITMENT)
    if not parts:
        return None
    # What still runs is reported first; among the rest the digest's order holds.
    running = sorted(parts, key=lambda part: part.id in stands and not stands[part.id].asked)
    said = running[:MOST_REPORTED]
    return Section(
        Stage.REPORT,
        "What was promised",
        "Say of each whether it was kept, before you look overleaf at what was recorded."
        if length is Length.READ_IT
        else "Say what the book asked of you, and what came of it.",
        tuple(
            Line(str(number), part.text, caution(part.text) or "")
            for number, part in enumerate(said, 1)
        ),
        answers=tuple(
            Line(str(number), part.text, recorded(stands.get(part.id)))
            for number, part in enumerate(said, 1)
        ),
        more=len(parts) - len(said),
    )


def _theme(kept: KeptDigest, length: Length) -> Section | None:
    theme = theme_of(kept)
    if theme is None:
        return None
    return Section(
        Stage.THEME,
        "The theme, with the digest closed",
        "Each says what the book comes to, and by what stages. Then compare with what stands "
        "overleaf."
        if length is Length.READ_IT
        else "Say what the book comes to, and by what stages, to someone who has not read it.",
        answers=(Line("", theme),),
    )


def _points_drawn(kept: KeptDigest, seed: str) -> tuple[Part, ...]:
    return drawn(on_the_sheet(kept, PartKind.POINT), MOST_POINTS, f"{seed} points")


def _lettered(kept: KeptDigest, seed: str) -> dict[UUID, str]:
    """Return the letters of the points on the sheet, given in the order they stand there."""
    order = shuffled(_points_drawn(kept, seed), f"{seed} order")
    return {part.id: letter for part, letter in zip(order, ascii_uppercase, strict=False)}


def _order(kept: KeptDigest, seed: str) -> Section | None:
    points = _points_drawn(kept, seed)
    if len(points) < 2:
        return None
    letters = _lettered(kept, seed)
    by_id = {part.id: part for part in points}
    return Section(
        Stage.ORDER,
        "The order of the argument",
        "Number these as they follow one another in the book, and say how each leads to the next.",
        tuple(Line(letter, by_id[each].text) for each, letter in letters.items()),
        Blank.NUMBER,
        tuple(
            Line(f"{number} {letters[part.id]}", part.text, part.locator or "")
            for number, part in enumerate(points, 1)
        ),
        more=len(kept.held(PartKind.POINT)) - len(points),
    )


def _placing(kept: KeptDigest, seed: str) -> Section | None:
    letters = _lettered(kept, seed)
    # With one point there is no order, so no points stand on the sheet to place anything by.
    lettered = letters if len(letters) > 1 else {}
    placed = [
        (part, _place(kept, part, lettered)) for part in on_the_sheet(kept, PartKind.QUOTATION)
    ]
    known = [(part, place) for part, place in placed if place]
    if not known:
        return None
    order = shuffled(drawn(known, MOST_PLACED, f"{seed} quotations"), f"{seed} places")
    by = "after which of the points it stands, or at which page" if lettered else "where it stands"
    return Section(
        Stage.PLACING,
        "Quotations, to be placed",
        f"Read each out; the other says {by}. Then the other reads theirs.",
        tuple(Line(str(number), part.text) for number, (part, _) in enumerate(order, 1)),
        Blank.PLACE,
        tuple(Line(str(number), part.text, place) for number, (part, place) in enumerate(order, 1)),
        more=len(kept.held(PartKind.QUOTATION)) - len(order),
    )


def _place(kept: KeptDigest, part: Part, letters: Mapping[UUID, str]) -> str:
    """Return where a quotation stands, as far as something says so; "" where nothing does."""
    said = []
    if part.after == 0:
        said.append("before all points")
    elif part.after is not None:
        point = kept.held(PartKind.POINT)[part.after - 1]
        letter = letters.get(point.id)
        said.append(f"after {letter}" if letter else f"after “{point.text}”")
    return ", ".join(filter(None, (*said, part.locator)))


def _judgement(kept: KeptDigest) -> Section | None:
    if kept.judgement is None:
        return None
    # A judgement that tells the theme waits overleaf until that was told.
    line = (Line("", kept.judgement),)
    open_to_read = not shows(kept.judgement, theme_of(kept))
    return Section(
        Stage.JUDGEMENT,
        "Judgement, and where you differ",
        "Say whether the book is right, and how far. Where do you differ from one another, and "
        "what in the book would settle it?",
        line if open_to_read else (),
        answers=() if open_to_read else line,
    )


def _resolving() -> Section:
    return Section(
        Stage.RESOLVING,
        "From now on",
        "What does the book ask of you now? Write each as “When …, I will …”, and read it back to "
        "the other.",
        blank=Blank.ROOM,
    )


def _points(kept: KeptDigest, seed: str) -> Section | None:
    points = drawn(on_the_sheet(kept, PartKind.POINT), _TOLD, f"{seed} points")
    if not points:
        return None
    return Section(
        Stage.POINTS,
        "What carries it, in a few points",
        "Tell them one after the other, each with what happens or is shown.",
        tuple(Line(str(number), part.text) for number, part in enumerate(points, 1)),
        more=len(kept.held(PartKind.POINT)) - len(points),
    )


def _reading(kept: KeptDigest, seed: str) -> Section | None:
    chosen = shuffled(on_the_sheet(kept, PartKind.QUOTATION), f"{seed} quotations")[:1]
    if not chosen:
        return None
    locator = chosen[0].locator or ""
    return Section(
        Stage.READING,
        "One quotation, read out",
        "Read it slowly, and say why you kept it.",
        (Line("", chosen[0].text, locator),),
    )


def _back(kept: KeptDigest) -> Section:
    judgement = kept.judgement
    if judgement is not None and shows(judgement, theme_of(kept)):
        judgement = None
    asked = "Ask what the other would want to know of it, or would not believe, and write it down."
    return Section(
        Stage.BACK,
        "One question back",
        asked if judgement is None else f"Say what you hold of the book. {asked}",
        () if judgement is None else (Line("", judgement),),
        Blank.ROOM,
    )
