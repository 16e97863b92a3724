"""Tables made by hand, for writers that never see a store."""

from collections.abc import Generator, Sequence
from datetime import UTC, date, datetime, timedelta
from uuid import UUID

from service.feeds.exports.writing import write_export
from service.use_cases.exporting_columns import What
from service.use_cases.exporting_described import DESCRIBED
from service.use_cases.exporting_records import Batch, Beside, ExportForm, Packed, Table, Value
from service.use_cases.records import ReaderId

READER = ReaderId(UUID(int=7))
NOW = datetime(2026, 3, 1, 21, 40, tzinfo=UTC)
HOME = "https://reader.example/"
ITEM, DIGEST = UUID(int=0xA), UUID(int=0xB)


def table_of(what: What, rows: Sequence[dict[str, Value]], at_once: int = 2) -> Table:
    """Return a table of rows; what a row does not say of a column is absent."""
    described = DESCRIBED[what]

    def batches() -> Generator[Batch]:
        for first in range(0, len(rows), at_once):
            some = rows[first : first + at_once]
            columns = {
                each.name: [row.get(each.name) for row in some] for each in described.columns
            }
            yield Batch(len(some), columns)

    return Table(what, described, batches(), READER, NOW, HOME)


def check_in(number: int = 1, **more: Value) -> dict[str, Value]:
    """Return a check-in, with what is said otherwise of it."""
    return {
        "id": UUID(int=number),
        "commitment_id": UUID(int=2),
        "digest_id": DIGEST,
        "title": "Silas Marner",
        "commitment": "I will ask Hanne one question.",
        "outcome": "kept",
        "day": date(2026, 3, 1),
        "count": None,
        "note": "",
        "witness": "",
        "reported_at": NOW,
        "reported_on": date(2026, 3, 1),
        **more,
    }


def packed_answers(count: int, words: str = "A clerk.") -> Table:
    """Return answers as a store packs them, in one batch; the last of them was taken back."""
    at = [
        (NOW + timedelta(seconds=number)).isoformat(timespec="microseconds")
        for number in range(count)
    ]
    back = [b""] * (count - 1) + [at[-1].encode()]

    def parted(*values: str) -> Packed:
        return Packed("\0".join(values).encode())

    def fixed(width: int, values: Sequence[str]) -> Packed:
        return Packed("".join(values).encode(), width)

    columns = {
        "id": Packed(b"".join(UUID(int=number).bytes for number in range(1, count + 1)), 16),
        "item_id": Packed(ITEM.bytes * count, 16),
        "grade": parted(*["blank", "hazy", "clear", "vivid"] * (count // 4)),
        "came_back": fixed(1, ["0", "1", "1", "1"] * (count // 4)),
        "answered_at": fixed(32, at),
        "day": fixed(10, ["2026-03-01"] * count),
        "predicted": parted(*["", "0.90000000000000002"] * (count // 2)),
        "suggested": Packed("\0".join(["", "=hazy"] * (count // 2)).encode(), marked=True),
        "graded_first": fixed(1, ["0", "1"] * (count // 2)),
        "seconds": parted(*["", "12"] * (count // 2)),
        "attempt": parted(*["", words] * (count // 2)),
        "ticked": Packed("\0".join(["", "=", "=1 2", ""] * (count // 4)).encode(), marked=True),
        "received_at": fixed(32, at),
        "taken_back_at": Packed(b"\0".join(back)),
    }
    beside = Batch(
        1,
        {
            "item_id": Packed(ITEM.bytes, 16),
            "digest_id": Packed(DIGEST.bytes, 16),
            "title": parted("Silas Marner"),
            "kind": parted("theme"),
        },
    )

    def batches() -> Generator[Batch]:
        yield Batch(count, columns)

    described = DESCRIBED[What.ANSWERS]
    return Table(What.ANSWERS, described, batches(), READER, NOW, HOME, Beside("item_id", beside))


def written(table: Table, form: ExportForm) -> bytes:
    """Return a table as a file."""
    return b"".join(write_export(table, form))
