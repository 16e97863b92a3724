"""Digests made by chance, and a small writer that puts them down as a reader would."""

from datetime import date

from hypothesis import strategies as st

from cards.digest import Commitment, Digest, Point, Quotation

NOUNS = ["river", "house", "letter", "winter", "reader", "sister", "captain", "garden", "silence"]
VERBS = ["carries", "forgets", "answers", "leaves", "builds", "loses", "mends"]
LOCATORS = [
    "p. 5",
    "pp. 34-35",
    "p. ix",
    "ch. 20",
    "§5",
    "Book II, p. 9",
    "54%",
    "p. 300",
    "Finale",
]


@st.composite
def sentences(draw: st.DrawFn) -> str:
    """Plain sentences, no two words of which are a heading or a locator."""
    words = draw(st.lists(st.sampled_from(NOUNS + VERBS), min_size=2, max_size=9))
    return " ".join(["The", *words]) + draw(st.sampled_from([".", "!", "?"]))


@st.composite
def digests(draw: st.DrawFn) -> Digest:
    """Digests with any of the parts, at least one of them, each place said in words."""
    points = tuple(
        Point(text, locator)
        for text, locator in draw(
            st.lists(st.tuples(sentences(), st.none() | st.sampled_from(LOCATORS[:-1])), max_size=5)
        )
    )
    quotations = tuple(
        Quotation(text, locator, after)
        for text, locator, after in draw(
            st.lists(
                st.tuples(
                    sentences(), st.sampled_from(LOCATORS), st.integers(0, max(0, len(points)))
                ),
                max_size=5,
            )
        )
    )
    commitments = tuple(map(Commitment, draw(st.lists(sentences(), max_size=4))))
    theme = draw(
        sentences() if not (points or quotations or commitments) else st.none() | sentences()
    )
    return Digest(
        title=draw(st.sampled_from(["Walden", "The Long Winter", "Letters to a Sister"])),
        author=draw(st.sampled_from(["Jane Austen", "J. S. Mill", "Simone de Beauvoir"])),
        isbn=draw(st.sampled_from([None, "9780306406157", "080442957X"])),
        pages=draw(st.none() | st.integers(1, 50_000)),
        finished_on=draw(st.none() | st.dates(date(1000, 1, 1))),
        theme=theme,
        judgement=draw(st.none() | sentences()),
        points=points,
        commitments=commitments,
        quotations=quotations,
    )


def written(digest: Digest) -> str:
    """Return a digest in Markdown, which is also the brief notation of `blocks_of`."""
    lines = [f"# {digest.title} by {digest.author}"]
    lines += [f"ISBN: {digest.isbn}"] if digest.isbn else []
    lines += [f"Pages: {digest.pages}"] if digest.pages else []
    lines += [f"Finished: {digest.finished_on}"] if digest.finished_on else []
    lines += ["## Summary", digest.theme] if digest.theme else []
    if digest.points:
        lines.append("## Points")
        for number, point in enumerate(digest.points, 1):
            lines.append(
                f"{number}. {point.text}" + (f" ({point.locator})" if point.locator else "")
            )
    if digest.commitments:
        lines.append("## Commitments")
        lines += [f"- {commitment.text}" for commitment in digest.commitments]
    if digest.quotations:
        lines.append("## Quotations")
        for quotation in digest.quotations:
            place = f"after point {quotation.after}" if quotation.after else "before all points"
            lines.append(f"> “{quotation.text}” ({quotation.locator}; {place})")
    lines += ["## Judgement", digest.judgement] if digest.judgement else []
    return "\n\n".join(lines)
