"""Every way of asking on the pages: asked, compared, and shown afterwards."""

import re
from dataclasses import replace
from uuid import UUID

import pytest
from flask.testing import FlaskClient

from cards.kinds.base import KindName
from service.use_cases.add_digest import Added, add_digest
from service.use_cases.answer import show_answer
from service.use_cases.items import ItemView
from service.use_cases.library import list_digests, open_digest
from service.use_cases.links import GivenLink, link
from service.use_cases.mend_digest import mend_digest
from service.use_cases.ports import Desk
from tests.pages.house import WITHOUT_POINTS
from tests.pages.sittings import answer, answer_id, compare, form, only

OTHERS = ("Middlemarch", "Cranford", "Walden", "Emma", "Persuasion")
"""Titles of further books, enough to choose among."""


@pytest.fixture
def shelf(desk: Desk, added: Added) -> Added:
    """Silas Marner among other books."""
    for title in OTHERS:
        text = f"# {title}\n\n## Theme\n\nWhat {title} comes to.\n"
        add_digest(desk, f"{title}.md", text.encode())
    return added


def test_a_place_is_asked_on_the_plot(client: FlaskClient, desk: Desk, added: Added) -> None:
    """A quotation is placed among the points, by gap or by page; both ways are offered."""
    only(desk, KindName.PLACE)
    page = client.get("/").text
    assert page.count('name="gap"') == 4
    assert 'name="page"' in page
    assert "before all of these" in page
    assert "after all of these" in page
    compared = compare(client, gap="2").text
    assert "here it stands" in compared
    assert "you said here" in compared
    assert "<em>Hazy</em> is suggested: one place off." in compared


def test_the_plot_can_be_put_out_of_sight(client: FlaskClient, desk: Desk, added: Added) -> None:
    """With the plot hidden no point is shown, and an exact page is suggested as vivid."""
    only(desk, KindName.PLACE)
    assert '<line class="tick"' in client.get("/").text
    page = client.get("/?plot=hidden").text
    assert "Lantern Yard" not in page
    assert 'name="gap"' not in page
    assert '<line class="tick"' not in page
    assert 'type="range"' in page
    hidden = form(page, "/compare")
    compared = client.post(hidden.action, data={**hidden.hidden, "page": "140"}).text
    assert "<em>Vivid</em> is suggested" in compared
    graded = form(compared, "/answers")
    kept = client.post(graded.action, data={**graded.hidden, "grade": "vivid"})
    shown = show_answer(desk, answer_id(kept.location)).answer.answer
    assert shown.attempt == "page 140, points out of sight"
    assert shown.suggested == "vivid"


def test_with_the_plot_in_sight_a_page_is_clear_at_best(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """The exact page beside the points is suggested as clear: the points help."""
    only(desk, KindName.PLACE)
    assert "<em>Clear</em> is suggested" in compare(client, page="140").text


def test_no_place_given_is_asked_for(client: FlaskClient, desk: Desk, added: Added) -> None:
    """Comparing without a place is refused beside the field; saying one can't tell is not."""
    only(desk, KindName.PLACE)
    refused = compare(client)
    assert refused.status_code == 422
    assert "or say that you can’t tell" in refused.text
    assert 'aria-describedby="cue gap-fault"' in refused.text
    told = compare(client, nothing="yes")
    assert told.status_code == 200
    assert "You could not tell." in told.text


def test_a_page_that_is_no_number_keeps_what_was_typed(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """A page that is no number is refused beside its field, with what was typed still in it."""
    only(desk, KindName.PLACE)
    for typed in ("twelve", "0", "-3", "99999999999", "²"):
        refused = compare(client, page=typed)
        assert refused.status_code == 422
        assert "A page is a whole number from 1 to 50000." in refused.text
        assert f'value="{typed}"' in refused.text


def test_places_without_points(client: FlaskClient, desk: Desk) -> None:
    """Without points a quotation is asked by page, or by chapter, with nothing else in sight."""
    add_digest(desk, "essays.md", WITHOUT_POINTS.encode())
    only(desk, KindName.PLACE, 1, "Essays")
    first = client.get("/").text
    assert 'name="page"' in first
    assert 'name="gap"' not in first
    assert "<em>Vivid</em> is suggested" in compare(client, page="50").text
    only(desk, KindName.PLACE, 2, "Essays")
    assert 'name="chapter"' in client.get("/").text
    assert compare(client).status_code == 422
    assert "<em>Hazy</em> is suggested: one chapter off." in compare(client, chapter="8").text
    kept = answer(client, "hazy", chapter="8")
    assert "<p>Chapter 8.</p>" in client.get(f"/answers/{answer_id(kept.location)}").text


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"gap": "2"}, "After “<span"),
        ({"gap": "0"}, "Before all of them."),
        ({"page": "60"}, "Page 60."),
        ({"page": "60", "plot": "hidden"}, "Page 60, the plot out of sight."),
    ],
)
def test_a_place_is_shown_afterwards_as_it_was_compared(
    client: FlaskClient, desk: Desk, added: Added, given: dict[str, str], said: str
) -> None:
    """The page of an answer to a place shows what was said and the plot as the comparison did."""
    only(desk, KindName.PLACE)
    compared = compare(client, **given).text
    shown = client.get(f"/answers/{answer_id(answer(client, 'hazy', **given).location)}").text
    plot = re.compile(
        r'<p class="said" dir="auto">.*?</p>\s*<ol class="plot told" id="says">.*?</ol>', re.DOTALL
    )
    for page in (compared, shown):
        assert f"<p>{said}" in page
    before, after = plot.search(compared), plot.search(shown)
    assert before is not None
    assert after is not None
    assert before[0] == after[0]


def test_an_answer_outlives_its_plot(client: FlaskClient, desk: Desk, added: Added) -> None:
    """An answer by gap is still shown when its digest has fewer points, or none, by now."""
    only(desk, KindName.PLACE)
    address = f"/answers/{answer_id(answer(client, 'hazy', gap='3').location)}"
    digest = open_digest(desk, added.kept.id).kept.digest()
    placed = tuple(replace(each, after=None) for each in digest.quotations)
    mend_digest(desk, added.kept.id, replace(digest, points=digest.points[:1], quotations=placed))
    assert "What you said on" in client.get(address).text
    mend_digest(desk, added.kept.id, replace(digest, points=(), quotations=placed[:2]))
    assert "What you said on" in client.get(address).text
    mend_digest(desk, added.kept.id, replace(digest, quotations=()))
    assert "The digest no longer holds it." in client.get(address).text


def test_an_order_is_given_by_places(client: FlaskClient, desk: Desk, added: Added) -> None:
    """Points are shown out of order, each with a field for its place; some may be left out."""
    item = only(desk, KindName.ORDER)
    assert client.get("/").text.count("<select") == 3
    right = _right_order(item)
    given = {f"place_{number}": str(place) for place, number in enumerate(right, 1)}
    compared = compare(client, **given).text
    assert re.search(r'<ol class="own" dir="auto"><li>The lot falls', compared)
    assert "all 3 in order" in compared.lower()
    partly = {f"place_{right[0]}": "1", f"place_{right[2]}": "3"}
    kept = answer(client, "hazy", **partly)
    shown = show_answer(desk, answer_id(kept.location)).answer.answer
    assert shown.attempt == f"order {right[0]}, {right[2]}"
    page = client.get(f"/answers/{answer_id(kept.location)}").text
    own = re.search(r'<ol class="own" dir="auto">(.*?)</ol>', page)
    assert own is not None
    assert own[1].count("<li>") == 2


def test_two_points_with_one_place_are_refused(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """A place given twice is said beside the points, with what was chosen still in them."""
    only(desk, KindName.ORDER)
    refused = compare(client, place_1="2", place_3="2")
    assert refused.status_code == 422
    assert "Two points or more share place 2." in refused.text
    assert refused.text.count("<option selected>2</option>") == 2


def test_blanks_are_filled_in_the_quotation(client: FlaskClient, desk: Desk, added: Added) -> None:
    """Words left out are fields of one width within the quotation, each with its name."""
    item = only(desk, KindName.COMPLETE)
    cue = item.cue
    assert cue is not None
    page = client.get("/").text
    blanks = len(cue.pieces) - 1
    for number in range(1, blanks + 1):
        assert f'aria-label="Blank {number} of {blanks}"' in page
    assert len(set(re.findall(r'<input class="(blank[^"]*)"', page))) == 1
    compared = compare(client, blank_1="  nonsense <b>").text
    assert '<span class="blank filled">nonsense &lt;b&gt;</span>' in compared
    assert '<span class="missed">' in compared
    kept = answer(client, "blank", blank_1="nonsense")
    page = client.get(f"/answers/{answer_id(kept.location)}").text
    assert '<span class="blank filled">nonsense</span>' in page


def test_a_source_is_chosen_among_books(client: FlaskClient, desk: Desk, shelf: Added) -> None:
    """Whose words they are is chosen among books; nothing else on the page names the right one."""
    item = only(desk, KindName.SOURCE)
    page = client.get("/").text
    assert page.count("Silas Marner") == 1
    assert page.count('name="book"') >= 3
    assert compare(client).status_code == 422
    other = next(each for each in _choices(item) if each.title != "Silas Marner")
    compared = compare(client, book=str(other.id)).text
    assert f"<em>{other.title}</em>" in compared
    assert "Silas Marner" in compared
    kept = answer(client, "blank", book=str(shelf.kept.id))
    page = client.get(f"/answers/{answer_id(kept.location)}").text
    assert '<p dir="auto"><em>Silas Marner</em>, George Eliot</p>' in page


def test_a_book_that_speaks_to_a_point_is_named(
    client: FlaskClient, desk: Desk, shelf: Added
) -> None:
    """The other book is named in words: no list gives it away."""
    walden = next(e.kept for e in list_digests(desk).entries if e.kept.title == "Walden")
    point = next(part for part in shelf.kept.parts if part.kind == "point" and part.number == 2)
    link(desk, GivenLink(UUID(int=5), shelf.kept.id, point.id, walden.id, "What is kept, keeps."))
    only(desk, KindName.ACROSS)
    page = client.get("/").text
    assert "Fifteen years of weaving" in page
    assert "Walden" not in page
    assert "Walden" in compare(client, words="I think it was Walden").text


@pytest.mark.parametrize("kind", [each for each in KindName if each is not KindName.ACROSS])
def test_what_is_left_out_gives_nothing_away(
    client: FlaskClient, desk: Desk, shelf: Added, kind: KindName
) -> None:
    """Leaving an item out is told without its answer, whatever kind it is."""
    item = only(desk, kind)
    page = client.post(f"/items/{item.kept.item.id}/left-out", follow_redirects=True).text
    told = re.search(r'<div class="last">(.*?)</div>', page, re.DOTALL)
    assert told is not None
    assert "Left out for today" in told[1]
    assert ("Silas Marner" in told[1]) is (kind is not KindName.SOURCE)


def _right_order(item: ItemView) -> list[int]:
    cue = item.cue
    assert cue is not None
    texts = ("The lot", "Fifteen", "Dunstan")
    return [
        next(each.number for each in cue.landmarks if each.text.startswith(text)) for text in texts
    ]


def _choices(item: ItemView):
    cue = item.cue
    assert cue is not None
    return cue.choices
