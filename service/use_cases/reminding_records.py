"""What passes between the use cases and the store about reminders."""

import re
from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from cards.errors import InvalidPreference

MAIL_ADDRESS = re.compile(
    r"[A-Za-z0-9.!#$%&'*+/=?^_`{|}~-]{1,64}@[A-Za-z0-9](?:[A-Za-z0-9-]{0,61}[A-Za-z0-9])?"
    r"(?:\.[A-Za-z0-9](?:[A-Za-z0-9-]{0,61}[A-Za-z0-9])?){0,10}"
)
"""A mail address as the HTML standard has it (input type=email), bounded in length."""
MAIL_AT = 7
"""Hour of the reader's clock at which the mail goes out unless the reader says otherwise."""


@dataclass(frozen=True, slots=True)
class FeedAddress:
    """An address of the reader's calendar; what opens it is not kept.

    Attributes:
        id: of the address.
        name: what it is for, in the reader's words.
        made_at: when, aware, in UTC.
        revoked_at: when it stopped opening anything, or None.
    """

    id: UUID
    name: str
    made_at: datetime
    revoked_at: datetime | None = None


@dataclass(frozen=True, slots=True)
class Reminders:
    """How a reader is reminded by mail.

    Attributes:
        mail: whether a mail goes out.
        mail_to: its address, or None.
        mail_at: the hour of the reader's clock it goes out from, 0 to 23.
        revision: how many times it was changed, from 1.

    Raises:
        InvalidPreference: the hour or the address is none, or mail is wanted and no address given.
    """

    mail: bool = False
    mail_to: str | None = None
    mail_at: int = MAIL_AT
    revision: int = 1

    def __post_init__(self) -> None:
        if not 0 <= self.mail_at <= 23:
            raise InvalidPreference(
                f"The mail goes out at an hour from 0 to 23, not {self.mail_at}.", where="mail_at"
            )
        if self.mail and not self.mail_to:
            raise InvalidPreference("Say to which address the mail is to go.", where="mail_to")
        if self.mail_to is not None and not MAIL_ADDRESS.fullmatch(self.mail_to):
            raise InvalidPreference(
                "This is no mail address. Write one as ada@example.org.", where="mail_to"
            )
