"""Print the figures of README's table: `python -m tests.benchmarks`."""

import shutil
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks import (
    adding,
    answering,
    composing_time,
    exporting,
    feeding,
    fitting,
    folding,
    locating,
    pacing,
    printing,
    retaining,
    sitting,
)
from tests.office import MISSING

if __name__ == "__main__":
    with TemporaryDirectory() as folder:
        print(f"folding a history    {folding.measure()} (at most {folding.LIMIT})")
        print(f"locating a quotation {locating.measure()} (at most {locating.LIMIT})")
        print(f"recording an answer  {answering.measure(Path(folder))} (at most {answering.LIMIT})")
        print(f"today's sitting      {sitting.measure(Path(folder))} (at most {sitting.LIMIT})")
        composed = composing_time.measure(Path(folder))
        print(f"composing a sitting  {composed} (at most {composing_time.LIMIT})")
        stands, page = pacing.measure(Path(folder))
        print(f"all commitments      {stands} (at most {pacing.LIMIT})")
        print(f"their page           {page} (at most {pacing.PAGE_LIMIT})")
        retained, growth = retaining.measure(Path(folder))
        print(f"retention's figures  {retained} (at most {retaining.LIMIT})")
        print(f"as answers grow      {growth} (at most {retaining.GROWTH_LIMIT})")
        print(f"fitting weights      {fitting.measure()} (at most {fitting.LIMIT})")
        exported, held = exporting.measure(Path(folder))
        print(f"exporting answers    {exported} (at most {exporting.LIMIT})")
        print(f"memory for that      {held} MB (at most {exporting.MEMORY_LIMIT})")
        fed = feeding.measure()
        print(f"the calendar         {fed} (at most {feeding.LIMIT})")
        print(f"adding a document    {adding.measure(Path(folder))} (at most {adding.LIMIT})")
        if (office := shutil.which("soffice")) is None:
            print(f"printing a digest    {MISSING}")
        else:
            printed = printing.measure(Path(folder), office)
            print(f"printing a digest    {printed} (at most {printing.LIMIT})")
