"""Steps of `retention_pictures.feature`."""

import csv
from io import StringIO

from lxml import etree, html
from pytest_bdd import given, parsers, scenarios, then, when

from service.use_cases.add_digest import add_digest

scenarios("retention_pictures.feature")

SVG = "{http://www.w3.org/2000/svg}"
PNG = b"\x89PNG\r\n\x1a\n"
"""What every file begins with that is one (ISO/IEC 15948, from memory)."""


@given(parsers.parse('a book is called "{title}"'))
def called(doors, title):
    text = f'---\ntitle: "{title}"\n---\n\n## Points\n\n1. He lives by the pond.\n2. He leaves.\n'
    assert add_digest(doors.desk, "walden.md", text.encode()).kept.title == title


@when(parsers.parse("she opens the page {address}"))
def opens(doors, address):
    doors.seen = html.document_fromstring(doors.page(address))


@when(parsers.parse("she takes the picture {name} along"))
def takes_along(doors, name):
    opens(doors, "/retention")
    doors.noted = doors.seen.get_element_by_id(name)


def files(figure):
    """Return the addresses a picture can be had at, in the order they are offered."""
    return figure.xpath(".//a[@download]/@href")


def said(figure):
    """Return a picture's title and the sentence below it, as the page has them."""
    caption = figure.find("figcaption")
    return [caption.findtext(f"{each}").strip() for each in ("*", "p")]


@then(
    parsers.parse(
        "it holds {number:d} pictures, each with a title, a sentence and the figures it was drawn "
        "from"
    )
)
def holds(doors, number):
    figures = doors.seen.findall(".//figure")
    assert len(figures) == number
    for figure in figures:
        title, sentence = said(figure)
        assert sentence.endswith(".")
        for drawn in figure.findall(".//svg"):
            assert drawn.get("role") == "img"
            assert [drawn.find("title").text, drawn.find("desc").text] == [title, sentence]
            assert drawn.get("aria-labelledby") == drawn.find("title").get("id")
        assert figure.findall(".//svg")
        assert figure.findall(".//table/tbody/tr")


@then("none of them carries a script or a style of its own")
def no_script(doors):
    for figure in doors.seen.findall(".//figure"):
        assert not figure.xpath(
            ".//script | .//style | .//@style | .//@*[starts-with(name(), 'on')]"
        )


@then("its drawing stands by itself, with its title and its sentence")
def stands_by_itself(doors):
    svg, *_ = files(doors.noted)
    drawn = etree.fromstring(doors.get(svg).data)
    assert drawn.tag == f"{SVG}svg"
    assert [drawn.findtext(f"{SVG}{each}") for each in ("title", "desc")] == said(doors.noted)
    assert not drawn.xpath("//*[local-name() = 'script'] | //@*[local-name() = 'href']")


@then("its data hold row for row what stands in its table")
def same_rows(doors):
    *_, data = files(doors.noted)
    names, *rows = csv.reader(StringIO(doors.get(data).text))
    table = doors.noted.find(".//table")
    shown = [[cell.text or "" for cell in row] for row in table.find("tbody")]
    assert len(names) == len(table.findall("thead/tr/th"))
    assert [row[0] for row in rows] == [row[0] for row in shown]
    assert [int(row[1]) for row in rows] == [int(row[1].replace(",", "")) for row in shown]
    assert rows


@then("it is there as a picture of dots too, on light paper and on dark")
def dots(doors):
    _, light, dark, _ = (doors.get(each) for each in files(doors.noted))
    assert light.data.startswith(PNG)
    assert dark.data.startswith(PNG)
    assert light.data != dark.data


@then(parsers.parse('the pictures and the tables bear "{title}" as it stands'))
def bear(doors, title):
    figure = doors.seen.get_element_by_id("known")
    assert title in [each.text_content() for each in figure.iter("text", "td")]
    assert not figure.findall(".//b")


@then(parsers.parse('the data of "{name}" have it as "{title}"'))
def data_have(doors, name, title):
    rows = csv.reader(StringIO(doors.get(f"/retention/pictures/{name}.csv").text))
    assert title in [row[0] for row in rows]
