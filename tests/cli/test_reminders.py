"""`catchword reminders` and `catchword tidy`."""

import configparser

from tests.cli.conftest import Terminal


def test_the_mail_is_set_and_ended(terminal: Terminal) -> None:
    """What is set is shown; without a mail server that is said; it can be ended."""
    shown = terminal.run("reminders", "--mail-to", "ada@example.org", "--at", "6").stdout
    assert "A mail goes to ada@example.org from 06:00 on." in shown
    assert "CATCHWORD_SMTP_HOST" in shown
    assert "No mail goes out." in terminal.run("reminders", "--no-mail").stdout
    refused = terminal.run("reminders", "--mail-to", "ada")
    assert refused.exit_code == 3
    assert "This is no mail address." in refused.stderr


def test_an_address_of_the_calendar_is_told_once(terminal: Terminal) -> None:
    """It is printed alone on a line when it is made; the list names it, and it can be revoked."""
    made = terminal.run("reminders", "--calendar", "Desk")
    address = made.stdout.strip()
    assert address.startswith("http://127.0.0.1:8417/calendar/")
    assert "shown this once" in made.stderr
    listed = terminal.run("reminders").stdout
    assert "Calendar: Desk" in listed
    assert address not in listed
    name = listed.splitlines()[-1].strip()
    assert "no address that opens it" in terminal.run("reminders", "--revoke", name).stdout
    assert terminal.run("reminders", "--revoke", name).exit_code == 4


def test_tidy_says_what_it_did(terminal: Terminal) -> None:
    """It says why no mail went out, in words and as JSON, as often as it is run."""
    assert terminal.run("tidy").stdout == "No mail is wanted.\n"
    nothing = {"considered": False, "adopted": False, "sentences": [], "moved": 0, "waiting": 0}
    assert terminal.json("tidy") == {"mail": "off", "weights": nothing}
    terminal.run("reminders", "--mail-to", "ada@example.org")
    assert "no mail server is known" in terminal.run("tidy").stdout


def test_units_for_systemd_ship_with_it(terminal: Terminal) -> None:
    """What is printed is a service that runs it and a timer that does so every hour."""
    printed = terminal.run("tidy", "--units").stdout
    service, timer = printed.split("# catchword-tidy.timer\n")
    units = configparser.ConfigParser(strict=False)
    units.optionxform = str  # type: ignore[assignment,method-assign]  # names keep their case
    units.read_string(service)
    units.read_string(timer)
    assert units["Service"]["ExecStart"] == "catchword tidy"
    assert units["Service"]["Type"] == "oneshot"
    assert units["Timer"]["OnCalendar"] == "hourly"
    assert units["Timer"]["Persistent"] == "true"
    assert units["Install"]["WantedBy"] == "timers.target"
