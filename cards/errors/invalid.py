"""What was given is not well formed."""

from datetime import datetime

from cards.errors.refusals import Invalid


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
