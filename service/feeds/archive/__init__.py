"""Everything a reader has as one zip of open formats, written and read back."""
