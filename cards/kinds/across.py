"""`across`: which other book of the reader's speaks to this point?"""

from collections.abc import Iterator
from uuid import UUID

from cards.answers import Grade
from cards.digest import folded
from cards.kinds.base import (
    Answered,
    Asked,
    Attempt,
    Cue,
    KindName,
    Mark,
    Occasion,
    Span,
    link_of,
)
from cards.kinds.naming import Naming, naming, others_named
from cards.kinds.veiling import capitalised, title_stems, veil
from cards.kinds.words import HIT, held, spans_of, stems
from cards.parts import KeptDigest, Link, Part, PartKind


class _Across:
    name = KindName.ACROSS

    def sources(self, digest: KeptDigest) -> Iterator[Part]:
        """Yield the points that the reader linked to another book."""
        linked = {link.part_id for link in digest.links}
        yield from (part for part in digest.held(PartKind.POINT) if part.id in linked)

    def cue(self, occasion: Occasion) -> Cue:
        """Show the point and its book, the linked titles veiled; ask for the other book.

        It is named and not chosen: a list would give it away.
        """
        digest, part = occasion.digest, occasion.part
        by = f", by {digest.author}" if digest.author else ""
        shown = f"{part.text}\n{digest.title}{by}"
        return Cue(
            heading="Across your books",
            words=veil(shown, _hidden(shown, _links(occasion))),
            question="Which other book of yours speaks to this?",
            asked=(Asked.WORDS,),
        )

    def answer(self, occasion: Occasion) -> Answered:
        """Return the linked books, a line each, with what they say to the point."""
        links = _links(occasion)
        return Answered(
            words="\n".join(map(_line, links)), book=links[0].book_id if links else None
        )

    def mark(self, occasion: Occasion, attempt: Attempt) -> Mark:
        """Suggest a grade by what was named of any one of the linked books."""
        words, links = attempt.words, _links(occasion)
        if not words.strip():
            return Mark(Grade.BLANK, "Nothing was written.")
        named = [naming(words, link.title, link.author) for link in links]
        found = spans_of(words, stems(" ".join(map(_line, links))))
        spans = _spans(links, named)
        ranks = [_rank(link, what, words) for link, what in zip(links, named, strict=True)]
        if not any(ranks):
            return Mark(Grade.BLANK, _missed(occasion, words), spans)
        best = ranks.index(max(ranks))
        link, what = links[best], named[best]
        also = [each.title for each in links if each is not link]
        grade, reason = _graded(link, what, words, _others(occasion, words))
        if also:
            reason += f" Also: {'; '.join(also)}."
        return Mark(grade, reason, spans, found)

    def asks(self, occasion: Occasion) -> frozenset[UUID]:
        """The links of the point."""
        return frozenset({link_of(occasion.part)})

    def shows(self, occasion: Occasion) -> frozenset[UUID]:
        """The point, and its links."""
        return frozenset({occasion.part.id, link_of(occasion.part)})

    def secret(self, occasion: Occasion) -> str:
        """The linked titles."""
        return "\n".join(link.title for link in _links(occasion))


def _links(occasion: Occasion) -> tuple[Link, ...]:
    return tuple(link for link in occasion.digest.links if link.part_id == occasion.part.id)


def _hidden(shown: str, links: tuple[Link, ...]) -> frozenset[str]:
    """Return the stems to veil: of a title of which half can be read, and of authors' names."""
    readable, hidden = stems(shown), set[str]()
    for link in links:
        title = stems(link.title)
        if 2 * len(title & readable) >= len(title):
            hidden |= title
        hidden |= capitalised(shown, title_stems(link.author))
    return frozenset(folded(stem) or stem for stem in hidden)


def _line(link: Link) -> str:
    by = f", by {link.author}" if link.author else ""
    return f"{link.title}{by}" + (f": {link.why}" if link.why else "")


def _rank(link: Link, named: Naming, words: str) -> int:
    if named.title and not named.turned:
        return 3 + (named.author or _says(link, words))
    return 2 if named.author or named.title else int(named.part or _says(link, words))


def _says(link: Link, words: str) -> bool:
    """Tell whether words hold half of what the reader said the other book says to the point."""
    why = stems(link.why)
    return bool(why) and len(held(why, words)) >= HIT * len(why)


def _graded(link: Link, named: Naming, words: str, others: list[str]) -> tuple[Grade, str]:
    if named.title:
        if named.turned:
            return Grade.HAZY, f"{link.title} is there, but it is turned away."
        if others:
            return Grade.HAZY, f"{link.title} is one of several named; the others are not linked."
        if named.author or _says(link, words):
            also = "its author" if named.author else "what it says to this"
            return Grade.VIVID, f"{link.title}, and {also}."
        return Grade.CLEAR, f"{link.title}."
    if named.author:
        said = "The author is right, the title is missing"
    else:
        said = (
            "Part of the title is right" if named.part else "What it says came back, not its title"
        )
    return Grade.HAZY, f"{said}: {link.title}."


def _others(occasion: Occasion, words: str) -> list[str]:
    """Return the titles of books on the shelf that are named and are not linked to the point."""
    right = [occasion.digest.title, *(link.title for link in _links(occasion))]
    return others_named(words, occasion.shelf, right)


def _missed(occasion: Occasion, words: str) -> str:
    others = _others(occasion, words)
    if others:
        return f"{others[0]} is not linked to this point yet; you can link it."
    return "No linked book was found in what you wrote."


def _spans(links: tuple[Link, ...], named: list[Naming]) -> tuple[Span, ...]:
    """Mark the titles: named, or not."""
    spans, start = [], 0
    for link, what in zip(links, named, strict=True):
        spans.append(Span(start, start + len(link.title), what.title and not what.turned))
        start += len(_line(link)) + 1
    return tuple(spans)


ACROSS = _Across()
"""The kind `across`."""
