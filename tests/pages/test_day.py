"""A day's sitting on the pages: its minutes, what is left out of it, its end, and coming back."""

import re
from dataclasses import replace

import pytest
from flask import Flask
from flask.testing import FlaskClient

from cards.answers import graded_first
from cards.kinds.base import KindName
from service.use_cases.add_digest import Added
from service.use_cases.answer import show_answer
from service.use_cases.items import ItemView, list_items
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import mend_digest
from service.use_cases.minutes import set_minutes_today
from service.use_cases.ports import Desk
from service.use_cases.sit import todays_sitting
from tests.pages.house import Clock
from tests.pages.sittings import answer, answer_id, asked, compare, form, only


def until_done(client: FlaskClient) -> str:
    """Answer whatever is asked, and return the page that says all is done."""
    while "/compare" in (page := client.get("/").text):
        answer(client, "clear", nothing="yes")
    return page


def test_the_head_says_how_long_it_takes(client: FlaskClient, desk: Desk, added: Added) -> None:
    """The head says about how many minutes are left; nothing is counted but those."""
    seconds = todays_sitting(desk).seconds
    page = client.get("/").text
    assert f"<summary>about {round(seconds / 60)} minutes</summary>" in page
    assert "left in this sitting" not in page


def test_todays_minutes_are_set(client: FlaskClient, desk: Desk, added: Added) -> None:
    """Minutes set for today hold for today, and other days keep theirs."""
    page = client.get("/").text
    assert form(page, "/minutes").action == "/minutes"
    assert 'name="minutes" inputmode="numeric" autocomplete="off" maxlength="3" value="10"' in page
    kept = client.post("/minutes", data={"minutes": "3"})
    assert (kept.status_code, kept.location) == (303, "/")
    assert todays_sitting(desk).minutes == 3


@pytest.mark.parametrize("minutes", ["", "0", "121", "many", "-3", "²"])
def test_minutes_that_cannot_be_are_said_beside_their_field(
    client: FlaskClient, desk: Desk, added: Added, minutes: str
) -> None:
    """Minutes that cannot be kept are refused on the page, with what was typed still there."""
    refused = client.post("/minutes", data={"minutes": minutes})
    assert refused.status_code == 422
    assert "from 1 to 120" in refused.text
    assert '<details class="minutes" open>' in refused.text
    assert todays_sitting(desk).minutes == 10


def test_an_item_is_left_out_and_taken_in_again(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """What is left out is not asked today, can be taken in again, and comes tomorrow."""
    first = asked(client)
    page = client.get("/").text
    left = client.post(form(page, "/left-out").action)
    assert left.status_code == 303
    told = client.get(left.location).text
    assert "Left out for today" in told
    assert asked(client) != first
    again = client.post(form(told, "/taken-in").action)
    assert (again.status_code, again.location) == (303, "/")
    assert asked(client) == first
    assert "Left out for today: " not in client.get(left.location).text


def test_an_item_that_is_not_there_cannot_be_left_out(client: FlaskClient, added: Added) -> None:
    """Leaving out what this reader does not have is refused in words."""
    missing = "/items/00000000-0000-4000-8000-000000000000"
    for way in ("left-out", "taken-in"):
        refused = client.post(f"{missing}/{way}")
        assert refused.status_code == 404
        assert "There is no item" in refused.text


def test_another_device_goes_on_where_one_stopped(
    app: Flask, client: FlaskClient, added: Added
) -> None:
    """After two answers here, another device is asked what would have come next here."""
    other = app.test_client()
    for _ in range(2):
        answer(client, "hazy", nothing="yes")
    assert asked(other) == asked(client)
    answer(other, "hazy", nothing="yes")
    assert asked(client) == asked(other)


def test_the_end_of_a_sitting(client: FlaskClient, desk: Desk, clock: Clock, added: Added) -> None:
    """When nothing is left, Today says what was spent and when something is asked again."""
    page = client.get("/").text
    written = form(page, "/compare")
    clock.pass_seconds(200)
    compared = form(
        client.post(written.action, data={**written.hidden, "nothing": "yes"}).text, "/answers"
    )
    client.post(compared.action, data={**compared.hidden, "grade": "clear"})
    page = until_done(client)
    assert "That is all for today" in page
    assert re.search(r"You spent about (a minute|[a-z]+ minutes)\.", page)
    assert "Something is asked again on" in page
    assert "March\u00a02026" in page


def test_more_is_offered_where_more_waits(client: FlaskClient, desk: Desk, added: Added) -> None:
    """A sitting that ended for want of minutes offers five more, and they are asked."""
    set_minutes_today(desk, 1)
    page = until_done(client)
    more = form(page, "/minutes")
    assert "Five minutes more" in page
    client.post(more.action, data={"more": "yes"})
    assert "/compare" in client.get("/").text


def test_no_more_is_offered_where_nothing_waits(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """Where nothing more can be asked today, nothing more is offered."""
    only(desk, KindName.THEME)
    assert "minutes more" not in until_done(client)


def test_what_was_left_out_is_named_at_the_end(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """The end of a sitting names what was left out, to be taken in again."""
    only(desk, KindName.THEME)
    page = until_done(client)
    assert page.count("/taken-in") == len(todays_sitting(desk).left_out)
    back = client.post(form(page, "/taken-in").action)
    assert "/compare" in client.get(back.location).text


def test_coming_back_after_weeks_there_is_no_pile(
    client: FlaskClient, desk: Desk, clock: Clock, added: Added
) -> None:
    """After weeks away the day of the last answer is said, and when all is level again."""
    set_minutes_today(desk, 60)
    until_done(client)
    clock.next_day(60)
    set_minutes_today(desk, 1)
    page = client.get("/").text
    assert (
        "You were last here on 2\u00a0March\u00a02026. Here are today’s best a minute" not in page
    )
    assert "You were last here on 2\u00a0March\u00a02026." in page
    assert re.search(r"will be level again about|not level within a year", page)


def test_an_answer_may_be_graded_before_its_mark_is_shown(
    client: FlaskClient, desk: Desk, clock: Clock, added: Added
) -> None:
    """One answer in ten is graded without mark, suggestion or ticks; afterwards they are told."""
    item = _graded_first(client, desk, clock)
    page = compare(client, words="gold").text
    assert "Grade this one before the mark is shown" in page
    assert "is suggested" not in page
    assert "<mark>" not in page
    assert 'class="missed"' not in page
    assert 'name="idea' not in page
    assert " checked" not in page
    assert page.count(" required>") == 4
    kept = answer(client, "vivid", words="gold")
    fact = show_answer(desk, answer_id(kept.location)).answer.answer
    assert fact.item_id == item.kept.item.id
    assert fact.graded_first
    told = client.get(kept.location).text
    assert "where the mark would have been <em>" in told
    assert "You graded it before you saw that." in client.get(f"/answers/{fact.id}").text


def test_the_form_has_no_say_in_what_is_graded_first(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """Whether the mark was shown is what the rule says, not what a form claims."""
    item = only(desk, KindName.THEME)
    assert not graded_first(item.kept.item.id, 0)
    compared = form(compare(client, words="gold").text, "/answers")
    data = {**compared.hidden, "words": "gold", "grade": "hazy", "graded_first": "yes"}
    kept = client.post(compared.action, data=data)
    assert not show_answer(desk, answer_id(kept.location)).answer.answer.graded_first


def test_a_digest_mended_in_a_sitting_leads_back_to_it(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """Mending begun from a comparison ends at Today; no other place can be named."""
    address = f"/books/{added.kept.id}/mend"
    page = client.get(f"{address}?then=sitting").text
    mending = form(page, "/mend")
    assert mending.hidden["then"] == "sitting"
    assert '<a href="/">Leave it as it was</a>' in page
    fields = {"title": "Silas Marner", "theme": "Another theme.", **mending.hidden}
    kept = client.post(address, data=fields)
    assert kept.location == f"/?mended={added.kept.id}"
    assert "The digest is kept as you mended it." in client.get(kept.location).text
    for elsewhere in ("https://example.org", "//example.org", "books", ""):
        page = client.get(address, query_string={"then": elsewhere}).text
        assert "example.org" not in page
        assert "then" not in form(page, "/mend").hidden


def test_what_the_digest_no_longer_holds_leads_back(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """An attempt at an item whose source was mended away meanwhile leads to Today, in words."""
    only(desk, KindName.PLACE)
    written = form(client.get("/").text, "/compare")
    compared = form(compare(client, gap="2").text, "/answers")
    digest = open_digest(desk, added.kept.id).kept.digest()
    mend_digest(desk, added.kept.id, replace(digest, quotations=()))
    late = client.post(written.action, data={**written.hidden, "gap": "2"})
    assert late.status_code == 303
    assert "is not asked any more: the digest no longer holds it." in client.get(late.location).text
    graded = client.post(compared.action, data={**compared.hidden, "grade": "clear"})
    assert graded.status_code == 303
    assert "The digest no longer holds it, so it is not asked again." in (
        client.get(graded.location).text
    )


def test_a_digest_edited_meanwhile_is_asked_afresh(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """A gap chosen among points that were edited since says nothing, so it is asked afresh."""
    only(desk, KindName.PLACE)
    written = form(client.get("/").text, "/compare")
    digest = open_digest(desk, added.kept.id).kept.digest()
    mend_digest(desk, added.kept.id, replace(digest, points=digest.points[::-1]))
    late = client.post(written.action, data={**written.hidden, "gap": "2"})
    assert late.status_code == 303
    assert "reads otherwise since you opened it" in client.get(late.location).text


def test_ticks_corrected_are_marked_again_and_kept(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """Ideas ticked by the reader are marked so, and kept with the answer; main ones are said."""
    only(desk, KindName.THEME)
    page = compare(client, words="Dunstan stole the gold").text
    ideas = re.findall(r'name="(idea-\d+)"', page)
    assert len(ideas) >= 3
    assert '<span class="flag">main</span>' in page
    again = form(page, "/answers")
    ticks = dict.fromkeys(ideas, "yes")
    data = {**again.hidden, "words": "Dunstan stole the gold", **ticks}
    marked = client.post(again.action.replace("/answers", "/compare"), data=data).text
    assert "<em>Vivid</em> is suggested" in marked
    assert len(re.findall(r"data-idea checked", marked)) == len(ideas)
    graded = form(marked, "/answers")
    kept = client.post(
        graded.action, data={**graded.hidden, "words": data["words"], **ticks, "grade": "hazy"}
    )
    fact = show_answer(desk, answer_id(kept.location)).answer.answer
    assert fact.ticked == frozenset(range(1, len(ideas) + 1))
    assert (fact.grade, fact.suggested) == ("hazy", "vivid")
    shown = client.get(f"/answers/{fact.id}").text
    assert shown.count("Came back:") == len(ideas)


def _graded_first(client: FlaskClient, desk: Desk, clock: Clock) -> ItemView:
    """Answer one item until its next answer is graded before the mark is shown; return it."""
    items = list_items(desk, limit=200).items
    wanted = next(each for each in items if each.kept.item.kind is KindName.THEME)
    times = next(n for n in range(1000) if graded_first(wanted.kept.item.id, n))
    for _ in range(times):
        only(desk, KindName.THEME)
        answer(client, "blank", words="gold")
        clock.next_day()
    only(desk, KindName.THEME)
    return wanted
