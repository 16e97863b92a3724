"""How ids, instants and words are kept, the same on both databases.

PostgreSQL has types of its own for ids and instants. SQLite has neither: an id is
16 bytes there, an instant a text of fixed width in UTC, so that both sort as they
should and can be read with any tool.
"""

from collections.abc import Callable
from datetime import UTC, datetime
from uuid import UUID

from sqlalchemy import DateTime, Dialect, Text, Uuid
from sqlalchemy.types import TypeDecorator, TypeEngine, UserDefinedType


class UnkeepableError(ValueError):
    """A value no column can hold; the message says why in one sentence.

    Raised while a statement's values are bound, where SQLAlchemy would wrap a refusal;
    `refusals.translate` makes it one.
    """


class _IdBytes(UserDefinedType[UUID]):
    """An id as 16 bytes, which sort as PostgreSQL sorts its own."""

    cache_ok = True

    def get_col_spec(self, **_: object) -> str:
        return "BLOB"

    def bind_processor(self, dialect: Dialect) -> Callable[[UUID | None], bytes | None]:
        del dialect
        return lambda value: None if value is None else value.bytes

    def result_processor(
        self, dialect: Dialect, coltype: object
    ) -> Callable[[bytes | None], UUID | None]:
        del dialect, coltype
        return lambda value: None if value is None else UUID(bytes=value)


class _InstantText(UserDefinedType[datetime]):
    """An instant as `2026-03-01T21:40:00.000000+00:00`: 32 characters that sort."""

    cache_ok = True

    def get_col_spec(self, **_: object) -> str:
        return "VARCHAR(32)"

    def bind_processor(self, dialect: Dialect) -> Callable[[datetime | None], str | None]:
        del dialect
        return lambda value: (
            None if value is None else _in_utc(value).isoformat(timespec="microseconds")
        )

    def result_processor(
        self, dialect: Dialect, coltype: object
    ) -> Callable[[str | None], datetime | None]:
        del dialect, coltype
        return lambda value: None if value is None else datetime.fromisoformat(value)


class _Instant(TypeDecorator[datetime]):
    """An instant in the database's own type, handed back in UTC."""

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        del dialect
        return None if value is None else _in_utc(value)

    def process_result_value(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        del dialect
        return None if value is None else value.astimezone(UTC)


class _Words(TypeDecorator[str]):
    """Text that both databases can keep: no NUL (PostgreSQL) and no half surrogate (UTF-8)."""

    impl = Text()
    cache_ok = True

    def process_bind_param(self, value: str | None, dialect: Dialect) -> str | None:
        del dialect
        if value is not None:
            if "\x00" in value:
                raise UnkeepableError("The text holds a NUL character, which cannot be kept.")
            try:
                value.encode()
            except UnicodeEncodeError as error:
                raise UnkeepableError(
                    "The text holds half a character, which cannot be kept."
                ) from error
        return value


ID: TypeEngine[UUID] = Uuid().with_variant(_IdBytes(), "sqlite")
INSTANT: TypeEngine[datetime] = _Instant().with_variant(_InstantText(), "sqlite")
"""Aware instants, kept to the microsecond; handed back in UTC. Naive ones are refused."""
WORDS: TypeEngine[str] = _Words()


def _in_utc(value: datetime) -> datetime:
    if value.tzinfo is UTC:
        return value
    if value.utcoffset() is None:
        raise UnkeepableError("The time has no time zone, so it cannot be kept.")
    try:
        return value.astimezone(UTC)
    except OverflowError as error:
        raise UnkeepableError("The time lies outside the years 1 to 9999.") from error
