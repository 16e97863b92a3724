"""The morning's mail, as a real mail server gets it."""

from dataclasses import replace
from datetime import date, datetime
from email.message import EmailMessage
from zoneinfo import ZoneInfo

import pytest

from cards.commitments import Pace
from service.post.smtp import SmtpPost
from service.post.writing import subject, written
from service.use_cases.letter_records import Letter, MailServer, NamedCommitment, Security
from service.use_cases.ports import MailNotSent
from tests.post.conftest import PASSWORD, USER, Certified, Served, a_free_port, serving

AUTH = pytest.mark.filterwarnings("ignore:Requiring AUTH while not requiring TLS:UserWarning")
"""The server of the tests asks for a password without TLS, and warns of it."""

HOSTILE = "Gold\r\nBcc: all@example.org\n<script>alert(1)</script> & “so on”"
NAMED = NamedCommitment(
    text="When the tea is poured, ask Hanne one question about her day.",
    title="Silas Marner",
    pace=Pace.SLIPPING,
    said="Nothing was said about 2 to 8 March 2026.",
    progress="2 of 5 this week",
    caution="Talk to a professional first.",
    address="https://books.example/commitments/1/check-in",
)
LETTER = Letter(
    to="ada@example.org",
    day=date(2026, 3, 29),
    number="0f" * 16,
    written_at=datetime(2026, 3, 29, 7, 0, tzinfo=ZoneInfo("Europe/London")),
    minutes=7,
    items=9,
    address="https://books.example/",
    commitments=(NAMED,),
    more=2,
    stop="https://books.example/mail/stop/" + "s" * 43,
)


def server(port: int, password: bytes = PASSWORD) -> MailServer:
    """Return how the server of the tests is reached."""
    return MailServer(
        "127.0.0.1",
        port,
        Security.NONE,
        USER.decode(),
        password.decode(),
        "books@example.org",
    )


def part(mail: EmailMessage, kind: str) -> str:
    """Return a mail's text of one kind."""
    body = mail.get_body((kind,))
    assert body is not None
    text: str = body.get_content()
    return text


@AUTH
def test_a_mail_arrives_whole(guarded: Served) -> None:
    """It comes as text and as HTML, in the reader's time, and ends with one click (RFC 8058)."""
    SmtpPost(server(guarded.port)).send(LETTER)
    (mail,) = guarded.box.mails
    assert guarded.box.recipients == ["ada@example.org"]
    assert mail["Subject"] == "29 March: 7 minutes, 1 commitment to say a word about"
    assert mail["Date"] == "Sun, 29 Mar 2026 07:00:00 +0100"
    assert mail["Message-ID"] == f"<{'0f' * 16}@example.org>"
    assert mail["List-Unsubscribe"] == f"<{LETTER.stop}>"
    assert mail["List-Unsubscribe-Post"] == "List-Unsubscribe=One-Click"
    for kind in ("plain", "html"):
        text = part(mail, kind)
        assert "More are on the commitments’ page." in text
        for said in (NAMED.text, "Silas Marner", "2 of 5 this week", "Talk to a professional"):
            assert said in " ".join(text.split())
        for address in (NAMED.address, LETTER.address, LETTER.stop):
            assert str(address) in text
    assert max(len(line) for line in part(mail, "plain").splitlines()) <= 78


def test_a_server_without_users_is_not_logged_in_to(served: Served) -> None:
    """Without a user named no login is tried."""
    SmtpPost(replace(server(served.port), user="", password="")).send(LETTER)
    assert served.box.users == []
    assert len(served.box.mails) == 1


def test_no_word_of_the_readers_reaches_a_header(served: Served) -> None:
    """Line breaks and markup in a title or a commitment stay in the text, as they were typed."""
    hostile = replace(NAMED, text=HOSTILE, title=HOSTILE)
    SmtpPost(replace(server(served.port), user="")).send(replace(LETTER, commitments=(hostile,)))
    (mail,) = served.box.mails
    assert mail["Bcc"] is None
    assert served.box.recipients == ["ada@example.org"]
    assert "Bcc: all@example.org" in part(mail, "plain")
    assert "<script>" not in part(mail, "html")
    assert "&lt;script&gt;alert(1)&lt;/script&gt; &amp; “so on”" in part(mail, "html")


@AUTH
def test_what_a_server_refuses_is_told_without_the_password(guarded: Served) -> None:
    """A wrong password, a refused address, no server at all: one sentence, and no secret in it."""
    refused = [
        (server(guarded.port, b"another secret"), LETTER, "does not know the user"),
        (server(guarded.port), replace(LETTER, to="ada@refuses.example"), "refuses the address"),
        (server(a_free_port()), LETTER, "cannot be reached or used"),
    ]
    for reached, letter, said in refused:
        with pytest.raises(MailNotSent, match=said) as told:
            SmtpPost(reached).send(letter)
        assert "secret" not in told.value.message
        assert "tried again" in told.value.message
    assert guarded.box.mails == []


@AUTH
@pytest.mark.parametrize("security", [Security.STARTTLS, Security.TLS])
def test_the_connection_is_protected(certified: Certified, security: Security) -> None:
    """By STARTTLS and by TLS a mail arrives where the certificate is trusted, and only there."""
    how = {"tls_context" if security is Security.STARTTLS else "ssl_context": certified.shown}
    with serving(auth_required=True, auth_require_tls=security is Security.STARTTLS, **how) as box:
        reached = replace(server(box.port), security=security)
        with pytest.raises(MailNotSent, match="cannot be reached or used"):
            SmtpPost(reached).send(LETTER)
        assert box.box.users == []
        SmtpPost(reached, certified.trusted).send(LETTER)
        assert len(box.box.mails) == 1


def test_a_server_without_the_protection_asked_for_is_refused(served: Served) -> None:
    """Where STARTTLS or TLS is asked for and not offered, nothing is sent in the open."""
    for security in (Security.STARTTLS, Security.TLS):
        with pytest.raises(MailNotSent):
            SmtpPost(replace(server(served.port), security=security)).send(LETTER)
    assert served.box.mails == []
    assert served.box.users == []


def test_a_mail_without_an_address_of_the_pages_has_no_links() -> None:
    """Where nobody said how the pages are reached, nothing leads to them and nothing is offered."""
    bare = replace(LETTER, address=None, stop=None, commitments=(replace(NAMED, address=None),))
    mail = written(bare, "books@example.org")
    assert mail["List-Unsubscribe"] is None
    assert "http" not in part(mail, "plain")
    assert "href" not in part(mail, "html")


def test_figures_are_said_as_a_person_would() -> None:
    """One minute, one thing, one commitment; nothing asked is said so."""
    one = replace(LETTER, minutes=1, items=1, more=0)
    assert subject(one) == "29 March: a minute, 1 commitment to say a word about"
    assert "a minute, 1 thing to recall" in part(written(one, "b@example.org"), "plain")
    none = replace(LETTER, minutes=0, items=0)
    assert "Nothing is asked today." in part(written(none, "b@example.org"), "plain")
    assert subject(none) == "29 March: 1 commitment to say a word about"


def test_a_server_says_nothing_of_its_password() -> None:
    """The password is not among what is printed of the settings."""
    assert PASSWORD.decode() not in repr(server(25))
