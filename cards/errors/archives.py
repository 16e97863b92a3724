"""Archives that cannot be read back."""

from cards.errors.refusals import Conflict, Invalid


class InvalidArchive(Invalid):
    """An archive that is damaged, of a later Catchword, or not what it says it is."""


class LibraryNotEmpty(Conflict):
    """A library that has something in it already, where an empty one is asked for."""

    def __init__(self) -> None:
        super().__init__(
            "The library is not empty, so the archive was not read back: nothing is ever mixed. "
            "Set CATCHWORD_HOME to a new folder, which makes a new library, and restore it there.",
            where="library",
        )
