"""What the store says when it cannot do what was asked, in no driver's words.

    CatchwordError
      StoreError            the store could not do it
        StoreBusy           others were writing all the while; the same again may succeed
        StoreUnavailable    it cannot be reached, opened or written
        StoreNewer          it was written by a later Catchword than this one
        StoreContradiction  what was to be kept breaks a rule of the tables

The driver's own error is chained as the cause, for logs alone.
"""

from cards.errors import CatchwordError


class StoreError(CatchwordError):
    """The store could not do what was asked.

    Attributes:
        message: one sentence that says what is wrong and what to do.
    """

    message = "The library could not be used."

    def __init__(self, message: str | None = None) -> None:
        self.message = message or type(self).message
        super().__init__(self.message)


class StoreBusy(StoreError):
    """Others were writing all the while."""

    message = "The library was busy with other changes; nothing was kept. Try again."


class StoreUnavailable(StoreError):
    """It cannot be reached, opened or written."""

    message = (
        "The library cannot be reached. Check that its database is running, that its folder "
        "can be written, and that there is room on the disk."
    )


class StoreNewer(StoreError):
    """It was written by a later Catchword than this one."""

    message = "The library was written by a later version of Catchword. Open it with that one."


class StoreContradiction(StoreError):
    """What was to be kept breaks a rule of the tables; nothing was kept."""

    message = "What was to be kept contradicts what is in the library; nothing was kept."
