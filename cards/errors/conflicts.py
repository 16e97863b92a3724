"""It contradicts what is already kept."""

from uuid import UUID

from cards.errors.refusals import Conflict


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
