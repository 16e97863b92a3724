"""This reader has no such thing."""

from collections.abc import Sequence
from uuid import UUID

from cards.errors.refusals import Missing


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


class CheckInMissing(Missing):
    """This reader has made no such check-in, or took it back."""

    def __init__(self, check_in_id: UUID) -> None:
        super().__init__(f"There is no check-in {check_in_id} in this library.", where="check_in")


class DecisionMissing(Missing):
    """This reader has taken no such decision, or took it back."""

    def __init__(self, decision_id: UUID) -> None:
        super().__init__(f"There is no decision {decision_id} in this library.", where="decision")


class RereadingMissing(Missing):
    """This reader has recorded no such re-reading, or took it back."""

    def __init__(self, rereading_id: UUID) -> None:
        super().__init__(
            f"There is no re-reading {rereading_id} in this library.", where="rereading"
        )


class TalkMissing(Missing):
    """This reader has recorded no such talk, or took it back."""

    def __init__(self, talk_id: UUID) -> None:
        super().__init__(f"There is no talk {talk_id} in this library.", where="talk")


class FeedAddressMissing(Missing):
    """This reader's calendar has no such address, or it was revoked."""

    def __init__(self, address_id: UUID) -> None:
        super().__init__(
            f"The calendar has no address {address_id} that opens it.", where="address"
        )
