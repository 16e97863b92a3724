"""What is asked of a reader and what came of it: items, answers, check-ins.

What an item's answers come to is kept in its row (`stability` to `call_on`, null
together while it is unasked), so that a sitting is read off one index; so are the care
of its book, the day from which a commitment that is over rests, the day on which what was
read again is asked afresh, and the due day it waits to be moved to under new weights.
`answers`, `taken_back` and `check_ins` are only ever added to.
"""

from sqlalchemy import (
    CheckConstraint,
    Column,
    Date,
    Double,
    Index,
    Integer,
    String,
    Table,
    UniqueConstraint,
    and_,
    literal_column,
    not_,
)

from cards.answers import LONGEST, Grade
from cards.commitments import Outcome
from cards.kinds.base import KindName
from cards.parts import Care
from service.store.columns import ID, WORDS
from service.store.tables.making import (
    choice,
    day,
    flag,
    id_key,
    instant,
    metadata,
    number,
    one_of,
    points_to,
    reader_key,
    words,
)

items = Table(
    "items",
    metadata,
    reader_key(),
    id_key(),
    Column("digest_id", ID, nullable=False),
    Column("part_id", ID, nullable=False),
    Column("kind", String(10), nullable=False),
    number("number"),
    flag("retired"),
    instant("added_at"),
    instant("digest_added_at"),
    Column("stability", Double),
    Column("difficulty", Double),
    Column("first_day", Date),
    Column("last_day", Date),
    Column("last_grade", String(5)),
    Column("answers", Integer),
    Column("due_on", Date),
    Column("call_on", Date),
    choice("care", Care),
    Column("rests_from", Date),
    Column("afresh_on", Date),
    Column("moves_to", Date),
    points_to("digests", "digest_id"),
    points_to("parts", "part_id"),
    one_of("kind", KindName),
    one_of("last_grade", Grade),
    one_of("care", Care),
    CheckConstraint("number >= 1", name="number_count"),
    CheckConstraint("stability > 0", name="stability_days"),
    CheckConstraint("difficulty BETWEEN 1 AND 10", name="difficulty_range"),
    CheckConstraint("answers >= 1", name="answers_count"),
    CheckConstraint(
        " AND ".join(
            f"(stability IS NULL) = ({column} IS NULL)"
            for column in (
                "difficulty",
                "first_day",
                "last_day",
                "last_grade",
                "answers",
                "due_on",
                "call_on",
            )
        ),
        name="memory_whole",
    ),
    sqlite_with_rowid=False,  # one page fewer to write with every answer
)
UNASKED = and_(
    items.c.stability.is_(None),
    not_(items.c.retired),
    items.c.care != literal_column(f"'{Care.RESTING.value}'"),
)
"""What an item is let in by; said in the same words by the index and by who uses it.

The care stands there literally: no planner takes a bound value for the index's own."""
CALLED = and_(items.c.call_on.is_not(None), not_(items.c.retired))
"""What an item is called by; likewise."""
Index(
    "items_called",
    items.c.reader_id,
    items.c.call_on,
    items.c.id,
    sqlite_where=CALLED,
    postgresql_where=CALLED,
)
Index(
    "items_unasked",
    items.c.reader_id,
    items.c.kind,
    items.c.digest_added_at,
    items.c.digest_id,
    items.c.number,
    items.c.id,
    sqlite_where=UNASKED,
    postgresql_where=UNASKED,
)
COMMITTED = and_(CALLED, items.c.kind == literal_column(f"'{KindName.RESTATE.value}'"))
"""What the commitment of a day is found by; likewise."""
Index(
    "items_committed",
    items.c.reader_id,
    items.c.call_on,
    items.c.id,
    sqlite_where=COMMITTED,
    postgresql_where=COMMITTED,
)
AFRESH = and_(items.c.afresh_on.is_not(None), not_(items.c.retired))
"""What is asked afresh is found by; likewise."""
Index(
    "items_afresh",
    items.c.reader_id,
    items.c.afresh_on,
    items.c.id,
    sqlite_where=AFRESH,
    postgresql_where=AFRESH,
)
MOVING = and_(items.c.moves_to.is_not(None), not_(items.c.retired))
"""What waits to have its due day moved is found by; likewise."""
Index(
    "items_moving",
    items.c.reader_id,
    items.c.moves_to,
    items.c.id,
    sqlite_where=MOVING,
    postgresql_where=MOVING,
)
Index("items_by_first_day", items.c.reader_id, items.c.first_day, items.c.kind)
Index("items_by_digest", items.c.reader_id, items.c.digest_id, items.c.id)

answers = Table(
    "answers",
    metadata,
    reader_key(),
    id_key(),
    Column("item_id", ID, nullable=False),
    Column("grade", String(5), nullable=False),
    instant("answered_at"),
    day("day"),
    words("attempt"),
    Column("suggested", String(5)),
    Column("predicted", Double),
    instant("received_at"),
    Column("seconds", Integer),
    flag("graded_first"),
    Column("ticked", WORDS),
    points_to("items", "item_id"),
    one_of("grade", Grade),
    one_of("suggested", Grade),
    CheckConstraint("predicted BETWEEN 0 AND 1", name="predicted_share"),
    CheckConstraint(f"seconds BETWEEN 1 AND {LONGEST}", name="seconds_taken"),
    sqlite_with_rowid=False,  # one page fewer to write with every answer
)
Index(
    "answers_in_order",
    answers.c.reader_id,
    answers.c.item_id,
    answers.c.answered_at,
    answers.c.id,
)

Index(
    "answers_by_day",
    answers.c.reader_id,
    answers.c.day,
    answers.c.answered_at,
    answers.c.id,
)

taken_back = Table(
    "taken_back",
    metadata,
    reader_key(),
    id_key(),
    Column("answer_id", ID, nullable=False),
    instant("taken_back_at"),
    points_to("answers", "answer_id"),
    UniqueConstraint("reader_id", "answer_id"),
)

check_ins = Table(
    "check_ins",
    metadata,
    reader_key(),
    id_key(),
    Column("commitment_id", ID, nullable=False),
    Column("outcome", String(6), nullable=False),
    day("day"),
    instant("reported_at"),
    words("note"),
    day("reported_on"),
    Column("count", Integer),
    words("witness"),
    points_to("parts", "commitment_id"),
    CheckConstraint("count >= 0", name="count_of_deeds"),
    one_of("outcome", Outcome),
)
Index(
    "check_ins_in_order",
    check_ins.c.reader_id,
    check_ins.c.commitment_id,
    check_ins.c.day,
    check_ins.c.id,
)
