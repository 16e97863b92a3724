"""The typesetter: a digest set on its two pages, as PDF, and the lines it takes there."""

import json
import re
import threading
from dataclasses import dataclass
from functools import cached_property
from importlib.resources import as_file, files
from pathlib import Path
from typing import Any, Final

import typst

from cards.budget import Budget, PageUse, PartUse, budget_of
from cards.digest import Digest
from cards.errors import CannotPrint, CannotWrite
from cards.talk import Agenda
from cards.yearly import Review
from service.documents.press.review import review_data
from service.documents.press.sheet import sheet_of
from service.documents.press.sitting import sitting_of
from service.documents.press.talk import talk_of
from service.use_cases.sitting_records import PrintedSheet

LINES = 46
"""Lines of type a page has; `digest.typ` sets the same number."""
_GAP = 0.3
"""Part of a line that is space between lines, which a single text lacks once."""
_STANDARD: Final = "ua-1"
"""PDF/UA-1 (ISO 14289-1): tagged, titled, its language said; the typesetter refuses less."""
_UNSHOWN = re.compile(r"the text [`\"]+(.+?)[`\"]+ could not be displayed")
_CODE = re.compile(r"\\u\{([0-9a-fA-F]{1,6})\}")
_MOST_TOLD = 12
"""Letters that cannot be printed looked for and told of, one by one."""
_SIDES = {"one": 1, "two": 2}


@dataclass(frozen=True, slots=True)
class _Instead:
    """What could not be printed, and what a reader can do without it on paper."""

    what: str
    advice: str


_DIGEST = _Instead("digest", "Take the digest out as a document instead")
_SITTING = _Instead("sheet", "Sit on the screen instead, where your browser’s fonts serve")


class Typesetter:
    """Sets digests with the fonts shipped, and the system's for letters those lack."""

    def __init__(self) -> None:
        self._lock = threading.Lock()

    def pdf(self, digest: Digest) -> bytes:
        """Return a digest as PDF/UA-1: two pages, or as many more as it is over.

        Raises:
            CannotPrint: no font at hand has one of its letters; they are named.
            CannotWrite: the typesetter failed.
        """
        return self._printed(sheet_of(digest), self._source)

    def sitting(self, printed: PrintedSheet) -> bytes:
        """Return a sitting on paper as PDF/UA-1; its answers begin on an even page.

        Raises:
            CannotPrint: no font at hand has one of its letters; they are named.
            CannotWrite: the typesetter failed.
        """
        source = self._source.with_name("sitting.typ")
        return self._printed(sitting_of(printed), source, _SITTING)

    def talk(self, agenda: Agenda) -> bytes:
        """Return the sheet of a talk as PDF/UA-1: two pages, whatever the digest holds.

        Raises:
            CannotPrint: no font at hand has one of its letters; they are named.
            CannotWrite: the typesetter failed.
        """
        return self._printed(talk_of(agenda), self._source.with_name("talk.typ"))

    def review(self, review: Review) -> bytes:
        """Return a yearly review as PDF/UA-1, of as many pages as it takes.

        Raises:
            CannotPrint: no font at hand has one of its letters; they are named.
            CannotWrite: the typesetter failed.
        """
        return self._printed(review_data(review), self._source.with_name("review.typ"))

    def _printed(self, sheet: dict[str, Any], source: Path, instead: _Instead = _DIGEST) -> bytes:
        unshown = None
        for fonts in ("own", "all"):
            try:
                return self._set(sheet, fonts, source)
            except typst.TypstError as error:
                unshown = _unshown(error)
                if unshown is None:
                    failed = f"The {instead.what} could not be set for printing."
                    raise CannotWrite(f"{failed} {instead.advice}.", where=instead.what) from error
        lacking = self._lacking(sheet, unshown, source)
        advice = f"{instead.advice[0].lower()}{instead.advice[1:]}"
        raise CannotPrint(
            f"No font on this machine has these letters, so they cannot be printed: {lacking}. "
            f"Install a font that has them, or {advice}.",
            where=instead.what,
        )

    def measure(self, digest: Digest) -> Budget:
        """Return how many lines a digest takes on its two pages as they are printed."""
        inputs = {"digest": json.dumps(sheet_of(digest))}
        with self._lock:
            found = json.loads(
                typst.query(
                    self._source,
                    "<measure>",
                    field="value",
                    one=True,
                    root=self._source.parent,
                    font_paths=self._own_fonts,
                    ignore_system_fonts=True,
                    sys_inputs=inputs,
                )
            )
        return budget_of(
            [
                (
                    _page(1, found["ends"]),
                    _parts(found, "theme", "points", "commitments", "judgement"),
                ),
                (_page(2, found["ends"]), _parts(found, "quotations")),
            ]
        )

    @cached_property
    def _source(self) -> Path:
        source = files("service.documents.press") / "digest.typ"
        with as_file(source) as path:
            return path

    @cached_property
    def _own_fonts(self) -> typst.Fonts:
        return typst.Fonts(
            include_system_fonts=False, font_paths=[str(self._source.parent / "fonts")]
        )

    @cached_property
    def _all_fonts(self) -> typst.Fonts:
        return typst.Fonts(
            include_system_fonts=True, font_paths=[str(self._source.parent / "fonts")]
        )

    def _set(self, sheet: dict[str, Any], fonts: str, source: Path) -> bytes:
        with self._lock:
            return typst.compile(
                source,
                root=source.parent,
                font_paths=self._own_fonts if fonts == "own" else self._all_fonts,
                format="pdf",
                pdf_standards=_STANDARD,
                sys_inputs={"digest": json.dumps(sheet)},
            )

    def _lacking(self, sheet: dict[str, Any], first: str | None, source: Path) -> str:
        """Return the names of the letters no font has, found one after another."""
        lacking: list[str] = []
        written = json.dumps(sheet, ensure_ascii=False)
        letter = first
        while letter and letter not in lacking and len(lacking) < _MOST_TOLD:
            lacking.append(letter)
            written = written.replace(letter, "")
            try:
                self._set(json.loads(written), "all", source)
            except typst.TypstError as error:
                letter = _unshown(error)
            else:
                letter = None
        return ", ".join(map(_shown, lacking)) + (" and others" if letter else "")


def _unshown(error: typst.TypstError) -> str | None:
    found = _UNSHOWN.search(error.message)
    if found is None:
        return None
    return _CODE.sub(lambda code: chr(int(code[1], 16)), found[1])


def _shown(letters: str) -> str:
    """Return letters as they are, or by their numbers in Unicode where they cannot be seen."""
    if letters.isprintable():
        return letters
    return " ".join(f"U+{ord(letter):04X}" for letter in letters)


def _page(number: int, ends: list[tuple[str, int, float]]) -> PageUse:
    at = {name: (page, line) for name, page, line in ends}
    name = next(name for name, side in _SIDES.items() if side == number)
    if f"{name} end" not in at:
        return PageUse(number, 0, LINES)
    (first, begin), (last, end) = at[name], at[f"{name} end"]
    return PageUse(number, (last - first) * LINES + _whole(end - begin), LINES)


def _whole(lines: float) -> int:
    """Return lines rounded up, a hair's breadth forgiven."""
    return -int(-(lines - 0.01) // 1)


def _parts(found: dict[str, Any], *kinds: str) -> list[PartUse]:
    parts = []
    for kind in kinds:
        sizes = found["sizes"] and found["sizes"][kind]
        if isinstance(sizes, list):
            parts += [
                PartUse(f"{kind} {number}", round(size + _GAP))
                for number, size in enumerate(sizes, 1)
            ]
        elif sizes:
            parts.append(PartUse(kind, round(sizes + _GAP)))
    return parts
