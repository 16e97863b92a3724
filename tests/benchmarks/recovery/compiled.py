"""The optimiser of fsrs-rs-python, a compiled reference in tests only."""

from fsrs_rs_python import DEFAULT_PARAMETERS, FSRS, FSRSItem, FSRSReview

from cards.fitting.reviews import Reviews


def items_of(reviews: Reviews) -> tuple[list[FSRSItem], list[int]]:
    """Return the reviews as it takes them: an item and its card's number for each scored answer.

    Each holds all answers up to that one; those without a day gone by are left out, since
    it panics at an item that has none.
    """
    items, cards, so_far = [], [], []
    columns = (reviews.first, reviews.items, reviews.grades, reviews.elapsed)
    for first, item, grade, elapsed in zip(*(each.tolist() for each in columns), strict=True):
        so_far = [] if first else so_far
        so_far.append(FSRSReview(grade + 1, elapsed))
        if elapsed:
            items.append(FSRSItem(list(so_far)))
            cards.append(item)
    return items, cards


def fit_compiled(reviews: Reviews) -> tuple[float, ...]:
    """Return the weights it finds; with few answers the published defaults, without a word."""
    items, cards = items_of(reviews)
    return tuple(FSRS(list(DEFAULT_PARAMETERS)).compute_parameters(items, card_ids=cards))
