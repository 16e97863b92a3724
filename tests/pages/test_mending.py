"""Mending a digest by its form: every field, every part, nothing typed ever lost."""

import re
from datetime import date
from html import unescape

from flask.testing import FlaskClient

from service.use_cases.add_digest import Added
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import mend_digest
from service.use_cases.ports import Desk


def fields_of(page: str) -> dict[str, str]:
    """Return every field of the mending form as a browser would send it."""
    found = {
        name: unescape(value)
        for name, value in re.findall(r'<input[^>]* name="([^"]+)"[^>]* value="([^"]*)"', page)
    }
    for name, words in re.findall(
        r'<textarea[^>]* name="([^"]+)"[^>]*>\n?(.*?)</textarea>', page, re.DOTALL
    ):
        found[name] = unescape(words)
    for name, options in re.findall(
        r'<select[^>]* name="([^"]+)"[^>]*>(.*?)</select>', page, re.DOTALL
    ):
        chosen = re.search(r'value="([^"]*)" selected', options)
        found[name] = chosen[1] if chosen else ""
    return found


def opened(client: FlaskClient, added: Added) -> tuple[str, dict[str, str]]:
    """Open the form of a digest: its address and its fields."""
    address = f"/books/{added.kept.id}/mend"
    return address, fields_of(client.get(address).text)


def untouched(desk: Desk, added: Added) -> bool:
    """Tell whether a digest is kept as it was added."""
    kept = open_digest(desk, added.kept.id).kept
    return (kept.revision, kept.digest()) == (added.kept.revision, added.kept.digest())


def test_the_form_unchanged_changes_nothing(client: FlaskClient, desk: Desk, added: Added) -> None:
    """Sending the form as it was opened keeps the digest to the letter."""
    address, fields = opened(client, added)
    answered = client.post(address, data=fields)
    assert answered.status_code == 303
    assert untouched(desk, added)


def test_every_fact_can_be_mended(client: FlaskClient, desk: Desk, added: Added) -> None:
    """Title, author, edition, ISBN, pages, day, theme and judgement are kept as typed."""
    address, fields = opened(client, added)
    fields |= {
        "title": "Silas Marner: The Weaver of Raveloe",
        "author": "Mary Ann Evans",
        "edition": "William Blackwood and Sons, 1861",
        "isbn": "978-0-306-40615-7",
        "pages": "224",
        "finished_on": "2026-02-01",
        "theme": "A weaver loses gold\r\nand finds a child.",
        "judgement": "Agreed.",
    }
    assert client.post(address, data=fields).status_code == 303
    digest = open_digest(desk, added.kept.id).kept.digest()
    assert digest.title == "Silas Marner: The Weaver of Raveloe"
    assert digest.author == "Mary Ann Evans"
    assert digest.edition == "William Blackwood and Sons, 1861"
    assert digest.isbn == "9780306406157"
    assert digest.pages == 224
    assert digest.finished_on == date(2026, 2, 1)
    assert digest.theme == "A weaver loses gold\nand finds a child."
    assert digest.judgement == "Agreed."


def test_facts_can_be_emptied(client: FlaskClient, desk: Desk, added: Added) -> None:
    """Whatever a digest need not have can be taken away."""
    address, fields = opened(client, added)
    gone = dict.fromkeys(
        ("author", "edition", "isbn", "pages", "finished_on", "theme", "judgement"), ""
    )
    assert client.post(address, data=fields | gone).status_code == 303
    digest = open_digest(desk, added.kept.id).kept.digest()
    assert (digest.author, digest.pages, digest.finished_on, digest.theme) == (None,) * 4


def test_a_quotation_follows_its_point(client: FlaskClient, desk: Desk, added: Added) -> None:
    """Points that change places take along what stands after them."""
    address, fields = opened(client, added)
    fields |= {"points-3-number": "0"}
    assert client.post(address, data=fields).status_code == 303
    digest = open_digest(desk, added.kept.id).kept.digest()
    assert digest.points[0].text.startswith("Dunstan takes the gold")
    assert [each.after for each in digest.quotations] == [1, 1, None]


def test_parts_are_added_and_left_out(client: FlaskClient, desk: Desk, added: Added) -> None:
    """A spare row makes a new part, an emptied one leaves the digest; the rest keep their items."""
    address, fields = opened(client, added)
    fields |= {
        "points-4-text": "Godfrey is refused.",
        "points-4-locator": "p. 180",
        "commitments-1-text": "",
        "quotations-3-after": "4",
    }
    assert client.post(address, data=fields).status_code == 303
    kept = open_digest(desk, added.kept.id).kept
    digest = kept.digest()
    assert digest.points[3].page == 180
    assert [each.text for each in digest.commitments] == [
        "Put 20 euros a month into the savings account."
    ]
    assert digest.quotations[2].after == 4
    before = {part.text: part.id for part in added.kept.parts}
    after = {part.text: part.id for part in kept.parts}
    assert after.items() >= before.items()


def test_a_quotation_whose_point_goes_has_no_known_place(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """When its point is left out, nothing is invented about where a quotation stands."""
    address, fields = opened(client, added)
    assert client.post(address, data=fields | {"points-3-text": ""}).status_code == 303
    digest = open_digest(desk, added.kept.id).kept.digest()
    assert [each.after for each in digest.quotations] == [None, None, None]


def test_more_rows_keep_what_was_typed(client: FlaskClient, desk: Desk, added: Added) -> None:
    """Asking for one more row gives it, keeps every field, and stores nothing."""
    address, fields = opened(client, added)
    fields |= {"title": "Typed <but> not kept", "points-5-text": "A fifth"}
    for name, rows in (("points", 5), ("commitments", 4), ("quotations", 5)):
        page = client.post(address, data=fields | {"more": name})
        assert page.status_code == 200
        again = fields_of(page.text)
        assert f"{name}-{rows + 1}-text" in again
        assert f"{name}-{rows + 2}-text" not in again
        assert again.items() >= fields.items()
    assert untouched(desk, added)


def test_faults_stand_beside_their_fields(client: FlaskClient, desk: Desk, added: Added) -> None:
    """Each wrong field is named with a sentence, tied to it, and all that was typed is kept."""
    address, fields = opened(client, added)
    wrong = {
        "title": "  ",
        "isbn": "978-0-306-40615-8",
        "pages": "many",
        "finished_on": "2026-02-30",
        "points-1-number": "first",
    }
    page = client.post(address, data=fields | wrong)
    assert page.status_code == 422
    for name, sentence in {
        "title": "A digest needs the title of its book.",
        "isbn": "its digits do not agree with its check digit",
        "pages": "The number of pages is a whole number from 1 to 50000.",
        "finished_on": "This day does not exist.",
        "points-1-number": "A place is a whole number from 0 to 9999.",
    }.items():
        assert f'aria-describedby="{name}-fault" aria-invalid="true"' in page.text
        assert f'<p class="fault" id="{name}-fault">' in page.text
        assert sentence in page.text
    assert fields_of(page.text).items() >= (fields | wrong).items()
    assert untouched(desk, added)


def test_a_part_too_long_is_named(client: FlaskClient, added: Added) -> None:
    """A rule of digests that a part breaks is told beside that part's own row."""
    address, fields = opened(client, added)
    page = client.post(address, data=fields | {"points-2-text": "", "points-3-text": "x" * 20_001})
    assert page.status_code == 422
    assert 'id="points-3-text-fault"' in page.text
    assert "20001 characters long" in page.text


def test_a_digest_needs_something(client: FlaskClient, desk: Desk, added: Added) -> None:
    """A digest emptied of every part is refused."""
    address, fields = opened(client, added)
    emptied = {name: "" for name in fields if name.endswith("-text") or name == "theme"}
    page = client.post(address, data=fields | emptied)
    assert page.status_code == 422
    assert "A digest needs at least a theme" in page.text
    assert untouched(desk, added)


def test_the_largest_digest_can_be_sent(client: FlaskClient, added: Added) -> None:
    """The longest digest there may be, in letters of four bytes, is not too large a form."""
    address, fields = opened(client, added)
    long = {f"points-{number}-text": "𝔞" * 19_000 for number in range(1, 6)}
    answered = client.post(address, data=fields | long | {"theme": "𝔟" * 19_000})
    assert answered.status_code == 303


def test_a_digest_changed_meanwhile_keeps_what_was_typed(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """On a digest changed elsewhere the form comes back with its input, and then can be kept."""
    address, fields = opened(client, added)
    changed = added.kept.digest()
    object.__setattr__(changed, "title", "Changed elsewhere")
    mend_digest(desk, added.kept.id, changed)
    page = client.post(address, data=fields | {"theme": "My own theme"})
    assert page.status_code == 409
    assert "What you typed is still below" in page.text
    again = fields_of(page.text)
    assert again["theme"] == "My own theme"
    assert open_digest(desk, added.kept.id).kept.title == "Changed elsewhere"
    assert client.post(address, data=again).status_code == 303
    assert open_digest(desk, added.kept.id).kept.title == "Silas Marner"


def test_a_form_without_its_revision_is_a_conflict(client: FlaskClient, added: Added) -> None:
    """A form that does not say what it was opened on can overwrite nothing unseen."""
    address, fields = opened(client, added)
    for revision in ("", "x"):
        sent = fields | {"revision": revision, "title": "Other"}
        assert client.post(address, data=sent).status_code == 409


def test_a_commitment_carries_its_caution_while_it_is_mended(
    client: FlaskClient, added: Added
) -> None:
    """The form shows the caution beside the commitment that needs one, and beside no other."""
    assert client.get(f"/books/{added.kept.id}/mend").text.count('<p class="caution') == 1


def test_the_mended_form_is_measured_and_advised_on(client: FlaskClient, added: Added) -> None:
    """The form says how its two pages fill and what would mend a part; measuring keeps nothing."""
    address, sent = opened(client, added)
    assert "<strong>Page one</strong>" in client.get(address).text
    sent |= {"quotations-1-text": "Nothing is so good. " * 400, "quotations-1-locator": ""}
    again = client.post(address, data=sent | {"more": "measure"})
    assert again.status_code == 200
    assert "too many" in again.text
    assert "This quotation has no locator" in again.text
    assert "Nothing is so good. Nothing is so good." in again.text
    assert "Nothing is so good. Nothing" not in client.get(address).text
