"""Parts packed as the zip archive of a document, the same bytes for the same parts."""

import io
import zipfile
from collections.abc import Mapping

Parts = Mapping[str, str]
"""The parts of an archive, by their path in it."""


def parcel(parts: Parts) -> bytes:
    """Return the parts as an archive; a part named `mimetype` comes first and is not squeezed."""
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as archive:
        for path in sorted(parts, key=lambda path: (path != "mimetype", path)):
            entry = zipfile.ZipInfo(path)
            entry.compress_type = zipfile.ZIP_STORED if path == "mimetype" else zipfile.ZIP_DEFLATED
            archive.writestr(entry, parts[path])
    return target.getvalue()
