"""Archives as somebody else might make them: changed, and with a manifest that vouches for it."""

import io
import json
import zipfile
from collections.abc import Callable, Mapping
from hashlib import sha256

Files = dict[str, bytes]


def files_in(archive: bytes) -> Files:
    """Return the files of an archive by their paths."""
    with zipfile.ZipFile(io.BytesIO(archive)) as opened:
        return {entry.filename: opened.read(entry) for entry in opened.infolist()}


def zipped(files: Mapping[str, bytes]) -> bytes:
    """Return files as a zip, whatever its manifest says."""
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as archive:
        for path, content in files.items():
            archive.writestr(path, content)
    return target.getvalue()


def forged(archive: bytes, change: Callable[[Files], object]) -> bytes:
    """Return an archive whose files were changed, and whose manifest lists them as they are."""
    files = files_in(archive)
    manifest = json.loads(files.pop("manifest.json"))
    change(files)
    manifest["files"] = [
        {"path": path, "bytes": len(content), "sha256": sha256(content).hexdigest()}
        for path, content in files.items()
    ]
    manifest["facts"] = {
        name: files.get(f"facts/{name}.jsonl", b"").count(b"\n") for name in manifest["facts"]
    }
    return zipped({**files, "manifest.json": json.dumps(manifest).encode()})


def with_manifest(archive: bytes, **changed: object) -> bytes:
    """Return an archive whose manifest says something else."""
    files = files_in(archive)
    manifest = json.loads(files["manifest.json"]) | changed
    return zipped({**files, "manifest.json": json.dumps(manifest).encode()})


def with_line(archive: bytes, table: str, change: Callable[[bytes], bytes]) -> bytes:
    """Return an archive in which the first line of some facts is another."""

    def first_line(files: Files) -> None:
        path = f"facts/{table}.jsonl"
        first, *others = files[path].splitlines(keepends=True)
        files[path] = change(first) + b"".join(others)

    return forged(archive, first_line)


def with_fact(archive: bytes, table: str, **changed: object) -> bytes:
    """Return an archive in which the first of some facts says something else."""
    return with_line(
        archive, table, lambda line: json.dumps(json.loads(line) | changed).encode() + b"\n"
    )
