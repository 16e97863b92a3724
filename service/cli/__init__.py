"""Command door: a module a command."""
