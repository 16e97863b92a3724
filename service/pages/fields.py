"""Reading the fields of a form: each is right, or says beside itself what is wrong with it."""

import re
from collections.abc import Callable, Mapping
from datetime import date
from typing import TypeVar
from uuid import UUID

T = TypeVar("T")
Faults = dict[str, str]
"""What is wrong, by the name of the field it is about."""

MOST_REVISIONS = 2**31 - 1
"""What the store can count."""

_WHOLE = re.compile(r"[+-]?\d{1,9}", re.ASCII)


class Fault(Exception):
    """A field that cannot be taken as it is.

    Attributes:
        field: its name.
        message: one sentence that says what is wrong and what to do.
    """

    def __init__(self, field: str, message: str) -> None:
        super().__init__(message)
        self.field = field
        self.message = message


def taken(faults: Faults, read: Callable[[], T]) -> T | None:
    """Return what reading a field gives; None, and what is wrong among the faults, if anything."""
    try:
        return read()
    except Fault as fault:
        faults[fault.field] = fault.message
        return None


def text(form: Mapping[str, str], name: str) -> str:
    """Return the words of a field, line ends as newlines, "" when it is not there.

    Browsers send line ends as CR LF; and no keyboard types a NUL, which databases refuse.
    """
    return form.get(name, "").replace("\r\n", "\n").replace("\r", "\n").replace("\x00", "")


def optional(form: Mapping[str, str], name: str) -> str | None:
    """Return the trimmed words of a field, or None when it is empty."""
    return text(form, name).strip() or None


def whole(form: Mapping[str, str], name: str, what: str, least: int, most: int) -> int | None:
    """Return a whole number, or None when the field is empty.

    Raises:
        Fault: it is no whole number from `least` to `most`.
    """
    written = text(form, name).strip()
    if not written:
        return None
    if not _WHOLE.fullmatch(written) or not least <= int(written) <= most:
        raise Fault(name, f"{what} is a whole number from {least} to {most}.")
    return int(written)


def day(form: Mapping[str, str], name: str) -> date | None:
    """Return a day written as 2026-03-09, or None when the field is empty.

    Raises:
        Fault: there is no such day.
    """
    written = text(form, name).strip()
    if not written:
        return None
    try:
        return date.fromisoformat(written)
    except ValueError:
        raise Fault(name, "This day does not exist. Write it as 2026-03-09.") from None


def identity(form: Mapping[str, str], name: str) -> UUID | None:
    """Return the id a field holds, or None when it holds none."""
    try:
        return UUID(form.get(name, ""))
    except ValueError:
        return None


def revision(form: Mapping[str, str]) -> int:
    """Return the revision a form was opened at; 0, which is none, when it says none."""
    try:
        return whole(form, "revision", "A revision", 1, MOST_REVISIONS) or 0
    except Fault:
        return 0
