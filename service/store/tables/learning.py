"""What is learned from the answers: the fits of the weights, and the tallies of retention.

`fittings` is only ever added to, but for how far its weights have been carried through.
`tallies` and `tallied` follow from the answers and can be made anew from them.
"""

from sqlalchemy import BigInteger, CheckConstraint, Column, Date, String, Table

from service.store.tables.making import (
    day,
    flag,
    id_key,
    instant,
    metadata,
    number,
    reader_key,
    to_reader,
    words,
)

LONGEST_KEY = 80
"""Characters that tell one tally of a sort from another."""

fittings = Table(
    "fittings",
    metadata,
    reader_key(),
    id_key(),
    instant("fitted_at"),
    day("fitted_on"),
    number("answers"),
    flag("adopted"),
    words("weights"),
    words("verdicts"),
    flag("refolded"),
    Column("moved_on", Date),
    to_reader(),
    CheckConstraint("answers >= 0", name="answers_count"),
)

tallies = Table(
    "tallies",
    metadata,
    reader_key(),
    Column("of", String(10), primary_key=True),
    Column("key", String(LONGEST_KEY), primary_key=True),
    *(
        Column(name, BigInteger, nullable=False)
        for name in ("n", "recalled", "foreseen", "came", "predicted", "squares", "logs")
    ),
    to_reader(),
)

tallied = Table(
    "tallied",
    metadata,
    reader_key(),
    day("through"),
    to_reader(),
)
