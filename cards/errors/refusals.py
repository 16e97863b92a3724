"""What every refusal is: its sentence and what it is about; its sorts."""


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


class Missing(Refusal):
    """This reader has no such thing."""


class Conflict(Refusal):
    """It contradicts what is already kept."""


class DocumentRefused(Refusal):
    """A file from which no digest can be read."""


class CannotWrite(Refusal):
    """A file that cannot be written."""
