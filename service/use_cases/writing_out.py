"""A reader takes a digest out, on paper or as a file, and blank ones to fill in."""

import re
from dataclasses import dataclass
from uuid import UUID

from cards.budget import Budget
from cards.digest import Digest
from service.use_cases.keeping import opened
from service.use_cases.ports import Desk
from service.use_cases.records import Form

MEDIA_TYPES = {
    Form.PDF: "application/pdf",
    Form.DOCX: "application/vnd.openxmlformats-officedocument.wordprocessingml.document",
    Form.ODT: "application/vnd.oasis.opendocument.text",
    Form.MARKDOWN: "text/markdown; charset=utf-8",
    Form.JSON: "application/json",
}
BLANKS = (Form.DOCX, Form.ODT, Form.MARKDOWN)
"""The forms there are blank digests in."""
LONGEST_STEM = 80
"""Characters of a title that name its file."""


@dataclass(frozen=True, slots=True)
class Written:
    """A file to hand out.

    Attributes:
        name: letters, digits and hyphens with the ending of its form.
        media_type: as HTTP names it.
        content: its bytes.
    """

    name: str
    media_type: str
    content: bytes


def write_out(desk: Desk, digest_id: UUID, form: Form) -> Written:
    """Return a digest as a file of one form; all but the PDF read back to the same digest.

    Raises:
        DigestMissing: this reader has no such digest.
        CannotPrint: the PDF would lack letters that no typeface at hand has.
    """
    with desk.store.reading() as work:
        kept = opened(desk, work, digest_id, None)
    digest = kept.digest()
    return Written(
        f"{file_stem(digest.title)}.{form.value}", MEDIA_TYPES[form], desk.press.write(digest, form)
    )


def measure(desk: Desk, digest: Digest) -> Budget:
    """Return how much of its two pages a digest takes, as it is set for printing."""
    return desk.press.measure(digest)


def blank(desk: Desk, form: Form) -> Written:
    """Return a blank digest to fill in, in one of `BLANKS`."""
    return Written(f"digest.{form.value}", MEDIA_TYPES[form], desk.press.template(form))


def file_stem(title: str) -> str:
    """Return what a file of this title is called: its letters and digits, parted by hyphens."""
    return "-".join(re.findall(r"\w+", title.casefold()))[:LONGEST_STEM].strip("-") or "digest"
