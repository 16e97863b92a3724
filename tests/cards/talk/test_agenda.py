"""The sheet of a talk: its minutes, what stands on it, and what it must not show."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cards.digest import Commitment, Digest, Point, Quotation
from cards.kinds.words import held, substance
from cards.parts import KeptDigest
from cards.talk import Agenda, Blank, Length, Section, Stage, agenda_for
from cards.talk.sections import MOST_PLACED, MOST_POINTS, MOST_REPORTED
from tests.cards.digests import THEME, WHOLE, kept

JUDGED = replace(WHOLE, judgement="I agree, though the elopement is mended too easily")


def laid(digest: Digest = JUDGED, length: Length = Length.READ_IT, seed: str = "1") -> Agenda:
    """Return the agenda of a digest whose commitments nothing is known of."""
    return agenda_for(kept(digest), {}, length, seed)


def section(agenda: Agenda, stage: Stage) -> Section:
    """Return one section of an agenda."""
    return next(each for each in agenda.sections if each.stage is stage)


def test_eighty_minutes_are_parted_as_proposed() -> None:
    """A whole digest gives 10, 10, 20, 15, 15 and 10 minutes (reference, part 5: proposal)."""
    assert [(each.stage, each.minutes) for each in laid().sections] == [
        (Stage.REPORT, 10),
        (Stage.THEME, 10),
        (Stage.ORDER, 20),
        (Stage.PLACING, 15),
        (Stage.JUDGEMENT, 15),
        (Stage.RESOLVING, 10),
    ]


def test_a_quarter_of_an_hour_is_parted_for_someone_who_did_not_read_it() -> None:
    """Theme, points, a quotation, what it asked, a question back: 15 minutes together."""
    assert [(each.stage, each.minutes) for each in laid(length=Length.DID_NOT).sections] == [
        (Stage.THEME, 3),
        (Stage.POINTS, 4),
        (Stage.READING, 2),
        (Stage.REPORT, 4),
        (Stage.BACK, 2),
    ]


@pytest.mark.parametrize("length", list(Length))
@pytest.mark.parametrize("bits", range(1, 16))
def test_what_a_digest_lacks_gets_no_section_and_leaves_its_minutes(
    bits: int, length: Length
) -> None:
    """Whatever parts a digest lacks, no section is empty and the minutes add up."""
    digest = Digest(
        "A Book",
        theme=THEME if bits & 1 else None,
        points=WHOLE.points if bits & 2 else (),
        commitments=WHOLE.commitments if bits & 4 else (),
        quotations=tuple(replace(each, after=None) for each in WHOLE.quotations)
        if bits & 8
        else (),
    )
    agenda = laid(digest, length)
    assert sum(each.minutes for each in agenda.sections) == length
    for each in agenda.sections:
        assert each.minutes >= 1
        assert each.lines or each.answers or each.blank is Blank.ROOM


words = st.lists(
    st.sampled_from("pride fall love war sea ship honest money widow letter clock bread".split()),
    min_size=1,
    max_size=8,
).map(" ".join)


@settings(max_examples=60)
@given(
    theme=words,
    points=st.lists(words, max_size=12),
    judgement=st.none() | words,
    quotations=st.lists(words, max_size=7),
    commitments=st.lists(words, max_size=8),
    length=st.sampled_from(Length),
    seed=st.text(max_size=3),
)
def test_the_talking_page_never_shows_the_theme(
    theme: str,
    points: list[str],
    judgement: str | None,
    quotations: list[str],
    commitments: list[str],
    length: Length,
    seed: str,
) -> None:
    """No line to be read holds half of the theme's content words; the theme is overleaf."""
    agenda = laid(
        Digest(
            "A Book",
            theme=theme,
            judgement=judgement,
            points=tuple(map(Point, points)),
            commitments=tuple(map(Commitment, commitments)),
            quotations=tuple(Quotation(each, "p. 3") for each in quotations),
        ),
        length,
        seed,
    )
    wanted = substance(theme)
    for each in agenda.sections:
        for line in each.lines:
            shown = len(held(wanted, line.words))
            assert shown < 2 or 2 * shown < len(wanted)
            assert shown < len(wanted)
    assert section(agenda, Stage.THEME).answers[0].words == theme


def test_points_stand_out_of_order_and_the_right_one_is_overleaf() -> None:
    """The letters overleaf lead back, one after the other, to the points of the digest."""
    order = section(laid(), Stage.ORDER)
    on_sheet = {line.label: line.words for line in order.lines}
    right = [line.label.split()[1] for line in order.answers]
    assert [on_sheet[letter] for letter in right] == [point.text for point in WHOLE.points]
    assert right != sorted(right)
    assert order.blank is Blank.NUMBER


def test_quotations_stand_without_their_places_and_those_are_overleaf() -> None:
    """No place stands beside a quotation that is to be placed; overleaf each has its own."""
    agenda = laid()
    placing, order = section(agenda, Stage.PLACING), section(agenda, Stage.ORDER)
    assert not any(line.beside for line in placing.lines)
    said = {line.words: line.beside for line in placing.answers}
    fourth = order.answers[3].label.split()[1]
    assert said["Till this moment I never knew myself"] == f"after {fourth}, p. 208"
    assert said["It is a truth universally acknowledged"] == "before all points, p. 1"


def test_a_place_is_never_invented() -> None:
    """A quotation of which nothing says where it stands is not asked to be placed."""
    digest = replace(WHOLE, quotations=(Quotation("Nobody knows where"),))
    assert Stage.PLACING not in {each.stage for each in laid(digest).sections}


def test_the_seed_alone_draws() -> None:
    """The same seed lays the same talk; another one lays another."""
    many = replace(
        JUDGED,
        points=tuple(Point(f"Step number {number} of the tale") for number in range(40)),
        quotations=tuple(Quotation(f"Line {n} worth keeping", f"p. {n}") for n in range(1, 30)),
    )
    assert laid(many, seed="1") == laid(many, seed="1")
    assert laid(many, seed="1") != laid(many, seed="2")


def test_what_has_no_room_is_counted() -> None:
    """Of many parts as many stand on the sheet as the minutes allow; the rest is counted."""
    many = Digest(
        "A Book",
        points=tuple(Point(f"Step number {number}") for number in range(40)),
        commitments=tuple(Commitment(f"Do deed {number}") for number in range(30)),
        quotations=tuple(Quotation(f"Line {number}", f"p. {number}") for number in range(1, 21)),
    )
    agenda = laid(many)
    for stage, most, all_of_them in (
        (Stage.REPORT, MOST_REPORTED, 30),
        (Stage.ORDER, MOST_POINTS, 40),
        (Stage.PLACING, MOST_PLACED, 20),
    ):
        part = section(agenda, stage)
        assert (len(part.lines), part.more) == (most, all_of_them - most)


def test_two_points_never_stand_in_their_order() -> None:
    """Whatever the seed, two points stand on the sheet the other way round."""
    two: KeptDigest = kept(Digest("A Book", points=(Point("They meet"), Point("They part"))))
    for seed in "abcdef":
        order = section(agenda_for(two, {}, Length.READ_IT, seed), Stage.ORDER)
        assert [line.words for line in order.lines] == ["They part", "They meet"]
