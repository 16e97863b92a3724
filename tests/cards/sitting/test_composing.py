"""What a sitting takes in, and in which order, by examples."""

from itertools import pairwise

from cards.answers import Grade
from cards.digest import Commitment, Digest, Point, Quotation
from cards.kinds.base import KindName
from cards.sitting import Waiting, compose
from tests.cards.digests import commitment, kept
from tests.cards.sitting.candidates import candidate, memory, names

PLENTY = 3_600.0
OTHER = kept(
    Digest(
        "Moby-Dick",
        theme="A captain spends his ship on one white whale",
        points=(Point("Ishmael signs on in Nantucket"), Point("The coffin floats up alone")),
        commitments=(Commitment("Read the sea chapter aloud every Sunday"),),
    ),
    start=500,
)


def composed(waiting, seconds=PLENTY):
    """Compose a sitting and return kinds and numbers."""
    return names(compose(waiting, seconds))


def restates(*worths, **more):
    """Return the three commitments of the digest, each with its worth."""
    return [
        candidate(KindName.RESTATE, number, memory(), worth=worth, **more)
        for number, worth in enumerate(worths, 1)
    ]


def test_what_is_worth_most_is_taken_until_the_time_is_filled():
    """Of three items of thirty seconds a minute holds the two worth most."""
    assert composed(Waiting(restates(1.0, 3.0, 2.0)), 60) == [("restate", 2), ("restate", 3)]


def test_what_does_not_fit_any_more_makes_room_for_what_does():
    """An item too long for the rest of the time is passed over for a shorter one."""
    long = candidate(KindName.THEME, 1, memory(), worth=2.0, seconds=60)
    waiting = Waiting([long, *restates(3.0, 1.0, 0.5)])
    assert composed(waiting, 70) == [("restate", 1), ("restate", 2)]


def test_the_first_commitment_is_taken_however_little_it_is_worth():
    """A sitting of two items is not the two worth most where neither is a commitment."""
    first = candidate(KindName.THEME, 1, memory(), worth=9.0, seconds=30)
    assert composed(Waiting([first, *restates(0.1)]), 60) == [("theme", 1), ("restate", 1)]


def test_a_commitment_that_is_not_due_is_asked_where_none_is():
    """Every day has its commitment, due or not."""
    theme = candidate(KindName.THEME, 1, memory(), worth=9.0)
    waiting = Waiting([theme], commitments=restates(0.0))
    assert ("restate", 1) in composed(waiting)


def test_a_commitment_asked_already_today_is_not_followed_by_another_for_its_own_sake():
    """What is owed once a day is owed once."""
    waiting = Waiting([], commitments=restates(0.0), commitment_owed=False)
    assert composed(waiting) == []


def test_something_unasked_is_always_let_in():
    """“Something unasked each day”, even where every due item is worth more."""
    fresh = candidate(KindName.THEME, 1, None, worth=0.01)
    waiting = Waiting(restates(3.0, 2.0, 1.0), [fresh])
    assert composed(waiting, 60) == [("restate", 1), ("theme", 1)]


def test_without_time_left_nothing_is_asked_but_what_comes_round_again():
    """The day's minutes are the reader's; a blank still comes back once."""
    blank = candidate(KindName.RESTATE, 1, memory(0.2, days_ago=0, grade=Grade.BLANK))
    waiting = Waiting(restates(1.0, 1.0)[1:], returning=[blank])
    assert composed(waiting, 0) == [("restate", 1)]


def test_placing_comes_after_what_asks_the_points_it_shows():
    """However much a placing is worth, the theme, whose stages it shows, is asked first."""
    place = candidate(KindName.PLACE, 1, memory(), worth=9.0)
    theme = candidate(KindName.THEME, 1, memory(), worth=0.1)
    assert composed(Waiting([place, theme])) == [("theme", 1), ("place", 1)]


def test_what_was_read_today_is_not_asked_any_more():
    """A theme is not asked on the day a placing showed its stages."""
    place = candidate(KindName.PLACE, 1, memory(days_ago=0))
    theme = candidate(KindName.THEME, 1, memory())
    assert composed(Waiting([theme], seen=[place])) == []


def test_what_came_back_blank_comes_round_at_the_end():
    """After everything else, whatever it is worth."""
    blank = candidate(KindName.RESTATE, 1, memory(0.2, days_ago=0, grade=Grade.BLANK), worth=9.0)
    waiting = Waiting(restates(1.0, 3.0, 2.0)[1:], returning=[blank])
    assert composed(waiting) == [("restate", 2), ("restate", 3), ("restate", 1)]


def test_a_placing_waits_until_the_blank_theme_has_come_back():
    """What comes round again is still asked, so nothing shows it till then."""
    blank = candidate(KindName.THEME, 1, memory(0.2, days_ago=0, grade=Grade.BLANK))
    place = candidate(KindName.PLACE, 1, memory())
    assert composed(Waiting([place], returning=[blank])) == [("theme", 1)]
    assert composed(Waiting([place])) == [("place", 1)]


def test_books_take_turns():
    """No two items of one book follow each other while another book has some left."""
    mine = restates(9.0, 8.0, 7.0)
    theirs = [
        candidate(KindName.THEME, 1, memory(), digest=OTHER, worth=1.0),
        candidate(KindName.RESTATE, 1, memory(), digest=OTHER, worth=0.5),
    ]
    ordered = compose(Waiting([*mine, *theirs]), PLENTY)
    books = [each.book for each in ordered]
    assert len(books) == 5
    assert all(one != other for one, other in pairwise(books))


def test_the_next_item_is_of_another_book_than_the_last_answer():
    """A sitting composed anew after each answer goes on taking turns."""
    waiting = Waiting(
        [*restates(9.0), candidate(KindName.THEME, 1, memory(), digest=OTHER, worth=1.0)],
        last_book=restates(9.0)[0].book,
    )
    assert composed(waiting) == [("theme", 1), ("restate", 1)]


def test_a_page_with_half_of_anothers_words_comes_after_it():
    """Two parts of unlike kinds that say the same: the one read does not answer the other."""
    quoted = "Name three merits of every stranger you are tempted to ridicule"
    digest, _ = commitment(
        "Name three merits of a stranger I am tempted to ridicule",
        quotations=(Quotation(quoted, "p. 4"),),
        pages=300,
    )
    place = candidate(KindName.PLACE, 1, memory(), digest=digest, worth=9.0)
    restate = candidate(KindName.RESTATE, 1, memory(), digest=digest, worth=0.1)
    assert composed(Waiting([place, restate])) == [("restate", 1), ("place", 1)]


def test_a_day_without_items_is_empty():
    """Nothing due, nothing let in, nothing asked."""
    assert composed(Waiting([])) == []
