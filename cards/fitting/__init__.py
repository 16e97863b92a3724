"""The reader’s own weights of the memory model, fitted to their answers."""
