"""The environment, read once, typed."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Self
from urllib.parse import urlsplit

import platformdirs

from cards.errors import CatchwordError, InvalidPreference
from service.use_cases.letter_records import MailServer, Security
from service.use_cases.reminding_records import MAIL_ADDRESS

PORT = 8417
LOOPBACK = "127.0.0.1"
"""Nobody else on the network can read a reader's library unless the reader says so."""


class CannotListen(InvalidPreference):
    """An address Catchword was told to listen on and cannot."""

    def __init__(self, host: str, port: int) -> None:
        super().__init__(
            f"Catchword cannot listen on {host}, port {port}: it is taken, or this machine has no "
            "such address. Is Catchword running already? Else give another with --port.",
            where="port",
        )


@dataclass(frozen=True, slots=True)
class Settings:
    """Where Catchword keeps things and listens.

    Attributes:
        home: folder of the library and its originals.
        database_url: `sqlite:///...` or `postgresql://...`.
        host, port: where it listens.
        hosts: names under which it may be addressed, besides the loopback names.
        address: where the reader reaches the pages from elsewhere, ending with a slash, or None.
        mail: the server mail is handed to, or None.
    """

    home: Path
    database_url: str
    host: str = LOOPBACK
    port: int = PORT
    hosts: tuple[str, ...] = ()
    address: str | None = None
    mail: MailServer | None = None

    def listening(self, host: str | None, port: int | None) -> Self:
        """Return these settings with another host or port where one is given."""
        return replace(
            self,
            host=self.host if host is None else host,
            port=self.port if port is None else port,
        )


def from_environment(environment: Mapping[str, str], *, demo: bool = False) -> Settings:
    """Read the settings.

    `CATCHWORD_HOME`: the data folder, a per-user one unless set.
    `CATCHWORD_DATABASE_URL`: a PostgreSQL database instead of the SQLite file in it;
    the demo never uses it. `CATCHWORD_HOST`, `CATCHWORD_PORT`: where to listen.
    `CATCHWORD_HOSTS`: further host names it answers to, separated by commas.
    `CATCHWORD_ADDRESS`: where the pages are reached from elsewhere, for links in mails and
    calendars. `CATCHWORD_SMTP_HOST`, `_PORT`, `_SECURITY` (starttls, tls or none), `_USER`,
    `_PASSWORD` or `_PASSWORD_FILE`, and `CATCHWORD_MAIL_FROM`: the server mail is handed to.

    Raises:
        InvalidPreference: a variable holds something it cannot.
    """
    home = Path(environment.get("CATCHWORD_HOME") or platformdirs.user_data_path("catchword"))
    if demo:
        home /= "demo"
    file = f"sqlite:///{home / 'library.sqlite3'}"
    url = file if demo else environment.get("CATCHWORD_DATABASE_URL") or file
    return Settings(
        home=home,
        database_url=url,
        host=environment.get("CATCHWORD_HOST") or LOOPBACK,
        port=_port(environment.get("CATCHWORD_PORT")),
        hosts=tuple(
            name.strip() for name in environment.get("CATCHWORD_HOSTS", "").split(",") if name
        ),
        address=_address(environment.get("CATCHWORD_ADDRESS")),
        mail=_mail_server(environment),
    )


def _address(written: str | None) -> str | None:
    if not written:
        return None
    parts = urlsplit(written)
    if parts.scheme not in {"http", "https"} or not parts.hostname or parts.query:
        raise InvalidPreference(
            "CATCHWORD_ADDRESS is the address the pages are reached at, as in "
            f"https://books.example/, not “{written[:60]}”.",
            where="CATCHWORD_ADDRESS",
        )
    return written.rstrip("/") + "/"


def _mail_server(environment: Mapping[str, str]) -> MailServer | None:
    host = environment.get("CATCHWORD_SMTP_HOST")
    if not host:
        return None
    written = environment.get("CATCHWORD_SMTP_SECURITY") or Security.STARTTLS.value
    if written not in set(Security):
        raise InvalidPreference(
            f"CATCHWORD_SMTP_SECURITY is starttls, tls or none, not “{written[:20]}”.",
            where="CATCHWORD_SMTP_SECURITY",
        )
    security = Security(written)
    user = environment.get("CATCHWORD_SMTP_USER", "")
    if security is Security.NONE and user and host not in {"localhost", LOOPBACK, "::1"}:
        raise InvalidPreference(
            "CATCHWORD_SMTP_SECURITY is none, and the password would go over the network in the "
            "open. Use starttls or tls.",
            where="CATCHWORD_SMTP_SECURITY",
        )
    sender = environment.get("CATCHWORD_MAIL_FROM", "")
    if not MAIL_ADDRESS.fullmatch(sender):
        raise InvalidPreference(
            "CATCHWORD_MAIL_FROM is the address mail comes from, as in books@example.org.",
            where="CATCHWORD_MAIL_FROM",
        )
    usual = 465 if security is Security.TLS else 587
    port = _port(environment.get("CATCHWORD_SMTP_PORT"), "CATCHWORD_SMTP_PORT", usual)
    return MailServer(host, port, security, user, _password(environment), sender)


def _password(environment: Mapping[str, str]) -> str:
    file = environment.get("CATCHWORD_SMTP_PASSWORD_FILE")
    if not file:
        return environment.get("CATCHWORD_SMTP_PASSWORD", "")
    try:
        return Path(file).read_text(encoding="utf-8").strip()
    except (OSError, UnicodeDecodeError) as error:
        raise InvalidPreference(
            "The file CATCHWORD_SMTP_PASSWORD_FILE names cannot be read.",
            where="CATCHWORD_SMTP_PASSWORD_FILE",
        ) from error


def _port(written: str | None, name: str = "CATCHWORD_PORT", usual: int = PORT) -> int:
    if not written:
        return usual
    if not written.isdecimal() or not 0 <= int(written) <= 65535:
        raise InvalidPreference(
            f"{name} is “{written[:20]}”; a port is a number from 0 to 65535.", where=name
        )
    return int(written)


class HomeUnusable(CatchwordError):
    """The data folder cannot be made or written to."""

    def __init__(self, home: Path, why: str | None) -> None:
        super().__init__(
            f"The data folder {home} cannot be used: {why or 'it is not writable'}. Name another "
            "with CATCHWORD_HOME."
        )
