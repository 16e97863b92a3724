"""What a reader made of what their books ask: commitments, decisions; re-readings and talks.

A measure is JSON, written and read in `service.store.measure_json` alone. `decisions`,
`rereadings`, `talks` and `withdrawals` are only ever added to.
"""

from sqlalchemy import (
    CheckConstraint,
    Column,
    Date,
    Index,
    Integer,
    String,
    Table,
    UniqueConstraint,
)

from cards.commitments import Act, Outcome
from service.store.columns import ID, WORDS
from service.store.tables.making import (
    choice,
    day,
    id_key,
    instant,
    metadata,
    one_of,
    points_to,
    reader_key,
    words,
)

commitments = Table(
    "commitments",
    metadata,
    reader_key(),
    id_key(),
    Column("digest_id", ID, nullable=False),
    words("text"),
    day("made_on"),
    day("entered_on"),
    Column("measure", WORDS),
    points_to("parts", "id"),
    points_to("digests", "digest_id"),
)
Index("commitments_by_digest", commitments.c.reader_id, commitments.c.digest_id, commitments.c.id)

decisions = Table(
    "decisions",
    metadata,
    reader_key(),
    id_key(),
    Column("commitment_id", ID, nullable=False),
    choice("act", Act),
    day("day"),
    instant("decided_at"),
    day("decided_on"),
    Column("measure", WORDS),
    Column("until", Date),
    Column("outcome", String(6)),
    words("words"),
    points_to("parts", "commitment_id"),
    one_of("act", Act),
    one_of("outcome", Outcome),
)
Index(
    "decisions_in_order",
    decisions.c.reader_id,
    decisions.c.commitment_id,
    decisions.c.day,
    decisions.c.id,
)

rereadings = Table(
    "rereadings",
    metadata,
    reader_key(),
    id_key(),
    Column("digest_id", ID, nullable=False),
    day("day"),
    instant("reported_at"),
    day("reported_on"),
    words("pages"),
    Column("minutes", Integer),
    words("note"),
    words("concerned"),
    points_to("digests", "digest_id"),
    CheckConstraint("minutes >= 1", name="minutes_count"),
)
Index(
    "rereadings_in_order",
    rereadings.c.reader_id,
    rereadings.c.digest_id,
    rereadings.c.day,
    rereadings.c.id,
)

talks = Table(
    "talks",
    metadata,
    reader_key(),
    id_key(),
    Column("digest_id", ID, nullable=False),
    day("day"),
    instant("reported_at"),
    day("reported_on"),
    words("listener"),
    Column("minutes", Integer),
    words("note"),
    points_to("digests", "digest_id"),
    CheckConstraint("minutes >= 1", name="minutes_count"),
)
Index("talks_in_order", talks.c.reader_id, talks.c.digest_id, talks.c.day, talks.c.id)

withdrawals = Table(
    "withdrawals",
    metadata,
    reader_key(),
    id_key(),
    Column("fact_id", ID, nullable=False),
    instant("withdrawn_at"),
    day("withdrawn_on"),
    UniqueConstraint("reader_id", "fact_id"),
)
