"""Quotations located in a small book, and what they say of its words."""

import re
from time import process_time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cards.proving import BookText, Found, Slip, SlipKind, fold_book, locate
from cards.proving.locate import cut_off
from tests.cards.proving.books import TEXT, folded

BOOK = folded()


def found(quotation: str, locator: str | None = None) -> Found:
    """Return where a quotation stands, which it must."""
    place = locate(quotation, BOOK, locator)
    assert place is not None
    return place


def slips(quotation: str) -> list[tuple[SlipKind, str, str]]:
    """Return the slips of a quotation, without offsets."""
    return [(slip.kind, slip.quoted, slip.book) for slip in found(quotation).slips]


@pytest.mark.parametrize(
    ("quotation", "exact"),
    [
        ("it was badly done, said he", "It _was_ badly done,” said he"),
        ('"in-deed! The fire was low."', "in-\ndeed!” The ﬁre was low"),
        ("best blessings of existence", "best blessings of\nexistence"),
        ("nearly twenty-one years", "nearly twenty-one years"),
    ],
)
def test_typography_is_no_slip(quotation: str, exact: str):
    """Quotation marks, hyphens, ligatures, italics and line ends cost nothing."""
    place = found(quotation)
    assert place.exact == exact
    assert TEXT[place.start : place.end] == exact
    assert place.score == 100


def test_what_stands_around_is_kept():
    """At least 32 characters stand before and after, as far as the book has them."""
    place = found("nobody came down for the morning boat")
    assert place.prefix.endswith("had the quay to themselves; ")
    assert place.suffix.startswith(". She sat by the window. A letter")
    assert min(len(place.prefix), len(place.suffix)) >= 32
    assert found("A word before").prefix == ""


@pytest.mark.parametrize(
    ("quotation", "expected"),
    [
        (
            "The harbor was empty, and the gulls had the quay to themselves",
            [(SlipKind.SPELLING, "harbor", "harbour")],
        ),
        (
            "The harbour was empty, and gulls had the quay to themselves",
            [(SlipKind.MISSING, "", "the")],
        ),
        (
            "The harbour was quite empty, and the gulls had the quay to themselves",
            [(SlipKind.ADDED, "quite", "")],
        ),
        (
            "The harbour was empty, and the geese had the quay to themselves",
            [(SlipKind.OTHER, "geese", "gulls")],
        ),
        (
            "The harbour was empty. And the gulls had the quay to themselves",
            [(SlipKind.MARKS, "empty.", "empty,")],
        ),
        (
            "seemed to unite some of the best blessings of exist ence, and had lived",
            [(SlipKind.SPELLING, "exist ence,", "existence;")],
        ),
    ],
)
def test_slips_are_told_word_by_word(quotation: str, expected: list[tuple[SlipKind, str, str]]):
    """What differs is told by kind, with the reader's words and the book's."""
    assert slips(quotation) == expected


@pytest.mark.parametrize(
    ("quotation", "mended"),
    [
        (
            "“The harbor was empty and the gulls had quay to themselves.”",
            "“The harbour was empty, and the gulls had the quay to themselves.”",
        ),
        (
            "The habour was empty ... nobody came dowm for the [first] morning boat.",
            "The harbour was empty ... nobody came down for the [first] morning boat.",
        ),
        (
            "[t]he harbour was emtpy [sic], and the gulls had the quay",
            "[t]he harbour was empty [sic], and the gulls had the quay",
        ),
        (
            "a letter lay unopened upon the the sill, and the rain went on",
            "a letter lay unopened on the sill, and the rain went on",
        ),
    ],
)
def test_mending_keeps_what_is_the_readers(quotation: str, mended: str):
    """The book's words replace the slips; quotation marks, ellipses and brackets stay."""
    assert found(quotation).mended == mended
    assert found(mended).slips == ()


def test_an_ellipsis_for_a_mark_is_no_slip():
    """A reader's ellipsis where nothing but a mark was left out stays as it is."""
    quotation = "The harbour was empty... and the gulls [...] had the quay"
    assert found(quotation).mended == quotation


@pytest.mark.parametrize(
    "quotation",
    [
        "Emma Woodhouse, handsome … little to distress or vex her",
        "Emma Woodhouse, handsome [...] little to distress or vex her",
        "Emma Woodhouse, handsome. . . little to distress or vex her.",
        "... Emma Woodhouse, handsome (…) little to distress or vex her ...",
        "Emma Woodhouse, handsome [and so on] ... little to distress or vex her",
    ],
)
def test_ellipses_stand_for_what_is_left_out(quotation: str):
    """Pieces are found in order, from the first to the last, whatever the ellipsis."""
    place = found(quotation)
    assert place.exact.startswith("Emma Woodhouse")
    assert place.exact.endswith("vex her")
    assert len(place.spans) == 2
    assert place.slips == ()


def test_a_piece_that_is_not_there_is_told():
    """Where one piece of several is not in the book it is added, and the rest is found."""
    place = found(
        "seemed to unite some of the best blessings of existence; and had lived nearly twenty-one "
        "years in the world ... gone fishing"
    )
    assert [(slip.kind, slip.quoted) for slip in place.slips] == [(SlipKind.ADDED, "gone fishing")]


def test_pieces_out_of_order_are_not_found_together():
    """What an ellipsis joins stands in the book's order."""
    quotation = "In spring the harbour filled again ... the gulls had the quay to themselves"
    assert locate(quotation, BOOK) is None


def test_words_in_several_places():
    """Words that stand three times are ambiguous, unless the locator says which is meant."""
    words = "She sat by the window"
    assert found(words).places == 3
    assert found(words).ambiguous
    for locator, chapter in (("p. 2", 1), ("p. 3", 2), ("vol. II, ch. 2", 3), ("p. 5", 3)):
        place = found(words, locator)
        assert place.spot.chapter is not None
        assert place.spot.chapter.number == chapter
        assert not place.ambiguous
    assert found(words, "ch. 1").places == 2
    assert found(words, "p. 900").ambiguous


@pytest.mark.parametrize(
    "quotation",
    ["", "...", "[sic]", "— “” !", "wholly other words that are nowhere", "omen", "x" * 20_000],
)
def test_what_is_not_there_is_not_found(quotation: str):
    """Nothing is found for words the book does not have, nor half a word for a whole one."""
    assert locate(quotation, BOOK) is None


def test_a_locator_that_agrees_makes_up_for_a_wrong_word():
    """Words too unlike to be taken anywhere are taken where the reader says they stand."""
    quotation = "The port was empty, and the geese"
    assert locate(quotation, BOOK) is None
    assert locate(quotation, BOOK, "p. 5") is None
    assert locate(quotation, BOOK, "Finale") is None
    assert found(quotation, "p. 3").exact == "The harbour was empty, and the gulls"
    assert found(quotation, "vol. II, ch. 1").exact == "The harbour was empty, and the gulls"


def test_scripts_without_spaces():
    """Words of a language that parts none by spaces are found inside a sentence."""
    text = "日本語の本です。吾輩は猫である。名前はまだ無い。\nどこで生れたか頓と見當がつかぬ。"
    book = fold_book(BookText(None, None, None, text))
    for quotation in ("猫である", "名前はまだ無い", "まだ無い。どこで生れたか"):
        place = locate(quotation, book)
        assert place is not None
        assert place.score == 100
    near = locate("吾輩は犬である。名前はまだ無い", book)
    assert near is not None
    assert near.exact == "吾輩は猫である。名前はまだ無い"


def test_the_likeness_asked_for_falls_with_the_length():
    """The longer a quotation, the less like it need be; never under what absent ones reach."""
    asked = [cut_off(length) for length in range(1, 3000)]
    assert asked == sorted(asked, reverse=True)
    assert min(asked) == cut_off(5000) == 62.0


WHOLE = [
    (word.start(), word.end())
    for word in re.finditer(r"\S*-\n\S*|\S+", TEXT)
    if any(map(str.isalnum, word[0]))
]
"""Where each word stands; one that is parted at the end of a line is one."""


@given(data=st.data())
def test_any_stretch_is_found_whole(data: st.DataObject):
    """Whole words of the book, however many, are found without a slip, mended to themselves."""
    first = data.draw(st.integers(0, len(WHOLE) - 1))
    last = data.draw(st.integers(first, min(len(WHOLE) - 1, first + 40)))
    quotation = TEXT[WHOLE[first][0] : WHOLE[last][1]]
    place = found(quotation)
    assert place.score == 100
    assert place.slips == ()
    assert place.mended == quotation


@given(
    words=st.lists(
        st.sampled_from([*TEXT.split()[:60], "...", "[sic]", "[x]", "“", "whale", "—", "…"]),
        max_size=30,
    )
)
def test_slips_of_any_quotation_stand_in_order(words: list[str]):
    """Whatever is quoted, slips stand in order, inside it, and can be replaced."""
    quotation = " ".join(words)
    place = locate(quotation, BOOK)
    if place is not None:
        at = 0
        for slip in place.slips:
            assert isinstance(slip, Slip)
            assert at <= slip.start <= slip.end <= len(quotation)
            at = slip.end


@pytest.mark.parametrize(
    "quotation",
    [
        "a ... " * 3_000,
        "[" * 10_000,
        "by the window " + " " * 19_000 + "-- A letter lay unopened",
        "the " * 5_000,
        ". " * 10_000 + "She sat",
        "[sic" * 5_000,
    ],
    ids=range(6),
)
def test_quotations_made_to_take_long_do_not(quotation: str):
    """Dots, brackets and spaces by the thousand are looked for no longer than words."""
    place = locate(quotation, BOOK)
    assert place is None or place.exact in TEXT


@pytest.mark.parametrize(
    ("quotation", "text"),
    [
        ("a" * 20_000, "a" * 300_000),
        ("[" + " " * 19_998 + "]", TEXT),
        ("[sic" + " " * 19_996, TEXT),
        ("[a]" * 6_666, TEXT),
        ("a ... " * 3_300, TEXT),
        ("The whale was white. " * 950 + "x", "The whale was white. " * 20_000),
    ],
    ids=["one letter", "a wide bracket", "a wide sic", "brackets", "ellipses", "one sentence"],
)
def test_a_quotation_made_to_take_long_does_not(quotation: str, text: str):
    """The longest quotation of nothing but one thing is found or not, as soon as any other."""
    book = fold_book(BookText(None, None, None, text))
    begun = process_time()
    locate(quotation, book)
    # A few hundredths of a second each; the first took half a minute, the others up to six seconds.
    assert process_time() - begun < 1
