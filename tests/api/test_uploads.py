"""Files from which no digest can be read are refused in words, and nothing of them is kept."""

import zipfile
from functools import cache
from io import BytesIO
from pathlib import Path

import pytest

from service.documents import formats
from tests.api.conftest import Door

DEMO = Path(formats.__file__).parent / "demo_library"
PICTURE = b"\x89PNG\r\n\x1a\n" + bytes(64)


@cache
def bomb() -> bytes:
    """Return a small DOCX that unpacks to 200 MB."""
    written = BytesIO()
    with zipfile.ZipFile(written, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("[Content_Types].xml", "<Types/>")
        archive.writestr("word/document.xml", b"a" * 200_000_000)
    return written.getvalue()


def bad(name: str) -> tuple[str, bytes]:
    """Return a bad file by what is wrong with it: its name and bytes."""
    if name == "bomb":
        return "digest.docx", bomb()
    whole = (DEMO / "silas-marner.docx").read_bytes()
    return {
        "empty": ("digest.docx", b""),
        "truncated": ("digest.docx", whole[: len(whole) // 2]),
        "picture": ("digest.docx", PICTURE),
        "binary": ("digest.bin", bytes(range(256)) * 8),
        "long text": ("digest.txt", b"words and words\n" * 200_000),
        "no digest": ("digest.md", b"Buy milk, and bread.\n"),
    }[name]


@pytest.mark.parametrize("path", ["/api/digests", "/api/digests/read"])
@pytest.mark.parametrize(
    ("name", "status", "problem"),
    [
        ("empty", 422, "document-empty"),
        ("truncated", 422, "document-broken"),
        ("picture", 422, "document-broken"),
        ("bomb", 413, "document-too-large"),
        ("binary", 415, "document-unsupported"),
        ("long text", 413, "document-too-large"),
        ("no digest", 422, "nothing-recognised"),
    ],
)
def test_a_bad_file_is_refused_and_nothing_is_kept(
    door: Door, path: str, name: str, status: int, problem: str
) -> None:
    """Each sort of bad file has its own problem type, and the library stays empty."""
    file, content = bad(name)
    refused = door.send(path, content, file)
    assert refused.json["type"] == f"/api/problems/{problem}", refused.json
    assert refused.status_code == status
    assert door.client.get("/api/digests").json["digests"] == []
    assert door.client.get("/api/items").json["items"] == []


def test_fifty_megabytes_are_refused_before_they_are_read(door: Door) -> None:
    """A request of 50 MB is refused with 413 and a problem document."""
    refused = door.send("/api/digests", b"a" * 50_000_000, "digest.txt")
    assert refused.status_code == 413
    assert refused.json["type"] == "/api/problems/request-too-large"


def test_a_body_that_is_no_form_is_refused(door: Door) -> None:
    """A file sent as the body itself is refused with 415, which says what to send."""
    refused = door.client.post("/api/digests", data=b"# A", content_type="text/markdown")
    assert refused.status_code == 415
    assert "multipart/form-data" in refused.json["detail"]
