"""Two who change one digest at once, in two tabs or at two machines: one of them is told."""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from threading import Barrier
from uuid import UUID

import pytest

from cards.digest import Digest
from cards.errors import DigestChanged
from cards.parts import Care
from service.use_cases.care import set_care
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import mend_digest, place_quotations, remove_digest
from service.use_cases.versions import list_versions, restore_version, start_afresh
from tests.use_cases.house import House

WRITERS = 6


def at_once(change: Callable[[int], object]) -> int:
    """Change something from many threads that start together; return how many were not refused."""
    start = Barrier(WRITERS)

    def started(number: int) -> bool:
        start.wait()
        try:
            change(number)
        except DigestChanged:
            return False
        return True

    with ThreadPoolExecutor(WRITERS) as threads:
        return sum(threads.map(started, range(WRITERS)))


@pytest.mark.parametrize("how", ["mend", "care", "place", "overrule", "restore"])
def test_of_many_changes_to_one_revision_one_is_kept(
    house: House, digest: Digest, added: Callable[[], UUID], how: str
) -> None:
    """Whoever is told that a change was kept finds it among the versions; the others are told."""
    digest_id = added()
    mend_digest(house.desk, digest_id, replace(digest, theme="A weaver hoards gold for years."))
    for turn in range(3):
        kept = open_digest(house.desk, digest_id).kept
        revision, care = kept.revision, kept.care
        part = next(each.id for each in kept.parts if not each.retired)
        before = len(list_versions(house.desk, digest_id).entries)
        other = next(each for each in Care if each is not care)

        def change(
            number: int,
            turn: int = turn,
            revision: int = revision,
            other: Care = other,
            part: UUID = part,
        ) -> None:
            theme = f"In turn {turn} the weaver number {number} hoards his gold."
            match how:
                case "mend":
                    said = replace(digest, theme=theme)
                    mend_digest(house.desk, digest_id, said, revision)
                case "care":
                    set_care(house.desk, digest_id, other, revision)
                case "place":
                    place_quotations(house.desk, digest_id, {1: (turn + 1) % 3}, revision)
                case "overrule":
                    start_afresh(house.desk, digest_id, part, revision)
                case "restore":
                    restore_version(house.desk, digest_id, 1 + turn % 2, revision)

        assert at_once(change) == 1
        assert len(list_versions(house.desk, digest_id).entries) == before + 1


def test_a_digest_mended_and_removed_at_once_is_one_or_the_other(
    house: House, digest: Digest, added: Callable[[], UUID]
) -> None:
    """Taking a digest out at a revision that was mended meanwhile is refused, or the mending is."""
    digest_id = added()

    def change(number: int) -> None:
        if number % 2:
            remove_digest(house.desk, digest_id, 1)
        else:
            said = replace(digest, theme=f"The weaver number {number} hoards his gold.")
            mend_digest(house.desk, digest_id, said, 1)

    start = Barrier(WRITERS)

    def started(number: int) -> str:
        start.wait()
        try:
            change(number)
        except Exception as error:  # noqa: BLE001 - what it was is what is looked at
            return type(error).__name__
        return "kept"

    with ThreadPoolExecutor(WRITERS) as threads:
        said = list(threads.map(started, range(WRITERS)))
    assert said.count("kept") == 1
    assert set(said) <= {"kept", "DigestChanged", "DigestMissing"}
