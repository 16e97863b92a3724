"""The sheet a picture is drawn on: strokes and words, each with the inks it is drawn in.

Inks are named (`ink`, `rule`, `rubric`, ...) and become classes, so that the page's stylesheet,
or the file's own, says what colour they are.
"""

from collections.abc import Iterable
from typing import Final, Literal

from lxml import etree

from service.feeds.pictures.forms import Form
from service.feeds.pictures.lettering import ELLIPSIS, clean, fitted, width
from service.feeds.pictures.manners import PLAIN, Ink, Manner

SVG: Final = "http://www.w3.org/2000/svg"
Anchor = Literal["start", "middle", "end"]
CAPITAL: Final = 0.33
"""Half the height of figures and capitals, of the size of the type."""


class Canvas:
    """A sheet of one form; `height` is set by what is drawn on it."""

    def __init__(self, form: Form, name: str) -> None:
        self.form = form
        self.height = 0.0
        self.drawn = etree.Element(f"{{{SVG}}}g", nsmap={None: SVG})
        self._name = f"{name}-{form.name}"
        self._hatches: set[str] = set()

    @property
    def size(self) -> float:
        """The size of the type."""
        return self.form.size

    def stroke(
        self,
        start: tuple[float, float],
        end: tuple[float, float],
        ink: Ink = "ink",
        thick: float = 1,
        dash: str = "",
    ) -> None:
        """Draw a straight line."""
        (x1, y1), (x2, y2) = start, end
        line = self._add("line", x1=x1, y1=y1, x2=x2, y2=y2)
        _inked(line, "none", ink, thick, dash)

    def path(
        self, points: Iterable[tuple[float, float]], *, thick: float = 1.75, dash: str = ""
    ) -> None:
        """Draw a line through points."""
        written = "L".join(f"{_said(x)} {_said(y)}" for x, y in points)
        path = self._add("path")
        path.set("d", f"M{written}")
        path.set("stroke-linejoin", "round")
        _inked(path, "none", "ink", thick, dash)

    def area(self, points: Iterable[tuple[float, float]], hatch: str = "") -> None:
        """Fill what points go round: with ink, or a hatch."""
        written = "L".join(f"{_said(x)} {_said(y)}" for x, y in points)
        area = self._add("path")
        area.set("d", f"M{written}Z")
        _inked(area, "none" if hatch else "ink", "none", 0)
        if hatch:
            area.set("fill", f"url(#{self._hatch(hatch)})")

    def dot(
        self, at: tuple[float, float], radius: float, fill: Ink = "ink", edge: Ink = "ground"
    ) -> None:
        """Draw a dot; its edge keeps it apart from what lies below it."""
        thick = 1.0 if edge == "ground" else 1.5
        _inked(self._add("circle", cx=at[0], cy=at[1], r=radius), fill, edge, thick)

    def box(
        self,
        corner: tuple[float, float],
        sides: tuple[float, float],
        fill: Ink = "ink",
        edge: Ink = "none",
        hatch: str = "",
    ) -> None:
        """Draw a rectangle from its upper left corner; a hatch fills it instead of an ink."""
        x, y = corner
        box = self._add("rect", x=x, y=y, width=sides[0], height=sides[1])
        _inked(box, "none" if hatch else fill, edge, 1)
        if hatch:
            box.set("fill", f"url(#{self._hatch(hatch)})")

    def words(
        self,
        at: tuple[float, float],
        words: str,
        *,
        manner: Manner = PLAIN,
        anchor: Anchor = "start",
        room: float | None = None,
        whole: str = "",
    ) -> None:
        """Write words on a baseline, in the room there is.

        Where they are cut, the whole is told when they are pointed at.
        """
        words = clean(words)
        shown = words if room is None else fitted(words, self.size, room)
        whole = clean(whole) or words
        text = self._add("text", x=at[0], y=at[1])
        if anchor != "start":
            text.set("text-anchor", anchor)
        if manner.slanted:
            text.set("font-style", "italic")
        _inked(text, manner.ink, "ground" if manner.halo else "none", 3)
        if manner.halo:
            text.set("paint-order", "stroke")
        if shown.endswith(ELLIPSIS) and shown != whole:
            etree.SubElement(text, f"{{{SVG}}}title").text = whole
            text[0].tail = shown
        else:
            text.text = shown

    def width_of(self, words: str) -> float:
        """Return how wide words are on this sheet."""
        return width(clean(words), self.size)

    def middle(self, y: float) -> float:
        """Return the baseline of words whose figures have their middle at a height."""
        return y + CAPITAL * self.size

    def _add(self, tag: str, **numbers: float) -> etree._Element:
        written = {name: _said(number) for name, number in numbers.items()}
        return etree.SubElement(self.drawn, f"{{{SVG}}}{tag}", written)

    def _hatch(self, kind: str) -> str:
        """Return the id of a hatch, laid down the first time it is asked for."""
        name = f"{self._name}-{kind}"
        if kind not in self._hatches:
            self._hatches.add(kind)
            step, thick = {"close": ("4", 1.6), "open": ("6", 0.9)}[kind]
            attributes = {"id": name, "width": step, "height": step}
            attributes |= {"patternUnits": "userSpaceOnUse", "patternTransform": "rotate(45)"}
            pattern = etree.Element(f"{{{SVG}}}pattern", attributes)
            ground = etree.SubElement(pattern, f"{{{SVG}}}rect", width=step, height=step)
            _inked(ground, "ground", "none", 0)
            line = etree.SubElement(pattern, f"{{{SVG}}}line", x1="0", y1="0", x2="0", y2=step)
            _inked(line, "none", "ink", thick * 2)
            self.drawn.insert(0, pattern)
        return name


def _inked(mark: etree._Element, fill: Ink, stroke: Ink, thick: float, dash: str = "") -> None:
    classes = []
    if fill == "none":
        mark.set("fill", "none")
    else:
        classes.append(f"f-{fill}")
    if stroke != "none":
        classes.append(f"s-{stroke}")
        mark.set("stroke-width", _said(thick))
    if dash:
        mark.set("stroke-dasharray", dash)
    if classes:
        mark.set("class", " ".join(classes))


def _said(number: float) -> str:
    return f"{round(number, 2):g}" if abs(number) < 1000 else f"{number:.1f}"
