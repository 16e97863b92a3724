"""Everything a reader has, fact by fact, out of one store and into another."""
