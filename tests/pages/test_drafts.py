"""Drafts: begun, saved as they are typed, found again, kept, put away, never lost to a conflict."""

import re
from uuid import uuid4

import pytest
from flask.testing import FlaskClient

from service.pages import drafts
from service.use_cases.add_digest import Added
from service.use_cases.drafts import begin_draft, change_draft, drop_draft, list_drafts, open_draft
from service.use_cases.library import list_digests, open_digest
from service.use_cases.ports import Desk
from tests.pages.draft_pages import draft_form, hand_in, press, pressed
from tests.pages.house import DIGEST, Clock

WALDEN = {
    "title": "Walden",
    "author": "Henry David Thoreau",
    "edition": "Ticknor and Fields, 1854",
    "finished_on": "2026-02-27",
    "theme": "A man goes to the woods to find out what is enough, and comes back.",
    "points-1-text": "He builds a house for twenty-eight dollars.",
    "points-1-locator": "p. 40",
    "quotations-1-text": "Simplify, simplify.",
    "quotations-1-locator": "p. 91",
    "quotations-1-after": "1",
}


def begun(client: FlaskClient, **changed: str):
    """Begin a draft of Walden on the blank form; its form."""
    form = draft_form(client.get("/write").text)
    form.fields.update(WALDEN)
    return pressed(client, form, "save", **changed)


def test_nothing_is_kept_before_it_is_typed(client: FlaskClient, desk: Desk) -> None:
    """Opening the blank form begins nothing."""
    assert client.get("/write").status_code == 200
    assert list_drafts(desk).drafts == ()


def test_a_draft_is_begun_by_its_first_saving(client: FlaskClient, desk: Desk) -> None:
    """The blank form's first saving begins the draft under the id the page was given."""
    blank = draft_form(client.get("/write").text)
    form = begun(client)
    (draft,) = list_drafts(desk).drafts
    assert form.action == f"/drafts/{draft.id}"
    assert blank.action != form.action
    assert form.fields.items() >= WALDEN.items()
    assert form.fields["revision"] == "1"
    assert list_digests(desk).entries == ()


def test_the_first_saving_sent_twice_begins_one_draft(client: FlaskClient, desk: Desk) -> None:
    """The same page sent again, as a browser does that lost the answer, begins no second draft."""
    blank = draft_form(client.get("/write").text)
    for _ in range(2):
        answered = press(client, blank, "live", title="Walden")
        assert answered.status_code == 200
    assert len(list_drafts(desk).drafts) == 1


def test_saving_as_one_types_answers_with_the_page(client: FlaskClient, desk: Desk) -> None:
    """What the script sends is kept and answered at once, with the time of the reader's clock."""
    form = begun(client)
    answered = press(client, form, "live", theme="He stays.")
    assert answered.status_code == 200
    assert "Saved at 20:00" in draft_form(answered.text).shown
    (draft,) = list_drafts(desk).drafts
    assert (draft.typed["theme"], draft.revision) == ("He stays.", 2)
    assert (
        "Saved at 20:00"
        in draft_form(press(client, form, "live", theme="He stays.", revision="2").text).shown
    )
    assert list_drafts(desk).drafts[0].revision == 2


def test_a_draft_saved_on_another_day_says_so(client: FlaskClient, clock: Clock) -> None:
    """Coming back the next day, the page says on which day it was saved."""
    form = begun(client)
    clock.next_day()
    assert "Saved at 20:00 on 2 March 2026" in draft_form(client.get(form.action).text).shown


def test_a_draft_changed_elsewhere_loses_neither(client: FlaskClient, desk: Desk) -> None:
    """On a conflict nothing is kept unasked; both are offered, and either can go on."""
    form = begun(client)
    pressed(client, form, "save", theme="Changed in the first window.")
    for order in ("live", "save", "keep", "up points-1"):
        answered = press(client, form, order, theme="Typed in the second window.")
        assert answered.status_code == 409
        assert "changed elsewhere" in answered.text
        again = draft_form(answered.text)
        assert again.fields["theme"] == "Typed in the second window."
        assert f'href="{form.action}"' in answered.text
    assert list_drafts(desk).drafts[0].typed["theme"] == "Changed in the first window."
    over = re.search(r'name="over" value="(\d+)"', answered.text)
    assert over is not None
    data = again.fields | {"over": over[1]}
    assert client.post(form.action, data=data).status_code == 303
    assert list_drafts(desk).drafts[0].typed["theme"] == "Typed in the second window."


def test_a_page_overtaking_its_own_saving_conflicts_with_nothing(
    client: FlaskClient, desk: Desk
) -> None:
    """A closing page that does not know yet that its last saving arrived is not refused."""
    form = begun(client)
    answered = press(client, form, "live", theme="The last words.", revision="2")
    assert answered.status_code == 200
    assert list_drafts(desk).drafts[0].typed["theme"] == "The last words."


def test_a_draft_gone_meanwhile_can_be_begun_anew(client: FlaskClient, desk: Desk) -> None:
    """A draft put away in another window gives what is typed back, and can be kept anew."""
    form = begun(client)
    drop_draft(desk, list_drafts(desk).drafts[0].id)
    answered = press(client, form, "live", theme="Still here.")
    assert answered.status_code == 409
    assert "kept or put away elsewhere" in answered.text
    assert list_drafts(desk).drafts == ()
    again = draft_form(answered.text)
    assert client.post(form.action, data=again.fields | {"over": "0"}).status_code == 303
    assert list_drafts(desk).drafts[0].typed["theme"] == "Still here."


def test_keeping_moves_a_draft_into_the_library(client: FlaskClient, desk: Desk) -> None:
    """A draft that is kept becomes a digest with its every part, and is a draft no more."""
    answered = press(client, begun(client), "keep")
    assert answered.status_code == 303
    assert "The digest is in your library." in client.get(answered.location).text
    (entry,) = list_digests(desk).entries
    digest = entry.kept.digest()
    assert (digest.title, digest.edition) == ("Walden", "Ticknor and Fields, 1854")
    assert (digest.quotations[0].after, digest.quotations[0].page) == (1, 91)
    assert list_drafts(desk).drafts == ()
    assert "Ticknor and Fields, 1854 · finished on" in client.get(f"/books/{entry.kept.id}").text


def test_a_blank_form_can_be_kept_at_once(client: FlaskClient, desk: Desk) -> None:
    """Who types a whole digest without a script needs to press one button only."""
    form = draft_form(client.get("/write").text)
    form.fields.update(WALDEN)
    assert press(client, form, "keep").status_code == 303
    assert len(list_digests(desk).entries) == 1
    assert list_drafts(desk).drafts == ()


def test_what_cannot_be_kept_stays_a_draft(client: FlaskClient, desk: Desk) -> None:
    """Faults stand beside their fields, and what was typed is saved as a draft all the same."""
    answered = press(client, begun(client), "keep", title="", pages="many")
    assert answered.status_code == 422
    assert 'id="title-fault"' in answered.text
    assert "The number of pages is a whole number" in answered.text
    assert list_drafts(desk).drafts[0].typed["pages"] == "many"
    assert list_digests(desk).entries == ()


def test_a_draft_many_times_too_long_is_refused(client: FlaskClient, desk: Desk) -> None:
    """What no digest could hold is refused in a sentence, and what was kept stays."""
    form = begun(client)
    answered = press(client, form, "live", theme="x" * 2_000_001)
    assert answered.status_code == 422
    assert "many times longer than a digest" in answered.text
    assert list_drafts(desk).drafts[0].typed["theme"] == WALDEN["theme"]


def test_the_drafts_are_listed_with_what_they_lack(client: FlaskClient, clock: Clock) -> None:
    """Each draft is listed, the last changed first, with what it lacks and what can be done."""
    begun(client)
    clock.next_day()
    bare = draft_form(client.get("/write").text)
    pressed(client, bare, "save", **{"quotations-1-text": "Time is but the stream."})
    page = client.get("/drafts").text
    assert page.index("Without a title") < page.index(">Walden<")
    assert "a title, a theme, points, commitments and the page of one quotation" in page
    assert page.count("/keep") == 1
    assert page.count("/away") == 2


def test_a_draft_is_kept_from_the_list(client: FlaskClient, desk: Desk) -> None:
    """A draft that can be kept is kept from the list, and the list says so."""
    form = begun(client)
    answered = client.post(f"{form.action}/keep")
    assert answered.status_code == 303
    assert "Open it in the library" in client.get(answered.location).text
    assert len(list_digests(desk).entries) == 1
    assert client.post(f"{form.action}/keep").location == "/drafts"


def test_a_draft_that_cannot_be_kept_from_the_list_is_opened(
    client: FlaskClient, desk: Desk
) -> None:
    """One with faults leads to its page instead, where they are told."""
    draft = begin_draft(desk, {"theme": "Enough.", "pages": "many"})
    answered = client.post(f"/drafts/{draft.id}/keep")
    assert answered.location == f"/drafts/{draft.id}?check=yes"
    page = client.get(answered.location)
    assert "A digest needs the title of its book." in page.text
    assert len(list_drafts(desk).drafts) == 1


def test_drafts_that_need_no_second_look_are_kept_at_once(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """Whole ones are kept in one step; what lacks something or is of a known book stays."""
    whole = WALDEN | {"commitments-1-text": "I will walk to the pond every Sunday."}
    for title in ("Walden", "Cape Cod"):
        begin_draft(desk, whole | {"title": title})
    assert "/drafts/keep" in client.get("/drafts").text
    begin_draft(desk, {"title": "The Maine Woods", "theme": "Mountains."})
    begin_draft(desk, whole | {"title": "Silas Marner", "author": "George Eliot"})
    answered = client.post("/drafts/keep")
    assert answered.status_code == 303
    page = client.get(answered.location).text
    assert "Two drafts were kept in the library." in page
    left = {draft.typed["title"] for draft in list_drafts(desk).drafts}
    assert left == {"The Maine Woods", "Silas Marner"}
    assert len(list_digests(desk).entries) == 3
    assert open_digest(desk, added.kept.id).kept.digest() == added.kept.digest()
    assert "No draft was kept." in client.get(client.post("/drafts/keep").location).text
    assert client.get("/drafts?whole=many").status_code == 200


def test_a_draft_not_understood_to_the_end_is_looked_at(client: FlaskClient, desk: Desk) -> None:
    """A digest of which a line was left out is not kept with the others."""
    text = DIGEST.replace("(Finale)", "(p. 180, after point 3)") + "\n## Lamps\n\nOil and wicks.\n"
    hand_in(client, ("silas.md", text.encode()))
    (draft,) = list_drafts(desk).drafts
    assert draft.left
    client.post("/drafts/keep")
    assert len(list_drafts(desk).drafts) == 1


def test_a_draft_is_put_away(client: FlaskClient, desk: Desk) -> None:
    """A draft put away is gone, and the list says so; its page is not there any more."""
    form = begun(client)
    answered = client.post(f"{form.action}/away")
    assert "A draft was put away." in client.get(answered.location).text
    assert list_drafts(desk).drafts == ()
    assert client.get(form.action).status_code == 404


def test_the_list_goes_on_by_pages(
    client: FlaskClient, desk: Desk, monkeypatch: pytest.MonkeyPatch, clock: Clock
) -> None:
    """Many drafts are listed page by page, each once; a cursor that is none is not found."""
    monkeypatch.setattr(drafts, "SHELF", 2)
    for number in range(5):
        clock.next_day()
        begin_draft(desk, {"title": f"Volume {number}"})
    seen: list[str] = []
    address: str | None = "/drafts"
    while address:
        page = client.get(address).text
        seen += re.findall(r">(Volume \d)<", page)
        more = re.search(r'rel="next" href="([^"]+)"', page)
        address = more[1] if more else None
    assert seen == [f"Volume {number}" for number in (4, 3, 2, 1, 0)]
    assert client.get("/drafts?after=x").status_code == 404


def test_the_book_in_the_library_is_told_of(client: FlaskClient, desk: Desk, added: Added) -> None:
    """A draft of a book already kept says so, and corrects it unless the reader says otherwise."""
    form = draft_form(client.get("/write").text)
    form = pressed(client, form, "save", title="Silas Marner", author="George Eliot", theme="Gold.")
    assert "This book is in your library already" in form.shown
    assert form.fields["as"] == "correction"
    assert press(client, form, "keep").status_code == 303
    (entry,) = list_digests(desk).entries
    assert (entry.kept.id, entry.kept.digest().theme) == (added.kept.id, "Gold.")


def test_what_is_written_corrects_nothing_unasked(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """Kept at once without a script, a known book is asked about before anything is kept."""
    blank = draft_form(client.get("/write").text)
    again = {"title": "Silas Marner", "author": "George Eliot", "theme": "Gold."}
    asked = press(client, blank, "keep", **again)
    assert asked.status_code == 422
    assert "This book is in your library already. Say at the foot" in asked.text
    assert open_digest(desk, added.kept.id).kept.digest() == added.kept.digest()
    form = draft_form(asked.text)
    listed = client.post(f"{form.action}/keep")
    assert listed.location == f"{form.action}#known"
    assert press(client, form, "keep", **{"as": "reading"}).status_code == 303
    assert len(list_digests(desk).entries) == 2
    assert open_digest(desk, added.kept.id).kept.digest() == added.kept.digest()


def test_a_book_finished_again_is_another_reading(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """One finished a season later is offered as another reading, and kept beside the first."""
    form = draft_form(client.get("/write").text)
    again = {"title": "Silas Marner", "author": "George Eliot", "theme": "Gold."}
    form = pressed(client, form, "save", **again, finished_on="2026-08-18")
    assert "finished_on" in form.fields
    assert form.fields["as"] == "reading"
    assert press(client, form, "keep").status_code == 303
    assert len(list_digests(desk).entries) == 2
    assert open_digest(desk, added.kept.id).kept.digest() == added.kept.digest()


def test_hostile_drafts_are_shown_as_words(client: FlaskClient, desk: Desk) -> None:
    """Whatever is typed is escaped wherever it is shown."""
    hostile = "<script>alert('x')</script>"
    form = draft_form(client.get("/write").text)
    sent = dict.fromkeys(
        ("title", "author", "theme", "points-1-text", "quotations-1-text"), hostile
    )
    form = pressed(client, form, "save", **sent)
    for address in (form.action, "/drafts"):
        page = client.get(address).text
        assert "<script>alert" not in page
        assert "&lt;script&gt;alert" in page


def test_a_page_that_is_no_draft(client: FlaskClient) -> None:
    """An unknown draft is not there, in a sentence."""
    refused = client.get(f"/drafts/{uuid4()}")
    assert refused.status_code == 404
    assert "There is no draft at this address." in refused.text


def test_a_draft_changed_by_another_door_is_opened_as_it_is(
    client: FlaskClient, desk: Desk
) -> None:
    """The page shows what is kept now, and goes on from its revision."""
    form = begun(client)
    (draft,) = list_drafts(desk).drafts
    change_draft(desk, draft.id, {**draft.typed, "theme": "From elsewhere."}, draft.revision)
    form = draft_form(client.get(form.action).text)
    assert form.fields["theme"] == "From elsewhere."
    assert form.fields["revision"] == str(open_draft(desk, draft.id).revision)
