"""Layouts met in documents of other readers, each read by a general rule."""

import pytest

from tests.cards.intake.blocks_of import understood

PARTS = "## Theme\nHe went to the woods and came back.\n## Quotations\n- “Simplify.” (p. 12)"


@pytest.mark.parametrize(
    ("first", "second", "places"),
    [
        ("One ends. 23", "Two ends. 67", ["p. 23", "p. 67"]),
        ("One ends – 3", "Two goes on – 9", ["p. 3", "p. 9"]),
        ("One ends. 23", "Two ends in 1850.", [None, None]),
        ("One ends. 1848", "Two ends. 1871", [None, None]),
    ],
)
def test_a_bare_number_behind_every_point_is_its_page(first: str, second: str, places: list[str]):
    """Behind every point a bare number is a page; behind some, or past any page, it is not."""
    points = understood(f"# W\n## Points\n- {first}\n- {second}").digest.points
    assert [point.locator for point in points] == places


@pytest.mark.parametrize(
    ("line", "title", "author"),
    [
        ("Candide, Voltaire", "Candide", "Voltaire"),
        ("Max Havelaar – Multatuli", "Max Havelaar", "Multatuli"),
        ("Lettres persanes, de Montesquieu", "Lettres persanes", "Montesquieu"),
        ("Erewhon; or, Over the Range", "Erewhon; or, Over the Range", None),
        ("A Room with a View, by E. M. Forster", "A Room with a View", "E. M. Forster"),
    ],
)
def test_title_and_author_of_one_line(line: str, title: str, author: str | None):
    """One name, a second title and a word that could head a part are told apart."""
    digest = understood(f"# {line}\n{PARTS}").digest
    assert (digest.title, digest.author) == (title, author)


@pytest.mark.parametrize(
    "line",
    [
        "John Stuart Mill, Hackett, 71 pp., read 5 May 2010",
        "John Stuart Mill (Hackett, 2001, 71 pages), finished 5 May 2010",
    ],
)
def test_a_publisher_behind_the_author_is_no_author(line: str):
    """What stands between an author's name and the facts on one line is the edition."""
    digest = understood(f"# Utilitarianism\n{line}\n{PARTS}").digest
    assert (digest.author, digest.pages) == ("John Stuart Mill", 71)
    assert digest.edition is not None
    assert digest.edition.startswith("Hackett")


def test_labels_without_a_sign_between_them_are_parted():
    """A line may give three facts behind labels with nothing but spaces between."""
    digest = understood(
        f"# W\nEdition: Dover, 2014 Pages: 720 Finished: 7 January 2018\n{PARTS}"
    ).digest
    assert (digest.pages, str(digest.finished_on)) == (720, "2018-01-07")
    assert digest.edition == "Dover, 2014"


def test_the_reason_beside_a_quotation_is_no_quotation():
    """In a table the column headed as quotations holds them, however long the reasons are."""
    found = understood(
        "# W\n## Quotations\n| Quotation | Page | Why I keep it\n"
        "| “Simplify.” | 12 | It is the hinge of the book, and of the year in which I read it."
    )
    (quotation,) = found.digest.quotations
    assert (quotation.text, quotation.locator) == ("Simplify.", "p. 12")
    assert any("hinge of the book" in words for words in found.left)


def test_pages_in_the_first_column_of_points_are_no_count_of_rows():
    """A column headed as pages gives places, though its numbers stand where rows are counted."""
    digest = understood("# W\n## Points\n| Page | Point\n| 3 | One goes.\n| 17 | Two stays.").digest
    assert [(one.text, one.locator) for one in digest.points] == [
        ("One goes.", "p. 3"),
        ("Two stays.", "p. 17"),
    ]


@pytest.mark.parametrize("number", ["1.-", "1/", "1°", "1.)"])
def test_numbers_with_other_signs_are_numbers(number: str):
    """A number may be followed by a hyphen, a stroke or a degree sign."""
    second = number.replace("1", "2")
    points = understood(f"# W\n## Points\n{number} One goes.\n{second} Two stays.").digest.points
    assert [point.text for point in points] == ["One goes.", "Two stays."]


def test_a_part_and_a_chapter_without_a_word_place_a_quotation():
    """`II, 11` is a locator, and settles which point a quotation stands after."""
    digest = understood(
        "# W\n## Points\n- One (I, 9)\n- Two (II, 11)\n## Quotations\n- « Un roman. » (I, 13)"
    ).digest
    assert [point.locator for point in digest.points] == ["I, 9", "II, 11"]
    assert digest.quotations[0].after == 1


@pytest.mark.parametrize(
    ("name", "title", "author"),
    [
        ("Emma (Austen).docx", "Emma", "Austen"),
        ("gaskell_north_and_south.docx", "north and south", "gaskell"),
        ("mill_on_the_floss.docx", "mill on the floss", None),
        ("Emma (draft).docx", "Emma (draft)", None),
    ],
)
def test_names_in_a_file_name(name: str, title: str, author: str | None):
    """A surname in brackets or in front is the author's; a word that goes on from it is not."""
    digest = understood(PARTS, name=name).digest
    assert (digest.title, digest.author) == (title, author)


@pytest.mark.parametrize(
    ("written", "locator"),
    [
        ("S. 45f.", "S. 45f"),
        ("see p. 54", "p. 54"),
        ("at 54%", "54%"),
        ("III.2.45", "III.2.45"),
        ("4. Kapitel", "4. Kapitel"),
        ("pp. 54/55", "54/55"),
        ("hfdst. 3", "hfdst. 3"),
        ("chapter twenty", "chapter twenty"),
    ],
)
def test_places_written_in_other_ways(written: str, locator: str):
    """Pages that follow, acts and lines by points, and words in front of a place are read."""
    (quotation,) = understood(f"# W\n## Quotations\n“Simplify.” — {written}").digest.quotations
    assert quotation.text == "Simplify."
    assert quotation.locator is not None
    assert locator in quotation.locator
    assert "see" not in quotation.locator
