"""The reader’s own weights of the memory model, fitted to their answers.

`considering` decides which weights are in force; `likeliest` finds them, `model` foresees with
them. Those bring arrays along, which most commands need not wait for, so they are asked for by
their own names; here stands what a consideration comes to.
"""

from cards.fitting.records import Comparison, Considered, Verdict

__all__ = ["Comparison", "Considered", "Verdict"]
