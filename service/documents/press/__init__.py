"""A digest written out: as a two-page PDF, and in four formats that read back the same."""
