"""XML of documents, parsed without entities, network or unbounded trees."""

from lxml import etree


class MalformedXml(ValueError):
    """A part that is not well formed, too large, or carries declarations of its own."""


def parsed(content: bytes) -> etree._Element:
    """Return the root of an XML document.

    Raises:
        MalformedXml: it is not well formed, is larger or deeper than libxml2 takes
            unasked, or declares entities, which no word processor does.
    """
    parser = etree.XMLParser(
        resolve_entities=False,
        no_network=True,
        load_dtd=False,
        huge_tree=False,
        remove_comments=True,
        remove_pis=True,
    )
    try:
        root = etree.fromstring(content, parser)
    except (etree.XMLSyntaxError, ValueError) as error:
        raise MalformedXml from error
    if root.getroottree().docinfo.internalDTD is not None:
        raise MalformedXml
    return root
