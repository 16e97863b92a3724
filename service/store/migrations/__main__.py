"""Begin a migration: `python -m service.store.migrations "What changes"`.

Writes a module into `versions/` with the difference between what the migrations make
and what the tables say. Read it, mend it, and raise `HEAD`; the tests compare the two.
"""

import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from alembic import command

from service.store.engine import open_engines
from service.store.migrations import HEAD, alembic_config, bring_up_to_date


def begin(message: str, folder: Path | None = None) -> Path:
    """Write the next revision and return its file; in `versions/` unless a folder is given."""
    with TemporaryDirectory() as place:
        engines = open_engines(f"sqlite:///{Path(place) / 'library.db'}")
        bring_up_to_date(engines)
        with engines.writing.connect() as connection:
            config = alembic_config(connection)
            if folder:
                config.set_main_option(
                    "version_locations", f"{Path(__file__).parent / 'versions'}:{folder}"
                )
            script = command.revision(
                config,
                message,
                autogenerate=True,
                rev_id=f"{int(HEAD) + 1:04}",
                version_path=str(folder) if folder else None,
            )
        engines.close()
    if script is None or isinstance(script, list):
        raise AssertionError("one revision was asked for")
    return Path(script.path)


if __name__ == "__main__":
    begin(sys.argv[1])
