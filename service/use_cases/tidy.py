"""What is done by itself, again and again: what was answered is learned from, mail goes out."""

from dataclasses import dataclass
from enum import StrEnum
from hashlib import sha256

from service.use_cases.learning import Learned, learn
from service.use_cases.letters import due_at, letter
from service.use_cases.ports import Desk, MailNotSent
from service.use_cases.tallying import bring_on


class Mailed(StrEnum):
    """What became of today's mail."""

    SENT = "sent"
    OFF = "off"
    NO_SERVER = "no server"
    NOT_YET = "not yet"
    NOTHING_TO_SAY = "nothing to say"
    BEFORE = "sent before"


@dataclass(frozen=True, slots=True)
class Tidied:
    """What `tidy` did.

    Attributes:
        learned: what learning from the answers came to.
        mail: what became of today's mail.
    """

    learned: Learned
    mail: Mailed


def tidy(desk: Desk) -> Tidied:
    """Do what is due; doing it again changes nothing.

    The mail of a day goes out at most once, from the reader's hour on: that it is being sent is
    kept before it is sent, and taken back when the server refuses it.

    Raises:
        MailNotSent: no server takes it; it is tried again the next time.
    """
    bring_on(desk)
    learned = learn(desk)
    return Tidied(learned, _mail(desk))


def _mail(desk: Desk) -> Mailed:
    with desk.store.reading() as work:
        reader, wanted = work.readers.get(desk.reader), work.reminding.get(desk.reader)
    if not wanted.mail or wanted.mail_to is None:
        return Mailed.OFF
    if desk.post is None:
        return Mailed.NO_SERVER
    now = desk.now()
    day = reader.days.of(now)
    if now < due_at(reader, day, wanted.mail_at):
        return Mailed.NOT_YET
    secret = desk.new_secret()
    stop = None if desk.address is None else f"{desk.address}mail/stop/{secret}"
    number = sha256(f"{desk.reader}{day.isoformat()}".encode()).hexdigest()[:32]
    written = letter(desk, reader, wanted.mail_to, number, stop)
    if written is None:
        return Mailed.NOTHING_TO_SAY
    with desk.store.writing() as work:
        if not work.reminding.begin_mail(desk.reader, day, now, hashed(secret)):
            return Mailed.BEFORE
        work.commit()
    try:
        desk.post.send(written)
    except MailNotSent:
        with desk.store.writing() as work:
            work.reminding.end_mail(desk.reader, day, None)
            work.commit()
        raise
    with desk.store.writing() as work:
        work.reminding.end_mail(desk.reader, day, desk.now())
        work.commit()
    return Mailed.SENT


def hashed(secret: str) -> str:
    """Return what is kept of a secret in an address: its SHA-256, 64 hexadecimal digits."""
    return sha256(secret.encode()).hexdigest()
