"""The names of authors: the line a digest has, and the family and given names of a bibliography."""

import re
from dataclasses import dataclass

_AND = re.compile(r"\s*;\s*|\s+(?:and|und|et|y|e|en)\s+|\s*&\s*")
_PARTICLES = frozenset(
    "de da di do du des del della dos das la le van von der den het ten ter zu zum zur af".split()
)
_JUNIOR = re.compile(r"(?:Jr|Sr|[IVX]{2,4})\.?")


@dataclass(frozen=True, slots=True)
class Name:
    """A person's name in parts, or one that has none, of a body or of antiquity.

    Attributes:
        family: with the particles before it; all of a name without parts.
        given: "" for a name without parts.
        suffix: `Jr.`, `III`, or "".
    """

    family: str
    given: str = ""
    suffix: str = ""

    @property
    def natural(self) -> str:
        """The name in the order it is said in."""
        said = " ".join(filter(None, (self.given, self.family)))
        return f"{said}, {self.suffix}" if self.suffix else said


def names_in(line: str) -> tuple[Name, ...]:
    """Return the names in the line of authors a digest has.

    `Austen, Jane` is one name turned round; `J. Austen, G. Eliot` is two.
    """
    pieces = [piece for piece in _AND.split(" ".join(line.split())) if piece]
    turned = all(_turned(piece) for piece in pieces)
    found: list[Name] = []
    for piece in pieces:
        if turned:
            family, _, given = piece.partition(", ")
            found.append(Name(family, given))
            continue
        for said in map(str.strip, piece.split(",")):
            if found and _JUNIOR.fullmatch(said):
                found[-1] = Name(found[-1].family, found[-1].given, said)
            elif said:
                found.append(_natural(said))
    return tuple(found)


def line_of(names: tuple[str, ...]) -> str | None:
    """Return names as the line of authors of a digest: `A, B and C`; None without any."""
    if len(names) < 2:
        return names[0] if names else None
    return f"{', '.join(names[:-1])} and {names[-1]}"


def _turned(piece: str) -> bool:
    family, comma, given = piece.partition(",")
    return bool(comma) and "," not in given and bool(given.strip()) and _one_word(family)


def _one_word(family: str) -> bool:
    words = family.split()
    return len([word for word in words if word.lower() not in _PARTICLES]) == 1 and not (
        _JUNIOR.fullmatch(words[-1])
    )


def _natural(said: str) -> Name:
    words = said.split()
    if len(words) == 1:
        return Name(said)
    first = len(words) - 1
    while first > 1 and words[first - 1] in _PARTICLES:
        first -= 1
    return Name(" ".join(words[first:]), " ".join(words[:first]))
