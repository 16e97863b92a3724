"""The reader's own weights are considered when there is reason to, and carried through gently."""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from uuid import UUID, uuid4

import pytest

from cards.answers import Grade
from cards.fitting import Considered, Verdict
from cards.fitting.reviews import Reviews
from cards.schedule import DEFAULT_WEIGHTS
from cards.weighting import PUBLISHED, Weighting
from service.use_cases import learning
from service.use_cases.answer import record_answer
from service.use_cases.items import list_items
from service.use_cases.learning import learn
from service.use_cases.recording import GivenAnswer
from service.use_cases.tidy import tidy
from tests.use_cases.house import House

SLOWER = Weighting(tuple(w * 2 if n < 4 else w for n, w in enumerate(DEFAULT_WEIGHTS)))
"""Weights under which a memory lasts longer."""


@pytest.fixture
def answered(house: House, added: Callable[[], UUID]) -> House:
    """A house in which every item was answered five times, on different days."""
    added()
    for _ in range(5):
        house.now += timedelta(days=3)
        for each in list_items(house.desk).items:
            record_answer(house.desk, GivenAnswer(uuid4(), each.kept.item.id, Grade.CLEAR))
    return house


@pytest.fixture
def considered(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """Every consideration adopts `SLOWER`; the list grows by the answers each was told of."""
    seen: list[int] = []

    def consider(reviews: Reviews, current: Weighting, since: int) -> Considered:
        seen.append(len(reviews))
        assert since == 0 or current == SLOWER
        verdict = Verdict(None, len(reviews), 9, None, current != SLOWER, "Yours foresee better.")
        return Considered(verdict, (), SLOWER)

    monkeypatch.setattr(learning, "consider", consider)
    monkeypatch.setattr(learning, "LEAST_NEW", 10)
    return seen


def test_too_little_new_is_not_considered(answered: House) -> None:
    """With fewer new answers than are worth it, nothing is considered and nothing moves."""
    found = learn(answered.desk)
    assert (found.fitting, found.moved, found.waiting) == (None, 0, 0)


def test_what_is_adopted_is_carried_through(
    answered: House, considered: list[int], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Every memory follows the new weights at once; due days move a few a day, each day once."""
    monkeypatch.setattr(learning, "MOST_MOVED", 2)
    before = {each.kept.item.id: each.kept.memory for each in list_items(answered.desk).items}
    with answered.desk.store.reading() as work:
        facts = {each: work.answers.of_item(answered.desk.reader, each) for each in before}
    found = learn(answered.desk)
    assert found.fitting is not None
    assert found.fitting.adopted
    assert considered == [5 * len(before)]
    assert (found.moved, found.waiting) == (2, len(before) - 2)
    assert learn(answered.desk).moved == 0
    after = {each.kept.item.id: each.kept.memory for each in list_items(answered.desk).items}
    assert all(after[each].stability > before[each].stability for each in before)
    same = [each for each in before if after[each].due_on == before[each].due_on]
    assert len(same) == len(before) - 2
    moved = 2
    while moved < len(before):
        answered.now += timedelta(days=1)
        found = learn(answered.desk)
        moved += found.moved
        assert found.moved <= 2
        assert found.waiting == len(before) - moved
    with answered.desk.store.reading() as work:
        reader = work.readers.get(answered.desk.reader)
        assert reader.weighting == SLOWER
        for each, answers in facts.items():
            assert work.answers.of_item(answered.desk.reader, each) == answers
            kept = work.items.get(answered.desk.reader, each)
            assert kept.memory == reader.schedule(kept.item.kind, kept.care).fold(each, answers)


def test_broken_off_it_is_begun_again(
    answered: House, considered: list[int], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A power cut while memories are folded leaves the rest to the next time."""
    with monkeypatch.context() as cut:
        cut.setattr(learning, "_AT_ONCE", 2)
        cut.setattr(learning, "_refolded", _cut_after(3))
        with pytest.raises(RuntimeError):
            learn(answered.desk)
    with answered.desk.store.reading() as work:
        assert not work.fittings.latest(answered.desk.reader).refolded
    found = learn(answered.desk)
    assert found.fitting is None
    assert found.moved == len(list_items(answered.desk).items)
    with answered.desk.store.reading() as work:
        assert work.fittings.latest(answered.desk.reader).refolded


def test_a_clock_that_ran_ahead_hides_no_later_fit(
    answered: House, considered: list[int], monkeypatch: pytest.MonkeyPatch
) -> None:
    """After the clock was set right, the next fit is the latest, and memories follow its weights.

    It would be considered again and again otherwise, and its weights put in force for nothing.
    """
    right = answered.now
    answered.now += timedelta(days=400)
    assert learn(answered.desk).fitting is not None
    answered.now = right
    for _ in range(3):
        answered.now += timedelta(days=3)
        for each in list_items(answered.desk).items:
            record_answer(answered.desk, GivenAnswer(uuid4(), each.kept.item.id, Grade.CLEAR))
    verdict = Verdict(None, 9, 9, None, True, "Yours foresee better.")
    found = Considered(verdict, (), PUBLISHED)
    monkeypatch.setattr(learning, "consider", lambda *_: found)
    fitting = learn(answered.desk).fitting
    assert fitting is not None
    assert learn(answered.desk).fitting is None
    with answered.desk.store.reading() as work:
        latest = work.fittings.latest(answered.desk.reader)
        assert (latest.id, latest.refolded) == (fitting.id, True)
        reader = work.readers.get(answered.desk.reader)
        for each in list_items(answered.desk).items:
            answers = work.answers.of_item(reader.id, each.kept.item.id)
            memory = reader.schedule(each.kept.item.kind, each.kept.care).fold(
                each.kept.item.id, answers
            )
            assert each.kept.memory.stability == memory.stability


def _cut_after(times: int) -> Callable[..., object]:
    whole, left = learning._refolded, [times]

    def refolded(*arguments: object) -> object:
        left[0] -= 1
        if left[0] < 0:
            raise RuntimeError("the power went")
        return whole(*arguments)

    return refolded


def test_an_answer_takes_its_due_day_with_it(
    answered: House, considered: list[int], monkeypatch: pytest.MonkeyPatch
) -> None:
    """An item answered while its due day waits is due as the new weights say, and waits no more."""
    monkeypatch.setattr(learning, "MOST_MOVED", 0)
    waiting = learn(answered.desk).waiting
    item = list_items(answered.desk).items[0].kept.item
    answered.now += timedelta(days=1)
    memory = record_answer(answered.desk, GivenAnswer(uuid4(), item.id, Grade.CLEAR)).item.memory
    with answered.desk.store.reading() as work:
        kept = work.items.get(answered.desk.reader, item.id)
        assert kept.memory == memory
        answers = work.answers.of_item(answered.desk.reader, item.id)
        predicted = answers[-1].predicted
        assert work.fittings.moving(answered.desk.reader) == waiting - 1
    schedule = replace(PUBLISHED, general=SLOWER.general).schedule(item.kind, 0.9)
    assert predicted == schedule.predict(answers[-1], answers[:-1])


def test_tidy_learns_without_a_mail(answered: House, considered: list[int]) -> None:
    """What is done by itself learns too, whether a mail is wanted or not."""
    assert tidy(answered.desk).learned.fitting is not None
    assert tidy(answered.desk).learned.fitting is None
