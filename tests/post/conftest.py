"""A mail server that keeps what it is given."""

import asyncio
import shutil
import socket
import ssl
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from email.message import EmailMessage
from email.parser import BytesParser
from email.policy import default
from typing import Any

import pytest
from aiosmtpd.controller import Controller
from aiosmtpd.smtp import SMTP, AuthResult, Envelope, LoginPassword, Session

USER, PASSWORD = b"reader", b"a secret that is never told"


@dataclass
class Mailbox:
    """Keeps the mails a server was given, and refuses addresses at `refuses.example`."""

    mails: list[EmailMessage] = field(default_factory=list)
    recipients: list[str] = field(default_factory=list)
    users: list[bytes] = field(default_factory=list)

    async def handle_RCPT(  # noqa: N802 - the server's name for it
        self,
        _server: SMTP,
        _session: Session,
        envelope: Envelope,
        address: str,
        _options: list[str],
    ) -> str:
        """Take an address, or refuse it as RFC 5321 does."""
        if address.endswith("@refuses.example"):
            return "550 no such user here"
        envelope.rcpt_tos.append(address)
        return "250 OK"

    async def handle_DATA(  # noqa: N802
        self, _server: SMTP, _session: Session, envelope: Envelope
    ) -> str:
        """Keep a mail."""
        content = envelope.content
        assert isinstance(content, bytes)
        mail = BytesParser(policy=default).parsebytes(content)
        assert isinstance(mail, EmailMessage)
        self.mails.append(mail)
        self.recipients += envelope.rcpt_tos
        return "250 kept"

    def knows(
        self, _server: SMTP, _session: Session, _envelope: Envelope, _how: str, given: object
    ) -> AuthResult:
        """Let one user in."""
        assert isinstance(given, LoginPassword)
        self.users.append(given.login)
        known = (given.login, given.password) == (USER, PASSWORD)
        return AuthResult(success=known, handled=known)


@dataclass(frozen=True)
class Served:
    """A running mail server."""

    port: int
    box: Mailbox


def a_free_port() -> int:
    """Return a port nobody listens on."""
    with socket.socket() as found:
        found.bind(("127.0.0.1", 0))
        port: int = found.getsockname()[1]
        return port


@contextmanager
def serving(**options: Any) -> Iterator[Served]:
    """Run a mail server of our own, on this machine alone."""
    box, port = Mailbox(), a_free_port()
    loop = asyncio.new_event_loop()
    server = Controller(
        box, hostname="127.0.0.1", port=port, loop=loop, authenticator=box.knows, **options
    )
    server.start()
    try:
        yield Served(port, box)
    finally:
        server.stop()
        if not loop.is_closed():
            loop.close()


@pytest.fixture
def served() -> Iterator[Served]:
    """A mail server that is open to all."""
    with serving(auth_require_tls=False) as running:
        yield running


@pytest.fixture
def guarded() -> Iterator[Served]:
    """A mail server that asks for a user."""
    with serving(auth_require_tls=False, auth_required=True) as running:
        yield running


@dataclass(frozen=True)
class Certified:
    """A certificate of this machine's own: what a server shows, and what a client trusts."""

    shown: ssl.SSLContext
    trusted: ssl.SSLContext


@pytest.fixture(scope="session")
def certified(tmp_path_factory: pytest.TempPathFactory) -> Certified:
    """A certificate for 127.0.0.1, made for one run."""
    program = shutil.which("openssl")
    if program is None:
        pytest.skip("openssl is not on this machine, and no certificate can be made without it")
    folder = tmp_path_factory.mktemp("certificate")
    key, certificate = folder / "key.pem", folder / "certificate.pem"
    order = (
        "req -x509 -newkey ec -pkeyopt ec_paramgen_curve:P-256 -nodes -days 2 -subj /CN=127.0.0.1 "
        f"-addext subjectAltName=IP:127.0.0.1 -keyout {key} -out {certificate}"
    )
    subprocess.run([program, *order.split()], check=True, capture_output=True)
    shown = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    shown.load_cert_chain(certificate, key)
    return Certified(shown, ssl.create_default_context(cafile=str(certificate)))
