"""What passes between the use cases and the post: a mail, before it is written."""

from dataclasses import dataclass, field
from datetime import date, datetime
from enum import StrEnum

from cards.commitments import Pace


@dataclass(frozen=True, slots=True)
class NamedCommitment:
    """A commitment as the mail names it.

    Attributes:
        text, title: its words, and its book.
        pace: how it stands.
        said: why, in a sentence.
        progress: how far the running period is, or None.
        caution: the caution it carries, or None.
        address: where it is checked in on, or None while no address is known.
    """

    text: str
    title: str
    pace: Pace
    said: str
    progress: str | None
    caution: str | None
    address: str | None


@dataclass(frozen=True, slots=True)
class Letter:
    """One morning's mail.

    Attributes:
        to: its address.
        day: the reader's day.
        number: tells it from every other mail, for its Message-ID.
        written_at: aware, in the reader's own time zone.
        minutes: of today's sitting; 0 when nothing is asked.
        items: how many are asked.
        address: where today's sitting is, or None.
        commitments: those that want a word, the most pressing first.
        more: how many more want one.
        stop: the address that ends the mail, or None.
    """

    to: str
    day: date
    number: str
    written_at: datetime
    minutes: int
    items: int
    address: str | None
    commitments: tuple[NamedCommitment, ...]
    more: int
    stop: str | None


class Security(StrEnum):
    """How the connection to a mail server is protected."""

    STARTTLS = "starttls"
    TLS = "tls"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class MailServer:
    """The server mail is handed to.

    Attributes:
        host, port: where it listens.
        security: how the connection is protected.
        user, password: to log in with; empty for none.
        sender: the address mail comes from.
    """

    host: str
    port: int
    security: Security
    user: str
    password: str = field(repr=False)
    sender: str
