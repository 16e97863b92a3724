"""From a driver's error to one of the store's own."""

from sqlalchemy import ExceptionContext
from sqlalchemy.exc import (
    DataError,
    DBAPIError,
    IntegrityError,
    InterfaceError,
    OperationalError,
    SQLAlchemyError,
)
from sqlalchemy.exc import TimeoutError as QueueTimeout

from cards.errors import CatchwordError, Invalid
from service.store.columns import UnkeepableError
from service.store.errors import StoreBusy, StoreContradiction, StoreError, StoreUnavailable

_POSTGRESQL_BUSY = frozenset({"40001", "40P01", "55P03"})
"""Could not serialise, deadlock, lock not available (PostgreSQL's manual, appendix A)."""


def translate(context: ExceptionContext) -> None:
    """Raise the store's own error in the place of a driver's; leave all others alone.

    To be listened to as `handle_error`.
    """
    if context.is_pre_ping:
        return  # a broken connection found in time is replaced, unless it is made an error
    original = context.original_exception
    if isinstance(original, UnkeepableError):
        raise Invalid(str(original))
    if isinstance(original, OverflowError):
        raise StoreContradiction("A number is too large to be kept; nothing was kept.")
    if isinstance(context.sqlalchemy_exception, DBAPIError):
        raise store_error(context.sqlalchemy_exception)


def store_error(error: SQLAlchemyError) -> CatchwordError:
    """Return what the store says of an error of the database, its driver or the queue for it."""
    original = getattr(error, "orig", None)
    if (
        isinstance(error, QueueTimeout)
        or getattr(original, "sqlite_errorname", "").startswith(("SQLITE_BUSY", "SQLITE_LOCKED"))
        or getattr(original, "sqlstate", None) in _POSTGRESQL_BUSY
    ):
        return StoreBusy()
    if isinstance(error, IntegrityError | DataError):
        return StoreContradiction()
    if isinstance(error, OperationalError | InterfaceError):
        return StoreUnavailable()
    return StoreError()
