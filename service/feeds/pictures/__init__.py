"""Pictures: drawn as SVG in the pages' ink and type, set as PNG, and their figures as CSV."""

from service.feeds.pictures.pictures import Pictures

__all__ = ["Pictures"]
