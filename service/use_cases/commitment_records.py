"""What passes between the use cases and the store about commitments."""

from dataclasses import dataclass
from uuid import UUID

from cards.commitments import Commitment


@dataclass(frozen=True, slots=True)
class KeptCommitment:
    """A commitment a digest of the library holds, or held.

    Attributes:
        commitment: as it came in; its words then.
        digest_id, title, author: of the book, as its digest says them now.
        number: its place among the commitments of its digest, from 1.
        text: its words as the digest says them now.
        retired: whether the digest no longer holds it, or was taken out.
    """

    commitment: Commitment
    digest_id: UUID
    title: str
    author: str | None
    number: int
    text: str
    retired: bool = False


@dataclass(frozen=True, slots=True)
class NewCommitment:
    """A commitment as it is entered: in the row beside its part.

    Attributes:
        commitment: as it comes in.
        digest_id: of the book.
    """

    commitment: Commitment
    digest_id: UUID
