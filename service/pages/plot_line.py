"""The plot line: a book from its first page to its last, its points and quotations on it.

Only what has a known page stands on the line; the rest is named apart from it, since a
position is never invented.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from cards.parts import KeptDigest, Part, PartKind
from service.pages.wording import capital, counted, listed
from service.use_cases.items import ItemView


@dataclass(frozen=True, slots=True)
class Stroke:
    """One thing on the line.

    Attributes:
        at: percent of the line's length, 0 to 100.
        page: its page.
        label: what it is, in a few words.
    """

    at: float
    page: int
    label: str


@dataclass(frozen=True, slots=True)
class PlotLine:
    """The strip of one book.

    Attributes:
        title: the book's.
        last: the page at its right end.
        whole: whether that is the book's last page, or only the last one the digest names.
        ticks: its points.
        dots: its quotations.
        here: where what was asked stands, or None.
        guess: where the reader placed it, or None.
        apart: what has no known page, in words.
    """

    title: str
    last: int
    whole: bool
    ticks: tuple[Stroke, ...]
    dots: tuple[Stroke, ...]
    here: Stroke | None
    guess: Stroke | None
    apart: tuple[str, ...]

    @property
    def name(self) -> str:
        """What the strip is, in one phrase."""
        return f"{self.title} from page 1 to page {self.last}"

    @property
    def words(self) -> str:
        """All that is on the strip, said in words."""
        said = []
        for strokes, one in ((self.ticks, "point"), (self.dots, "quotation")):
            if strokes:
                pages = listed(str(stroke.page) for stroke in strokes)
                where = "page" if len(strokes) == 1 else "pages"
                said.append(f"{capital(counted(len(strokes), one))} on {where} {pages}.")
        said.extend(
            f"{stroke.label}: page {stroke.page}." for stroke in (self.here, self.guess) if stroke
        )
        return " ".join(said)


def plot_line(
    kept: KeptDigest,
    *,
    quotations: bool = True,
    here: int | None = None,
    guess: int | None = None,
) -> PlotLine | None:
    """Return a book's strip, or None when nothing on it has a known page."""
    points = kept.held(PartKind.POINT)
    dotted = kept.held(PartKind.QUOTATION) if quotations else ()
    named = [part.page for part in (*points, *dotted) if part.page is not None]
    named += [page for page in (here,) if page is not None]
    if not named:
        return None
    last = max([kept.pages or 2, *named, *([] if guess is None else [guess])])
    return PlotLine(
        title=kept.title,
        last=last,
        whole=kept.pages == last,
        ticks=tuple(_strokes(points, last)),
        dots=tuple(_strokes(dotted, last)),
        here=None if here is None else Stroke(_at(here, last), here, "Where it stands"),
        guess=None if guess is None else Stroke(_at(guess, last), guess, "Where you placed it"),
        apart=tuple(_label(part) for part in (*points, *dotted) if part.page is None),
    )


def line_of_cue(item: ItemView, *, in_sight: bool) -> PlotLine | None:
    """Return the strip on which a page is chosen, or None when the book's length is not known.

    Its points are on it only while they may be in sight.
    """
    cue = item.cue
    if cue is None or cue.pages is None:
        return None
    seen = cue.landmarks if in_sight else ()
    pages = [(each.number, each.page) for each in seen if each.page is not None]
    last = max([cue.pages, 2, *(page for _, page in pages)])
    return PlotLine(
        title=item.title,
        last=last,
        whole=cue.pages == last,
        ticks=tuple(Stroke(_at(page, last), page, f"point {number}") for number, page in pages),
        dots=(),
        here=None,
        guess=None,
        apart=(),
    )


def _strokes(parts: Iterable[Part], last: int) -> Iterable[Stroke]:
    for part in parts:
        if part.page is not None:
            yield Stroke(_at(part.page, last), part.page, _label(part))


def _at(page: int, last: int) -> float:
    return round(100 * (max(1, page) - 1) / max(1, last - 1), 2)


def _label(part: Part) -> str:
    located = f" ({part.locator})" if part.locator else ""
    return f"{part.kind.value} {part.number}{located}"
