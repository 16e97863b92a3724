"""What a picture is, before it is drawn: what it shows, in words, in figures and as a drawing.

Views make these from what they found, each value in its own unit and nothing of inches or ink;
a `Drawer` draws them. Nothing here is ever refused to a reader: a picture that cannot be is a
fault of the view that made it, and a `ValueError`.
"""

from service.use_cases.picture_records.counts import DayBar, Days, Grid, Month, Months
from service.use_cases.picture_records.curves import Axis, Curves, Dot, Line, Scale, StepLine, Steps
from service.use_cases.picture_records.picture import Drawer, Drawing, Picture
from service.use_cases.picture_records.shares import Calibration, Foreseen, Share, Shares
from service.use_cases.picture_records.table import Cell, Column, Table, Unit, shown

__all__ = [
    "Axis",
    "Calibration",
    "Cell",
    "Column",
    "Curves",
    "DayBar",
    "Days",
    "Dot",
    "Drawer",
    "Drawing",
    "Foreseen",
    "Grid",
    "Line",
    "Month",
    "Months",
    "Picture",
    "Scale",
    "Share",
    "Shares",
    "StepLine",
    "Steps",
    "Table",
    "Unit",
    "shown",
]
