"""A sitting on paper: printed, answered, entered in one go."""

from datetime import timedelta
from uuid import uuid4

import pytest

from cards.answers import Grade
from cards.errors import AnswerConflict, Invalid, InvalidAnswer, SheetMissing
from cards.kinds.base import Asked, KindName
from service.use_cases.items import item_history
from service.use_cases.mend_digest import remove_digest
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.sheets import (
    Entered,
    compose_sheet,
    enter_sheet,
    keep_sheet,
    open_sheet,
    open_sheets,
    print_sheet,
)
from service.use_cases.sit import todays_sitting
from tests.use_cases.house import DIGEST


def answers(house):
    """How many answers each item has."""
    items = house.items()
    return {key: kept.memory.answers if kept.memory else 0 for key, kept in items.items()}


def test_a_sheet_holds_todays_sitting(house, added):
    """The same items in the same order, each with its cue and its answer."""
    added()
    asked = [view.kept.item.id for view in todays_sitting(house.desk).items]
    printed = print_sheet(house.desk)
    on_paper = [line.item_id for line in printed.lines]
    assert on_paper == [each for each in asked if each in on_paper]
    assert all(line.cue.question and line.answered.words for line in printed.lines)
    assert open_sheet(house.desk, printed.sheet.id) == printed
    assert open_sheets(house.desk) == [printed.sheet]


def test_what_another_cue_gives_away_is_left_off_the_paper(house, added):
    """A quotation to be placed shows the points, so that none of them is asked beside it."""
    added()
    set_preferences(house.desk, Preferences(unasked_a_day=20))
    asked = [view.kept.item.kind for view in todays_sitting(house.desk).items]
    printed = print_sheet(house.desk)
    on_paper = [line.kind for line in printed.lines]
    shown = {mark.text for line in printed.lines for mark in line.cue.landmarks}
    assert shown == {point.text for point in DIGEST.points}
    assert KindName.NEXT in asked
    assert KindName.NEXT not in on_paper
    assert KindName.RESTATE in on_paper


def test_without_anything_to_ask_there_is_no_sheet(house):
    """An empty sheet of paper is refused in a sentence."""
    with pytest.raises(Invalid, match="nothing to print"):
        print_sheet(house.desk)


def test_grades_are_entered_in_one_go_and_once(house, added):
    """What is left ungraded stays as it is; the form sent again counts nothing twice."""
    added()
    printed = print_sheet(house.desk)
    first, *rest = printed.lines
    entered = {line.item_id: Entered(Grade.CLEAR) for line in rest}
    assert enter_sheet(house.desk, printed.sheet.id, entered) == len(rest)
    assert enter_sheet(house.desk, printed.sheet.id, entered) == 0
    counted = answers(house)
    assert counted[first.item_id] == 0
    assert all(counted[line.item_id] == 1 for line in rest)
    assert open_sheets(house.desk) == []


def test_with_nothing_entered_a_sheet_goes_on_waiting(house, added):
    """No answer is kept and the sheet stays open, until something is entered from it."""
    added()
    printed = print_sheet(house.desk)
    assert enter_sheet(house.desk, printed.sheet.id, {}) == 0
    assert open_sheets(house.desk) == [printed.sheet]


def test_a_sheet_of_which_nothing_is_left_can_be_closed(house, added):
    """Its digest removed, there is nothing to enter, and it waits no more."""
    digest = added()
    printed = print_sheet(house.desk)
    remove_digest(house.desk, digest)
    assert open_sheet(house.desk, printed.sheet.id).lines == ()
    assert enter_sheet(house.desk, printed.sheet.id, {}) == 0
    assert open_sheets(house.desk) == []


def test_a_sheet_bears_the_readers_day(house, added):
    """In Kiritimati, 14 hours ahead of UTC (time zone database), it is tomorrow's."""
    added()
    set_preferences(house.desk, Preferences(time_zone="Pacific/Kiritimati"))
    printed = print_sheet(house.desk)
    assert printed.day == todays_sitting(house.desk).day
    assert printed.day == house.now.date() + timedelta(days=1)
    assert open_sheet(house.desk, printed.sheet.id).day == printed.day


def test_a_sheet_that_was_only_composed_does_not_wait(house, added):
    """It waits from when it is kept, as when its file was written."""
    added()
    printed = compose_sheet(house.desk)
    assert open_sheets(house.desk) == []
    keep_sheet(house.desk, printed)
    assert open_sheets(house.desk) == [printed.sheet]


def test_another_grade_for_what_was_entered_is_refused_whole(house, added):
    """Facts are not changed: nothing else of that form is kept either."""
    added()
    printed = print_sheet(house.desk)
    one, other = printed.lines[:2]
    enter_sheet(house.desk, printed.sheet.id, {one.item_id: Entered(Grade.CLEAR)})
    with pytest.raises(AnswerConflict):
        enter_sheet(
            house.desk,
            printed.sheet.id,
            {other.item_id: Entered(Grade.CLEAR), one.item_id: Entered(Grade.VIVID)},
        )
    assert answers(house)[other.item_id] == 0


def test_a_foreign_item_leaves_nothing(house, added):
    """An item that is not on the sheet refuses the whole form."""
    added()
    printed = print_sheet(house.desk)
    entered = {printed.lines[0].item_id: Entered(Grade.CLEAR), uuid4(): Entered(Grade.CLEAR)}
    with pytest.raises(InvalidAnswer, match="not on this sheet"):
        enter_sheet(house.desk, printed.sheet.id, entered)
    assert not any(answers(house).values())


def test_it_counts_on_the_day_it_was_done(house, added):
    """Yesterday's sheet entered today is yesterday's; no day before it, and none to come."""
    added()
    printed = print_sheet(house.desk)
    day = todays_sitting(house.desk).day
    house.now += timedelta(days=2)
    entered = {line.item_id: Entered(Grade.CLEAR) for line in printed.lines}
    for wrong in (day - timedelta(days=1), day + timedelta(days=3)):
        with pytest.raises(InvalidAnswer):
            enter_sheet(house.desk, printed.sheet.id, entered, wrong)
    assert not any(answers(house).values())
    enter_sheet(house.desk, printed.sheet.id, entered, day + timedelta(days=1))
    history = item_history(house.desk, printed.lines[0].item_id).answers
    assert [each.answer.day for each in history] == [day + timedelta(days=1)]


def test_what_was_answered_meanwhile_is_told(house, added):
    """The sheet still shows the cue that was printed, and says that it was answered since."""
    added()
    printed = print_sheet(house.desk)
    line = printed.lines[0]
    house.answer(line.item_id, Grade.HAZY)
    again = open_sheet(house.desk, printed.sheet.id).lines[0]
    assert again.answered_since
    assert again.cue == line.cue
    assert enter_sheet(house.desk, printed.sheet.id, {line.item_id: Entered(Grade.CLEAR)}) == 1
    assert answers(house)[line.item_id] == 2


def test_words_from_paper_are_marked(house, added):
    """What was written is kept with the answer, with the mark it would have had."""
    added()
    set_preferences(house.desk, Preferences(unasked_a_day=20))
    printed = print_sheet(house.desk)
    line = next(line for line in printed.lines if line.cue.asked == (Asked.WORDS,))
    entered = {line.item_id: Entered(Grade.CLEAR, line.answered.words)}
    enter_sheet(house.desk, printed.sheet.id, entered)
    (kept,) = item_history(house.desk, line.item_id).answers
    assert kept.answer.attempt == line.answered.words
    assert kept.answer.suggested in (Grade.CLEAR, Grade.VIVID)
    assert kept.answer.seconds is None


def test_anothers_sheet_is_missing(house, added):
    """No reader sees, or enters, what another had printed."""
    added()
    printed = print_sheet(house.desk)
    other = house.another_reader()
    with pytest.raises(SheetMissing):
        open_sheet(other.desk, printed.sheet.id)
    with pytest.raises(SheetMissing):
        enter_sheet(other.desk, printed.sheet.id, {})
