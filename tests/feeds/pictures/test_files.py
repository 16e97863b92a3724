"""Pictures as files: SVG and PNG that open elsewhere, and the figures as CSV."""

import csv
import io
import struct
from datetime import date

import pytest
from lxml import etree

from service.feeds.pictures import Pictures
from service.feeds.pictures.dress import DARK, LIGHT
from service.use_cases.picture_records import Column, Drawing, Picture, Table, Unit
from tests.feeds.pictures import samples
from tests.feeds.pictures.reading import SVG, marks, words


@pytest.fixture(scope="module")
def pictures() -> Pictures:
    """One drawer, as the service has it."""
    return Pictures()


@pytest.mark.parametrize("drawing", samples.DRAWINGS.values(), ids=list(samples.DRAWINGS))
def test_a_file_stands_alone(pictures: Pictures, drawing: Drawing):
    """It says its encoding, its size, its title in writing, and every mark its own colour."""
    written = pictures.svg(samples.picture(drawing))
    assert written.startswith(b"<?xml version='1.0' encoding='UTF-8'?>")
    root = etree.fromstring(written)
    _, _, wide, high = map(float, root.get("viewBox").split())
    assert (float(root.get("width")), float(root.get("height"))) == (wide, high)
    assert "What came back" in [words(text) for text in marks(root, "text")]
    for mark in root.iter(f"{SVG}line", f"{SVG}circle", f"{SVG}rect", f"{SVG}text", f"{SVG}path"):
        assert {mark.get("fill"), mark.get("stroke")} & set(LIGHT.values()) or mark.get("fill")


def test_a_file_is_dark_where_the_system_asks(pictures: Pictures):
    """Its stylesheet gives every ink its dark colour under prefers-color-scheme."""
    root = etree.fromstring(pictures.svg(samples.picture(samples.GRID)))
    style = root.findtext(f"{SVG}style")
    assert style.startswith("@media (prefers-color-scheme:dark){")
    assert all(colour in style for colour in DARK.values())


def test_png_is_two_dots_to_a_unit_and_dark_differs(pictures: Pictures):
    """The header of the PNG (W3C PNG, 11.2.2: width and height after `IHDR`) doubles the SVG's."""
    picture = samples.picture(samples.SHARES)
    root = etree.fromstring(pictures.svg(picture))
    light, dark = pictures.png(picture), pictures.png(picture, dark=True)
    for written in (light, dark):
        assert written[:8] == b"\x89PNG\r\n\x1a\n"
        assert written[12:16] == b"IHDR"
        size = struct.unpack(">II", written[16:24])
        assert size == (2 * float(root.get("width")), 2 * float(root.get("height")))
    assert light != dark


def test_the_figures_are_read_back_from_csv(pictures: Pictures):
    """Every cell comes back unrounded (RFC 4180), but what a spreadsheet would reckon is words."""
    columns = (
        Column("book", "Book", Unit.TEXT),
        Column("share", "Came back", Unit.SHARE),
        Column("n", "Answers", Unit.COUNT),
        Column("day", "Day", Unit.DATE),
    )
    rows = (
        ("Walden; or, “Life,\nin the Woods”", 1 / 3, 3, date(2026, 2, 28)),
        ("=HYPERLINK(1)", None, 0, None),
        ("-2+3", -0.5, 1, None),
    )
    picture = Picture("x", "Title", "Said.", Table(columns, rows), samples.SHARES)
    written = pictures.data(picture).decode()
    assert written.count("\r\n") == 4
    head, first, second, third = csv.reader(io.StringIO(written, newline=""))
    assert head == ["book", "share", "n", "day"]
    assert first == [rows[0][0], repr(1 / 3), "3", "2026-02-28"]
    assert second == ["'=HYPERLINK(1)", "", "0", ""]
    assert third == ["'-2+3", "-0.5", "1", ""]
