"""The markup of a picture: well formed, named, described, in the page's own inks, unharmed."""

import re
from pathlib import Path

import pytest
from lxml import etree

from service.feeds.pictures import Pictures
from service.feeds.pictures.dress import LIGHT
from service.feeds.pictures.lettering import width
from service.use_cases.picture_records import Drawing, Picture
from tests.feeds.pictures import samples
from tests.feeds.pictures.reading import FORMS, SVG, drawn, marks, words

ALL = pytest.mark.parametrize("drawing", samples.DRAWINGS.values(), ids=list(samples.DRAWINGS))
LOOK = Path(__file__).parents[3] / "service" / "pages" / "static" / "look.css"


@ALL
def test_each_form_is_an_image_with_its_title_and_description(drawing: Drawing):
    """WAI-ARIA's role img, named by its title and described by its desc, under ids of its own."""
    both = etree.fromstring(Pictures().inline(samples.picture(drawing)))
    assert [svg.get("class") for svg in both] == list(FORMS)
    for svg in both:
        assert svg.get("role") == "img"
        title, desc = svg[0], svg[1]
        assert (title.tag, title.text) == (f"{SVG}title", "What came back")
        assert (desc.tag, desc.text) == (f"{SVG}desc", "Of 305 answers, 267 came back.")
        assert svg.get("aria-labelledby") == title.get("id")
        assert svg.get("aria-describedby") == desc.get("id")
    ids = [mark.get("id") for mark in both.iter() if mark.get("id")]
    assert len(ids) == len(set(ids))


@ALL
def test_nothing_in_it_breaks_the_policy_of_the_pages(drawing: Drawing):
    """No style, no script, no address but the picture's own hatches."""
    both = etree.fromstring(Pictures().inline(samples.picture(drawing)))
    ids = {mark.get("id") for mark in both.iter()}
    for mark in both.iter():
        assert etree.QName(mark).localname not in {"style", "script", "image", "a", "use"}
        assert "style" not in mark.attrib
        assert not any(name.startswith("on") or "href" in name for name in mark.attrib)
        for address in re.findall(r"url\((.*?)\)", " ".join(mark.attrib.values())):
            assert address.removeprefix("#") in ids


@ALL
def test_every_ink_is_in_the_stylesheet(drawing: Drawing):
    """Each class of a mark has its colour in look.css, from the token of its name."""
    look = LOOK.read_text()
    both = etree.fromstring(Pictures().inline(samples.picture(drawing)))
    used = {name for mark in both.iter(f"{SVG}*") for name in mark.get("class", "").split()}
    for name in used - set(FORMS):
        use, ink = name.split("-")
        assert f".{name} {{ {'fill' if use == 'f' else 'stroke'}: var(--{ink}); }}" in look


def test_the_inks_of_files_are_those_of_the_pages():
    """A file's colours are the tokens of look.css; its ground is the leaf."""
    tokens = dict(re.findall(r"--(\w+): (#[0-9a-f]{6});", LOOK.read_text().split("@media")[0]))
    assert {**tokens, "ground": tokens["leaf"]}.items() >= LIGHT.items()


@ALL
@pytest.mark.parametrize("form", FORMS)
def test_no_words_reach_over_the_sheet(drawing: Drawing, form: str):
    """By the widths it is laid out with, every piece of writing is inside its sheet."""
    svg = drawn(drawing, form)
    left, _, wide, high = map(float, svg.get("viewBox").split())
    size = float(svg.get("font-size"))
    for text in marks(svg, "text"):
        room = width(words(text), size)
        start = float(text.get("x")) - {"middle": room / 2, "end": room}.get(
            text.get("text-anchor"), 0
        )
        assert start >= left - 0.5, words(text)
        assert start + room <= left + wide + 0.5, words(text)
        assert 0 < float(text.get("y")) < high


def test_hostile_titles_are_only_words():
    """What looks like markup is read as it was typed; what XML forbids is replaced."""
    hostile = Picture("x", samples.HOSTILE, samples.HOSTILE, samples.TABLE, samples.SHARES)
    for written in (Pictures().inline(hostile), Pictures().svg(hostile).decode()):
        root = etree.fromstring(written.encode())
        assert not list(root.iter(f"{SVG}script", "script", f"{SVG}b"))
        said = "".join(root.itertext())
        assert "<script>alert(1)</script>" in said
        assert not {"\x00", "\x1b", "\u202e"} & set(said)


@pytest.mark.parametrize("drawing", samples.NOTHING.values(), ids=list(samples.NOTHING))
def test_nothing_to_draw_is_a_sentence(drawing: Drawing):
    """An empty drawing is its description, escaped, and no frame."""
    empty = Picture("x", "Title", "Nothing <yet> & nothing to draw.", samples.TABLE, drawing)
    told = etree.fromstring(Pictures().inline(empty))
    assert (told.tag, told.text) == ("p", "Nothing <yet> & nothing to draw.")
    assert not list(told)
    alone = etree.fromstring(Pictures().svg(empty))
    assert "Nothing <yet> & nothing to draw." in [words(text) for text in marks(alone, "text")]
    assert not marks(alone, "line")


def test_what_is_cut_is_told_whole():
    """A label too long for its room ends in an ellipsis and carries the whole in a title."""
    told = [text[0].text for text in marks(drawn(samples.SHARES, "narrow"), "text") if len(text)]
    assert samples.LONG in told
