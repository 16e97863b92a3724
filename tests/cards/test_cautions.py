"""Which commitments carry a caution. The lists are common practice, no published source."""

import pytest

from cards.cautions import CAUTIONS, Matter, caution, matters

HEALTH = (
    "Stop taking my medication on Sundays",
    "Stop my treatment when I feel well",
    "See a dentist twice a year",
    "Fast one day a week",
    "Run five miles before work",
    "Drink no wine on weekdays",
    "Sleep eight hours a night",
    "Take vitamin D every morning",
    "Give up sugar until Easter",
    "Have my blood pressure measured at the hospital",
    "Lose five kilos by June",
    "Book a therapy session",
    "Zweimal im Jahr zum Arzt gehen",
)
MONEY = (
    "Save 20 € a week",
    "Put a tenth of my income aside",
    "Sell my shares",
    "Borrow from nobody",
    "Lend my brother the deposit",
    "Pay off the credit card by May",
    "Give ten percent of my salary away",
    "Invest in an index fund",
    "Pay $50 back every month",
)
LAW = (
    "Make my will before the summer",
    "See a lawyer about the lease",
    "Sue the landlord",
    "Draw up a contract with my partner",
    "Ask for custody",
    "Go to court",
    "Write a legal complaint",
    "Apply for a visa",
)
HARMLESS = (
    "Write to my sister twice a month until Christmas",
    "Name three merits of a stranger aloud",
    "Read one chapter of Plutarch every evening",
    "Be courteous to everyone at table",
    "Sit in the courtyard with no book",
    "Read the New Testament through by Easter",
    "Learn ten lines of Milton by heart",
    "I will call my brother every Sunday",
    "They will hear from me twice a year",
    "Spend an hour with the children after supper",
    "Share what I learn with a friend",
    "Plant an orchard in November",
    "Call my mother-in-law on Sundays",
    "Listen to a fugue by Bach",
)


@pytest.mark.parametrize("text", HEALTH)
def test_what_touches_health_is_known(text):
    """Medicine, food, drink, sleep, exercise and treatment touch health."""
    assert Matter.HEALTH in matters(text)
    assert CAUTIONS[Matter.HEALTH] in caution(text)


@pytest.mark.parametrize("text", MONEY)
def test_what_touches_money_is_known(text):
    """Saving, lending, paying back and giving away touch money."""
    assert Matter.MONEY in matters(text)


@pytest.mark.parametrize("text", LAW)
def test_what_touches_the_law_is_known(text):
    """Wills, leases, contracts and courts touch the law."""
    assert Matter.LAW in matters(text)


@pytest.mark.parametrize("text", HARMLESS)
def test_what_touches_none_carries_no_caution(text):
    """Letters, reading and courtesy need no caution; “I will” is no last will."""
    assert matters(text) == ()
    assert caution(text) is None


def test_a_commitment_can_touch_several():
    """Each matter adds its own caution, in a fixed order."""
    text = "Ask a lawyer whether my insurance pays for the medicine"
    assert matters(text) == (Matter.HEALTH, Matter.MONEY, Matter.LAW)
    assert caution(text) == " ".join(CAUTIONS[matter] for matter in Matter)


def test_capitals_make_no_difference():
    """A caution does not depend on case."""
    assert matters("STOP MY MEDICATION") == (Matter.HEALTH,)
