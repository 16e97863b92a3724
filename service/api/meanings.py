"""What the fields of a digest mean, said once for what is given and what is sent."""

TITLE = {"description": "The book's title."}
AUTHOR = {"description": "Its author, null when the digest names none."}
EDITION = {
    "description": "Its edition in words: publisher, place, year, number, translator; null when "
    "the digest does not say."
}
ISBN = {"description": "Its ISBN, 10 or 13 characters, null when the digest gives none."}
PAGES = {"description": "How many pages the edition has, null when the digest does not say."}
FINISHED = {"description": "The day the book was finished, null when the digest does not say."}
THEME = {"description": "What the book comes to, and by what stages; null when there is none."}
JUDGEMENT = {"description": "Agree, disagree, suspended, and why; null when there is none."}
POINTS = {"description": "The points that carry the theme, in the book's order."}
COMMITMENTS = {"description": "What the book asks the reader to do."}
QUOTATIONS = {"description": "Words of the book worth keeping."}
LOCATOR = {"description": "Where it stands in the book, as in `p. 54` or `ch. 20`; or null."}
PAGE = {"description": "The page its locator names, null when it names none."}
AFTER = {
    "description": "Number of the point it stands after, 0 for before all, null when not known."
}
CARE = {
    "description": "How much of the book to keep: every item and a higher target, the usual, or "
    "nothing new and the rest now and then."
}
REVISION = {"description": "How many times it was changed, from 1."}
WORDS = {"description": "Its words."}
OWN_ID = {"description": "Made by whoever records it, so that sending it twice changes nothing."}
