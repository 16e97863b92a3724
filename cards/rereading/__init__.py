"""Which books to open again, at which pages, why, and whether it helped."""

from cards.rereading.afresh import days_afresh
from cards.rereading.because import Because, Reason
from cards.rereading.facts import MAX_NOTE, MAX_PAGES, MOST_MINUTES, Rereading
from cards.rereading.helping import Helped, helped
from cards.rereading.listing import BookToReread, RereadingList, book_to_reread, list_of
from cards.rereading.reading_pace import minutes_a_page
from cards.rereading.reasons import may_have_reasons
from cards.rereading.record import BookRecord, answers_tell
from cards.rereading.stretches import Stretch

__all__ = [
    "MAX_NOTE",
    "MAX_PAGES",
    "MOST_MINUTES",
    "Because",
    "BookRecord",
    "BookToReread",
    "Helped",
    "Reason",
    "Rereading",
    "RereadingList",
    "Stretch",
    "answers_tell",
    "book_to_reread",
    "days_afresh",
    "helped",
    "list_of",
    "may_have_reasons",
    "minutes_a_page",
]
