"""The standing plot line of a form: its points, and in each gap the quotations that stand there."""

from dataclasses import dataclass

from service.pages.digest_form import DigestForm

_LONGEST = 60


@dataclass(frozen=True, slots=True)
class Dot:
    """A quotation on the line.

    Attributes:
        key: of its row.
        words: the beginning of it.
    """

    key: int
    words: str


@dataclass(frozen=True, slots=True)
class Landmark:
    """A point on the line and the gap after it; the first one has no point.

    Attributes:
        key: of the point's row, 0 for the gap before all points.
        number: of the point, 0 for none.
        words: of the point, "" for none.
        dots: the quotations that stand after it.
    """

    key: int
    number: int
    words: str
    dots: tuple[Dot, ...]


@dataclass(frozen=True, slots=True)
class Placing:
    """The whole line.

    Attributes:
        landmarks: from the first gap on.
        apart: the quotations of which nothing says where they stand.
    """

    landmarks: tuple[Landmark, ...]
    apart: tuple[Dot, ...]


def placing(form: DigestForm) -> Placing | None:
    """Return the standing plot line of a form, or None without points or without quotations."""
    points = [row for row in form.rows["points"] if row.text.strip()]
    quotations = [row for row in form.rows["quotations"] if row.text.strip()]
    if not points or not quotations:
        return None
    dots: dict[str, list[Dot]] = {"0": [], **{str(row.key): [] for row in points}}
    apart: list[Dot] = []
    for row in quotations:
        dots.get(row.after, apart).append(Dot(row.key, _beginning(row.text)))
    landmarks = [Landmark(0, 0, "", tuple(dots["0"]))]
    landmarks += [
        Landmark(row.key, number, row.text.strip(), tuple(dots[str(row.key)]))
        for number, row in enumerate(points, 1)
    ]
    return Placing(tuple(landmarks), tuple(apart))


def _beginning(text: str) -> str:
    words = " ".join(text.split())
    return words if len(words) <= _LONGEST else words[:_LONGEST].rsplit(" ", 1)[0] + " …"
