"""The pure core of Catchword: digests, items, marking, memory and sittings.

Nothing here reads a clock, a file, a database or global randomness: days,
instants, identities and chance come in as arguments.
"""
