"""A mail as it is sent: plain text and HTML, with one click to end it (RFC 8058)."""

from email.message import EmailMessage
from email.policy import SMTP
from email.utils import format_datetime
from functools import cache
from textwrap import fill

from jinja2 import Environment, PackageLoader, Template

from service.use_cases.letter_records import Letter, NamedCommitment

_POLICY = SMTP.clone(max_line_length=200)
"""A line of a header is long enough for an address that ends the mail: some programs do not
take one that is folded."""
_WIDTH = 72
"""Characters in a line of the plain text, as is common in mail."""


def written(letter: Letter, sender: str) -> EmailMessage:
    """Return a mail as a message: no word of the reader's stands in a header.

    Args:
        letter: what it holds.
        sender: the address it comes from.
    """
    message = EmailMessage(policy=_POLICY)
    message["From"] = sender
    message["To"] = letter.to
    message["Subject"] = subject(letter)
    message["Date"] = format_datetime(letter.written_at)
    message["Message-ID"] = f"<{letter.number}@{sender.rpartition('@')[2]}>"
    message["Auto-Submitted"] = "auto-generated"  # RFC 3834
    if letter.stop is not None:
        message["List-Unsubscribe"] = f"<{letter.stop}>"
        message["List-Unsubscribe-Post"] = "List-Unsubscribe=One-Click"
    message.set_content(_plain(letter))
    message.add_alternative(_html(letter), subtype="html")
    return message


def subject(letter: Letter) -> str:
    """Return what the mail is about, in figures alone."""
    day = f"{letter.day.day} {letter.day:%B}"
    said = [_minutes(letter)] if letter.items else []
    if letter.commitments:
        count = len(letter.commitments)
        said.append(f"{count} {'commitment' if count == 1 else 'commitments'} to say a word about")
    return f"{day}: {', '.join(said)}"


def _sitting(letter: Letter) -> str:
    items = f"{letter.items} {'thing' if letter.items == 1 else 'things'} to recall"
    return f"Today’s sitting: {_minutes(letter)}, {items}."


def _minutes(letter: Letter) -> str:
    return "a minute" if letter.minutes == 1 else f"{letter.minutes} minutes"


def _more(letter: Letter) -> str:
    """Say that there are more, and not how many: a mail holds no pile up to its reader."""
    return "More are on the commitments’ page." if letter.more else ""


def _plain(letter: Letter) -> str:
    parts = [_sitting(letter) if letter.items else "Nothing is asked today."]
    if letter.items and letter.address:
        parts[0] += f"\n{letter.address}"
    if letter.commitments:
        parts.append("Was it kept?")
    parts += [_named(each) for each in letter.commitments]
    parts += [_more(letter)] if letter.more else []
    if letter.stop:
        parts.append(f"No more of these mails:\n{letter.stop}")
    return "\n\n".join(parts) + "\n"


def _named(each: NamedCommitment) -> str:
    how = f" {each.progress[:1].upper()}{each.progress[1:]}." if each.progress else ""
    said = [*each.text.splitlines(), f"{each.title}. {each.said}{how}", each.caution or ""]
    lines = [_indented(line) for line in said if line.strip()]
    return "\n".join([*lines, f"  {each.address}"] if each.address else lines)


def _indented(line: str) -> str:
    return fill(line, _WIDTH, initial_indent="  ", subsequent_indent="  ")


def _html(letter: Letter) -> str:
    return _template().render(
        letter=letter, subject=subject(letter), sitting=_sitting(letter), more=_more(letter)
    )


@cache
def _template() -> Template:
    environment = Environment(loader=PackageLoader("service.post", "."), autoescape=True)
    return environment.get_template("letter.html")
