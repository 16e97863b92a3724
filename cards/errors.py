"""Every refusal the core can express.

    CatchwordError               the store's own failures are of this kind too
      Refusal                    the request cannot be carried out; says why
        Invalid                  what was given is not well formed
          InvalidDigest          a digest breaks a rule of its own
          InvalidAnswer          an answer that cannot be a fact
            AnswerInFuture       it is dated after now
          InvalidDraft           a draft that is too long, or one too many
          InvalidBibliography    neither BibTeX nor CSL-JSON
          InvalidAnnotations     no Web Annotations
          InvalidPreference      a reader's setting outside its range
        Missing                  this reader has no such thing
          DigestMissing
          DigestNotNamed         no digest, or several, by these words
          ItemMissing
          AnswerMissing
          CommitmentMissing
          PartMissing
          VersionMissing
          DraftMissing
          BookTextMissing
        Conflict                 it contradicts what is already kept
          AnswerConflict         another answer already bears this id
          DigestChanged          the digest was edited meanwhile
          DraftChanged           the draft was changed elsewhere
          ReaderChanged          the settings were changed meanwhile
        DocumentRefused          a file from which no digest can be read
          DocumentEmpty
          DocumentTooLarge
          DocumentTooSlow
          DocumentLocked         protected by a password
          DocumentBroken         truncated, or not what its name says
          DocumentUnsupported    a format Catchword does not read
          SeveralDigests         where one is asked for
          NothingRecognised      no part of a digest was found in it
        CannotWrite              a file that cannot be written
          CannotPrint            letters no typeface at hand has

A refusal carries one clear sentence and, where there is one, the field or part
it is about; doors translate it and add nothing.
"""

from collections.abc import Sequence
from datetime import datetime
from uuid import UUID


class CatchwordError(Exception):
    """Base of every error Catchword raises on purpose.

    Attributes:
        message: one sentence that says what is wrong and what to do.
    """

    def __init__(self, message: str) -> None:
        super().__init__(message)
        self.message = message


class Refusal(CatchwordError):
    """Something a reader or a program asked for and cannot have.

    Attributes:
        where: the field or part it is about, or None.
    """

    def __init__(self, message: str, *, where: str | None = None) -> None:
        super().__init__(message)
        self.where = where


class Invalid(Refusal):
    """What was given is not well formed."""


class InvalidDigest(Invalid):
    """A digest breaks a rule of its own."""


class InvalidAnswer(Invalid):
    """An answer that cannot be a fact."""


class InvalidLink(Invalid):
    """A link that cannot be kept: no point, no other book, or too much said of it."""


class AnswerInFuture(InvalidAnswer):
    """An answer dated after the moment it was received."""

    def __init__(self, answered_at: datetime) -> None:
        super().__init__(
            f"The answer is dated {answered_at.isoformat(timespec='minutes')}, which has not come "
            "yet. Check the clock of the device that sent it.",
            where="answered_at",
        )
        self.answered_at = answered_at


class InvalidDraft(Invalid):
    """A draft that cannot be kept as it is."""


class InvalidBibliography(Invalid):
    """A text that describes no book in BibTeX or CSL-JSON."""


class InvalidAnnotations(Invalid):
    """A text that is no Web Annotations in JSON-LD."""


class InvalidPreference(Invalid):
    """A reader's setting outside its range."""


class Missing(Refusal):
    """This reader has no such thing."""


class DigestMissing(Missing):
    """This reader has no such digest."""

    def __init__(self, digest_id: UUID) -> None:
        super().__init__(f"There is no digest {digest_id} in this library.", where="digest")


class DigestNotNamed(Missing):
    """Words by which no digest, or more than one, could be meant."""

    def __init__(self, words: str, several: Sequence[str]) -> None:
        super().__init__(
            f"Several digests could be meant by “{words}”: {'; '.join(several)}. Give more of the "
            "title, or the id."
            if several
            else f"No digest is called “{words}”. Give words of its title or author, or its id.",
            where="digest",
        )


class ItemMissing(Missing):
    """This reader has no such item."""

    def __init__(self, item_id: UUID) -> None:
        super().__init__(f"There is no item {item_id} in this library.", where="item")


class AnswerMissing(Missing):
    """This reader has given no such answer."""

    def __init__(self, answer_id: UUID) -> None:
        super().__init__(f"There is no answer {answer_id} in this library.", where="answer")


class LinkMissing(Missing):
    """This digest has no such link."""

    def __init__(self, link_id: UUID) -> None:
        super().__init__(f"There is no link {link_id} from this digest.", where="link")


class SheetMissing(Missing):
    """This reader has had no such sheet printed."""

    def __init__(self, sheet_id: UUID) -> None:
        super().__init__(f"There is no sheet {sheet_id} in this library.", where="sheet")


class CommitmentMissing(Missing):
    """This reader has made no such commitment."""

    def __init__(self, commitment_id: UUID) -> None:
        super().__init__(
            f"There is no commitment {commitment_id} in this library.", where="commitment"
        )


class PartMissing(Missing):
    """A digest has no such part, or not in the way it is asked for."""

    def __init__(self, part_id: UUID) -> None:
        super().__init__(
            f"There is no part {part_id} in this digest of which that can be said.", where="part"
        )


class VersionMissing(Missing):
    """A digest has no such version."""

    def __init__(self, digest_id: UUID, revision: int) -> None:
        super().__init__(f"Digest {digest_id} has no version {revision}.", where="revision")


class DraftMissing(Missing):
    """This reader has no such draft."""

    def __init__(self, draft_id: UUID) -> None:
        super().__init__(
            f"There is no draft {draft_id} in this library. It may have been kept or put away.",
            where="draft",
        )


class BookTextMissing(Missing):
    """No text of this book was given."""

    def __init__(self, digest_id: UUID) -> None:
        super().__init__(
            f"Digest {digest_id} has no text of its book. Give one, an EPUB, a text file or a web "
            "page of the whole book.",
            where="book",
        )


class Conflict(Refusal):
    """It contradicts what is already kept."""


class AnswerConflict(Conflict):
    """Another answer already bears this id."""

    def __init__(self, answer_id: UUID) -> None:
        super().__init__(
            f"Answer {answer_id} is already kept, and says something else. Answers are facts and "
            "are never changed: take it back, and send a new one under an id of its own.",
            where="id",
        )


class DigestChanged(Conflict):
    """The digest was edited since it was read."""

    def __init__(self, digest_id: UUID) -> None:
        super().__init__(
            f"Digest {digest_id} was changed since you opened it. Open it again and repeat your "
            "correction on what it says now.",
            where="digest",
        )


class DraftChanged(Conflict):
    """The draft was changed since it was opened."""

    def __init__(self, draft_id: UUID) -> None:
        super().__init__(
            f"Draft {draft_id} was changed since you opened it, in another window or on another "
            "device. Open it again and go on from what it says now.",
            where="draft",
        )


class ReaderChanged(Conflict):
    """The reader's settings were changed since they were read."""

    def __init__(self) -> None:
        super().__init__(
            "The settings were changed since you opened them. Open them again and repeat yours.",
            where="revision",
        )


class DocumentRefused(Refusal):
    """A file from which no digest can be read."""


class DocumentEmpty(DocumentRefused):
    """A file without content."""


class DocumentTooLarge(DocumentRefused):
    """A file, or what it unpacks to, over the bound."""


class DocumentTooSlow(DocumentRefused):
    """A file that could not be read within the time bound."""


class DocumentLocked(DocumentRefused):
    """A file protected by a password."""


class DocumentBroken(DocumentRefused):
    """A truncated file, or one that is not what its name says."""


class DocumentUnsupported(DocumentRefused):
    """A format Catchword does not read."""


class SeveralDigests(DocumentRefused):
    """A file that holds more than the one digest asked for."""

    def __init__(self, name: str, digests: int) -> None:
        super().__init__(
            f"“{name}” holds {digests} digests, and one is asked for here. Hand it in among many "
            "files, or part it into one file a digest.",
            where="document",
        )


class NothingRecognised(DocumentRefused):
    """A readable document in which no part of a digest was found."""


class CannotWrite(Refusal):
    """A file that cannot be written."""


class CannotPrint(CannotWrite):
    """A digest with letters that no typeface at hand has."""
