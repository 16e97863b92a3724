"""Behind the port of that name: pictures for pages, and as files."""

import math
from typing import Final

from lxml import etree

from service.feeds.pictures.calibration import draw_calibration
from service.feeds.pictures.canvas import SVG, Canvas
from service.feeds.pictures.csv_of import csv_of
from service.feeds.pictures.curves import draw_curves
from service.feeds.pictures.days import draw_days
from service.feeds.pictures.dress import DARK, LIGHT, dressed, stylesheet
from service.feeds.pictures.forms import NARROW, WIDE, Form
from service.feeds.pictures.grid import draw_grid
from service.feeds.pictures.lettering import broken, clean
from service.feeds.pictures.manners import FAINT
from service.feeds.pictures.months import draw_months
from service.feeds.pictures.share_rows import draw_shares
from service.feeds.pictures.steps import draw_steps
from service.feeds.pictures.typesetting import FAMILY, Setter
from service.use_cases.picture_records import (
    Calibration,
    Curves,
    Days,
    Drawing,
    Grid,
    Months,
    Picture,
    Shares,
    Steps,
)

_MARGIN: Final = 24.0
"""Units around a picture that stands alone."""
_TITLE: Final = 18.0
"""The size of its title."""
_MOST_LINES: Final = 6
"""Lines its description takes."""


class Pictures:
    """Draws pictures."""

    def __init__(self) -> None:
        self._setter = Setter()

    def inline(self, picture: Picture) -> str:
        """Return a picture as markup for a page: a wide and a narrow SVG, of which one shows.

        With nothing to draw, its description stands there instead.
        """
        if picture.empty:
            told = etree.Element("p", {"class": "picture-none"})
            told.text = clean(picture.description)
            return etree.tostring(told, encoding="unicode")
        both = etree.Element("div", {"class": "picture"})
        both.extend(_on_page(picture, form) for form in (WIDE, NARROW))
        return etree.tostring(both, encoding="unicode")

    def svg(self, picture: Picture) -> bytes:
        """Return a picture as an SVG file that stands alone, light or dark as the system asks."""
        root = _alone(picture)
        dressed(root, LIGHT)
        style = etree.Element(f"{{{SVG}}}style")
        style.text = stylesheet()
        root.insert(2, style)
        return _written(root)

    def png(self, picture: Picture, *, dark: bool = False) -> bytes:
        """Return a picture as a PNG, two dots to a unit.

        Raises:
            CannotWrite: it could not be set.
        """
        root = _alone(picture)
        dressed(root, DARK if dark else LIGHT)
        return self._setter.png(
            _written(root), float(root.get("width", "0")), float(root.get("height", "0"))
        )

    def data(self, picture: Picture) -> bytes:
        """Return the figures of a picture as CSV (RFC 4180) in UTF-8."""
        return csv_of(picture.table)


def _on_page(picture: Picture, form: Form) -> etree._Element:
    canvas = Canvas(form, picture.name)
    _draw(picture.drawing, canvas)
    root = _root(picture, f"{picture.name}-{form.name}", form, canvas.height)
    root.set("class", form.name)
    root.append(canvas.drawn)
    return root


def _alone(picture: Picture) -> etree._Element:
    """Return a picture with its title and description above it, on ground of its own."""
    canvas = Canvas(WIDE, picture.name)
    if not picture.empty:
        _draw(picture.drawing, canvas)
    head = Canvas(WIDE, picture.name)
    titles = broken(clean(picture.title), _TITLE, WIDE.width, 2)
    told = broken(clean(picture.description), WIDE.size, WIDE.width, _MOST_LINES)
    y = _MARGIN
    for words in titles:
        y += _TITLE * 1.2
        head.words((0, y), words)
        title = head.drawn[-1]
        title.set("font-size", f"{_TITLE:g}")
        title.set("font-weight", "600")
    y += 4
    for words in told:
        y += WIDE.line
        head.words((0, y), words, manner=FAINT)
    above = y + 18
    height = float(math.ceil(above + canvas.height + _MARGIN))
    root = _root(picture, picture.name, WIDE, height, margin=_MARGIN)
    root.set("width", f"{WIDE.width + 2 * _MARGIN:g}")
    root.set("height", f"{height:g}")
    root.set("font-family", f"'{FAMILY}', 'Iowan Old Style', Georgia, serif")
    ground = Canvas(WIDE, picture.name)
    ground.box((-_MARGIN, 0), (WIDE.width + 2 * _MARGIN, height), "ground")
    canvas.drawn.set("transform", f"translate(0 {above:g})")
    for group in (ground.drawn, head.drawn, canvas.drawn):
        root.append(group)
    return root


def _root(
    picture: Picture, name: str, form: Form, height: float, margin: float = 0.0
) -> etree._Element:
    """Return an empty SVG that says what it shows."""
    wide = form.width + 2 * margin
    root = etree.Element(f"{{{SVG}}}svg", nsmap={None: SVG})
    root.set("viewBox", f"{0 - margin:g} 0 {wide:g} {round(height, 1):g}")
    root.set("role", "img")
    root.set("aria-labelledby", f"{name}-title")
    root.set("aria-describedby", f"{name}-desc")
    root.set("font-size", f"{form.size:g}")
    for tag, words in (("title", picture.title), ("desc", picture.description)):
        told = etree.SubElement(root, f"{{{SVG}}}{tag}", id=f"{name}-{tag}")
        told.text = clean(words)
    return root


def _draw(drawing: Drawing, canvas: Canvas) -> None:
    match drawing:
        case Shares():
            draw_shares(drawing, canvas)
        case Calibration():
            draw_calibration(drawing, canvas)
        case Curves():
            draw_curves(drawing, canvas)
        case Steps():
            draw_steps(drawing, canvas)
        case Days():
            draw_days(drawing, canvas)
        case Grid():
            draw_grid(drawing, canvas)
        case Months():
            draw_months(drawing, canvas)


def _written(root: etree._Element) -> bytes:
    return etree.tostring(root, encoding="UTF-8", xml_declaration=True)
