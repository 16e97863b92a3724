"""EPUBs made by hand, sound and unsound, for tests."""

import io
import zipfile
from collections.abc import Mapping

CONTAINER = (
    '<?xml version="1.0"?><container version="1.0" '
    'xmlns="urn:oasis:names:tc:opendocument:xmlns:container"><rootfiles><rootfile '
    'full-path="OEBPS/package.opf" media-type="application/oebps-package+xml"/></rootfiles>'
    "</container>"
)
XHTML = '<html xmlns="http://www.w3.org/1999/xhtml" xmlns:epub="http://www.idpf.org/2007/ops">'


def page(body: str) -> str:
    """Return a page of XHTML."""
    head = "<head><title>t</title></head>"
    return f'<?xml version="1.0" encoding="utf-8"?>{XHTML}{head}<body>{body}</body></html>'


def package(pages: list[str], items: str = "", metadata: str = "", spine: str = "") -> str:
    """Return a package document with its pages in order."""
    listed = "".join(
        f'<item id="p{number}" href="{path}" media-type="application/xhtml+xml"/>'
        for number, path in enumerate(pages)
    )
    order = "".join(f'<itemref idref="p{number}"/>' for number in range(len(pages)))
    return (
        '<package xmlns="http://www.idpf.org/2007/opf" version="3.0" '
        'xmlns:dc="http://purl.org/dc/elements/1.1/"><metadata><dc:title>The Whale</dc:title>'
        f"<dc:creator>Herman Melville</dc:creator>{metadata}</metadata>"
        f"<manifest>{listed}{items}</manifest><spine {spine}>{order}</spine></package>"
    )


def archive(parts: Mapping[str, str | bytes], packed: int = zipfile.ZIP_DEFLATED) -> bytes:
    """Return an archive of parts, the media type first."""
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w", packed) as made:
        made.writestr("mimetype", "application/epub+zip", zipfile.ZIP_STORED)
        for path, part in parts.items():
            made.writestr(path, part)
    return target.getvalue()


def epub(bodies: list[str], more: Mapping[str, str | bytes] | None = None, **said: str) -> bytes:
    """Return an EPUB of pages with these bodies."""
    names = [f"page{number}.xhtml" for number in range(len(bodies))]
    parts: dict[str, str | bytes] = {
        "META-INF/container.xml": CONTAINER,
        "OEBPS/package.opf": package(names, **said),
    }
    parts |= {f"OEBPS/{name}": page(body) for name, body in zip(names, bodies, strict=True)}
    return archive(parts | dict(more or {}))
