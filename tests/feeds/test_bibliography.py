"""A book in BibTeX and CSL-JSON, out and in.

What is written is read by a second parser that had no part in it (bibtexparser), and held
against what `csl-data.json` in citation-style-language/schema says of a book: the keys, the
types, the parts of a name and of a date, restated below for the fields a book has.
"""

import json
import unicodedata

import bibtexparser
import jsonschema
import pytest
from bibtexparser import middlewares
from hypothesis import example, given
from hypothesis import strategies as st

from cards.digest import Digest
from cards.errors import InvalidBibliography
from service.feeds.bibliography import from_bibtex, from_csl_json, to_bibtex, to_csl_json
from service.feeds.latex import from_latex, to_latex
from service.use_cases.records import BookFacts

MIDDLEMARCH = Digest(
    title="Middlemarch: A Study of Provincial Life",
    author="George Eliot",
    edition="Blackwood, 1871",
    isbn="9780306406157",
    pages=880,
    theme="x",
)
FACTS = BookFacts(
    title="Middlemarch: A Study of Provincial Life",
    author="George Eliot",
    edition="Blackwood, 1871",
    isbn="9780306406157",
    pages=880,
)
NAME_PARTS = ("family", "given", "suffix", "literal", "dropping-particle", "non-dropping-particle")
NAME = {
    "type": "object",
    "additionalProperties": False,
    "properties": {part: {"type": "string"} for part in NAME_PARTS},
}
CSL = {
    "type": "array",
    "items": {
        "type": "object",
        "required": ["type", "id"],
        "additionalProperties": False,
        "properties": {
            "id": {"type": ["string", "number"]},
            "type": {"enum": ["book"]},
            "title": {"type": "string"},
            "author": {"type": "array", "items": NAME},
            "publisher": {"type": "string"},
            "edition": {"type": ["string", "number"]},
            "ISBN": {"type": "string"},
            "number-of-pages": {"type": ["string", "number"]},
            "issued": {
                "type": "object",
                "additionalProperties": False,
                "properties": {
                    "date-parts": {
                        "type": "array",
                        "minItems": 1,
                        "maxItems": 2,
                        "items": {
                            "type": "array",
                            "minItems": 1,
                            "maxItems": 3,
                            "items": {"type": ["string", "number"]},
                        },
                    }
                },
            },
        },
    },
}


def second_reading(text: str) -> dict[str, str]:
    """The fields of the only entry, as bibtexparser reads them, its letters decoded by it too."""
    library = bibtexparser.parse_string(
        text, append_middleware=[middlewares.LatexDecodingMiddleware()]
    )
    assert not library.failed_blocks
    (entry,) = library.entries
    assert entry.entry_type == "book"
    return {field.key: field.value for field in entry.fields}


def test_bibtex_is_read_alike_by_another_program():
    """An entry has the book's fields, the author turned round, the ISBN with its hyphens."""
    assert second_reading(to_bibtex(MIDDLEMARCH)) == {
        "title": "Middlemarch: A Study of Provincial Life",
        "author": "Eliot, George",
        "publisher": "Blackwood",
        "year": "1871",
        "isbn": "978-0-306-40615-7",
        "pagetotal": "880",
    }
    assert to_bibtex(MIDDLEMARCH).startswith("@book{eliot-middlemarch-1871,\n")


@pytest.mark.parametrize(
    ("author", "written"),
    [
        ("Simone de Beauvoir", "de Beauvoir, Simone"),
        ("Johann Wolfgang von Goethe", "von Goethe, Johann Wolfgang"),
        ("Austen, Jane", "Austen, Jane"),
        ("J. Austen, G. Eliot", "Austen, J. and Eliot, G."),
        ("Karl Marx und Friedrich Engels", "Marx, Karl and Engels, Friedrich"),
        ("A. Hamilton, J. Madison & J. Jay", "Hamilton, A. and Madison, J. and Jay, J."),
        ("Plato", "Plato"),
        ("Martin Luther King, Jr.", "King, Jr., Martin Luther"),
        ("Özlem Çelik", "Çelik, Özlem"),
    ],
)
def test_names_as_bibtex_takes_them(author: str, written: str):
    """Names come family first, with their particles, however many and in what order they stood."""
    entry = to_bibtex(Digest(title="A", author=author, theme="x"))
    assert from_latex(second_reading(entry)["author"]) == written


LETTERS = [
    (r"{\"O}zlem {\c C}elik", "Özlem Çelik"),
    (r"Garc{\'\i}a M{\'a}rquez", "García Márquez"),
    (r"Dvo{\v{r}}{\'a}k", "Dvořák"),
    (r"\L{}ukasiewicz", "Łukasiewicz"),
    (r"stra{\ss}e", "straße"),
    (r"na\"{\i}ve", "naïve"),
    (r"{\O}rsted, {\AE}sir, {\oe}uvre", "Ørsted, Æsir, œuvre"),
    (r"On {L}iberty --- a ``study'' \& more", "On Liberty — a “study” & more"),
    (r"1--2, 50\% \$5 \_x \#1", "1–2, 50% $5 _x #1"),
    (r"\emph{Walden}; or,~Life", "Walden; or, Life"),
    (r"{\'{E}}mile", "Émile"),
    (r"Erd{\H o}s", "Erdős"),
]


@pytest.mark.parametrize(("latex", "words"), LETTERS)
def test_letters_in_latex(latex: str, words: str):
    """Commands for letters are the letters, whichever way they are braced."""
    assert from_latex(latex) == words


@given(text=st.text(st.characters(exclude_categories=["Cs", "Cc", "Cn", "Co"]), max_size=60))
@example(text="-- --- `` '' {x} \\ ~ ^ & % $ # _ é ǰ ț í ß ø 道 Ἀ")
def test_letters_come_back(text: str):
    """Whatever a title holds comes back from LaTeX, spaces and compatible forms tidied."""
    expected = " ".join(unicodedata.normalize("NFC", text).split())
    assert from_latex(to_latex(text)) == expected


WORD = st.sampled_from("Eliot Mill Çelik Dvořák Brontë Hugo Woolf Łem O'Brien".split())
AUTHORS = st.lists(st.tuples(WORD, WORD).map(" ".join), min_size=1, max_size=4, unique=True).map(
    lambda names: names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
)
TITLES = st.text(st.sampled_from("ab É{}\\&%$#_~^'\"-`:"), min_size=1, max_size=40).filter(
    lambda title: bool(title.strip())
)


@given(
    title=TITLES,
    author=st.none() | AUTHORS,
    edition=st.sampled_from(
        [None, "Penguin, 1985", "1985", "Tr. Constance Garnett, 1901, revised"]
    ),
    isbn=st.sampled_from([None, "9780306406157", "080442957X", "9791090636071"]),
    pages=st.none() | st.integers(1, 50_000),
)
def test_what_goes_out_comes_in(
    title: str, author: str | None, edition: str | None, isbn: str | None, pages: int | None
):
    """A book's facts go out and come back the same in both forms, spaces tidied."""
    digest = Digest(title, author, edition, isbn, pages, theme="x")
    expected = BookFacts(" ".join(title.split()), author, edition, isbn, pages)
    written = to_csl_json(digest)
    jsonschema.validate(json.loads(written), CSL)
    assert from_csl_json(written) == (expected,)
    assert from_bibtex(to_bibtex(digest)) == (expected,)


def test_bibtex_of_others():
    """Strings, joined values, subtitles, particles, editors and `and others` are understood."""
    text = r"""
    @string{pen = "Penguin"}
    @comment{nothing}
    @Book{mill,
      Title = {On {L}iberty}, Subtitle = {With Notes},
      author = {Mill, John Stuart and van der Berg, Jr., Anna and others},
      publisher = pen # " Classics", year = 1985, month = jan, edition = {2},
      isbn = {wrong 978-0-306-40615-8; right 0-306-40615-2}, pagetotal = {184 pp.}
    }
    @article{untitled, journal = {Mind}}
    @inproceedings{e, editor = {{The Club}}, title = "Proceedings", pages = {12--30}}
    """
    assert from_bibtex(text) == (
        BookFacts(
            title="On Liberty: With Notes",
            author="John Stuart Mill and Anna van der Berg, Jr.",
            edition="2nd edition, Penguin Classics, 1985",
            isbn="0306406152",
            pages=184,
        ),
        BookFacts(title="Proceedings", author="The Club"),
    )


def test_csl_json_of_others():
    """A single item, names in parts or whole, dates in each of their forms are understood."""
    item = {
        "id": 1,
        "type": "book",
        "title": "The  Second\nSex",
        "author": [
            {"family": "Beauvoir", "given": "Simone", "non-dropping-particle": "de"},
            {"literal": "The Club"},
            "nobody",
        ],
        "issued": {"raw": "Paris, 1949"},
        "publisher": "Gallimard",
        "number-of-pages": "400 p.",
        "ISBN": "080442957X 9780804429573",
        "edition": 1,
    }
    assert from_csl_json(json.dumps(item)) == (
        BookFacts(
            title="The Second Sex",
            author="Simone de Beauvoir and The Club",
            edition="1st edition, Gallimard, 1949",
            isbn="080442957X",
            pages=400,
        ),
    )


def test_both_lengths_of_isbn_and_no_wrong_one():
    """The published pair 0-306-40615-2 and 978-0-306-40615-7 is taken, a wrong digit is not.

    Source: ISO 2108 and the ISBN Users' Manual, as in tests/reference/test_isbn.py.
    """
    entry = "@book{a, title={T}, isbn={%s}}"
    given_and_kept = {
        "0-306-40615-2": "0306406152",
        "978-0-306-40615-7": "9780306406157",
        "0-8044-2957-x": "080442957X",
        "979-10-90636-07-1": "9791090636071",
        "978-0-306-40615-8": None,
        "0-306-40615-3": None,
    }
    for given_, kept in given_and_kept.items():
        assert from_bibtex(entry % given_)[0].isbn == kept


DOUBLED = (
    '@string{a0="xy"}'
    + "".join(f"@string{{a{n + 1}=a{n} # a{n}}}" for n in range(40))
    + "@book{q, title=a40}"
)
BIBTEX_REFUSED = [
    ('@book{x, title="Foo"', "not BibTeX that can be read"),
    ("@book{a, title={A}} @book{a, title={B}}", "not BibTeX that can be read"),
    ("@book{a, publisher=nope, title={T}}", "not BibTeX that can be read"),
    ("no entry at all", "No book with a title"),
    ("", "No book with a title"),
    ("@article{a, journal={Mind}}", "No book with a title"),
    (DOUBLED, "at most 200 are read"),
    ("@book{a, title={" + "{" * 5_000 + "}" * 5_000 + "}}", "braces 91 deep"),
    ("x" * (1024 * 1024 + 1), "at most 1048576 are read"),
    ("@book{a, title={" + "x" * 501 + "}}", "at most 500 are kept"),
    ("".join(f"@book{{k{n}, title={{T}}}}" for n in range(1_001)), "at most 1000"),
    ("@book{a, title={T}, author={" + "{a} " * 250_000 + "}}", "at most 10000 are read"),
    (
        f'@string{{s = "{"x" * 200}"}} @book{{a, title={" # ".join(["s"] * 20_000)}}}',
        "is 4000000 characters long",
    ),
    ("@book{a, title={T}, author={" + "A," * 4_000 + "}}", "Too many commas in 'A,A,"),
]
CSL_REFUSED = [
    ("[", "no JSON from line 1 on"),
    ("[" * 100_000, "not CSL-JSON"),
    ("3", "not a list of items"),
    ("[[]]", "not a list of items"),
    ("[]", "no item in it has a title"),
    ('[{"id": 1, "type": "book"}]', "no item in it has a title"),
    (json.dumps([{"title": "T"}] * 1_001), "at most 1000"),
    (json.dumps([{"title": "T" * 501}]), "at most 500 are kept"),
    (" " * (1024 * 1024 + 1), "at most 1048576 are read"),
]


@pytest.mark.parametrize(("text", "said"), BIBTEX_REFUSED, ids=range(len(BIBTEX_REFUSED)))
def test_bibtex_that_cannot_be_read_is_refused(text: str, said: str):
    """What is no BibTeX, is hostile or holds no book is refused in a sentence."""
    with pytest.raises(InvalidBibliography) as refused:
        from_bibtex(text)
    assert said in refused.value.message
    assert refused.value.message.endswith(".")
    assert len(refused.value.message) < 500


@pytest.mark.parametrize(("text", "said"), CSL_REFUSED, ids=range(len(CSL_REFUSED)))
def test_csl_json_that_cannot_be_read_is_refused(text: str, said: str):
    """What is no CSL-JSON, is hostile or holds no book is refused in a sentence."""
    with pytest.raises(InvalidBibliography) as refused:
        from_csl_json(text)
    assert said in refused.value.message


@given(text=st.text(st.sampled_from('@book{}"=,#\\ az\n'), max_size=80) | st.text(max_size=80))
def test_nothing_but_a_refusal_comes_of_noise(text: str):
    """Any text gives books or a refusal, never another error."""
    for read in (from_bibtex, from_csl_json):
        try:
            books = read(text)
        except InvalidBibliography:
            continue
        assert all(book.title for book in books)
