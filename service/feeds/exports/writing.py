"""An export in the form asked for."""

from collections.abc import Callable, Generator

from service.feeds.exports.csv_form import to_csv
from service.feeds.exports.json_form import array_of, to_json
from service.feeds.exports.xapi_form import statements
from service.use_cases.exporting_records import ExportForm, Table


def write_export(table: Table, form: ExportForm) -> Generator[bytes]:
    """Yield an export piece by piece; closing the iterator leaves nothing behind."""
    return _writers(form)(table)


def _writers(form: ExportForm) -> Callable[[Table], Generator[bytes]]:
    # Arrow takes a fifth of a second to import, and a command that is not Parquet needs none of it.
    match form:
        case ExportForm.PARQUET:
            from service.feeds.exports.parquet_form import to_parquet  # noqa: PLC0415

            return to_parquet
        case ExportForm.XLSX:
            from service.feeds.exports.xlsx_form import to_xlsx  # noqa: PLC0415

            return to_xlsx
        case ExportForm.JSON:
            return to_json
        case ExportForm.XAPI:
            return lambda table: array_of(statements(table))
        case ExportForm.CSV:
            return to_csv
