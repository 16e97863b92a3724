"""One export in a process of its own, which prints the most megabytes it held.

They are the kernel's high water of this process (`VmHWM`, proc(5)): `getrusage` counts that of the
process it was forked from as well. Some libraries of the tests bring pandas, which Arrow imports
wherever it finds it and Catchword does not have; it is hidden here.
"""

import re
import sys
from datetime import UTC, datetime
from pathlib import Path


class _Hidden:
    """Finds no pandas."""

    def find_spec(self, name: str, *_: object) -> None:
        """Refuse it, and leave everything else to others."""
        if name == "pandas":
            raise ImportError(name)


def run(database: str, target: Path) -> int:
    """Write the export, and return the high water in megabytes."""
    sys.meta_path.insert(0, _Hidden())  # type: ignore[arg-type]
    from service.store.sql_store import SqlStore  # noqa: PLC0415 - after what it imports is hidden
    from service.use_cases.exporting import export  # noqa: PLC0415
    from service.use_cases.exporting_columns import What  # noqa: PLC0415
    from service.use_cases.exporting_records import ExportForm  # noqa: PLC0415
    from tests.benchmarks.nothing_to_read import bare_desk  # noqa: PLC0415

    store = SqlStore(database)
    desk = bare_desk(store, lambda: datetime(2026, 6, 1, 19, tzinfo=UTC))
    with target.open("wb") as file:
        file.writelines(export(desk, What.ANSWERS, ExportForm.PARQUET).pieces)
    store.close()
    told = re.search(r"VmHWM:\s+(\d+) kB", Path("/proc/self/status").read_text())
    if told is None:
        raise RuntimeError("The kernel does not say how much memory was held.")
    return int(told[1]) // 1024


if __name__ == "__main__":
    print(run(sys.argv[1], Path(sys.argv[2])))
