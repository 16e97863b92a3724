"""How the tables of labelled commitments beside this file are written, and how they are read.

A line is `flags | measure | words`. Flags are C, S, M for concrete, specific and measurable,
a dot where one is missing. A measure is `times period[/every] [days] [xN] [<deadline] [Nm]`,
or `-`. Empty lines and lines that begin with # part the table; `# on DATE` sets the day on
which the lines below it are read.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from cards.commitments import Measure, Period


@dataclass(frozen=True)
class Labelled:
    """A commitment with what is right to say of it."""

    text: str
    on: date
    concrete: bool
    specific: bool
    measurable: bool
    measure: Measure | None


def measure(written: str) -> Measure | None:
    """Read a measure as the tables write it."""
    if written == "-":
        return None
    times, period, *rest = written.split()
    name, _, every = period.partition("/")
    found = {"times": int(times), "period": Period(name), "every": int(every or 1)}
    for word in rest:
        if word.startswith("x"):
            found["periods"] = int(word[1:])
        elif word.startswith("<"):
            found["deadline"] = date.fromisoformat(word[1:])
        elif word.endswith("m"):
            found["minutes"] = int(word[:-1])
        else:
            found["on"] = tuple(word.split(","))
    return Measure(**found)


def rows(path: Path) -> Iterator[Labelled]:
    """Yield the commitments of a table."""
    on = date(2026, 3, 4)
    for line in path.read_text(encoding="utf-8").splitlines():
        if line.startswith("# on "):
            on = date.fromisoformat(line.split()[2])
        if not line.strip() or line.startswith("#"):
            continue
        flags, written, text = (part.strip() for part in line.split("|", 2))
        yield Labelled(text, on, "C" in flags, "S" in flags, "M" in flags, measure(written))
