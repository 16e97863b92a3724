"""Retention: what came back when asked, how well it was foreseen, what is known now."""
