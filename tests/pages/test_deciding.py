"""One commitment's page: what is decided about it, and its record."""

from uuid import UUID, uuid4

import pytest
from flask.testing import FlaskClient

from cards.commitments import Pace
from service.use_cases.add_digest import Added, add_digest
from service.use_cases.commitments import all_commitments, open_commitment
from service.use_cases.library import open_digest
from service.use_cases.ports import Desk
from tests.pages.house import DIGEST, Clock
from tests.pages.sittings import form, these


@pytest.fixture
def promised(desk: Desk, added: Added) -> UUID:
    """The first commitment of the digest: five evenings a week."""
    return next(each.id for those in all_commitments(desk).by_pace.values() for each in those)


def decide(client: FlaskClient, commitment_id: UUID, **sent: str) -> str:
    """Decide about a commitment, and return the page that leads to."""
    answered = client.post(f"/commitments/{commitment_id}/decisions", data=sent)
    assert answered.status_code == 303, answered.text
    return client.get(answered.location).text


def pace(desk: Desk, commitment_id: UUID) -> Pace:
    """Return the pace of a commitment now."""
    stand = open_commitment(desk, commitment_id).held.stand
    assert stand is not None
    return stand.pace


def test_a_commitment_is_paused_and_resumed(
    client: FlaskClient, desk: Desk, clock: Clock, promised: UUID
) -> None:
    """Paused it asks nothing and stalls never; resumed it goes on; both stand in the record."""
    page = decide(client, promised, act="pause", words="Travelling.")
    assert "That is kept." in page
    assert "Travelling." in page
    clock.next_day(40)
    assert pace(desk, promised) is Pace.PAUSED
    page = decide(client, promised, act="resume")
    assert pace(desk, promised) is Pace.ON_COURSE
    record = page.partition("Decided</h3>")[2]
    assert record.index("resumed") < record.index("paused")


def test_a_new_wording_is_written_into_the_digest(
    client: FlaskClient, desk: Desk, added: Added, promised: UUID
) -> None:
    """Reworded, the digest has the new words, the page the former; taken back, the old again."""
    words = "When the tea is poured, I will ask Hanne about her day, twice a week."
    page = decide(client, promised, act="reword", words=words)
    assert words in page
    assert "five evenings a week" in page
    texts = [each.text for each in open_digest(desk, added.kept.id).kept.digest().commitments]
    assert words in texts
    back = form(page, "/taken-back")
    page = client.post(back.action, follow_redirects=True).text
    texts = [each.text for each in open_digest(desk, added.kept.id).kept.digest().commitments]
    assert words not in texts
    assert "taken back on" in page


def test_a_measure_is_corrected_in_words(client: FlaskClient, desk: Desk, promised: UUID) -> None:
    """What is typed is read as the wording check reads it, and said back as it was read."""
    page = decide(client, promised, act="measure", measure="twice a week until 3 May 2026")
    assert "Twice a week, until 3" in page
    refused = client.post(
        f"/commitments/{promised}/decisions", data={"act": "measure", "measure": "now and then"}
    )
    assert refused.status_code == 422
    assert "No measure can be read from this." in refused.text
    assert 'value="now and then"' in refused.text


def test_a_released_commitment_stays_on_record(
    client: FlaskClient, desk: Desk, promised: UUID
) -> None:
    """Released with a reason it is asked no more and listed with what is over; without, refused."""
    refused = client.post(f"/commitments/{promised}/decisions", data={"act": "release"})
    assert refused.status_code == 422
    assert "Say in a few words why you release it." in refused.text
    page = decide(client, promised, act="release", words="Hanne has moved away.")
    assert "Hanne has moved away." in page
    assert pace(desk, promised) is Pace.RELEASED
    assert "When the tea is poured" in client.get("/commitments/over").text
    assert "Renew it" in page
    decide(client, promised, act="renew")
    assert pace(desk, promised) is Pace.ON_COURSE


def test_what_touches_health_is_not_halved(client: FlaskClient, desk: Desk, clock: Clock) -> None:
    """Stalled, it is met with its caution and every offer but halving, which is refused."""
    text = DIGEST.replace(
        "* Put 20 euros", "* Take my blood pressure pills every morning.\n* Put 20"
    )
    add_digest(desk, "silas.md", text.encode())
    clock.next_day(28)
    (pills,) = [
        each for each in all_commitments(desk).by_pace[Pace.STALLED] if "pills" in each.kept.text
    ]
    page = client.get(f"/commitments/{pills.id}").text
    assert "professional" in page
    assert 'value="release"' in page
    assert 'value="halve"' not in page
    refused = client.post(f"/commitments/{pills.id}/decisions", data={"act": "halve"})
    assert refused.status_code == 422
    assert "is not halved here" in refused.text


@pytest.mark.parametrize(
    ("sent", "said"),
    [
        ({}, "Choose what is to become of it."),
        ({"act": "forget"}, "Choose what is to become of it."),
        ({"act": "close"}, "Say what came of it: kept, partly or missed."),
        ({"act": "resume"}, "It is not paused on that day."),
        ({"act": "move", "until": "2026-04-01"}, "It has no last day that could be moved."),
        ({"act": "start", "day": "2026-03-05"}, "has not come yet; decide then."),
        ({"act": "start", "day": "2025-12-31"}, "was made on 2026-01-18"),
        ({"act": "pause", "until": "2026-02-30"}, "This day does not exist."),
        ({"act": "pause", "until": "2026-03-01"}, "A pause cannot end before it begins."),
        ({"act": "reword", "words": " "}, "Say how it is worded from now on."),
        ({"act": "reword", "words": "w" * 2001}, "at most 2000 are kept"),
    ],
    ids=lambda value: value[:24] if isinstance(value, str) else "",
)
def test_what_cannot_be_decided_is_refused(
    client: FlaskClient, desk: Desk, promised: UUID, sent: dict[str, str], said: str
) -> None:
    """A decision that cannot be comes back with the reason, and nothing is decided."""
    refused = client.post(f"/commitments/{promised}/decisions", data=sent)
    assert refused.status_code == 422
    assert said in refused.text
    assert open_commitment(desk, promised).decisions == ()


def test_the_stretches_are_drawn_with_a_table_beside(
    client: FlaskClient, clock: Clock, promised: UUID
) -> None:
    """What the pace follows from is drawn, said to who does not see it, and listed."""
    client.post(f"/commitments/{promised}/check-ins", data={"outcome": "missed"})
    clock.next_day(28)
    page = client.get(f"/commitments/{promised}").text
    assert "From the earliest on:" in page
    assert "silent" in page
    assert "0 of 5" in page


def test_the_sitting_ends_with_one_commitment(
    client: FlaskClient, desk: Desk, clock: Clock
) -> None:
    """Done for today, one commitment that wants a word comes up; once settled, none does."""
    text = DIGEST.replace("* Put 20 euros", "* Write to Clara within two weeks.\n* Put 20")
    add_digest(desk, "silas.md", text.encode())
    for each in all_commitments(desk).by_pace[Pace.UNJUDGED]:
        assert "Write to Clara" in each.kept.text
    these(desk)
    page = client.get("/").text
    assert "One commitment" in page
    assert "Write to Clara" in page
    closing = form(page, "/decisions")
    told = client.post(
        closing.action, data={**closing.hidden, "outcome": "kept"}, follow_redirects=True
    ).text
    assert "That is kept:" in told
    assert "One commitment" not in told


def test_what_is_not_there(client: FlaskClient, added: Added) -> None:
    """A commitment or a decision nobody made is answered with 404 in a sentence."""
    assert client.get(f"/commitments/{uuid4()}").status_code == 404
    address = f"/commitments/{uuid4()}/decisions"
    assert client.post(address, data={"act": "renew"}).status_code == 404
    assert client.post(f"/decisions/{uuid4()}/taken-back").status_code == 404
