"""Facts on crowded lines: each is taken, and what stands beside them is told of."""

from datetime import date

import pytest

from tests.cards.intake.blocks_of import understood

REST = "\n## Summary\nHe went."
BESIDE = "What stands beside the facts of the book is not kept: "


def told(text: str, *parts: str) -> list[str]:
    """Return what is said of a document as a whole, or of other parts of it."""
    wanted = parts or ("document",)
    return [notice.message for notice in understood(text).notices if notice.part in wanted]


@pytest.mark.parametrize(
    "line",
    [
        "Read: 3 March 2025. Penguin Classics, 579 pages. ISBN 978-0-14-143962-4",
        "Penguin Classics, 579 pages. ISBN 978-0-14-143962-4. Read: 3 March 2025",
        "ISBN: 978-0-14-143962-4, 579 pages, finished 3 March 2025, Penguin Classics",
        "Pages: 579. Finished: 3 March 2025. ISBN: 9780141439624. Publisher: Penguin Classics",
        "Finished on 3 March 2025 | ISBN 978-0-14-143962-4 | 579 pp. | Penguin Classics",
        "Edition: Penguin Classics, 579 pages, ISBN 978-0-14-143962-4. Read: 3.3.2025",
    ],
)
def test_every_fact_of_a_crowded_line_is_taken(line: str):
    """ISBN, pages, day and the publisher's name are all read off one line."""
    found = understood(f"# Middlemarch\nby George Eliot\n{line}{REST}")
    digest = found.digest
    assert (digest.isbn, digest.pages) == ("9780141439624", 579)
    assert digest.finished_on == date(2025, 3, 3)
    assert digest.author == "George Eliot"
    assert (digest.edition, found.notices, found.left) == ("Penguin Classics", (), ())


@pytest.mark.parametrize(
    ("line", "rest"),
    [
        ("Finished: 12 May 2025, on the train", "on the train"),
        ("finished 12 May 2025, on the train", "on the train"),
        ("Pages: 352 with the notes", "with the notes"),
        ("| Pages | 352 | borrowed", "borrowed"),
        ("Read: 1 March 2025 – 12 May 2025", "1 March 2025"),
    ],
)
def test_what_stands_beside_a_fact_is_told_of(line: str, rest: str):
    """Words on a fact's line that are no fact are named once, and nothing is lost."""
    text = f"# W\nby A. B.\n{line}{REST}"
    assert rest in "".join(told(text))
    assert understood(text).left == (rest,)


@pytest.mark.parametrize(
    ("line", "edition"),
    [
        ("ISBN: 978-0-306-40615-7 (hardback)", "hardback"),
        ("Edition: 512 pages, twelve books", "twelve books"),
        ("Edition: the red one", "the red one"),
        ("Edition: Second edition, London 1889", "Second edition, London 1889"),
        ("Publisher: Chapman & Hall\nYear: 1889", "Chapman & Hall, Year: 1889"),
        (
            "Publisher: Hall; Translator: Anna Bell",
            "Hall, Translator: Anna Bell",
        ),
        ("Ausgabe: Reclam, 3. Auflage", "Reclam, 3. Auflage"),
        ("Verlag: Insel", "Insel"),
        ("Édition : Garnier, 1902", "Garnier, 1902"),
        ("Editorial: Aguilar", "Aguilar"),
        ("Editore: Treves", "Treves"),
        ("Editora: Garnier", "Garnier"),
        ("Uitgever: Querido", "Querido"),
        ("| Edition | Garnier, 1902", "Garnier, 1902"),
        ("2nd edition, translated by Anna Bell", "2nd edition, translated by Anna Bell"),
        ("London: Chapman & Hall, 1889", "London: Chapman & Hall, 1889"),
        ("Edition: Garnier\nEdition: Garnier", "Garnier"),
    ],
)
def test_the_edition_is_kept_in_words(line: str, edition: str):
    """What is said of publisher, year, number and translator is the edition, and nothing else."""
    digest = understood(f"# Walden\nby Henry Thoreau\n{line}{REST}").digest
    assert digest.edition == edition
    assert (digest.title, digest.author) == ("Walden", "Henry Thoreau")


@pytest.mark.parametrize(
    "line",
    [
        "Edition: 264 pages",
        "Finished: Monday, 12 May 2025",
        "Pages: about 352",
        "ISBN-10: 0306406152, ISBN-13: 9780306406157",
        "Length: 352 pages",
    ],
)
def test_labels_and_idle_words_pass_in_silence(line: str):
    """A label, a weekday or the same number in its other form is no news."""
    assert understood(f"# W\nby A. B.\n{line}{REST}").notices == ()


@pytest.mark.parametrize(
    "line",
    [
        "Translated by George Long. 214 pages.",
        "With an introduction by George Long",
        "Penguin Classics, 2003",
        "Penguin Classics",
        "Oxford University Press",
        "Illustrated and edited by George Long",
    ],
)
def test_makers_of_the_edition_are_kept_and_are_no_author(line: str):
    """Translator, editor and publisher are the edition, whatever line they stand on."""
    for top in (f"{line}\nby Marcus Aurelius", f"by Marcus Aurelius\n{line}"):
        found = understood(f"# Meditations\n{top}{REST}")
        assert found.digest.author == "Marcus Aurelius"
        assert found.notices == ()
        assert found.digest.edition == line.split(". ", maxsplit=1)[0]


def test_a_publisher_alone_is_no_author():
    """Without an author's name, a publisher's does not stand in for one."""
    digest = understood(f"# Meditations\nPenguin Classics, 214 pages{REST}").digest
    assert (digest.author, digest.pages) == (None, 214)


@pytest.mark.parametrize(
    ("lines", "part"),
    [
        ("Pages: 352\nLength: 360 pages", "pages"),
        ("ISBN: 9780306406157\nISBN: 9780141439624", "isbn"),
        ("Finished: 12 May 2025\nRead: 1 June 2025", "finished_on"),
        ("Author: A. B.\nAuthor: C. D.", "author"),
        ("Title: W\nBook: Quite another", "title"),
    ],
)
def test_a_second_word_on_a_fact_is_told_of(lines: str, part: str):
    """The first word on a fact stands, and the other is not dropped in silence."""
    assert any("is also given as" in said for said in told(f"{lines}{REST}", part))


@pytest.mark.parametrize("sign", [".", ",", ";", " |"])
def test_labels_follow_each_other_on_a_line(sign: str):
    """Title, author, pages and day behind their labels on one line are told apart."""
    digest = understood(
        f"Title: Walden{sign} Author: Henry Thoreau{sign} Pages: 352{sign} Finished: 2025-05-12"
        + REST
    ).digest
    assert (digest.title, digest.author, digest.pages) == ("Walden", "Henry Thoreau", 352)
    assert digest.finished_on == date(2025, 5, 12)


@pytest.mark.parametrize("written", ["1,225 pages", "1.225 Seiten", "Pages: 1,225", "1225 pp."])
def test_thousands_of_pages(written: str):
    """A count of pages may have its thousands parted."""
    assert understood(f"# W\n{written}{REST}").digest.pages == 1225


def test_hours_and_spans_are_no_count_of_pages():
    """A length in hours and a span of pages give no number of pages, and are told of."""
    for line in ("Length: 8 hours", "Pages: 12-40"):
        text = f"# W\n{line}{REST}"
        assert understood(text).digest.pages is None
        assert line in "".join(told(text))


def test_the_second_end_of_a_span_is_the_day():
    """A book read from one day to another was finished on the other."""
    for line in ("Read: 12 April - 12 May 2025", "Read: 2025-04-12 to 2025-05-12"):
        assert understood(f"# W\n{line}{REST}").digest.finished_on == date(2025, 5, 12)


def test_prose_with_figures_in_it_stays_whole():
    """A theme that speaks of pages and days loses no words to the facts."""
    theme = (
        "The clerk read 300 pages a day, finished on 12 May 1832, and found that nothing was so."
    )
    for text in (f"# W\n{theme}\n## Points\n- One", f"# W\n## Summary\n{theme}"):
        digest = understood(text).digest
        assert (digest.theme, digest.pages, digest.finished_on) == (theme, None, None)


def test_a_deed_among_commitments_is_no_fact_of_the_book():
    """`Done:` with a day among commitments is the commitment's own."""
    digest = understood("# W\n## Commitments\nDone: 12 May 2025, one letter").digest
    assert digest.finished_on is None
    assert digest.commitments[0].text == "Done: 12 May 2025, one letter"


@pytest.mark.parametrize(
    "line",
    [
        "579 pages | ISBN 978-0-14-143962-4 | 3 March 2025",
        "579 pages, ISBN 978-0-14-143962-4, 2025-03-03",
    ],
)
def test_a_day_beside_other_facts_is_the_day_it_was_finished(line: str):
    """A day that nothing but other facts stands beside needs no label."""
    digest = understood(f"# Middlemarch\nby George Eliot\n{line}{REST}").digest
    assert (digest.pages, digest.finished_on) == (579, date(2025, 3, 3))


def test_a_day_of_something_else_is_not_the_day_it_was_finished():
    """A day that other words stand beside is none, whatever facts are on the line."""
    line = "579 pages, ISBN 978-0-14-143962-4, bought on 3 March 2025"
    digest = understood(f"# Middlemarch\nby George Eliot\n{line}{REST}").digest
    assert digest.finished_on is None


@pytest.mark.parametrize(
    ("label", "value"),
    [
        ("Data di fine lettura", "3 marzo 2025"),
        ("Fecha en que terminé", "3 de marzo de 2025"),
        ("Date of finishing the book", "3 March 2025"),
        ("Datum der Lektüre", "3. März 2025"),
    ],
)
def test_a_label_of_several_words_is_known_by_what_it_says(label: str, value: str):
    """A label names the day when its words are of finishing or reading, and of days."""
    digest = understood(f"# Middlemarch\nby George Eliot\n{label}: {value}{REST}").digest
    assert digest.finished_on == date(2025, 3, 3)


@pytest.mark.parametrize("written", ["579 p., ISBN 9780141439624", "ISBN 9780141439624, 579 p."])
def test_pages_cut_short_beside_an_isbn(written: str):
    """A count of pages cut short to one letter is read though its full stop went with the ISBN."""
    digest = understood(f"# Middlemarch\nby George Eliot\n{written}{REST}").digest
    assert (digest.pages, digest.isbn) == (579, "9780141439624")


def test_typed_properties_are_told_of():
    """What a reader typed between the dashes on top of a file is a fact or is told of."""
    found = understood(f"# W\nby A. B.{REST}", "w.txt", publisher="Penguin", pages="352 large")
    assert found.digest.pages == 352
    assert [notice.message for notice in found.notices] == [BESIDE + "“large”."]
    assert found.digest.edition == "Penguin"
