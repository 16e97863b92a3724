"""Whole digests in the layouts people use, each understood down to its last line."""

from cards.digest import Digest
from cards.intake import understand
from service.documents.reader import PandocDocuments
from tests.documents.files import archive, made, parts_of

TAB = "QTABQ"
"""Stands for a tab until a document of each format was made."""


def digest_of(documents: PandocDocuments, name: str, content: str | bytes) -> Digest:
    """Return the digest a file holds."""
    content = content.encode() if isinstance(content, str) else content
    return understand(documents.read(name, content)).digest


def points_of(digest: Digest) -> list[tuple[str, str | None]]:
    """Return the points as pairs."""
    return [(point.text, point.locator) for point in digest.points]


def quotations_of(digest: Digest) -> list[tuple[str, str | None, int | None]]:
    """Return the quotations as triples."""
    return [(found.text, found.locator, found.after) for found in digest.quotations]


def test_pages_behind_tabs_under_bold_lines(documents: PandocDocuments):
    """A page number set behind a tab locates its line in Word, OpenDocument and RTF."""
    text = (
        f"**MOBY-DICK**\n\nHerman Melville\n\nPages{TAB}625\n\n**The gist:**\n\nHe hunts.\n\n"
        f"**The points, in order**\n\nIshmael ships out{TAB}3\n\nAhab nails the coin{TAB}161\n\n"
        f"**Quotations**\n\n“Call me Ishmael.”{TAB}3\n\n“From hell's heart”{TAB}571\n"
    )
    word, open_text = parts_of(made(text, "docx")), parts_of(made(text, "odt"))
    inner = b'</w:t><w:tab/><w:t xml:space="preserve">'
    word["word/document.xml"] = word["word/document.xml"].replace(TAB.encode(), inner)
    open_text["content.xml"] = open_text["content.xml"].replace(TAB.encode(), b"<text:tab/>")
    contents = {
        "x.docx": archive(dict(word)),
        "x.odt": archive(dict(open_text)),
        "x.rtf": made(text, "rtf").replace(TAB.encode(), rb"\tab "),
    }
    for name, content in contents.items():
        digest = digest_of(documents, name, content)
        assert (digest.title, digest.author, digest.pages) == ("MOBY-DICK", "Herman Melville", 625)
        assert points_of(digest) == [
            ("Ishmael ships out", "p. 3"),
            ("Ahab nails the coin", "p. 161"),
        ], name
        assert quotations_of(digest) == [
            ("Call me Ishmael.", "p. 3", 1),
            ("From hell’s heart", "p. 571", 2),
        ], name


def test_wrapped_text_under_capital_headings(documents: PandocDocuments):
    """Plain text wrapped at 72 columns, its quotations behind `>`, its places in books."""
    text = """\
THE MEDITATIONS
Marcus Aurelius
Translated by George Long. 214 pages.

IN BRIEF:

An emperor reminds himself, in notes meant for nobody else, that nothing
outside his own judgement can harm him, and that everything passes.

MAIN IDEAS:

1. What others taught him is a list of debts (Book I)
2. The day will bring meddlers; they are kin nonetheless, and work with
   him as the hands do (Book II, §1)
3. Death is nature's work (Book IX, §3)

PASSAGES:

> In the morning when thou risest unwillingly, let this thought be
> present: I am rising to the work of a human being.
Book V, §1

"Look within." -- Book VII, §59

VERDICT:

Suspended: the gods do too much of the work.
"""
    digest = digest_of(documents, "x.txt", text)
    assert (digest.author, digest.pages) == ("Marcus Aurelius", 214)
    assert digest.theme is not None
    assert "nothing outside his own" in digest.theme
    assert digest.judgement == "Suspended: the gods do too much of the work."
    assert [locator for _, locator in points_of(digest)] == ["Book I", "Book II, §1", "Book IX, §3"]
    risen = "In the morning when thou risest unwillingly, let this thought be present: "
    assert quotations_of(digest) == [
        (f"{risen}I am rising to the work of a human being.", "Book V, §1", 2),
        ("Look within.", "Book VII, §59", 2),
    ]


def test_numbered_headings_underlined(documents: PandocDocuments):
    """Underlined headings with numbers, lettered points, whose words in a line of its own."""
    text = """\
Walden
Henry David Thoreau

1. Summary
==========
A man goes to the woods.

2. The plot
-----------
a) He builds the house (Economy, p. 29)
b) The pond melts (Spring, p. 299)

3. Quotations
=============
"The mass of men lead lives of quiet desperation."
        -- Economy, p. 8

"Time is but the stream I go a-fishing in."

-- Where I Lived, p. 98
"""
    digest = digest_of(documents, "x.txt", text)
    assert digest.theme == "A man goes to the woods."
    assert points_of(digest) == [
        ("He builds the house", "Economy, p. 29"),
        ("The pond melts", "Spring, p. 299"),
    ]
    assert quotations_of(digest) == [
        ("The mass of men lead lives of quiet desperation.", "Economy, p. 8", 0),
        ("Time is but the stream I go a-fishing in.", "Where I Lived, p. 98", 1),
    ]


def test_a_page_saved_from_a_word_processor(documents: PandocDocuments):
    """German, in spans and hard spaces, with numbers typed by the word processor."""
    spaces = "&nbsp;&nbsp;&nbsp; "
    lines = [
        "<b><span style='font-size:16pt'>Die Verwandlung</span></b>",
        "<span>von&nbsp;Franz Kafka</span>",
        "<span>Gelesen am 12.&nbsp;Mai 2025, Reclam, 77&nbsp;Seiten</span>",
        "<b><span>Worum es geht</span></b>",
        "<span>Gregor Samsa erwacht als Ungeziefer.</span>",
        "<b><span>Handlung</span></b>",
        f"<span>1.<span>{spaces}</span></span><span>Er erwacht (S.&nbsp;5)</span>",
        f"<span>2.<span>{spaces}</span></span><span>Der Apfel (S.&nbsp;44)</span>",
        "<b><span>Vorsätze</span></b>",
        f"<span>·<span>{spaces}</span></span><span>Jede Woche anrufen</span>",
        "<b><span>Zitate</span></b>",
        "<span>»War er ein Tier, da ihn Musik so ergriff?«, S. 60</span>",
    ]
    page = "".join(f"<p class=MsoNormal>{line}</p>" for line in lines)
    found = understand(documents.read("x.html", f"<html><body>{page}</body></html>".encode()))
    digest = found.digest
    assert (digest.title, digest.author, digest.pages) == ("Die Verwandlung", "Franz Kafka", 77)
    assert str(digest.finished_on) == "2025-05-12"
    assert points_of(digest) == [("Er erwacht", "S. 5"), ("Der Apfel", "S. 44")]
    assert [commitment.text for commitment in digest.commitments] == ["Jede Woche anrufen"]
    assert quotations_of(digest) == [("War er ein Tier, da ihn Musik so ergriff?", "S. 60", 2)]
    assert digest.edition == "Reclam"
    assert found.notices == ()


def test_a_spanish_title_and_a_line_of_facts_between_dashes(documents: PandocDocuments):
    """`de` inside a title parts nothing, and a line of author, day and pages gives all three."""
    text = (
        "# Don Quijote de la Mancha\n*Miguel de Cervantes* — leído el 3 de junio de 2025 — 1.345 "
        "páginas\n\n## Argumento\n1. Los molinos (Parte I, cap. 8)\n2. La cueva (Parte II, cap. 23)"
        "\n\n## Citas\n> “La libertad, Sancho” (Parte II, cap. 58)\n"
    )
    digest = digest_of(documents, "x.md", text)
    assert (digest.title, digest.author) == ("Don Quijote de la Mancha", "Miguel de Cervantes")
    assert (digest.pages, str(digest.finished_on)) == (1345, "2025-06-03")
    assert [after for _, _, after in quotations_of(digest)] == [2]


def test_a_title_page_and_points_typed_as_lines(documents: PandocDocuments):
    """Lines without an empty line between them are a title page, and points one a line."""
    text = """\
**The Odyssey** (tr. Emily Wilson)
by Homer
Norton, 2017, 592 pages
Finished 12 December 2024

**The story**
A man takes twenty years to come home, and must win again what he left.

**Plot in stages**
Telemachus sails for news (Book I, line 90)
Odysseus leaves Calypso (Book V, line 263)
He tells of the Cyclops (Book IX)

**Quotes**
"Zeus' will is done" (Book XI, line 296)
"""
    found = understand(documents.read("x.md", text.encode()))
    digest = found.digest
    assert (digest.title, digest.author, digest.pages) == ("The Odyssey", "Homer", 592)
    assert str(digest.finished_on) == "2024-12-12"
    assert digest.theme == "A man takes twenty years to come home, and must win again what he left."
    assert [locator for _, locator in points_of(digest)] == [
        "Book I, line 90",
        "Book V, line 263",
        "Book IX",
    ]
    assert quotations_of(digest) == [("Zeus’ will is done", "Book XI, line 296", 3)]
    assert digest.edition == "tr. Emily Wilson, Norton, 2017"
    assert found.notices == ()


def test_a_table_of_two_columns(documents: PandocDocuments):
    """Names on the left, parts and facts on the right, several lines in a cell."""
    text = """\
| | |
|---|---|
| Book | On Liberty |
| By | J. S. Mill |
| Edition | 264 pages, Oxford |
| In a nutshell | Power over a man is rightful only to prevent harm to others. |
| Ideas | 1. Tyranny of the majority (p. 8)<br>2. Silencing opinion (p. 33) |
| Quotes | "He who knows only his own side" (p. 67) |
"""
    digest = digest_of(documents, "x.md", text)
    assert (digest.title, digest.author, digest.pages) == ("On Liberty", "J. S. Mill", 264)
    assert points_of(digest) == [
        ("Tyranny of the majority", "p. 8"),
        ("Silencing opinion", "p. 33"),
    ]
    assert quotations_of(digest) == [("He who knows only his own side", "p. 67", 2)]


def test_title_and_author_in_the_file_name(documents: PandocDocuments):
    """Without a title in it, a file's name gives the author, mostly first, and the title."""
    for name, title, author in (
        ("Eliot - Middlemarch.txt", "Middlemarch", "Eliot"),
        ("Austen, Jane - Persuasion.txt", "Persuasion", "Jane Austen"),
        ("Machiavelli - The Prince.txt", "The Prince", "Machiavelli"),
        ("The Prince - Machiavelli.txt", "The Prince", "Machiavelli"),
        ("Middlemarch - George Eliot.txt", "Middlemarch", "George Eliot"),
        ("middlemarch_by_George_Eliot.txt", "middlemarch", "George Eliot"),
    ):
        digest = digest_of(documents, name, "SUMMARY: She marries a dry scholar.\n")
        assert (digest.title, digest.author) == (title, author)


def test_the_abstract_of_a_word_document_is_read(documents: PandocDocuments):
    """Paragraphs in Word's style for abstracts, which pandoc takes off the top, come back."""
    words = "Words " * 300
    content = made(f"---\ntitle: W\nabstract: |\n  {words}\n---\n\n# Points\n\n- One\n", "docx")
    texts = [block.text for block in documents.read("x.docx", content).blocks]
    assert words.strip() in texts


def test_whose_document_it_is_says_not_who_wrote_the_book(documents: PandocDocuments):
    """Under a title and an author set by a program, the writer's own title page counts."""
    text = "---\ntitle: Silas Marner\nauthor: Mira Vale\n---\n\n# Silas Marner\n\nGeorge Eliot\n"
    read = documents.read("own.docx", made(text, "docx"))
    assert [block.text for block in read.blocks] == ["Silas Marner", "George Eliot"]
    assert read.properties["author"] == "Mira Vale"
