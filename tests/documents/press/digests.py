"""Digests the press is tried with, written for the purpose; the books are in the public domain."""

from datetime import date

from cards.digest import Commitment, Digest, Point, Quotation

MARNER = Digest(
    title="Silas Marner",
    author="George Eliot",
    edition="Blackwood, 1861",
    isbn="9780306406157",
    pages=224,
    finished_on=date(2026, 1, 18),
    theme="A weaver whom a friend betrayed lives for his gold until it is stolen.\n\n"
    "A child comes in its place, and by her he is led back among people.",
    judgement="I agree, with one reserve: chance does much of the work.",
    points=(
        Point("A drawing of lots condemns an honest man.", "ch. 1, p. 12"),
        Point("The gold is stolen on a night of rain."),
        Point("A child is found asleep on the hearth.", "ch. 12, p. 136"),
    ),
    commitments=(
        Commitment("When I walk past Ruth's door on Sunday evening, I will knock."),
        Commitment("Ask Jonas to supper once a month, for six months."),
    ),
    quotations=(
        Quotation("His fingers encountered soft warm curls.", "ch. 12, p. 140", 3),
        Quotation("Everything comes to light, Nancy, sooner or later.", "p. 201", 0),
        Quotation("God gave her to me\nbecause you turned your back upon her,", None, None),
    ),
)

WERTHER = Digest(
    title="Die Leiden des jungen Werthers",
    author="Johann Wolfgang von Goethe",
    theme="Ein junger Mann liebt eine Frau, die einem anderen gehört, und die Welt wird ihm mit "
    "jedem Brief enger, bis er sie verlässt; das Buch fragt nicht, ob er recht hat.",
    points=(Point("Er sieht Lotte zum ersten Mal, wie sie den Kindern Brot schneidet.", "S. 24"),),
    quotations=(Quotation("Wie froh bin ich, daß ich weg bin!", "S. 5", 0),),
)

ILIAD = Digest(
    title="First lines",
    author="Homer",
    theme="The poem tells of the anger of Achilles, and of what it costs.",
    quotations=(
        Quotation("μῆνιν ἄειδε θεὰ Πηληϊάδεω Ἀχιλῆος\nοὐλομένην", "Book I, lines 1-2"),
        Quotation("Мысль изречённая есть ложь.", "p. 4"),
    ),
)


def long(lines: int) -> Digest:
    """A digest whose theme, points and quotations each are of so many sentences."""
    sentence = "Whoever rules the granary rules the winter, and the spring forgets to thank him. "
    return Digest(
        title="The Long Winter",
        theme=(sentence * lines).strip(),
        points=(Point(sentence.strip(), "p. 5"),) * lines,
        quotations=(Quotation(sentence.strip(), "p. 9"),) * lines,
    )
