"""Many files at once through the API."""

import zipfile
from io import BytesIO

import pytest
from flask import Flask
from werkzeug.datastructures import FileStorage

from service.api import imports
from service.gate import LARGEST_AT, MOST_PARTS
from service.use_cases.ports import Desk
from service.use_cases.records import BundledFile
from tests.api.conftest import WALKS, Door

SALT = """# The Salt Road

by M. Orr

## Theme

A carter turns back at the pass.
"""
IRON = """# The Iron Road

by M. Orr

## Theme

Rails come to the valley, and nobody waits any more.
"""
TWO = f"{SALT}\n\n{IRON}"
SHOPPING = b"Buy milk, and bread.\n"


def bundle(**files: bytes) -> bytes:
    """Return a zip of files; an underscore in a name stands for a full stop."""
    written = BytesIO()
    with zipfile.ZipFile(written, "w") as archive:
        for name, content in files.items():
            archive.writestr(name.replace("_", "."), content)
    return written.getvalue()


def titles(door: Door) -> set[str]:
    """Return the titles in the library."""
    return {each["title"] for each in door.client.get("/api/digests").json["digests"]}


def test_each_file_has_its_report_and_a_bad_one_stops_no_other(door: Door) -> None:
    """Reports come in the order of the files; the bad one's says what is wrong with it."""
    answered = door.hand_in(
        "/api/imports",
        ("2019/walks.md", WALKS.encode()),
        ("shopping.txt", SHOPPING),
        ("salt.md", SALT.encode()),
    )
    assert answered.status_code == 200
    assert answered.headers["Content-Type"] == "application/json"
    walks, shopping, salt = answered.json["files"]
    assert [each["file"] for each in (walks, shopping, salt)] == [
        "2019/walks.md",
        "shopping.txt",
        "salt.md",
    ]
    (added,) = walks["digests"]
    assert (added["title"], added["status"]) == ("Walks in the Fens", "added")
    assert added["items"] == {"theme": 1, "place": 2, "restate": 2}
    assert door.client.get(f"/api/digests/{added['id']}").status_code == 200
    assert (walks["problem"], salt["problem"]) == (None, None)
    assert shopping["digests"] == []
    assert shopping["problem"]["type"] == "/api/problems/nothing-recognised"
    assert shopping["problem"]["status"] == 422
    assert "shopping.txt" in shopping["problem"]["detail"]
    assert titles(door) == {"Walks in the Fens", "The Salt Road"}


def test_the_same_files_again_are_unchanged(door: Door) -> None:
    """Handed in twice, every digest is told as unchanged, and there is no second one."""
    files = (("walks.md", WALKS.encode()), ("two.md", TWO.encode()))
    door.hand_in("/api/imports", *files)
    again = door.hand_in("/api/imports", *files).json["files"]
    assert [digest["status"] for each in again for digest in each["digests"]] == ["unchanged"] * 3
    assert len(titles(door)) == 3


def test_a_file_may_hold_several_digests(door: Door) -> None:
    """Each of them is kept, and told in one report."""
    (report,) = door.hand_in("/api/imports", ("two.md", TWO.encode())).json["files"]
    assert [each["title"] for each in report["digests"]] == ["The Salt Road", "The Iron Road"]


def test_a_zip_is_reported_file_by_file(door: Door) -> None:
    """The files inside stand in its place, between those handed in before and after it."""
    held = bundle(**{"old/walks_md": WALKS.encode(), "old/shopping_txt": SHOPPING})
    answered = door.hand_in(
        "/api/imports", ("a.txt", SHOPPING), ("all.zip", held), ("salt.md", SALT.encode())
    )
    assert [(each["file"], len(each["digests"])) for each in answered.json["files"]] == [
        ("a.txt", 0),
        ("old/walks.md", 1),
        ("old/shopping.txt", 0),
        ("salt.md", 1),
    ]


def test_a_broken_zip_is_refused_alone(door: Door) -> None:
    """A zip that cannot be opened is one refused file; the next file is taken in."""
    broken = bundle(walks_md=WALKS.encode())[:-30]
    zipped, salt = door.hand_in(
        "/api/imports", ("all.zip", broken), ("salt.md", SALT.encode())
    ).json["files"]
    assert zipped["problem"]["type"] == "/api/problems/document-broken"
    assert len(salt["digests"]) == 1


def test_reading_many_tells_everything_and_keeps_nothing(door: Door) -> None:
    """Every digest comes whole, with sources, what was left and advice; the library is empty."""
    answered = door.hand_in(
        "/api/imports/read", ("two.md", TWO.encode()), ("shopping.txt", SHOPPING)
    )
    two, shopping = answered.json["files"]
    first, second = two["digests"]
    assert (first["title"], second["title"]) == ("The Salt Road", "The Iron Road")
    rails = "Rails come to the valley, and nobody waits any more."
    assert {"part": "theme", "words": f"Theme\n{rails}"} in second["sources"]
    assert first["left"] == []
    assert [each["part"] for each in first["advice"]] == ["theme"]
    assert shopping["problem"]["type"] == "/api/problems/nothing-recognised"
    assert titles(door) == set()


def test_what_nobody_expected_stops_no_other_file(
    door: Door, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    """A failure of Catchword's own is one report, without a word of it, and is logged."""

    def fail(laid: Desk, file: BundledFile) -> imports.Digests:
        if file.name == "walks.md":
            raise KeyError("secret of the driver")
        return kept(laid, file)

    kept = imports._added
    monkeypatch.setattr(imports, "_added", fail)
    answered = door.hand_in(
        "/api/imports", ("walks.md", WALKS.encode()), ("salt.md", SALT.encode())
    )
    failed, salt = answered.json["files"]
    assert failed["problem"]["type"] == "/api/problems/failure"
    assert "secret" not in answered.text
    assert caplog.records[0].exc_info is not None
    assert len(salt["digests"]) == 1


@pytest.mark.parametrize(
    ("name", "shown"),
    [
        ("../../etc/walks.md", "etc/walks.md"),
        ("2019//./walks.md", "2019/walks.md"),
        ("..", "digest"),
        ("./walks\x07.md", "walks.md"),
        ("/" + "x" * 300 + ".md", "x" * 197 + ".md"),
    ],
)
def test_a_name_is_shown_and_never_followed(door: Door, name: str, shown: str) -> None:
    """A name is told with its folders, without steps upwards and what cannot be printed."""
    (report,) = door.hand_in("/api/imports", (name, WALKS.encode())).json["files"]
    assert report["file"] == shown


@pytest.mark.parametrize("path", ["/api/imports", "/api/imports/read"])
def test_a_form_without_files_is_refused(door: Door, path: str) -> None:
    """No files, files under another name, or text in their place: 422."""
    for form in (
        {},
        {"file": (BytesIO(b"a"), "a.md")},
        {"files": "text"},
    ):
        refused = door.client.post(path, data=form, content_type="multipart/form-data")
        assert refused.status_code == 422
        assert refused.json["errors"][0]["parameter"] == "files"
    refused = door.client.post(path, data=WALKS.encode(), content_type="text/markdown")
    assert refused.status_code == 415
    assert "files" in refused.json["detail"]


def test_more_parts_than_a_form_may_have_are_refused(door: Door) -> None:
    """One part more than a form may have is refused before any is taken in: 413."""
    form = {"files": ["text"] * (MOST_PARTS + 1)}
    refused = door.upload("/api/imports", form)
    assert refused.status_code == 413
    assert refused.json["type"] == "/api/problems/request-too-large"


def test_a_field_a_form_does_not_have_is_refused(door: Door) -> None:
    """A part of another name is refused by that name, so that nothing is dropped in silence."""
    form = {"files": (BytesIO(WALKS.encode()), "walks.md"), "keep": "false"}
    refused = door.client.post("/api/imports", data=form, content_type="multipart/form-data")
    assert refused.status_code == 422
    assert [each["parameter"] for each in refused.json["errors"]] == ["keep"]
    assert titles(door) == set()


def test_many_files_may_be_larger_together_than_one(door: Door) -> None:
    """Files beyond the bound of one request elsewhere are taken; beyond their own, refused: 413."""
    padding = b"a" * 8_000_000
    files = [(f"{number}.txt", padding) for number in range(3)]
    answered = door.hand_in("/api/imports", *files, ("walks.md", WALKS.encode()))
    *large, walks = answered.json["files"]
    assert all(each["problem"]["type"].endswith("/document-too-large") for each in large)
    assert len(walks["digests"]) == 1
    refused = door.client.post(
        "/api/imports",
        content_type="multipart/form-data; boundary=x",
        environ_overrides={"CONTENT_LENGTH": str(LARGEST_AT["/api/imports"] + 1)},
    )
    assert refused.status_code == 413


def test_every_route_that_may_take_more_is_there(app: Flask) -> None:
    """The gate's table of larger requests names no route the application does not answer to."""
    assert {rule.rule for rule in app.url_map.iter_rules()} >= set(LARGEST_AT)


def test_an_answer_nobody_reads_leaves_no_file_open(door: Door) -> None:
    """A client that goes away before the first report leaves nothing kept and nothing open."""
    large = FileStorage(BytesIO(b"x y " * 200_000), "large.txt")
    walks = FileStorage(BytesIO(WALKS.encode()), "walks.md")
    answered = door.upload("/api/imports", {"files": [large, walks]}, whole=False)
    answered.close()
    assert titles(door) == set()
