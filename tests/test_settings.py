"""The environment, read once."""

from pathlib import Path

import pytest

from cards.errors import InvalidPreference
from service.settings import from_environment


def test_unset_it_listens_on_the_loopback_address_and_keeps_one_file():
    """Nobody else on the network can read the library unless the reader says so."""
    settings = from_environment({"CATCHWORD_HOME": "/books"})
    assert (settings.host, settings.port) == ("127.0.0.1", 8417)
    assert settings.database_url == "sqlite:////books/library.sqlite3"
    assert settings.hosts == ()


def test_the_demo_is_never_mixed_with_the_readers_own():
    """The demo has a folder of its own and never uses the reader's database."""
    environment = {"CATCHWORD_HOME": "/books", "CATCHWORD_DATABASE_URL": "postgresql://x/y"}
    assert from_environment(environment).database_url == "postgresql://x/y"
    demo = from_environment(environment, demo=True)
    assert demo.home == Path("/books/demo")
    assert demo.database_url == "sqlite:////books/demo/library.sqlite3"


@pytest.mark.parametrize("port", ["eighty", "-1", "65536", "8 0"])
def test_a_port_is_a_number(port):
    """What is no port is refused by its variable's name."""
    with pytest.raises(InvalidPreference) as refusal:
        from_environment({"CATCHWORD_PORT": port})
    assert refusal.value.where == "CATCHWORD_PORT"


def test_hosts_are_separated_by_commas():
    """Spaces and empty names between the commas do not matter."""
    settings = from_environment({"CATCHWORD_HOSTS": "books.example, 192.168.1.2,,"})
    assert settings.hosts == ("books.example", "192.168.1.2")


MAIL = {"CATCHWORD_SMTP_HOST": "mail.example.org", "CATCHWORD_MAIL_FROM": "books@example.org"}


def test_a_mail_server_is_known_when_it_is_named(tmp_path):
    """Unnamed there is none; named, its port follows from its protection unless it is given."""
    assert from_environment({}).mail is None
    mail = from_environment(MAIL).mail
    assert (mail.host, mail.port, mail.security) == ("mail.example.org", 587, "starttls")
    assert from_environment({**MAIL, "CATCHWORD_SMTP_SECURITY": "tls"}).mail.port == 465
    assert from_environment({**MAIL, "CATCHWORD_SMTP_PORT": "2525"}).mail.port == 2525
    file = tmp_path / "password"
    file.write_text("not to be told\n")
    settings = from_environment(
        {**MAIL, "CATCHWORD_SMTP_USER": "ada", "CATCHWORD_SMTP_PASSWORD_FILE": str(file)}
    )
    assert settings.mail.password == "not to be told"
    assert "not to be told" not in repr(settings)


@pytest.mark.parametrize(
    ("wrong", "where"),
    [
        ({"CATCHWORD_SMTP_PORT": "many"}, "CATCHWORD_SMTP_PORT"),
        ({"CATCHWORD_SMTP_SECURITY": "some"}, "CATCHWORD_SMTP_SECURITY"),
        (
            {"CATCHWORD_SMTP_SECURITY": "none", "CATCHWORD_SMTP_USER": "ada"},
            "CATCHWORD_SMTP_SECURITY",
        ),
        ({"CATCHWORD_MAIL_FROM": ""}, "CATCHWORD_MAIL_FROM"),
        ({"CATCHWORD_MAIL_FROM": "books@example.org\nBcc: x@y.z"}, "CATCHWORD_MAIL_FROM"),
        ({"CATCHWORD_SMTP_PASSWORD_FILE": "/nowhere/at/all"}, "CATCHWORD_SMTP_PASSWORD_FILE"),
        ({"CATCHWORD_ADDRESS": "books.example"}, "CATCHWORD_ADDRESS"),
        ({"CATCHWORD_ADDRESS": "ftp://books.example/"}, "CATCHWORD_ADDRESS"),
    ],
    ids=lambda value: "" if isinstance(value, dict) else value,
)
def test_what_cannot_be_a_mail_server_is_refused_by_its_name(wrong, where):
    """A variable that cannot be meant so is named; a password never goes in the open."""
    with pytest.raises(InvalidPreference) as refusal:
        from_environment({**MAIL, **wrong})
    assert refusal.value.where == where


def test_the_address_of_the_pages_ends_with_a_slash():
    """Links are put together from it, however it was written."""
    for written in ("https://books.example", "https://books.example/"):
        assert from_environment({"CATCHWORD_ADDRESS": written}).address == "https://books.example/"
