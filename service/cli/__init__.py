"""Command door: a module a command, joined here into one group."""

from service.cli.group import Tools, catchword

__all__ = ["Tools", "catchword"]
