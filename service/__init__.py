"""Catchword's service: three doors, one set of use cases, a store."""
