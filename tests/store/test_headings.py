"""The heading words of a reader's own."""

import pytest

from cards.errors import Invalid
from cards.intake.heading_words import MAX_HEADING, Part
from service.store.errors import StoreContradiction
from service.store.sql_store import SqlStore
from service.use_cases.records import ReaderId
from tests.store.statements import Statements


def test_put_replaces_all_there_were(store: SqlStore, reader: ReaderId) -> None:
    """The words last put are all there are; none can be put too."""
    with store.writing() as work:
        assert work.headings.all(reader) == {}
        work.headings.put(reader, {"Gist": Part.THEME, "To do": Part.COMMITMENTS})
        work.headings.put(reader, {"Gist": Part.POINTS, "Worth having": Part.QUOTATIONS})
        assert work.headings.all(reader) == {
            "Gist": Part.POINTS,
            "Worth having": Part.QUOTATIONS,
        }
        work.headings.put(reader, {})
        assert work.headings.all(reader) == {}


def test_words_come_by_word_on_either_database(store: SqlStore, reader: ReaderId) -> None:
    """Words are told apart to the letter and come by their characters, on both databases."""
    words = ["Zum Schluss", "a", "A", "Éloge", "gist", "Gist"]
    with store.writing() as work:
        work.headings.put(reader, dict.fromkeys(words, Part.THEME))
        assert list(work.headings.all(reader)) == sorted(words)


def test_all_are_read_and_written_in_a_fixed_number_of_statements(
    store: SqlStore, reader: ReaderId, statements: Statements
) -> None:
    """One statement reads all words, and as many write two hundred as write two."""
    with store.writing() as work:
        counts = []
        for count in (2, 200):
            statements.clear()
            work.headings.put(reader, {f"Words {n}": Part.POINTS for n in range(count)})
            counts.append(sum("INSERT INTO heading_words" in each for each in statements))
        assert counts == [1, 1]
        statements.clear()
        assert len(work.headings.all(reader)) == 200
        assert len(statements) == 1


@pytest.mark.parametrize("word", ["", "x" * (MAX_HEADING + 1)], ids=["empty", "too long"])
def test_what_is_no_heading_is_refused(store: SqlStore, reader: ReaderId, word: str) -> None:
    """No words, and more than a line of them, break a rule of the tables."""
    with store.writing() as work, pytest.raises(StoreContradiction):
        work.headings.put(reader, {word: Part.THEME})


def test_a_nul_is_refused(store: SqlStore, reader: ReaderId) -> None:
    """A NUL in a heading is refused alike by both databases."""
    with store.writing() as work, pytest.raises(Invalid):
        work.headings.put(reader, {"a\x00b": Part.THEME})
