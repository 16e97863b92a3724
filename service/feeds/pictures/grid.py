"""How often one thing met another: a square each, its area as the count, the number below."""

import math
from typing import Final

from service.feeds.pictures.canvas import Canvas
from service.feeds.pictures.lettering import broken, clean
from service.feeds.pictures.manners import FAINT, TITLE
from service.use_cases.picture_records import Grid

_SQUARE_WIDE: Final = 44.0
_SQUARE_NARROW: Final = 34.0
"""The side of the largest square."""
_APART: Final = 12.0


def draw_grid(grid: Grid, canvas: Canvas) -> None:
    """Draw the names, the squares and the counts; where rows are columns, the diagonal is full."""
    form = canvas.form
    largest = _SQUARE_NARROW if form.narrow else _SQUARE_WIDE
    names = max(map(canvas.width_of, [*grid.rows, grid.down])) + _APART
    left = min(names, form.width / 3)
    room = min((form.width - left) / len(grid.columns), largest * 2.2)
    high = largest + form.line + _APART + 4
    top = 2 * form.line + 8
    most = max(count for row in grid.counts for count in row)
    right = left + room * len(grid.columns)
    canvas.words((left, canvas.size), grid.across, manner=TITLE, room=form.width - left)
    down = broken(clean(grid.down), form.size, left - 4, 2)
    for n, words in enumerate(reversed(down)):
        canvas.words((0, canvas.size + form.line * (1 - n)), words, manner=TITLE, whole=grid.down)
    for column, name in enumerate(grid.columns):
        x = left + room * (column + 0.5)
        canvas.words((x, canvas.size + form.line), name, anchor="middle", room=room - 2)
    same = grid.rows == grid.columns
    for row, counts in enumerate(grid.counts):
        head = top + high * row
        canvas.stroke((0, head), (right, head), "rule", 0.75)
        middle = head + 6 + largest / 2
        canvas.words((0, canvas.middle(middle)), grid.rows[row], room=left - 6)
        for column, count in enumerate(counts):
            x, side = left + room * (column + 0.5), largest * math.sqrt(count / most)
            if count:
                corner = (x - side / 2, middle - side / 2)
                full = row == column or not same
                canvas.box(corner, (side, side), "ink" if full else "ground", "ink")
            base = middle + largest / 2 + canvas.size + 3
            canvas.words((x, base), f"{count:,}", manner=FAINT, anchor="middle")
    canvas.height = top + high * len(grid.rows)
