"""Reshaping a digest's form: no words are lost, and quotations keep their point."""

from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cards.digest import Commitment, Digest, Point, Quotation
from service.pages.digest_form import LISTS, DigestForm, form_from, form_of, lay, typed
from service.pages.form_digest import digest_from
from service.pages.reshaping import (
    CannotReshape,
    joined,
    moved,
    split,
    taken_in_words,
    taken_out,
    tidied,
    turned,
)
from service.pages.taking_in import rows_of
from tests.property.strategies import digests

DIGEST = Digest(
    "Walden",
    points=(
        Point("He builds a house. He counts the nails.", "p. 40"),
        Point("He hoes beans."),
        Point("The ice breaks.", "p. 300"),
    ),
    commitments=(Commitment("Write down what I spend each Sunday."),),
    quotations=(
        Quotation("The mass of men lead lives of quiet desperation.", "p. 8", 1),
        Quotation("Time is but the stream I go a-fishing in.", "p. 98", 2),
        Quotation("Simplify, simplify."),
    ),
)


def words(form: DigestForm) -> Counter[str]:
    """Count every word that stands in the rows of a form, wherever it stands."""
    said = [row.text + " " + row.locator for name in LISTS for row in form.rows[name]]
    return Counter(" ".join(said).replace("(", " ").replace(")", " ").replace(",", " ").split())


def stands(form: DigestForm) -> dict[str, str]:
    """Return the words of the point each quotation stands after, by its own words."""
    points = {str(row.key): row.text for row in form.rows["points"]} | {"0": "before", "": "?"}
    return {row.text: points[row.after] for row in form.rows["quotations"] if row.text}


@given(digests())
def test_a_digest_laid_out_and_typed_reads_back(digest: Digest) -> None:
    """The fields a digest is laid out as say the same digest again."""
    assert digest_from(form_from(lay(digest))) == digest
    assert form_from(typed(form_of(digest))).facts == form_of(digest).facts


@given(digests(), st.data())
def test_joining_undoes_splitting(digest: Digest, data: st.DataObject) -> None:
    """A part split between two words and joined again is as it was, quotations and all."""
    form = tidied(form_of(digest))
    rows = [(name, row) for name in LISTS for row in form.rows[name] if " " in row.text]
    if not rows:
        return
    name, row = data.draw(st.sampled_from(rows))
    spaces = [at for at, letter in enumerate(row.text) if letter == " "]
    parts = split(form, name, row.key, data.draw(st.sampled_from(spaces)))
    assert len(parts.rows[name]) == len(form.rows[name]) + 1
    assert joined(parts, name, row.key) == form


@given(digests(), st.data())
def test_no_reshaping_loses_a_word_or_a_place(digest: Digest, data: st.DataObject) -> None:
    """Through any run of moves, joins, splits and turns every word stays, and each quotation
    whose place was known still has one.
    """
    form = tidied(form_of(digest))
    before = words(form)
    known = {row.text for row in form.rows["quotations"] if row.after}
    for _ in range(data.draw(st.integers(1, 6))):
        rows = [(name, row) for name in LISTS for row in form.rows[name] if row.holds]
        if not rows:
            return
        name, row = data.draw(st.sampled_from(rows))
        what = data.draw(st.sampled_from(["up", "down", "join", "split", "turn"]))
        try:
            if what in ("up", "down"):
                form = moved(form, name, row.key, -1 if what == "up" else 1)
            elif what == "join" and name != "quotations":
                form = joined(form, name, row.key)
            elif what == "split" and name != "quotations":
                form = split(form, name, row.key, data.draw(st.integers(1, len(row.text))))
            elif what == "turn" and name == "points":
                form = turned(form, name, row.key, "quotations")
        except CannotReshape:
            continue
        if what != "split":
            assert words(form) == before
        before = words(form)
        known_now = {row.text for row in form.rows["quotations"] if row.after}
        assert known <= known_now
    digest_from(form)


def test_moving_keeps_what_stands_after_a_point_with_it() -> None:
    """A point moved down takes along the quotation that stands after it."""
    form = moved(form_of(DIGEST, spare=0), "points", 1, 1)
    assert form.rows["points"][0].text == "He hoes beans."
    assert stands(form) == stands(form_of(DIGEST, spare=0))


def test_moving_beyond_the_ends_changes_nothing() -> None:
    """The first part cannot go up nor the last one down."""
    form = tidied(form_of(DIGEST, spare=0))
    assert moved(form, "points", 1, -1) == form
    assert moved(form, "points", 3, 1) == form


def test_what_stood_after_either_stands_after_both() -> None:
    """Two points joined keep both their locators, and what stood after either stands after both."""
    form = joined(form_of(DIGEST, spare=0), "points", 1)
    one = "He builds a house. He counts the nails. He hoes beans."
    assert [row.text for row in form.rows["points"]] == [one, "The ice breaks."]
    assert form.rows["points"][0].source == "points 1,points 2"
    assert set(stands(form).values()) == {one, "?"}


def test_the_last_part_has_no_next_one() -> None:
    """Joining the last part with the next is refused in a sentence."""
    with pytest.raises(CannotReshape) as refused:
        joined(form_of(DIGEST, spare=0), "points", 3)
    assert "no next one" in refused.value.message
    assert refused.value.field == "points-3-text"


def test_a_part_is_split_at_its_blank_lines() -> None:
    """Without a cursor a part is split at the empty lines typed into it, and nowhere else."""
    typed_in = lay(DIGEST) | {"points-1-text": "He builds.\n\nHe counts.\n\n\nHe rests."}
    form = split(form_from(typed_in), "points", 1)
    assert [row.text for row in form.rows["points"]][:3] == [
        "He builds.",
        "He counts.",
        "He rests.",
    ]
    assert [row.locator for row in form.rows["points"]][:3] == ["p. 40", "", ""]
    assert stands(form)["The mass of men lead lives of quiet desperation."] == "He rests."
    with pytest.raises(CannotReshape, match="empty line"):
        split(form, "points", 1)
    with pytest.raises(CannotReshape, match="no words on one side"):
        split(form, "points", 1, 0)


def test_empty_rows_stay_to_be_filled() -> None:
    """Reshaping leaves the rows in which nothing is typed at the end of their lists."""
    form = joined(form_of(DIGEST), "points", 2)
    assert [row.text for row in form.rows["points"]][2:] == ["", ""]
    assert [row.key for row in form.rows["points"]] == [1, 2, 3, 4]
    assert len(form.rows["quotations"]) == 5


def test_a_point_made_a_quotation_stands_where_it_stood() -> None:
    """It stands after the point before it, and so does what stood after it."""
    form = turned(form_of(DIGEST, spare=0), "points", 2, "quotations")
    assert [row.text for row in form.rows["quotations"]] == [
        "The mass of men lead lives of quiet desperation.",
        "He hoes beans.",
        "Time is but the stream I go a-fishing in.",
        "Simplify, simplify.",
    ]
    house = "He builds a house. He counts the nails."
    assert list(stands(form).values()) == [house, house, house, "?"]
    first = turned(form_of(DIGEST, spare=0), "points", 1, "quotations")
    assert stands(first)["The mass of men lead lives of quiet desperation."] == "before"


def test_quotation_marks_go_and_a_locator_stays() -> None:
    """A point in quotation marks is a quotation without them; a commitment keeps the locator."""
    quoted = lay(DIGEST) | {"points-1-text": "“Simplify.”"}
    form = turned(form_from(quoted), "points", 1, "quotations")
    assert "Simplify." in [row.text for row in form.rows["quotations"]]
    assert form.rows["quotations"][0].locator == "p. 40"
    vow = turned(form_from(quoted), "points", 3, "commitments")
    assert vow.rows["commitments"][-1].text == "The ice breaks. (p. 300)"


def test_a_point_taken_out_leaves_its_quotations_between_the_same_points() -> None:
    """What stood after a point taken out stands after the point before it."""
    form = taken_out(form_of(DIGEST, spare=0), "points", 2)
    house = "He builds a house. He counts the nails."
    assert stands(form)["Time is but the stream I go a-fishing in."] == house


def test_words_are_taken_in_without_their_marks() -> None:
    """What is taken in is read as under its heading: marker, marks and locator told apart."""
    (row,) = rows_of("- “Simplify, simplify.” (p. 91)", "quotations", "left 1")
    assert (row.text, row.locator, row.source) == ("Simplify, simplify.", "p. 91", "left 1")
    (row,) = rows_of("[ ] Ask Hanne about the loom every Sunday.", "commitments", "left 2")
    assert row.text == "Ask Hanne about the loom every Sunday."
    (row,) = rows_of("Pages: 300", "points", "left 3")
    assert row.text == "Pages: 300"


def test_words_taken_into_the_theme_stand_on_a_line_of_their_own() -> None:
    """The theme grows by a line, and says where it came from."""
    form = taken_in_words(form_of(DIGEST), "theme", " Enough is plenty. ", "left 4")
    assert form.facts["theme"] == "Enough is plenty."
    form = taken_in_words(form, "theme", "And sunlight.", "left 5")
    assert form.facts["theme"] == "Enough is plenty.\nAnd sunlight."
    assert form.facts["theme-source"] == "left 4,left 5"
