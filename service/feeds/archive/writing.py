"""Writes an archive: the same facts give the same bytes, and none is held for long."""

import json
import zipfile
from collections.abc import Iterable, Iterator
from hashlib import sha256
from typing import IO

from cards.errors import CannotWrite
from service.feeds.archive import layout
from service.feeds.archive.explaining import fields, readme
from service.feeds.archive.values import line_of
from service.use_cases.archiving_records import Contents, FactTable, FieldType, Row

_UNIX = 3
_READABLE = 0o100644 << 16
"""A plain file anyone may read, as Unix says it, so that what unpacks it need not guess."""


def write_archive(target: IO[bytes], contents: Contents) -> None:
    """Write everything into a file.

    Args:
        target: empty, and able to seek.
        contents: of one reader, all of one moment.

    Raises:
        CannotWrite: there are more files than an archive can be read back with.
    """
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as archive:
        _Writing(archive).everything(contents)


class _Writing:
    """An archive that is being written, and what is in it so far."""

    def __init__(self, archive: zipfile.ZipFile) -> None:
        self._archive = archive
        self._files: list[dict[str, object]] = []
        self._facts: dict[str, int] = {}

    def everything(self, contents: Contents) -> None:
        """Write every file, the manifest last."""
        self._text(layout.README, readme(contents.left_out))
        self._text(layout.FIELDS, fields(contents.tables))
        for number, (stem, digest) in enumerate(contents.digests, 1):
            self._file(layout.digest_path(number, stem), [digest])
        for table in contents.tables:
            self._file(
                layout.facts_path(table.name), self._lines(table, contents), may_be_huge=True
            )
        for table in contents.tables:
            if any(each.type is FieldType.FILE for each in table.fields):
                self._originals(table, contents)
        manifest = {
            "format": layout.FORMAT,
            "version": layout.VERSION,
            "revision": contents.revision,
            "facts": self._facts,
            "files": self._files,
        }
        self._text(layout.MANIFEST, json.dumps(manifest, ensure_ascii=False, indent=1) + "\n")

    def _lines(self, table: FactTable, contents: Contents) -> Iterator[bytes]:
        file = next((each.name for each in table.fields if each.type is FieldType.FILE), None)
        count = 0
        for row in contents.rows(table):
            told = row if file is None else {**row, file: _path(table, row)}
            yield line_of(table, told)
            count += 1
        self._facts[table.name] = count

    def _originals(self, table: FactTable, contents: Contents) -> None:
        """Write the files of one sort, the same bytes under the same name only once."""
        written: set[str] = set()
        for row, content in contents.files(table):
            path = _path(table, row)
            if path not in written:
                written.add(path)
                self._file(path, [content], packed=False)

    def _text(self, path: str, text: str) -> None:
        self._file(path, [text.encode()])

    def _file(
        self, path: str, pieces: Iterable[bytes], *, packed: bool = True, may_be_huge: bool = False
    ) -> None:
        if len(self._files) >= layout.MAX_ENTRIES:
            raise CannotWrite(
                f"The library has more than {layout.MAX_ENTRIES} digests and files, and an archive "
                "holds no more. Hand its digests out one by one.",
                where="archive",
            )
        entry = zipfile.ZipInfo(path, layout.EPOCH)
        entry.compress_type = zipfile.ZIP_DEFLATED if packed else zipfile.ZIP_STORED
        entry.create_system, entry.external_attr = _UNIX, _READABLE
        hashed, size = sha256(), 0
        with self._archive.open(entry, "w", force_zip64=may_be_huge) as file:
            for piece in pieces:
                file.write(piece)
                hashed.update(piece)
                size += len(piece)
        self._files.append({"path": path, "bytes": size, "sha256": hashed.hexdigest()})


def _path(table: FactTable, row: Row) -> str:
    return layout.file_path(table.name, str(row["sha256"]), str(row.get("name", "")))
