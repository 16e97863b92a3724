"""Which words announce which part. The lists are common practice, no published source."""

import pytest

from cards.intake.headings import Part, misspelt, part_named
from tests.cards.intake.blocks_of import understood

ANNOUNCING = {
    Part.THEME: (
        "Summary|SUMMARY:|In brief|Gist|The gist|Theme|1. Summary|I. Summary|## Summary|"
        "What it comes to|What the book is about|In a nutshell|Main idea|Book summary|Plot summary|"
        "Summary of the book|Synopsis|Overview|My summary (one paragraph)|Zusammenfassung|"
        "Worum es geht|Résumé|En bref|Resumen|Tema|Riassunto|In breve|Resumo|Samenvatting|"
        "In het kort|The book in one sentence|Thesis|At a glance|In three sentences|Kernthese|"
        "Das Buch in einem Satz|De quoi il s’agit|L’essentiel|De qué trata|Sinopsis|Di cosa parla|"
        "In poche parole|De que trata|Síntese|O livro em resumo|In één zin|Waar het over gaat"
    ),
    Part.POINTS: (
        "Ideas|Points|Insights|Argument|The argument|Plot|Outline|Key points|Main ideas|"
        "Ten ideas|Points (in order)|Takeaways|Key takeaways|Lessons|What happens|Main points:|"
        "Ideas and quotes|Kerngedanken|Ideen|Handlung|Idées|Les idées principales|"
        "Ideas principales|Punti|Idee|Ideias|Pontos|Punten|Inzichten|Argument step by step|"
        "Chapters|Storyline|What it shows|Was geschieht|Gedankengang|Ce qui se passe|Étapes|"
        "Lo que pasa|Argumento|Cosa succede|Tappe|O que acontece|Passo a passo|Wat er gebeurt"
    ),
    Part.COMMITMENTS: (
        "Commitments|My commitments|What I will do|What I’ll do|Resolutions|Asks of me|"
        "What it asks of me|Action points|Actions|To do|To-do|Next steps|Promises|3. Commitments|"
        "Vorsätze|Was ich tun werde|Engagements|Compromisos|Impegni|Compromissos|Voornemens|"
        "Application|For my life|What I commit to|From now on|Action plan|Für mein Leben|"
        "Ce que je ferai|Lo que haré|Cosa farò|O que vou fazer|Wat ik ga doen|Mes résolutions"
    ),
    Part.QUOTATIONS: (
        "Quotes|Quotations|Passages|Words to keep|Favourite quotes|Favorite quotations|"
        "Quotes I liked|Passages worth keeping|Notable quotes from the book|Excerpts|4) Quotes|"
        "Zitate|Wichtige Zitate|Citations|Citas|Citazioni|Citações|Citaten|Lines|Lines to keep|"
        "Lines by heart|Textstellen|Passages à garder|Frases para recordar|Brani scelti|"
        "Parole da ricordare|Trechos|Frases para guardar|Mooie zinnen|Om te onthouden"
    ),
    Part.JUDGEMENT: (
        "Judgement|Judgment|Verdict|Agree or not|My opinion|Do I agree|What I think|My view|"
        "Urteil|Mein Urteil|Mon avis|Giudizio|Oordeel|My verdict|Critique|My take|"
        "Was ich davon halte|Ce que j’en pense|Lo que pienso|Cosa ne penso|O que penso"
    ),
}
SPOKEN = [(heading, part) for part, text in ANNOUNCING.items() for heading in text.split("|")]


@pytest.mark.parametrize(("heading", "part"), SPOKEN)
def test_headings_announce_their_part(heading: str, part: Part):
    """A usual heading announces its part, and can mean nothing else."""
    found = part_named(heading.rstrip(":"))
    assert found is not None
    assert (found.part, found.sure) == (part, True)


@pytest.mark.parametrize(
    "text",
    [
        "Background",
        "Walden",
        "These",
        "Chapter 1",
        "Chapter 3",
        "Preface",
        "",
        "***",
        "12",
        "A" * 200,
        "a\nb",
    ],
)
def test_other_words_announce_nothing(text: str):
    """Words that are in no list announce no part."""
    assert part_named(text) is None


def test_a_known_word_among_others_is_only_likely():
    """A heading with a known word among unknown ones is likely, and the head noun decides."""
    found = part_named("The argument of the second half")
    assert found is not None
    assert (found.part, found.sure) == (Part.POINTS, False)


def test_typing_errors_in_headings_are_forgiven():
    """A short heading with a letter wrong or missing still announces its part."""
    for heading, part in (
        ("Sumary", Part.THEME),
        ("Quotatoins", Part.QUOTATIONS),
        ("Comitments", Part.COMMITMENTS),
    ):
        found = misspelt(heading)
        assert found is not None
        assert found.part is part
    assert misspelt("Background") is None


@pytest.mark.parametrize(
    "layout",
    [
        "# {0}",
        "## {0}",
        "** {0}",
        "** {0}:",
        "{0}",
        "{0}:",
        "{upper}",
        "# 1. {0}",
        "** 2) {0}",
    ],
)
def test_headings_are_known_by_any_dress(layout: str):
    """Heading styles, bold, capital, colon-ended and bare lines all announce a part."""
    lines = ["# Walden by Henry David Thoreau"]
    for heading, words in (("Summary", "He went."), ("Points", "- One"), ("Quotes", "> “Two”")):
        lines += [layout.format(heading, upper=heading.upper()), words]
    digest = understood("\n".join(lines)).digest
    assert digest.theme == "He went."
    assert [point.text for point in digest.points] == ["One"]
    assert [quotation.text for quotation in digest.quotations] == ["Two"]


@pytest.mark.parametrize(
    "line",
    [
        "Gist: He went.",
        "** Gist: He went.",
        "Gist — He went.",
        "# Gist: He went.",
        "Gist. He went.",
    ],
)
def test_a_label_on_the_same_line(line: str):
    """What follows a label on its line is the part."""
    assert understood(f"# Walden\n{line}\n# Points\n- One").digest.theme == "He went."


def test_rows_with_the_label_on_the_left():
    """A table of two columns gives each part beside its name, several lines in one cell too."""
    digest = understood(
        """
        | Title | Walden
        | Author | Henry David Thoreau
        | Summary | He went.
        | Points | 1. One / 2. Two
        | | 3. Three
        | What I will do | Walk
        | Quotes | “Simplify.” (p. 5)
        """
    ).digest
    assert (digest.title, digest.author) == ("Walden", "Henry David Thoreau")
    assert digest.theme == "He went."
    assert [point.text for point in digest.points] == ["One", "Two", "Three"]
    assert [commitment.text for commitment in digest.commitments] == ["Walk"]
    assert [(q.text, q.locator) for q in digest.quotations] == [("Simplify.", "p. 5")]


def test_an_outline_of_items():
    """A digest that is one nested list is read by its labels."""
    digest = understood(
        "- Title: Emma\n- Author: Jane Austen\n- Theme: She is wrong.\n- Points:\n-- One\n-- Two\n"
        "- Quotes:\n-- “Badly done” (ch. 43)"
    ).digest
    assert (digest.title, digest.author, digest.theme) == ("Emma", "Jane Austen", "She is wrong.")
    assert [point.text for point in digest.points] == ["One", "Two"]
    assert [(q.text, q.locator) for q in digest.quotations] == [("Badly done", "ch. 43")]


def test_sections_of_the_same_part_are_joined():
    """Two headings for one part give one part, in order."""
    digest = understood(
        "# W\n## Gist\nOne.\n## Points\n- A\n## Summary\nTwo.\n## More points\n- B"
    ).digest
    assert digest.theme == "One.\n\nTwo."
    assert [point.text for point in digest.points] == ["A", "B"]


def test_a_point_that_begins_like_a_label_stays_a_point():
    """In a list of points an item such as `Theme: nature` is a point."""
    digest = understood("# W\n## Points\n- Theme: nature\n- Summary: it ends").digest
    assert [point.text for point in digest.points] == ["Theme: nature", "Summary: it ends"]


def test_a_title_of_heading_words_is_a_title():
    """A book called Outline is not a section of points."""
    digest = understood("# Outline\nby Rachel Verinder\n## Summary\nTalk.").digest
    assert (digest.title, digest.author, digest.points) == ("Outline", "Rachel Verinder", ())


def test_inner_headings_belong_to_their_section():
    """A heading below the section's own, with a known word among others, opens nothing."""
    digest = understood(
        "# W\n## Points\n### The argument of the first part\nHe says so.\n### The second\nAnd so."
    ).digest
    assert [point.text for point in digest.points] == [
        "The argument of the first part: He says so.",
        "The second: And so.",
    ]


def test_unknown_sections_are_told_of():
    """Words under a heading that announces nothing are named in a notice and not taken in."""
    found = understood("# W\n## Summary\nHe went.\n## Background\nBorn in 1817.\nDied.")
    assert found.digest.theme == "He went."
    told = [notice.message for notice in found.notices if notice.part == "document"]
    assert told == [
        "Under “Background”, this was not taken in: “Born in 1817.”.",
        "Under “Background”, this was not taken in: “Died.”.",
    ]


def test_an_unknown_capital_line_ends_a_section_of_capital_headings():
    """Where capital lines are the headings, an unknown one closes the part before it."""
    found = understood("W\nSUMMARY\nHe went.\nBACKGROUND\nBorn in 1817.")
    assert found.digest.theme == "He went."
    assert any("Born in 1817" in notice.message for notice in found.notices)


@pytest.mark.parametrize(
    ("lines", "judgement"),
    [
        ("Agree: the past binds.", "Agree: the past binds."),
        ("Disagree – he is wrong.", "Disagree – he is wrong."),
        ("Suspended: more is needed.", "Suspended: more is needed."),
        ("## Judgement\nAgree: the past binds.", "Agree: the past binds."),
        ("## Judgement\nAgree.\nDisagree: of late.", "Agree.\n\nDisagree: of late."),
        ("Judgement: agree, for the past binds.", "agree, for the past binds."),
        ("## Agree\nThe past binds.", "Agree: The past binds."),
        ("** Where I disagree\nHe is wrong.", "Where I disagree: He is wrong."),
        ("## Agree or not\nThe past binds.", "The past binds."),
    ],
)
def test_a_verdict_is_content(lines: str, judgement: str):
    """A label that is itself the verdict stays in front of its reasons."""
    assert understood(f"# W\n## Summary\nx\n{lines}").digest.judgement == judgement
