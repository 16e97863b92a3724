"""The printed digest: two pages, tagged and titled, its words as they were written.

What PDF/UA-1 asks of the file is ISO 14289-1, 7.1 and 7.2 (identifier, title shown, language,
tags); it is looked up with pypdf, which had no part in writing it.
"""

import io
import re
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace

import pytest
from pypdf import PdfReader

from cards.digest import Commitment, Digest, Point, Quotation
from cards.errors import CannotPrint
from service.documents.press.press import Press
from service.use_cases.records import Form
from tests.documents.press.digests import ILIAD, MARNER, WERTHER, long


def printed(digest: Digest) -> PdfReader:
    """A digest printed, and opened again."""
    return PdfReader(io.BytesIO(Press().write(digest, Form.PDF)))


def words_of(reader: PdfReader, page: int) -> str:
    """The words of a page in a row, hyphens at the ends of lines taken out."""
    text = reader.pages[page].extract_text()
    return " ".join(re.sub(r"[-\u2010\u00ad]\n", "", text).split())


@pytest.mark.parametrize("digest", [MARNER, ILIAD, WERTHER], ids=lambda one: one.title)
def test_it_is_accessible(digest: Digest):
    """The file says that it is PDF/UA-1, bears the title, says its language, and is tagged."""
    reader = printed(digest)
    catalogue = reader.root_object
    assert reader.metadata.title == digest.title
    assert catalogue["/ViewerPreferences"]["/DisplayDocTitle"]
    assert catalogue["/Lang"] == ("de" if digest is WERTHER else "en")
    assert catalogue["/MarkInfo"]["/Marked"]
    assert "pdfuaid" in reader.xmp_metadata.stream.get_data().decode()
    assert catalogue["/StructTreeRoot"]["/K"]


def kinds_in(element: object) -> list[str]:
    """The kinds of structure in a tree of tags, in reading order."""
    element = getattr(element, "get_object", lambda: element)()
    if isinstance(element, list):
        return [kind for one in element for kind in kinds_in(one)]
    if not isinstance(element, dict):
        return []
    own = [str(element["/S"])] if "/S" in element else []
    return own + kinds_in(element.get("/K"))


def test_its_tags_say_what_is_what():
    """Title and sections are headings, points and commitments lists, quotations block quotes."""
    reader = printed(MARNER)
    kinds = kinds_in(reader.root_object["/StructTreeRoot"]["/K"])
    assert kinds.count("/H1") == 1
    assert kinds.count("/H2") == 5
    assert kinds.count("/L") == 2
    assert kinds.count("/LI") == 5
    assert kinds.count("/BlockQuote") == 3


def test_page_one_and_page_two():
    """Page one has all but the quotations, which have page two, each with its locator."""
    reader = printed(MARNER)
    assert len(reader.pages) == 2
    first, second = words_of(reader, 0), words_of(reader, 1)
    for words in (
        *("Silas Marner", "George Eliot", "Blackwood, 1861", "224 pages", "18 January 2026"),
        *(point.text for point in MARNER.points),
        *(commitment.text.replace("'", "'") for commitment in MARNER.commitments),
        *("ch. 1, p. 12", "A child comes in its place", "I agree, with one reserve"),
    ):
        assert words in first
    for words in (
        "His fingers encountered soft warm curls. ch. 12, p. 140 · after point 3",
        "sooner or later. p. 201 · before all points",
        "God gave her to me because you turned your back upon her,",
    ):
        assert words in second


def test_its_own_fonts_are_inside():
    """Every font is embedded, so it prints alike everywhere."""
    for page in printed(ILIAD).pages:
        for font in page["/Resources"]["/Font"].values():
            inner = font.get_object()["/DescendantFonts"][0].get_object()
            described = inner["/FontDescriptor"].get_object()
            assert {"/FontFile2", "/FontFile3"} & set(described)


def test_greek_with_its_accents_and_russian_are_printed():
    """Polytonic Greek and Cyrillic come out of the file as they went in."""
    words = words_of(printed(ILIAD), 1)
    assert "μῆνιν ἄειδε θεὰ Πηληϊάδεω Ἀχιλῆος οὐλομένην" in words
    assert "Мысль изречённая есть ложь." in words


def test_what_looks_like_code_is_printed_as_words():
    """Markup of the typesetter's own in a digest is printed letter for letter."""
    code = '#set page(width: 3cm) *b* _i_ $x^2$ \\ @key <label> #read("/etc/passwd") // no'
    digest = replace(MARNER, theme=code, quotations=(Quotation(code, "#p"),), title="#panic()")
    reader = printed(digest)
    assert code in words_of(reader, 0)
    assert code in words_of(reader, 1)
    assert reader.metadata.title == "#panic()"


def test_letters_no_font_has_are_refused_by_name():
    """Letters that would print as blanks are named in the refusal, and the others are not."""
    digest = replace(MARNER, theme="Vergil \U0001f9a5 and \U00012000 said so.")
    with pytest.raises(CannotPrint) as refused:
        Press().write(digest, Form.PDF)
    assert "\U0001f9a5" in refused.value.message
    assert "\U00012000" in refused.value.message
    assert "V" not in refused.value.message.split(":")[1].split(".")[0]


def test_letters_nobody_can_see_are_named_by_number():
    """A letter of private use is named by its number, since it shows as nothing."""
    with pytest.raises(CannotPrint, match=r"U\+10FFF0"):
        Press().write(replace(MARNER, theme="A \U0010fff0 in it."), Form.PDF)


def test_many_may_print_at_once():
    """Several readers at one press get the same file that one gets alone."""
    press = Press()
    alone = press.write(MARNER, Form.PDF)
    with ThreadPoolExecutor(4) as readers:
        printed_at_once = list(readers.map(lambda _: press.write(MARNER, Form.PDF), range(12)))
        measured = set(readers.map(lambda _: press.measure(MARNER), range(4)))
    assert set(printed_at_once) == {alone}
    assert len(measured) == 1


def test_over_its_budget_it_still_prints():
    """What is over two pages is printed whole, on more of them."""
    reader = printed(long(30))
    assert len(reader.pages) > 2
    text = " ".join(words_of(reader, number) for number in range(len(reader.pages)))
    assert text.count("rules the winter") == 90


def test_no_word_runs_off_the_page():
    """An address or a title without a space, however long, breaks and stays between the margins."""
    address = "https://example.org/" + "walden" * 40
    digest = replace(
        MARNER,
        title="W" * 80,
        theme=address,
        points=(Point(address, address[:200]),),
        quotations=(Quotation(address, address[:200]),),
    )
    reader = printed(digest)
    text = "\n".join(page.extract_text() for page in reader.pages)
    assert max(len(line) for line in text.split("\n")) < 100
    assert "walden" * 40 in re.sub("[^a-z]", "", text)


def test_the_same_digest_is_the_same_file():
    """Nothing in the file comes from the clock."""
    assert Press().write(MARNER, Form.PDF) == Press().write(MARNER, Form.PDF)


def test_a_commitment_about_health_is_printed_with_its_caution():
    """The usual caution goes with it onto paper; others have none."""
    digest = Digest("A Book", commitments=(Commitment("Halve the dose of my pills by June."),))
    assert "Talk to a doctor" in words_of(printed(digest), 0)
    assert "Talk to a doctor" not in words_of(printed(MARNER), 0)
