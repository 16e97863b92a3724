"""A reader takes facts out for other programs, in forms they take, however many there are."""

from collections.abc import Generator
from contextlib import closing
from dataclasses import dataclass

from cards.errors import Invalid
from service.use_cases.exporting_columns import What
from service.use_cases.exporting_records import ExportForm
from service.use_cases.exporting_tables import table_of
from service.use_cases.ports import Desk

MEDIA_TYPES = {
    ExportForm.CSV: "text/csv; charset=utf-8; header=present",
    ExportForm.JSON: "application/json",
    ExportForm.PARQUET: "application/vnd.apache.parquet",
    ExportForm.XLSX: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    ExportForm.XAPI: "application/json",
}
STATED = (What.ANSWERS, What.CHECK_INS)
"""What statements of xAPI are made of: what somebody did."""


@dataclass(frozen=True, slots=True)
class Exported:
    """A file that is written while it is handed out.

    Attributes:
        name: what to call it.
        media_type: as HTTP names it.
        pieces: its bytes, in order. They hold a reading transaction until they are gone through
            or closed.
    """

    name: str
    media_type: str
    pieces: Generator[bytes]


def forms_of(what: What) -> tuple[ExportForm, ...]:
    """Return the forms an export can be had in."""
    return tuple(form for form in ExportForm if form is not ExportForm.XAPI or what in STATED)


def file_name(what: What, form: ExportForm) -> str:
    """Return what the file of an export is called."""
    return f"{what}.xapi.json" if form is ExportForm.XAPI else f"{what}.{form}"


def export(desk: Desk, what: What, form: ExportForm) -> Exported:
    """Return an export, all of one moment of the library, whatever is recorded meanwhile.

    The first piece is made at once, so that what the store refuses is raised here and not in the
    middle of a file.

    Raises:
        Invalid: there are no statements of this.
    """
    if form not in forms_of(what):
        raise Invalid(
            "Statements of xAPI say what somebody did: they are made of answers and of check-ins, "
            f"not of {what}. Choose another form.",
            where="form",
        )
    pieces = _pieces(desk, what, form)
    first = next(pieces, b"")
    return Exported(file_name(what, form), MEDIA_TYPES[form], _begun(first, pieces))


def _pieces(desk: Desk, what: What, form: ExportForm) -> Generator[bytes]:
    with (
        desk.store.reading() as work,
        table_of(desk, work, what) as table,
        closing(desk.feeds.write_export(table, form)) as pieces,
    ):
        yield from pieces


def _begun(first: bytes, rest: Generator[bytes]) -> Generator[bytes]:
    with closing(rest):
        yield first
        yield from rest
