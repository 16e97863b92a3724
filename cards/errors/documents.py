"""Files that cannot be read, or cannot be written."""

from cards.errors.refusals import CannotWrite, DocumentRefused


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


class CannotPrint(CannotWrite):
    """A digest with letters that no typeface at hand has."""
