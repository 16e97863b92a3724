"""From the bytes of a file to the blocks of a document."""
