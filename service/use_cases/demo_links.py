"""What the invented reader of the demo library found: points that speak to other books."""

from cards.parts import PartKind
from service.use_cases.library import list_digests
from service.use_cases.links import GivenLink, link
from service.use_cases.ports import Desk

_FOUND = (
    (
        "Walden",
        1,
        "Silas Marner",
        "His heap of guineas came to own the weaver as the farms do their owners.",
    ),
    ("Paradise Lost", 3, "Meditations", "The mind is its own place, for worse and for better."),
    ("Persuasion", 8, "On Liberty", "Advice is owed; yielding to it is another matter."),
    ("Pride and Prejudice", 5, "Persuasion", "A letter turns a judgement round in both."),
)
"""A book, the number of its point, the other book, and what the one says to the other."""


def link_demo(desk: Desk) -> None:
    """Make the links between the books that are there."""
    books = {entry.kept.title: entry.kept for entry in list_digests(desk).entries}
    for title, number, other, why in _FOUND:
        if title in books and other in books:
            point = books[title].held(PartKind.POINT)[number - 1]
            link(desk, GivenLink(desk.new_id(), books[title].id, point.id, books[other].id, why))
