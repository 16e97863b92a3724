"""Documents made for the tests: sound ones by pandoc, damaged ones by hand."""

import io
import subprocess
import tempfile
import zipfile
from pathlib import Path

import pypandoc

OLE = bytes.fromhex("d0cf11e0a1b11ae1")

DIGEST = """\
# Walden by Henry David Thoreau

ISBN 978-0-306-40615-7 · 352 pages · Finished 12 May 2025

## Summary

A man goes to the woods to live deliberately.

## Points

1.  Most lives are spent on needless labour (p. 8)
2.  A house costs six weeks of work (p. 55)

## Commitments

-   Walk an hour every day.

## Quotations

> “I went to the woods because I wished to live deliberately.” (p. 88)

-   “Simplify, simplify.” (p. 12)
"""


def made(markdown: str, suffix: str) -> bytes:
    """Return Markdown written out by pandoc as a document of another format."""
    with tempfile.TemporaryDirectory() as folder:
        target = Path(folder) / f"made.{suffix}"
        subprocess.run(
            [pypandoc.get_pandoc_path(), "--from", "markdown", "--standalone", "-o", str(target)],
            input=markdown.encode(),
            check=True,
            capture_output=True,
        )
        return target.read_bytes()


def archive(parts: dict[str, bytes | str], *, packed: bool = True) -> bytes:
    """Return a zip archive of parts."""
    target = io.BytesIO()
    method = zipfile.ZIP_DEFLATED if packed else zipfile.ZIP_STORED
    with zipfile.ZipFile(target, "w", method) as written:
        for path, content in parts.items():
            written.writestr(path, content)
    return target.getvalue()


def parts_of(content: bytes) -> dict[str, bytes]:
    """Return the parts of an archive."""
    with zipfile.ZipFile(io.BytesIO(content)) as opened:
        return {name: opened.read(name) for name in opened.namelist()}


def odt(body: str, styles: str = "", manifest: str = "") -> bytes:
    """Return an OpenDocument text with a body and automatic styles of our own."""
    spaces = " ".join(
        f'xmlns:{short}="urn:oasis:names:tc:opendocument:xmlns:{full}:1.0"'
        for short, full in (
            ("office", "office"),
            ("style", "style"),
            ("text", "text"),
            ("fo", "xsl-fo-compatible"),
        )
    )
    named = (
        '<style:style style:name="Standard" style:family="paragraph"/>'
        '<style:style style:name="Heading_20_2" style:display-name="Heading 2" '
        'style:family="paragraph" style:default-outline-level="2"/>'
        '<style:style style:name="Quotations" style:family="paragraph"/>'
        '<style:style style:name="Title" style:family="paragraph"/>'
    )
    return archive(
        {
            "mimetype": "application/vnd.oasis.opendocument.text",
            "content.xml": f"<office:document-content {spaces}><office:automatic-styles>{styles}"
            f"</office:automatic-styles><office:body><office:text>{body}</office:text>"
            "</office:body></office:document-content>",
            "styles.xml": f"<office:document-styles {spaces}><office:styles>{named}"
            "</office:styles></office:document-styles>",
            "META-INF/manifest.xml": f"<manifest>{manifest}</manifest>",
        }
    )
