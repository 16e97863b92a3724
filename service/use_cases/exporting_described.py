"""Every export described, column by column."""

from service.use_cases.exporting_columns import Column, Described, Holds, What
from service.use_cases.retaining_columns import RETENTION

_BOOK = (
    Column("digest_id", Holds.ID, "The digest of the book."),
    Column("title", Holds.TEXT, "The title of the book, as its digest says it now."),
)
_KIND = Column(
    "kind",
    Holds.TEXT,
    "The sort of item: theme, place, restate, next, order, complete, source or across.",
)
_GRADES = "blank, hazy, clear or vivid"

_ANSWERS = (
    Column("id", Holds.ID, "The answer, as whoever recorded it named it."),
    Column("item_id", Holds.ID, "The item it answers."),
    *_BOOK,
    _KIND,
    Column("grade", Holds.TEXT, f"How well it came back by the reader’s own word: {_GRADES}."),
    Column("came_back", Holds.FLAG, "Whether anything came back: whether the grade is not blank."),
    Column("answered_at", Holds.INSTANT, "When it was answered."),
    Column(
        "day",
        Holds.DAY,
        "The reader’s day it was answered on, fixed when it was recorded. The age of the memory "
        "is the days since the item’s answer before it that was not taken back.",
    ),
    Column(
        "predicted",
        Holds.NUMBER,
        "The probability of recall that the memory model gave just before the answer, never "
        "computed afterwards. Absent for the first answer to an item.",
        "probability, 0 to 1",
        absent=True,
    ),
    Column(
        "suggested",
        Holds.TEXT,
        f"The grade the mark suggested: {_GRADES}. Absent where there was no mark.",
        absent=True,
    ),
    Column(
        "graded_first",
        Holds.FLAG,
        "Whether the reader graded before the mark was shown, so that it could not pull them.",
    ),
    Column(
        "seconds",
        Holds.WHOLE,
        "From the cue to the grade. Absent where nobody measured it.",
        "seconds",
        absent=True,
    ),
    Column("attempt", Holds.TEXT, "What the reader wrote or chose; may be empty."),
    Column(
        "ticked",
        Holds.TEXT,
        "The numbers, from 1, of the ideas that came back by the reader’s own word. Absent where "
        "they did not correct what was found.",
        absent=True,
    ),
    Column("received_at", Holds.INSTANT, "When the answer reached the library."),
    Column(
        "taken_back_at",
        Holds.INSTANT,
        "When the reader took the answer back; it counts for nothing since. Absent where it "
        "stands.",
        absent=True,
    ),
)

_ITEMS = (
    Column("id", Holds.ID, "The item."),
    *_BOOK,
    Column("part_id", Holds.ID, "The part of the digest it is made from."),
    _KIND,
    Column("number", Holds.WHOLE, "The place of that part among those of its kind, from 1."),
    Column("text", Holds.TEXT, "The words of that part."),
    Column("retired", Holds.FLAG, "Whether its source is gone from the digest."),
    Column("care", Holds.TEXT, "How much of the book is kept: close, steady or resting."),
    Column("standing", Holds.TEXT, "How it stands: unasked, settling, held or faded."),
    Column(
        "stability",
        Holds.NUMBER,
        "After how long recall has fallen to 0.9. Absent, as all that follows, while unasked.",
        "days",
        absent=True,
    ),
    Column("difficulty", Holds.NUMBER, "How hard it is to keep.", "1 to 10", absent=True),
    Column("first_day", Holds.DAY, "The day of its first answer.", absent=True),
    Column("last_day", Holds.DAY, "The day of its last answer.", absent=True),
    Column("last_grade", Holds.TEXT, f"The grade of its last answer: {_GRADES}.", absent=True),
    Column(
        "answers", Holds.WHOLE, "How many answers its memory comes from.", "answers", absent=True
    ),
    Column("due_on", Holds.DAY, "The day on which it is due next.", absent=True),
    Column(
        "recall",
        Holds.NUMBER,
        "The probability that it would be recalled on the day of the export.",
        "probability, 0 to 1",
        absent=True,
    ),
)

_PART = (
    Column("id", Holds.ID, "The part; it stays the same when the part is edited or moved."),
    Column("number", Holds.WHOLE, "Its place among those of its kind, from 1."),
    Column("text", Holds.TEXT, "Its words."),
)
_LOCATOR = Column(
    "locator", Holds.TEXT, "Where it stands: p. 54, pp. 34-35, ch. 20, §5.", absent=True
)
_AFTER = Column(
    "stands_after",
    Holds.WHOLE,
    "The number of the point the quotation stands after, 0 for before the first.",
    absent=True,
)

_DIGESTS = (
    Column("id", Holds.ID, "The digest."),
    Column("title", Holds.TEXT, "The title of the book."),
    Column("author", Holds.TEXT, "Who wrote it.", absent=True),
    Column("edition", Holds.TEXT, "Which edition, in words.", absent=True),
    Column("isbn", Holds.TEXT, "The ISBN, its digits alone.", absent=True),
    Column("pages", Holds.WHOLE, "How many pages the book has.", "pages", absent=True),
    Column("finished_on", Holds.DAY, "When the reader finished it.", absent=True),
    Column("added_at", Holds.INSTANT, "When the digest was first added."),
    Column("revision", Holds.WHOLE, "How many times it was changed, from 1."),
    Column("care", Holds.TEXT, "How much of the book is kept: close, steady or resting."),
    Column("removed", Holds.FLAG, "Whether the reader took the digest out of the library."),
    Column("theme", Holds.TEXT, "What the book comes to, and by what stages.", absent=True),
    Column(
        "judgement", Holds.TEXT, "Whether the reader agrees with the book, and why.", absent=True
    ),
    Column(
        "points",
        Holds.PARTS,
        "The ordered ideas that carry the theme, in the book’s order.",
        fields=(*_PART, _LOCATOR),
    ),
    Column("commitments", Holds.PARTS, "What the book asks of the reader, in order.", fields=_PART),
    Column(
        "quotations",
        Holds.PARTS,
        "Words of the book, in order.",
        fields=(*_PART, _LOCATOR, _AFTER),
    ),
)

_COMMITMENTS = (
    Column("id", Holds.ID, "The commitment; the part of the digest it is."),
    *_BOOK,
    Column("number", Holds.WHOLE, "Its place among the commitments of its digest, from 1."),
    Column("text", Holds.TEXT, "What the reader is to do, in the words of the digest now."),
    Column("made_on", Holds.DAY, "The day the book was finished, or else the day it came in."),
    Column("entered_on", Holds.DAY, "The day it came into the library."),
    Column(
        "measure",
        Holds.TEXT,
        "What it asks now, as in “three times a week”. Absent where it has no measure.",
        absent=True,
    ),
    Column(
        "pace",
        Holds.TEXT,
        "How it stands on the day of the export: on course, slipping, stalled, paused, unjudged, "
        "done, ended or released. Absent where it came in after that day.",
        absent=True,
    ),
    Column(
        "kept_of_due",
        Holds.WHOLE,
        "What was kept over a term that is over, or of a one-off; 0 of one that runs.",
        "periods; deeds of a one-off",
        absent=True,
    ),
    Column(
        "due",
        Holds.WHOLE,
        "What was due over a term that is over, or of a one-off; 0 of one that runs.",
        "periods; deeds of a one-off",
        absent=True,
    ),
    Column("ends_on", Holds.DAY, "The last day of its term. Absent while it is open.", absent=True),
    Column("kept", Holds.WHOLE, "How many check-ins said kept, ever.", "check-ins"),
    Column("partly", Holds.WHOLE, "How many check-ins said partly, ever.", "check-ins"),
    Column("missed", Holds.WHOLE, "How many check-ins said missed, ever.", "check-ins"),
    Column("last_day", Holds.DAY, "The latest day a check-in is about.", absent=True),
)

_CHECK_INS = (
    Column("id", Holds.ID, "The check-in, as whoever recorded it named it."),
    Column("commitment_id", Holds.ID, "The commitment it reports on."),
    *_BOOK,
    Column("commitment", Holds.TEXT, "The commitment, in the words of the digest now."),
    Column("outcome", Holds.TEXT, "What came of it: kept, partly or missed."),
    Column("day", Holds.DAY, "The day it is about, whenever it was reported."),
    Column(
        "count",
        Holds.WHOLE,
        "How many deeds it reports, where it says so.",
        "deeds",
        absent=True,
    ),
    Column("note", Holds.TEXT, "The reader’s words about it; may be empty."),
    Column("witness", Holds.TEXT, "Who saw it, in the reader’s words; may be empty."),
    Column("reported_at", Holds.INSTANT, "When it was reported."),
    Column("reported_on", Holds.DAY, "The reader’s day it was reported on."),
    Column(
        "taken_back_at",
        Holds.INSTANT,
        "When the reader took it back; it counts for nothing since. Absent where it stands.",
        absent=True,
    ),
)

DESCRIBED: dict[What, Described] = {
    What.ANSWERS: Described(
        "Answers",
        "Every answer to every item, those taken back with them, in the order of their ids, which "
        "is no order of time: sort by answered_at.",
        _ANSWERS,
    ),
    What.ITEMS: Described(
        "Items", "Every item with its memory, retired ones too, book by book.", _ITEMS
    ),
    What.DIGESTS: Described(
        "Digests", "Every digest, those taken out too, the one added first first.", _DIGESTS
    ),
    What.COMMITMENTS: Described(
        "Commitments",
        "Every commitment the digests hold, and how it stands today.",
        _COMMITMENTS,
    ),
    What.CHECK_INS: Described(
        "Check-ins",
        "Every check-in, those taken back with them, by commitment and day.",
        _CHECK_INS,
    ),
    What.RETENTION: RETENTION,
}
"""What each export holds."""
