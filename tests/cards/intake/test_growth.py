"""Reading grows in step with a document: four times the blocks, about four times the time."""

import contextlib
import time

import pytest

from cards.errors import CatchwordError
from cards.intake import understand
from cards.intake.blocks import Block, Document, Shape

FEW, MANY = 200, 800
SHORT, LONG = 10_000, 40_000
MOST = 8.0
"""Times longer that four times the blocks may take: quadratic growth would take sixteen."""
LEAST = 0.004
"""Seconds under which the clock is too coarse to tell growth by."""
TRIES = 4
"""Times a document is timed again where another process may have had the caches."""


def seconds(document: Document) -> float:
    """Return the processor time one reading of a document takes."""
    started = time.process_time()
    with contextlib.suppress(CatchwordError):
        understand(document)
    return time.process_time() - started


def grows_in_step(small: Document, large: Document) -> bool:
    """Tell whether a document four times as large takes no more than `MOST` times as long."""
    few = many = float("inf")
    for _ in range(TRIES):
        few, many = min(few, seconds(small)), min(many, seconds(large))
        if many < MOST * max(few, LEAST):
            return True
    return False


@pytest.mark.parametrize("shape", Shape)
@pytest.mark.parametrize("part", ["Points", "Quotes", "Other", ""])
def test_four_times_the_blocks(part: str, shape: Shape):
    """Under every heading, and under none, blocks of every shape are read in linear time."""
    top = [Block(Shape.HEADING, words, level) for words, level in (("W", 1), (part, 2)) if words]

    def document(count: int) -> Document:
        blocks = (
            Block(shape, f"“Some words,” he said: {number} (ch. {number})", level=1)
            for number in range(count)
        )
        return Document("x.md", (*top, *blocks))

    assert grows_in_step(document(FEW), document(MANY))


@pytest.mark.parametrize(
    "line",
    [
        "Finished: 12 May 2025, ",
        "Pages: 12. ",
        "a line of words in the middle of it\n",
        "“Words” (p. 5)\n",
        "A. B., C. D.; ",
        "\t12",
    ],
)
@pytest.mark.parametrize("shape", [Shape.PARAGRAPH, Shape.ROW])
def test_four_times_the_words_of_one_block(line: str, shape: Shape):
    """One block of forty thousand characters is read in linear time too."""

    def document(count: int) -> Document:
        text = line * (count // len(line))
        parts = ("Points", "Quotes", "Summary", "Other")
        heads = [Block(Shape.HEADING, words, 1) for words in ("W", *parts)]
        return Document("x.md", tuple(b for head in heads for b in (head, Block(shape, text))))

    assert grows_in_step(document(SHORT), document(LONG))
