"""What goes out of the library, and comes in, in formats other programs read."""
