"""Reading grows in step with a document: four times the blocks, about four times the time."""

import contextlib
import time

import pytest

from cards.errors import CatchwordError
from cards.intake import understand
from cards.intake.blocks import Block, Document, Shape

FEW, MANY = 400, 1_600
MOST = 8.0
"""Times longer that four times the blocks may take: quadratic growth would take sixteen."""


def fastest(document: Document, runs: int = 3) -> float:
    """Return the least seconds of processor time one reading of a document takes."""
    taken = []
    for _ in range(runs):
        started = time.process_time()
        with contextlib.suppress(CatchwordError):
            understand(document)
        taken.append(time.process_time() - started)
    return min(taken)


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

    assert fastest(document(MANY)) < MOST * max(fastest(document(FEW)), 0.002)


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
    """One block of two hundred thousand characters is read in linear time too."""

    def document(count: int) -> Document:
        text = line * (count // len(line))
        parts = ("Points", "Quotes", "Summary", "Other")
        heads = [Block(Shape.HEADING, words, 1) for words in ("W", *parts)]
        return Document("x.md", tuple(b for head in heads for b in (head, Block(shape, text))))

    assert fastest(document(200_000)) < MOST * max(fastest(document(50_000)), 0.002)
