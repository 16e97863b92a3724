"""XML of documents, parsed without entities, network or unbounded trees."""

from lxml import etree


def parsed(content: bytes) -> etree._Element:
    """Return the root of an XML document.

    Raises:
        lxml.etree.XMLSyntaxError: it is not well formed, or larger or deeper than
            libxml2 takes unasked.
    """
    parser = etree.XMLParser(
        resolve_entities=False,
        no_network=True,
        load_dtd=False,
        huge_tree=False,
        remove_comments=True,
        remove_pis=True,
    )
    return etree.fromstring(content, parser)
