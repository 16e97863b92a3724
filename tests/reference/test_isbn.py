"""ISBN check digits against published numbers and against python-stdnum.

Sources: ISO 2108 and the ISBN Users' Manual (the pair 0-306-40615-2 and
978-0-306-40615-7 is the worked example of the trade's own descriptions of the
check digit; 0-8044-2957-X is that of numbers whose digit is X; 979-10-90636-07-1
is a published number of the French 979-10 block, which has no form of ten
digits). The numbers are quoted from memory of those documents; their check
digits were recomputed, and python-stdnum, an independent implementation, agrees.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from stdnum import isbn as stdnum_isbn

from cards.intake.isbn import compact, is_isbn, thirteen

VALID = [
    "978-0-306-40615-7",
    "0-306-40615-2",
    "0-8044-2957-X",
    "080442957x",
    "978-0-8044-2957-3",
    "979-10-90636-07-1",
]
INVALID = [
    "978-0-306-40615-8",
    "0-306-40615-3",
    "0-8044-2957-0",
    "X-306-40615-2",
    "977-0-306-40615-7",
    "978030640615",
    "",
    "978-0-306-40615-٧",
]


@pytest.mark.parametrize("number", VALID)
def test_published_numbers_hold(number: str):
    """Every published number has the check digit it should, hyphens or not."""
    assert is_isbn(number)
    assert stdnum_isbn.is_valid(number)


@pytest.mark.parametrize("number", INVALID)
def test_altered_numbers_do_not(number: str):
    """A wrong digit, prefix, length or alphabet is no ISBN."""
    assert not is_isbn(number)


DIGITS = st.one_of(
    st.from_regex(r"\A97[789][0-9]{10}\Z"),
    st.from_regex(r"\A[0-9]{9}[0-9X]\Z"),
    st.text("0123456789X", max_size=14),
)


@given(number=DIGITS)
def test_it_agrees_with_an_independent_implementation(number: str):
    """For digits of any length the two implementations say the same."""
    assert is_isbn(number) == stdnum_isbn.is_valid(number)


@given(head=st.from_regex(r"\A97[89][0-9]{9}\Z"))
def test_exactly_one_check_digit_fits(head: str):
    """Of the ten digits that can end a number of thirteen exactly one makes it an ISBN."""
    fitting = [digit for digit in "0123456789" if is_isbn(head + digit)]
    assert fitting == [stdnum_isbn.compact(head + fitting[0])[-1]]
    assert len(fitting) == 1


def test_compact():
    """Hyphens and spaces of every kind come out."""
    assert compact("978‐0 306–40615-7") == "9780306406157"


@pytest.mark.parametrize(
    ("ten", "expected"),
    [("0-306-40615-2", "9780306406157"), ("080442957X", "9780804429573")],
)
def test_both_lengths_of_a_published_number_are_one(ten: str, expected: str):
    """The pairs are those of the documents named above."""
    assert thirteen(ten) == expected
    assert thirteen(expected) == expected


@given(st.integers(0, 10**9 - 1))
def test_thirteen_digits_agree_with_an_independent_implementation(number: int):
    """python-stdnum makes the same thirteen digits of any ten."""
    body = f"{number:09}"
    ten = next(body + digit for digit in "0123456789X" if stdnum_isbn.is_valid(body + digit))
    assert thirteen(ten) == stdnum_isbn.to_isbn13(ten)


def test_what_is_no_isbn_stays_as_written():
    """A number with a slip in it is kept, and matched as it stands."""
    assert thirteen("0-306-40615-3") == "0306406153"
    assert thirteen("979-10-90636-07-1") == "9791090636071"
