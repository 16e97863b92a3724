"""Properties of editing: what is done to a digest and undone leaves every memory as it was."""

from dataclasses import replace
from datetime import timedelta
from uuid import uuid4

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from cards.answers import GRADES
from cards.digest import Commitment, Digest, Point, Quotation
from cards.intake import Understood
from cards.parts import Care
from service.use_cases.add_digest import keep_understood
from service.use_cases.answer import record_answer
from service.use_cases.care import set_care
from service.use_cases.items import list_items
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import mend_digest
from service.use_cases.recording import GivenAnswer
from service.use_cases.versions import restore_version
from tests.property.strategies import digests, sentences
from tests.use_cases.house import House

SETTINGS = settings(max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture])
LISTS = {"points": Point, "commitments": Commitment, "quotations": Quotation}


@st.composite
def edited(draw: st.DrawFn, digest: Digest) -> Digest:
    """A digest after one edit: a part reworded, replaced, moved, taken out or put in."""
    name = draw(st.sampled_from(sorted(LISTS)))
    parts = list(getattr(digest, name))
    act = draw(st.sampled_from(["reword", "replace", "move", "remove", "insert", "theme"]))
    words = draw(sentences)
    at = draw(st.integers(0, max(0, len(parts) - 1)))
    if act == "theme":
        return replace(digest, theme=words)
    if act == "insert" or not parts:
        parts.insert(at, LISTS[name](words))
    elif act == "reword":
        parts[at] = replace(parts[at], text=f"{parts[at].text}, {words.split()[0].lower()}")
    elif act == "replace":
        parts[at] = replace(parts[at], text=words)
    elif act == "move":
        parts.insert(draw(st.integers(0, len(parts) - 1)), parts.pop(at))
    else:
        parts.pop(at)
    changed = {name: tuple(parts)}
    if name == "points":
        placed = (replace(quotation, after=None) for quotation in digest.quotations)
        changed["quotations"] = tuple(placed)
    whole = digest.theme or any(changed.get(each, getattr(digest, each)) for each in LISTS)
    return replace(digest, **changed) if whole else digest


def memories(house: House) -> dict[object, object]:
    """Return every item not retired with its memory, and so its due day."""
    return {
        view.kept.item.id: (view.kept.item, view.kept.memory)
        for view in list_items(house.desk).items
    }


def kept(house: House, digest: Digest):
    """Keep a digest and return its id."""
    with house.store.writing() as work:
        work.readers.lock(house.reader)
        added = keep_understood(house.desk, work, Understood(digest, ()), None)
        work.commit()
    return added.kept.id


def a_year_of_answers(house: House, data: st.DataObject) -> None:
    """Answer items on some days, each as it comes."""
    for view in list_items(house.desk).items:
        for grade in data.draw(st.lists(st.sampled_from(GRADES), max_size=3)):
            house.now += timedelta(hours=data.draw(st.integers(1, 400)))
            record_answer(house.desk, GivenAnswer(uuid4(), view.kept.item.id, grade))


@SETTINGS
@given(st.data())
def test_any_edits_are_undone_by_bringing_the_version_back(store, data):
    """Any edit script applied and undone leaves every memory and due day as it was."""
    house = House(store)
    digest_id = kept(house, data.draw(digests()))
    a_year_of_answers(house, data)
    before, said = memories(house), open_digest(house.desk, digest_id).kept.digest()
    for _ in range(data.draw(st.integers(1, 6))):
        now = open_digest(house.desk, digest_id).kept.digest()
        mend_digest(house.desk, digest_id, data.draw(edited(now)))
    restore_version(house.desk, digest_id, 1)
    assert open_digest(house.desk, digest_id).kept.digest() == said
    assert memories(house) == before


@SETTINGS
@given(st.data())
def test_any_edits_are_undone_by_typing_them_back(store, data):
    """Whatever was typed over, each wording that comes back is known, and its history with it."""
    house = House(store)
    digest_id = kept(house, data.draw(digests()))
    a_year_of_answers(house, data)
    before, said = memories(house), [open_digest(house.desk, digest_id).kept.digest()]
    for _ in range(data.draw(st.integers(1, 4))):
        said.append(data.draw(edited(said[-1])))
        mend_digest(house.desk, digest_id, said[-1])
    for digest in reversed(said):
        mend_digest(house.desk, digest_id, digest)
    assert open_digest(house.desk, digest_id).kept.digest() == said[0]
    assert memories(house) == before


@SETTINGS
@given(st.data(), st.sampled_from(Care))
def test_care_changed_and_changed_back_leaves_every_due_day(store, data, care):
    """No fact changes with care, so what it moved moves back."""
    house = House(store)
    digest_id = kept(house, data.draw(digests()))
    a_year_of_answers(house, data)
    before = memories(house)
    set_care(house.desk, digest_id, care)
    set_care(house.desk, digest_id, Care.STEADY)
    assert memories(house) == before
