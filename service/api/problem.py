"""What a type of problem is (RFC 9457)."""

from dataclasses import dataclass
from http import HTTPStatus


@dataclass(frozen=True, slots=True)
class Problem:
    """A type of problem.

    Attributes:
        name: last part of its type.
        status: it is answered with.
        title: what it is, in a few words, the same every time.
        meaning: when it arises and what to do.
    """

    name: str
    status: HTTPStatus
    title: str
    meaning: str

    @property
    def type(self) -> str:
        """The URI reference it is known by."""
        return f"/api/problems/{self.name}"
