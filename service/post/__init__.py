"""Mail to the reader: how a letter is written, and how it is handed to a mail server."""
