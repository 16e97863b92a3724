"""Parts packed as the zip archive of a document, the same bytes for the same parts."""

import io
import zipfile
from collections.abc import Mapping

Parts = Mapping[str, str]
"""The parts of an archive, by their path in it."""


_LARGE = 256 * 1024
"""Characters from which a part is not squeezed: only a digest at its bounds is so large, and one
of a few words over and over would be squeezed so well that a reader took it for a bomb."""


def parcel(parts: Parts) -> bytes:
    """Return the parts as an archive; a part named `mimetype` comes first and is not squeezed."""
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w") as archive:
        for path in sorted(parts, key=lambda path: (path != "mimetype", path)):
            stored = path == "mimetype" or len(parts[path]) > _LARGE
            archive.writestr(
                zipfile.ZipInfo(path),
                parts[path],
                zipfile.ZIP_STORED if stored else zipfile.ZIP_DEFLATED,
            )
    return target.getvalue()
