"""A reader says how to be reminded: by mail, and where their calendar can be read."""

from dataclasses import dataclass, replace
from uuid import UUID

from cards.digest import hold_text
from cards.errors import FeedAddressMissing, Invalid, InvalidPreference, ReaderChanged
from service.use_cases.ports import Desk
from service.use_cases.reminding_records import FeedAddress, Reminders
from service.use_cases.tidy import hashed

MOST_ADDRESSES = 20
"""Addresses of the calendar that open it at one time: one for each device and program."""
MAX_NAME = 100
"""Characters in the name of an address."""


@dataclass(frozen=True, slots=True)
class Reminding:
    """How a reader is reminded.

    Attributes:
        reminders: the mail.
        addresses: of the calendar, those that open it, the latest first.
        can_mail: whether this Catchword was told of a mail server.
    """

    reminders: Reminders
    addresses: tuple[FeedAddress, ...]
    can_mail: bool


@dataclass(frozen=True, slots=True)
class NewAddress:
    """An address of the calendar as it is made; the secret is told once and not kept.

    Attributes:
        address: what is kept of it.
        secret: what opens the calendar.
    """

    address: FeedAddress
    secret: str


def show_reminding(desk: Desk) -> Reminding:
    """Return how the reader is reminded."""
    with desk.store.reading() as work:
        reminders = work.reminding.get(desk.reader)
        addresses = work.reminding.addresses(desk.reader)
    opening = tuple(each for each in addresses if each.revoked_at is None)
    return Reminding(reminders, opening, desk.post is not None)


def set_reminders(
    desk: Desk, *, mail: bool, to: str | None, at: int, revision: int | None = None
) -> Reminders:
    """Set whether a mail goes out, where to, and from which hour on.

    Raises:
        InvalidPreference: the address or the hour is none.
        ReaderChanged: it was changed since that revision.
    """
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        known = work.reminding.get(desk.reader)
        if revision is not None and revision != known.revision:
            raise ReaderChanged
        wanted = Reminders(mail=mail, mail_to=to, mail_at=at, revision=known.revision + 1)
        if replace(wanted, revision=known.revision) == known:
            return known
        work.reminding.put(desk.reader, wanted)
        work.commit()
    return wanted


def stop_mail(desk: Desk, secret: str) -> bool:
    """End the mail by the address in one; twice changes nothing. False for no such address."""
    with desk.store.writing() as work:
        if not work.reminding.ends_mail(desk.reader, hashed(secret)):
            return False
        work.readers.lock(desk.reader)
        known = work.reminding.get(desk.reader)
        if known.mail:
            work.reminding.put(desk.reader, replace(known, mail=False, revision=known.revision + 1))
            work.commit()
    return True


def knows_stop(desk: Desk, secret: str) -> bool:
    """Tell whether an address is one that ends the mail."""
    with desk.store.reading() as work:
        return work.reminding.ends_mail(desk.reader, hashed(secret))


def new_address(desk: Desk, name: str) -> NewAddress:
    """Make an address of the calendar; what opens it is told now and never again.

    Raises:
        Invalid: the name is too long, or no text.
        InvalidPreference: there are as many as can be at one time.
    """
    if len(name) > MAX_NAME:
        raise Invalid(
            f"The name is {len(name)} characters long; at most {MAX_NAME} are kept.", where="name"
        )
    hold_text(name, "name")
    now, secret = desk.now(), desk.new_secret()
    address = FeedAddress(desk.new_id(), name, now)
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        opening = [each for each in work.reminding.addresses(desk.reader) if not each.revoked_at]
        if len(opening) >= MOST_ADDRESSES:
            raise InvalidPreference(
                f"The calendar has {MOST_ADDRESSES} addresses already; revoke one first.",
                where="addresses",
            )
        work.reminding.add_address(desk.reader, address, hashed(secret))
        work.commit()
    return NewAddress(address, secret)


def revoke_address(desk: Desk, address_id: UUID) -> None:
    """Let an address of the calendar open it no longer.

    Raises:
        FeedAddressMissing: there is none, or it was revoked.
    """
    with desk.store.writing() as work:
        if not work.reminding.revoke(desk.reader, address_id, desk.now()):
            raise FeedAddressMissing(address_id)
        work.commit()
