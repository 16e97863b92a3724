"""Reading a drawn picture back: its scales by their ticks alone, and what stands on them."""

import math
import re
from collections.abc import Callable

from lxml import etree

from service.feeds.pictures import Pictures
from service.use_cases.picture_records import Drawing
from tests.feeds.pictures.samples import picture

SVG = "{http://www.w3.org/2000/svg}"
FORMS = ("wide", "narrow")
_NUMBER = re.compile(r"−?[\d,.]+%?")
Mark = etree._Element
_SPANS = {"1 min": 1, "10 min": 10, "1 hour": 60, "1 day": 1440, "1 week": 10080}
_SPANS |= {"1 month": 43200, "1 year": 525600, "10 years": 5256000}


def drawn(drawing: Drawing, form: str) -> Mark:
    """Return one form of a drawing as it stands on a page."""
    both = etree.fromstring(Pictures().inline(picture(drawing)))
    return next(svg for svg in both if svg.get("class") == form)


def marks(svg: Mark, tag: str, ink: str = "") -> list[Mark]:
    """Return the marks of a tag, in the order they are drawn, or only those of an ink."""
    found = [mark for mark in svg.iter(f"{SVG}{tag}") if mark.getparent().tag != f"{SVG}pattern"]
    return [mark for mark in found if not ink or ink in mark.get("class", "").split()]


def at(mark: Mark, *names: str) -> tuple[float, ...]:
    """Return numbers of a mark."""
    return tuple(float(mark.get(name)) for name in names)


def words(text: Mark) -> str:
    """Return what is read of a text; what is told of it when pointed at is left out."""
    return "".join([text.text or "", *(child.tail or "" for child in text)])


def points(path: Mark) -> list[tuple[float, float]]:
    """Return the points of a path."""
    return [
        (float(x), float(y))
        for x, y in (pair.split() for pair in re.split("[ML]", path.get("d").strip("Z"))[1:])
    ]


def across(svg: Mark, *, log: bool = False) -> Callable[[float], float]:
    """Return what turns a place across into a value, from the ticks' words and places."""
    return _scale([(x, value) for x, _, value in _ticks(svg, "middle")], log=log)


def up(svg: Mark) -> Callable[[float], float]:
    """Return what turns a height into a value: the rules, paired with the words beside them."""
    values = [value for _, _, value in sorted(_ticks(svg, "end"), key=lambda tick: tick[1])]
    rules = sorted(at(line, "y1")[0] for line in marks(svg, "line", "s-rule"))
    return _scale(list(zip(rules, values, strict=True)), log=False)


def _ticks(svg: Mark, anchor: str) -> list[tuple[float, float, float]]:
    found = []
    for text in marks(svg, "text", "f-faint"):
        said = words(text)
        number = _SPANS.get(said)
        if number is None and _NUMBER.fullmatch(said):
            number = float(said.strip("%−").replace(",", "")) / (100 if "%" in said else 1)
        if text.get("text-anchor") == anchor and number is not None:
            found.append((*at(text, "x", "y"), number))
    return found


def _scale(known: list[tuple[float, float]], *, log: bool) -> Callable[[float], float]:
    (place, value), (last_place, last_value) = known[0], known[-1]
    if log:
        value, last_value = math.log(value), math.log(last_value)
    slope = (last_value - value) / (last_place - place)

    def read(there: float) -> float:
        linear = value + (there - place) * slope
        return math.exp(linear) if log else linear

    return read


def half_unit(scale: Callable[[float], float], place: float) -> float:
    """Return what half a unit of the sheet is worth at a place."""
    return abs(scale(place + 0.25) - scale(place - 0.25))
