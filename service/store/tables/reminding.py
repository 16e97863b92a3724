"""How a reader is reminded: addresses of their calendar, their mail, the mails that were sent.

Of an address that opens the calendar, and of one that ends the mail, which each mail has of
its own, only the SHA-256 is kept: whoever reads the library cannot use it.
"""

from sqlalchemy import CheckConstraint, Column, Date, Index, String, Table, UniqueConstraint

from service.store.columns import INSTANT, WORDS
from service.store.tables.making import (
    flag,
    id_key,
    instant,
    metadata,
    number,
    reader_key,
    sha256_whole,
    to_reader,
    words,
)

feed_addresses = Table(
    "feed_addresses",
    metadata,
    reader_key(),
    id_key(),
    Column("sha256", String(64), nullable=False),
    words("name"),
    instant("made_at"),
    Column("revoked_at", INSTANT),
    to_reader(),
    UniqueConstraint("reader_id", "sha256"),
    sha256_whole(),
)
Index(
    "feed_addresses_by_making",
    feed_addresses.c.reader_id,
    feed_addresses.c.made_at,
    feed_addresses.c.id,
)

reminders = Table(
    "reminders",
    metadata,
    reader_key(),
    flag("mail"),
    Column("mail_to", WORDS),
    number("mail_at"),
    number("revision"),
    to_reader(),
    CheckConstraint("mail_at BETWEEN 0 AND 23", name="mail_at_hour"),
    CheckConstraint("revision >= 1", name="revision_count"),
)

mails = Table(
    "mails",
    metadata,
    reader_key(),
    Column("day", Date, primary_key=True),
    instant("begun_at"),
    Column("sent_at", INSTANT),
    Column("sha256", String(64), nullable=False),
    to_reader(),
    UniqueConstraint("reader_id", "sha256"),
    sha256_whole(),
)
