"""Many files at once: a report on each as it is done, and one bad file stops none of the others."""

import io
import re
import zipfile

import pytest
from flask.testing import FlaskClient

from service import gate
from service.pages import books, many_files
from service.use_cases.drafts import list_drafts
from service.use_cases.library import list_digests
from service.use_cases.ports import Desk
from tests.pages.draft_pages import hand_in
from tests.pages.house import DIGEST


def volume(number: int) -> tuple[str, bytes]:
    """Return one of several digests, in a folder."""
    text = DIGEST.replace("title: Silas Marner", f"title: Volume {number}")
    return f"digests/volume-{number}.md", text.encode()


FOLDER = [volume(1), ("digests/empty.docx", b""), volume(2), volume(3)]
"""A folder of three digests, and an empty file."""


def zipped(*files: tuple[str, bytes]) -> bytes:
    """Return files in a zip."""
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w") as archive:
        for name, content in files:
            archive.writestr(name, content)
    return target.getvalue()


def progress(page: str) -> list[tuple[str, str]]:
    """Return how far the page said it was, in order: the value and the most."""
    found = re.findall(r'<progress max="([^"]+)" value="([^"]+)"', page)
    return [(value, most) for most, value in found]


def test_there_is_a_report_on_each_file(client: FlaskClient, desk: Desk) -> None:
    """Each file has a line, each line is followed by how far it is, and a sum ends the page."""
    page = hand_in(client, *FOLDER, do="add")
    assert page.status_code == 200
    for name, _ in FOLDER:
        assert f">{name}</p>" in page.text
    assert progress(page.text) == [("1.0", "4"), ("2.0", "4"), ("3.0", "4"), ("4.0", "4")]
    assert "Four files: three digests added and one file refused." in page.text
    assert len(list_digests(desk).entries) == 3


def test_the_same_folder_again_changes_nothing(client: FlaskClient, desk: Desk) -> None:
    """Handed in once more, every digest is unchanged."""
    hand_in(client, *FOLDER, do="add")
    kept = list_digests(desk).entries
    page = hand_in(client, *FOLDER, do="add")
    assert "three digests unchanged and one file refused" in page.text
    assert list_digests(desk).entries == kept


def test_a_folder_is_looked_over(client: FlaskClient, desk: Desk) -> None:
    """Many files can be looked over as well as one: each is a draft, nothing is kept."""
    page = hand_in(client, *FOLDER, do="look")
    drafts = list_drafts(desk).drafts
    assert len(drafts) == 3
    for draft in drafts:
        assert f'href="/drafts/{draft.id}"' in page.text
    assert "three drafts to look over" in page.text
    assert list_digests(desk).entries == ()


def test_a_zip_is_opened(client: FlaskClient, desk: Desk) -> None:
    """The files in a zip are reported one by one, with how far into the zip each is."""
    page = hand_in(client, ("digests.zip", zipped(*FOLDER)), do="add")
    assert page.text.count("<article") == 4
    assert progress(page.text) == [("1", "4"), ("2", "4"), ("3", "4"), ("4", "4")]
    assert len(list_digests(desk).entries) == 3


def test_a_zip_among_files(client: FlaskClient, desk: Desk) -> None:
    """Among other files the files of a zip are parts of one."""
    files = [volume(7), ("two.zip", zipped(volume(1), volume(2)))]
    page = hand_in(client, *files, do="add")
    assert progress(page.text) == [("1.0", "2"), ("1.5", "2"), ("2.0", "2")]
    assert len(list_digests(desk).entries) == 3


def test_a_folder_and_files_together(client: FlaskClient, desk: Desk) -> None:
    """What is chosen in either field is taken."""
    (name, content), (other, more) = volume(1), volume(2)
    data = {"files": [(io.BytesIO(content), name)], "folder": [(io.BytesIO(more), other)]}
    assert client.post("/books", data=data | {"do": "add"}).status_code == 200
    assert len(list_digests(desk).entries) == 2


def test_the_page_comes_as_the_files_are_done(client: FlaskClient, desk: Desk) -> None:
    """What is done is sent before the rest is begun; a tab closed midway keeps what was kept."""
    files = [(io.BytesIO(content), name) for name, content in map(volume, range(1, 7))]
    page = client.post("/books", data={"files": files, "do": "add"}, buffered=False)
    shown = ""
    for piece in page.response:
        shown += piece.decode() if isinstance(piece, bytes) else piece
        if "volume-3.md" in shown:
            break
    assert "volume-5.md" not in shown
    assert len(list_digests(desk).entries) == 3
    page.close()
    assert len(list_digests(desk).entries) == 3
    again = hand_in(client, *map(volume, range(1, 7)), do="add").text
    assert "three digests added and three digests unchanged" in again


def test_a_failure_inside_stops_none_of_the_others(
    client: FlaskClient,
    desk: Desk,
    monkeypatch: pytest.MonkeyPatch,
    caplog: pytest.LogCaptureFixture,
) -> None:
    """A fault of Catchword's own with one file is told on its line, and logged whole."""
    taken = many_files.add_files

    def failing(at, files):
        (file,) = files
        if file.name.endswith("volume-2.md"):
            raise ZeroDivisionError("secret words")
        return taken(at, [file])

    monkeypatch.setattr(many_files, "add_files", failing)
    page = hand_in(client, *FOLDER, do="add").text
    assert "Something went wrong in Catchword with this file" in page
    assert "secret words" not in page
    assert "secret words" in caplog.text
    assert len(list_digests(desk).entries) == 2


def test_too_many_files_are_refused(client: FlaskClient, monkeypatch: pytest.MonkeyPatch) -> None:
    """Beyond the bound nothing is read, and a sentence says so beside the field."""
    monkeypatch.setattr(books, "MOST_FILES", 3)
    page = hand_in(client, *FOLDER, do="add")
    assert page.status_code == 422
    assert "These are 4 files; at most 3 can be handed in at once." in page.text


def test_too_much_at_once_is_refused(client: FlaskClient, monkeypatch: pytest.MonkeyPatch) -> None:
    """More bytes than can be handed in are refused on the page itself, before they are read."""
    monkeypatch.setitem(gate.LARGEST_AT, "/books", 1000)
    page = hand_in(client, volume(1), volume(2), do="add")
    assert page.status_code == 413
    assert "At most 2,000 files of 200 MB together" in page.text
    assert 'aria-describedby="files-help files-fault"' in page.text


def test_a_thousand_files_fit_one_form(client: FlaskClient) -> None:
    """A folder of more files than a form commonly has parts is read to the last."""
    files = [(f"notes/{number}.pdf", b"%PDF") for number in range(1200)]
    page = hand_in(client, *files, do="add").text
    assert "1200 files: 1200 files refused." in page
