"""Steps of `unreadable_files.feature`."""

import base64

from pytest_bdd import parsers, scenarios, then, when

from cards.errors import Refusal
from service.use_cases.add_digest import add_digest
from service.use_cases.library import list_digests

scenarios("unreadable_files.feature")

# The smallest valid PNG, one transparent pixel (PNG specification, third edition).
PICTURE = base64.b64decode(
    "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg=="
)
# A password-protected document is an OLE compound file, known by these first eight bytes
# ([MS-CFB], section 2.2, header signature).
LOCKED = bytes.fromhex("d0cf11e0a1b11ae1") + bytes(504) + "EncryptedPackage".encode("utf-16-le")
LETTER = "Dear aunt,\n\nthank you for the plums. We ate them all.\n\nYours, Mira\n"


def files(mira) -> dict[str, tuple[str, bytes]]:
    return {
        "an empty document": ("silas-marner.docx", b""),
        "a document cut off in the middle": ("silas-marner.docx", mira.document()[:2000]),
        "a picture named as a document": ("silas-marner.docx", PICTURE),
        "a document protected by a password": ("silas-marner.docx", LOCKED),
        "a letter to her aunt": ("letter.txt", LETTER.encode()),
    }


def hand_over(mira, name: str, content: bytes) -> None:
    try:
        mira.reports.append(add_digest(mira.desk, name, content))
    except Refusal as refusal:
        mira.reports.append(refusal)


@when(parsers.parse("Mira adds {file}"))
def adds(mira, file):
    if file == "an empty document between two good ones":
        hand_over(mira, "one.docx", mira.document())
        hand_over(mira, "two.docx", b"")
        mira.source = mira.source.replace("Silas Marner", "Silas Marner Retold")
        hand_over(mira, "three.docx", mira.document())
    else:
        hand_over(mira, *files(mira)[file])


@then(parsers.parse("it is refused with a sentence that says {why}"))
def refused(mira, why):
    (refusal,) = mira.reports
    assert isinstance(refusal, Refusal)
    assert why in refusal.message.casefold()
    assert refusal.message.endswith(".")


@then("nothing is kept")
def nothing_kept(mira):
    assert not list_digests(mira.desk).entries


@then("two digests are in her library")
def two_kept(mira):
    assert len(list_digests(mira.desk).entries) == 2


@then("the report names the one that was refused")
def names_it(mira):
    assert isinstance(mira.reports[1], Refusal)
    assert "two.docx" in mira.reports[1].message
