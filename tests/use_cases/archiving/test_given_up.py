"""An archive that is given up half-way."""

import inspect
import io
from dataclasses import dataclass, field, replace

import pytest

from service.use_cases.archiving import archive_everything
from tests.use_cases.archiving.lives import Lived


@dataclass
class Full:
    """A writer whose disk is full once it has read a fact of every sort."""

    begun: list = field(default_factory=list)

    def write_archive(self, _, contents) -> None:
        """Read the first of each, and no more."""
        self.begun = [contents.rows(table) for table in contents.tables]
        for rows in self.begun:
            next(rows)
        raise OSError


def test_a_full_disk_leaves_no_fact_half_read(lived: Lived) -> None:
    """Reading ends before the transaction does: a cursor outliving it fails when it is closed."""
    full = Full()
    with pytest.raises(OSError):  # noqa: PT011 - as the system raised it
        archive_everything(replace(lived.house.desk, feeds=full), io.BytesIO())
    assert {inspect.getgeneratorstate(rows) for rows in full.begun} == {inspect.GEN_CLOSED}
