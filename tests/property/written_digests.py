"""Digests of any texts at all: what is written out must bear everything a digest may hold."""

from datetime import date

from hypothesis import strategies as st

from cards.digest import Commitment, Digest, Point, Quotation
from cards.intake.own_words import OWN_WORDS

AWKWARD = [
    *("Theme", "Points", "# Quotations", "## Points", "Summary:", "Author: Jane Austen", "---"),
    *("1. First things first", "- [ ] Walk", "* * *", "> He said", "Pages: 12", "ISBN 0306406152"),
    *("2025-05-12", "Finished 12 May 2025", "“Simplify, simplify.”", '"Quoted" and more', "«Oui»"),
    *(
        "All is said (p. 54)",
        "p. 9: it opens",
        "It stands (ch. 3; after point 2)",
        "p. 12",
        "p. ix",
    ),
    *("after point 1", "before all points", "point not said", "no locator", "x · after point 2"),
    *(
        "p. 5, after point 1",
        "nach Punkt 3",
        "*emphasis* and _more_ `code`",
        "<b>bold</b> &amp; &#65;",
    ),
    *("a\nb\n\nc", "\n\nlead", "trail\n\n\n", "two\n\n\n\nparts", " indented", "    four", "end  "),
    *(
        "tab\tbed",
        "no\u00a0break",
        "line\u2028sep",
        "next\u0085line",
        "soft\u00adhyphen",
        "\ufffd\ufffd",
    ),
    *(
        "back\\slash\\",
        "a | b\n--|--",
        "~~gone~~",
        "[link](http://example.org)",
        "[x]: y",
        "![i](j)",
    ),
    *(
        "====",
        "----",
        "+ plus",
        "a  b   c",
        "\ue000\ue001\ue002",
        "{{x}} #set",
        "$x^2$",
        "@key",
        "\ufeffbom",
    ),
    *(
        "[Another.]",
        "[Title of the book]",
        "<!-- remark -->",
        "</w:t>",
        "]]>",
        "`",
        "```\ncode\n```",
        "&lt;",
    ),
    *(
        "道可道，非常道。",
        "בראשית ברא אלהים",
        "בְּרֵאשִׁית",
        "في البدء",
        "Ἐν ἀρχῇ ἦν ὁ λόγος",
        "Война и мир",
        "e\u0301",
        "👩‍👩‍👧",
    ),
    *(f"{words.after} 1" for words in OWN_WORDS.values()),
    *(words.quotations for words in OWN_WORDS.values()),
]
_LETTERS = st.characters(
    exclude_categories=("Cs",),
    exclude_characters=[
        *map(chr, (*range(9), *range(11, 32), *range(0x7F, 0x85), *range(0x86, 0xA0))),
        *("\ufffe", "\uffff"),
    ],
)
_MARKUP = st.text("ab1 \n\t.,;:!?()[]<>{}*_#`~|\\/-+=&^$@'\"“”·—§%", min_size=1, max_size=40)


def texts(limit: int = 60) -> st.SearchStrategy[str]:
    """Texts a digest may hold: any letters, markup, and what looks like something else."""
    any_text = st.text(_LETTERS, min_size=1, max_size=limit)
    one = st.one_of(st.sampled_from(AWKWARD), _MARKUP, any_text)
    several = st.lists(one, min_size=1, max_size=3).map("\n\n".join)
    return st.one_of(one, several).filter(lambda text: bool(text.strip()))


@st.composite
def any_digests(draw: st.DrawFn) -> Digest:
    """Any digest at all that is valid, if a short one."""
    points = tuple(
        draw(st.lists(st.builds(Point, texts(), st.none() | texts()), max_size=4)),
    )
    after = st.none() | st.integers(0, len(points))
    quotations = tuple(
        draw(st.lists(st.builds(Quotation, texts(), st.none() | texts(), after), max_size=4)),
    )
    commitments = tuple(draw(st.lists(st.builds(Commitment, texts()), max_size=3)))
    theme = st.none() | texts() if points or commitments or quotations else texts()
    return Digest(
        title=draw(texts()),
        author=draw(st.none() | texts()),
        edition=draw(st.none() | texts()),
        isbn=draw(
            st.none() | st.sampled_from(["9780306406157", " 0-306", "Author: x", "\nISBN: "])
        ),
        pages=draw(st.none() | st.integers(1, 50_000)),
        finished_on=draw(st.none() | st.dates(date.min)),
        theme=draw(theme),
        judgement=draw(st.none() | texts()),
        points=points,
        commitments=commitments,
        quotations=quotations,
    )
