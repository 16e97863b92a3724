"""What a reader sets and finds while sitting: minutes, what is left out, links, sheets.

What is on a sheet (`lines`) is JSON, written and read in `service.store.sheets` alone.
"""

from sqlalchemy import CheckConstraint, Column, Date, Index, Table, UniqueConstraint

from service.store.columns import ID, INSTANT
from service.store.tables.making import (
    id_key,
    instant,
    key_to,
    metadata,
    number,
    points_to,
    reader_key,
    to_reader,
    words,
)

sitting_days = Table(
    "sitting_days",
    metadata,
    reader_key(),
    Column("day", Date, primary_key=True),
    number("minutes"),
    to_reader(),
    CheckConstraint("minutes >= 1", name="minutes_count"),
)

left_out = Table(
    "left_out",
    metadata,
    reader_key(),
    Column("day", Date, primary_key=True),
    key_to("item_id"),
    instant("left_out_at"),
    points_to("items", "item_id"),
)

links = Table(
    "links",
    metadata,
    reader_key(),
    id_key(),
    Column("part_id", ID, nullable=False),
    Column("book_id", ID, nullable=False),
    words("why"),
    instant("made_at"),
    points_to("parts", "part_id"),
    points_to("digests", "book_id"),
    UniqueConstraint("reader_id", "part_id", "book_id"),
)
Index("links_by_book", links.c.reader_id, links.c.book_id, links.c.part_id)

sheets = Table(
    "sheets",
    metadata,
    reader_key(),
    id_key(),
    instant("made_at"),
    number("minutes"),
    words("lines"),
    Column("entered_at", INSTANT),
    to_reader(),
    CheckConstraint("minutes >= 1", name="minutes_count"),
)
Index("sheets_by_making", sheets.c.reader_id, sheets.c.made_at, sheets.c.id)
