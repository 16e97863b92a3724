"""The facts of a book in the two forms bibliographies travel in: BibTeX and CSL-JSON."""

from service.feeds.bibtex import from_bibtex, to_bibtex
from service.feeds.csl_json import from_csl_json, to_csl_json

__all__ = ["from_bibtex", "from_csl_json", "to_bibtex", "to_csl_json"]
