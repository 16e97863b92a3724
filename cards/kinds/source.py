"""`source`: whose words are these? One of the reader's own books."""

from collections.abc import Iterator
from uuid import UUID

from cards.answers import Grade
from cards.kinds.base import (
    Answered,
    Asked,
    Attempt,
    Cue,
    KindName,
    Mark,
    Occasion,
    Shelved,
    place_of,
)
from cards.kinds.confusable import choices, same_author, same_book
from cards.kinds.naming import Naming, naming, others_named
from cards.kinds.veiling import Telling, share_left, veil
from cards.kinds.words import spans_of, stems
from cards.parts import KeptDigest, Part, PartKind

_LEFT = 0.5
"""Share of a quotation's content words that veiling must leave: of less nobody can tell."""
_FEWEST_LEFT = 2


class _Source:
    name = KindName.SOURCE

    def sources(self, digest: KeptDigest) -> Iterator[Part]:
        """Yield the quotations that can be read with names and title words veiled."""
        telling = Telling(digest)
        for part in digest.held(PartKind.QUOTATION):
            hidden = telling.of(part.text)
            left = stems(veil(part.text, hidden))
            if share_left(part.text, hidden) >= _LEFT and len(left) >= _FEWEST_LEFT:
                yield part

    def cue(self, occasion: Occasion) -> Cue:
        """Show the quotation veiled, and the books it could be of where there are enough."""
        books = choices(occasion)
        hidden = Telling(occasion.digest).of(occasion.part.text)
        return Cue(
            heading="Whose words are these?",
            words=f"“{veil(occasion.part.text, hidden)}”",
            question=(
                "Which of your books says this?"
                if books
                else "Which of your books says this? Name it."
            ),
            asked=(Asked.BOOK,) if books else (Asked.WORDS,),
            choices=books,
        )

    def answer(self, occasion: Occasion) -> Answered:
        """Return the book, and where in it the quotation stands."""
        digest, part = occasion.digest, occasion.part
        return Answered(
            words=_titled(digest.title, digest.author),
            page=part.page,
            book=digest.id,
            locator=part.locator,
        )

    def mark(self, occasion: Occasion, attempt: Attempt) -> Mark:
        """Suggest a grade by the book chosen, or by the title and author named."""
        if attempt.book is not None:
            return _by_choice(occasion, attempt.book)
        if attempt.words.strip():
            return _by_words(occasion, attempt.words)
        return Mark(Grade.BLANK, "No book was given.")

    def asks(self, occasion: Occasion) -> frozenset[UUID]:
        """The quotation: whoever has just seen it in its book knows."""
        return frozenset({occasion.part.id})

    def shows(self, occasion: Occasion) -> frozenset[UUID]:
        """The quotation and where it stands."""
        return frozenset({occasion.part.id, place_of(occasion.part)})

    def secret(self, occasion: Occasion) -> str:  # noqa: ARG002
        """None: the book's title stands on many pages, and none says that these words are its."""
        return ""


def _titled(title: str, author: str | None) -> str:
    return f"{title}, by {author}" if author else title


def _by_choice(occasion: Occasion, chosen: UUID) -> Mark:
    digest = occasion.digest
    right = Shelved(digest.id, digest.title, digest.author)
    book = next((book for book in occasion.shelf if book.id == chosen), None)
    if chosen == digest.id or (book is not None and same_book(book, right)):
        among = len(choices(occasion))
        luck = f" Luck alone chooses it one time in {among}: no more than clear is suggested."
        return Mark(Grade.CLEAR, "The right book." + (luck if among else ""))
    if book is None:
        return Mark(Grade.BLANK, "Another book than the right one.")
    if same_author(book, right):
        return Mark(Grade.HAZY, f"The author is right, the book is not {book.title}.")
    return Mark(Grade.BLANK, f"Not {book.title}.")


def _by_words(occasion: Occasion, words: str) -> Mark:
    digest = occasion.digest
    grade, reason = _graded(
        naming(words, digest.title, digest.author),
        others_named(words, occasion.shelf, [digest.title]),
    )
    found = spans_of(words, stems(_titled(digest.title, digest.author)))
    return Mark(grade, reason, attempt_spans=found)


def _graded(named: Naming, others: list[str]) -> tuple[Grade, str]:
    if named.title and (named.turned or others):
        what = "it is turned away" if named.turned else "among several"
        return Grade.HAZY, f"The title is there, but {what}."
    if named.title and named.author:
        return Grade.VIVID, "Title and author are right."
    if named.title:
        return Grade.CLEAR, "The title is right."
    if named.author:
        return Grade.HAZY, "The author is right, the title is missing."
    if named.part:
        return Grade.HAZY, "Part of the title is right."
    return Grade.BLANK, "Neither the title nor the author was found in what you wrote."


SOURCE = _Source()
"""The kind `source`."""
