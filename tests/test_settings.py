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
