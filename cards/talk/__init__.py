"""Telling another person about a book: the sheet of a talk, and that it took place."""

from cards.talk.agenda import Agenda, agenda_for
from cards.talk.facts import Talk
from cards.talk.lengths import Length, Stage, length_of
from cards.talk.section import Blank, Line, Section

__all__ = [
    "Agenda",
    "Blank",
    "Length",
    "Line",
    "Section",
    "Stage",
    "Talk",
    "agenda_for",
    "length_of",
]
