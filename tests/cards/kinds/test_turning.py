"""Whether an answer says the opposite of an idea."""

import pytest

from cards.kinds.comparing import compare


def turned(source, attempt):
    """Tell whether any idea of a text seems turned round in an attempt."""
    return any(each.turned for each in compare(source, attempt).ideas)


@pytest.mark.parametrize(
    ("source", "attempt"),
    [
        ("Virtue is rewarded", "Virtue is not rewarded"),
        ("Virtue is not rewarded", "Virtue is rewarded"),
        ("Virtue is rewarded", "Virtue isn’t rewarded"),
        ("Virtue is always rewarded", "Virtue is never rewarded"),
        ("Nobody is rewarded for virtue", "Everybody is rewarded for virtue"),
        ("The miser hoards his gold", "The miser refuses to hoard his gold"),
        ("The miser hoards his gold", "The miser fails to hoard his gold"),
        ("The general wins without fighting", "The general wins by fighting"),
        ("The general wins by fighting", "The general wins without fighting"),
        ("She goes home rather than marry him", "She marries him rather than go home"),
        ("He tells the truth instead of fleeing", "He flees instead of telling the truth"),
        ("The heir dies poor in a strange town", "The heir dies rich in a strange town"),
        ("She loves her master and stays", "She hates her master and stays"),
        ("The prisoners win their freedom", "The prisoners lose their freedom"),
        ("He accepts the offer of the king", "He rejects the offer of the king"),
        ("Faith grows weaker with wealth", "Faith grows stronger with wealth"),
        ("An unkind word helps nobody", "A kind word helps nobody"),
        ("Custom makes people unhappy", "Custom makes people happy"),
        ("The whale kills Ahab", "Ahab kills the whale"),
        ("Emma slights Harriet at the ball", "Harriet slights Emma at the ball"),
        ("The monster pursues its maker north", "The maker pursues its monster north"),
        ("The crew obeys the captain to the last", "The crew disobeys the captain to the last"),
        ("The village believes her story at once", "The village doubts her story at once"),
        ("Wickham can be trusted with money", "Wickham cannot be trusted with money"),
        ("War begins with a lie", "War ends with a lie"),
        ("The weaver is guilty of the theft", "The weaver is innocent of the theft"),
        ("They hardly ever quarrel over land", "They quarrel over land"),
        ("The steward must learn how not to be good", "The steward must learn to be good always"),
        ("He pays the debt so that Anna is not arrested", "He pays the debt and has Anna jailed"),
        (
            "She mocks Miss Grey at the ball, and weeps",
            "Miss Grey mocks Anna at the ball, and weeps",
        ),
        ("The hermit gives up wine", "The hermit drinks wine again"),
        ("Ahab is killed by the whale", "The whale is killed by Ahab"),
        ("Neither brother forgives the other", "Each brother forgives the other"),
    ],
)
def test_the_opposite_is_seen(source, attempt):
    """By a negation put in or left out, a contrary, or roles that have changed places."""
    assert turned(source, attempt)


@pytest.mark.parametrize(
    ("source", "attempt"),
    [
        ("Virtue is not rewarded", "Virtue isn’t rewarded"),
        ("A pale whale can be beaten by old sailors", "Old sailors beat a pale whale by rowing"),
        ("Anton loses Vera in a crowd, and weeps", "Vera is lost in a crowd, and Anton weeps"),
        ("He learns Greek in the tower", "He teaches himself Greek in the tower"),
        ("He leaves at dawn, hope given up", "Hope is given up; he leaves at dawn"),
        ("Virtue is not rewarded", "Virtue goes without reward"),
        ("Nobody is rewarded for virtue", "Virtue is never rewarded"),
        ("Virtue is rewarded", "Virtue is rewarded. Vice is not punished"),
        (
            "Virtue is rewarded. Vice is not punished.",
            "virtue is rewarded and vice is not punished",
        ),
        ("The general wins without fighting", "victory with no fight is what the general wants"),
        ("He is poor", "He is not rich"),
        ("He refuses to marry her", "He will not marry her"),
        ("He fails to stop the strike", "He cannot stop the strike"),
        ("The whale kills Ahab", "Ahab is killed by the whale"),
        ("Ahab is killed by the whale", "The whale kills Ahab"),
        ("Nothing brings peace but work", "Only work brings peace"),
        ("The tyrant is the most wretched of men", "Nobody is more wretched than the tyrant"),
        ("Masters and workers meet as persons", "Workers and masters meet as persons"),
        ("A proud man and a witty woman misjudge each other", "A witty woman and a proud man do"),
        ("She leaves him when he lies", "When he lies she does leave, not before"),
        ("At Lyme Louisa falls from the steps", "Louisa falls from the steps at Lyme"),
        ("The clerk disobeys the doctor’s orders", "The clerk does not follow the doctor’s orders"),
        ("Employers despise the workers", "The masters look down on their men"),
    ],
)
def test_the_same_in_other_words_is_not_called_the_opposite(source, attempt):
    """Another negation, another order, a passive, a contrary that is denied."""
    assert not turned(source, attempt)


def test_many_sentences_that_share_their_words_are_read_in_bounded_time():
    """The closest two sentences decide, however many there are."""
    attempt = "The whale swims. " * 500 + "Virtue is not rewarded."
    assert turned("Virtue is rewarded", attempt)
