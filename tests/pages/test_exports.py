"""The page exports are had from."""

import html
import json
import re

from service.use_cases.exporting_columns import What
from service.use_cases.exporting_described import DESCRIBED


def test_every_link_of_the_page_gives_a_file_to_save(client, added):
    """Each form of each export is linked, and comes as an attachment."""
    page = client.get("/exports").text
    links = re.findall(r'href="(/exports/[^"]+)"', page)
    assert len(links) == 4 * len(What) + 2
    for link in links:
        given = client.get(link)
        assert given.status_code == 200, link
        assert given.headers["Content-Disposition"].startswith("attachment; filename=")
    assert json.loads(client.get("/exports/digests.json").data)[0]["id"] == str(added.kept.id)


def test_the_page_says_what_each_column_holds(client):
    """Every column of every export stands there with its meaning and its unit."""
    said = html.unescape(client.get("/exports").text)
    for described in DESCRIBED.values():
        for column in described.columns:
            assert f"<code>{column.name}</code>" in said
            assert column.meaning in said
            assert column.unit in said


def test_the_settings_lead_there(client):
    """Whoever looks for a way out of the library finds it from the settings."""
    assert 'href="/exports"' in client.get("/reader").text


def test_what_there_is_not_is_no_page(client):
    """An export, or a form of it, that there is not is nothing here."""
    for path in ("/exports/items.xapi", "/exports/readers.csv", "/exports/items.ods"):
        assert client.get(path).status_code == 404
