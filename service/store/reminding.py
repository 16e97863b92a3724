"""How a reader is reminded: the mail, what was sent, the addresses of the calendar."""

from datetime import date, datetime
from uuid import UUID

from sqlalchemy import Connection, bindparam, delete, select, update

from service.store.columns import INSTANT
from service.store.inserts import insert_once, insert_or_update
from service.store.readers import SqlReaders
from service.store.tables import feed_addresses, mails, reminders
from service.use_cases.records import ReaderId
from service.use_cases.reminding_records import FeedAddress, Reminders

_SETTINGS = ("mail", "mail_to", "mail_at", "revision")
_GET = select(*(reminders.c[name] for name in _SETTINGS)).where(
    reminders.c.reader_id == bindparam("reader")
)
_PUT = insert_or_update(reminders, _SETTINGS)
_MAIL_ON = (mails.c.reader_id == bindparam("reader"), mails.c.day == bindparam("on"))
_BEGIN = insert_once(mails)
_SENT = update(mails).where(*_MAIL_ON).values(sent_at=bindparam("at", type_=INSTANT))
_NOT_SENT = delete(mails).where(*_MAIL_ON)
_MAILED = (
    select(mails.c.day, mails.c.sent_at)
    .where(mails.c.reader_id == bindparam("reader"))
    .order_by(mails.c.day.desc())
    .limit(bindparam("limit"))
)
_ENDS = select(mails.c.day).where(
    mails.c.reader_id == bindparam("reader"), mails.c.sha256 == bindparam("sha256")
)
_MINE = feed_addresses.c.reader_id == bindparam("reader")
_ADDRESSES = (
    select(
        feed_addresses.c.id,
        feed_addresses.c.name,
        feed_addresses.c.made_at,
        feed_addresses.c.revoked_at,
    )
    .where(_MINE)
    .order_by(feed_addresses.c.made_at.desc(), feed_addresses.c.id)
)
_ADD = insert_once(feed_addresses)
_REVOKE = (
    update(feed_addresses)
    .where(
        _MINE, feed_addresses.c.id == bindparam("address"), feed_addresses.c.revoked_at.is_(None)
    )
    .values(revoked_at=bindparam("at", type_=INSTANT))
)
_OPENS = select(feed_addresses.c.id).where(
    _MINE,
    feed_addresses.c.sha256 == bindparam("sha256"),
    feed_addresses.c.revoked_at.is_(None),
)


class SqlReminding:
    """How readers are reminded, in one transaction; satisfies `ports.Reminding`."""

    def __init__(self, connection: Connection, readers: SqlReaders) -> None:
        self._connection = connection
        self._readers = readers

    def get(self, reader: ReaderId) -> Reminders:
        """Return what the reader set, the defaults where they set nothing."""
        row = self._connection.execute(_GET, {"reader": reader}).first()
        return Reminders() if row is None else Reminders(*row)

    def put(self, reader: ReaderId, reminders: Reminders) -> None:
        """Keep what the reader set, the revision as given."""
        self._readers.ensure(reader)
        values = {name: getattr(reminders, name) for name in _SETTINGS}
        self._connection.execute(_PUT, {"reader_id": reader} | values)

    def begin_mail(self, reader: ReaderId, day: date, now: datetime, sha256: str) -> bool:
        """Note that the mail of a day is being sent; False when that was noted before.

        `sha256` is of the secret in its address that ends the mail.
        """
        self._readers.ensure(reader)
        row = {
            "reader_id": reader,
            "day": day,
            "begun_at": now,
            "sent_at": None,
            "sha256": sha256,
        }
        return bool(self._connection.execute(_BEGIN, row).rowcount)

    def end_mail(self, reader: ReaderId, day: date, sent_at: datetime | None) -> None:
        """Note that the mail of a day was sent; None: it was not, and may be tried again."""
        values: dict[str, object] = {"reader": reader, "on": day}
        if sent_at is None:
            self._connection.execute(_NOT_SENT, values)
        else:
            self._connection.execute(_SENT, values | {"at": sent_at})

    def mailed(self, reader: ReaderId, limit: int) -> list[tuple[date, datetime | None]]:
        """Return the latest days a mail was begun for, and when each was sent; newest first."""
        rows = self._connection.execute(_MAILED, {"reader": reader, "limit": limit})
        return [(day, sent_at) for day, sent_at in rows]

    def ends_mail(self, reader: ReaderId, sha256: str) -> bool:
        """Tell whether a hash is that of an address in a mail that ends the mail."""
        values = {"reader": reader, "sha256": sha256}
        return self._connection.execute(_ENDS, values).first() is not None

    def addresses(self, reader: ReaderId) -> list[FeedAddress]:
        """Return the addresses of the calendar, revoked ones too, the latest first."""
        return [
            FeedAddress(*row) for row in self._connection.execute(_ADDRESSES, {"reader": reader})
        ]

    def add_address(self, reader: ReaderId, address: FeedAddress, sha256: str) -> None:
        """Keep a new address with the hash of what opens it."""
        self._readers.ensure(reader)
        self._connection.execute(
            _ADD,
            {
                "reader_id": reader,
                "id": address.id,
                "sha256": sha256,
                "name": address.name,
                "made_at": address.made_at,
                "revoked_at": address.revoked_at,
            },
        )

    def revoke(self, reader: ReaderId, address_id: UUID, now: datetime) -> bool:
        """Revoke an address; False when there is none, or it is revoked."""
        values = {"reader": reader, "address": address_id, "at": now}
        return bool(self._connection.execute(_REVOKE, values).rowcount)

    def opens(self, reader: ReaderId, sha256: str) -> bool:
        """Tell whether a hash is that of an address not revoked."""
        values = {"reader": reader, "sha256": sha256}
        return self._connection.execute(_OPENS, values).first() is not None
