"""The documents of the project say what the project is."""

import re
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]


def the_map() -> list[Path]:
    """The paths the map of the house names, by their indentation."""
    paths: list[Path] = []
    folders: list[tuple[int, Path]] = []
    for line in DEVELOPERS.split("```")[1].splitlines():
        found = re.match(r"( *)([\w./]+(?:/|\.py))(?= |$)", line)
        if found is None or len(found[1]) > 4:
            continue
        indent, name = len(found[1]), found[2]
        folders = [folder for folder in folders if folder[0] < indent]
        parent = folders[-1][1] if folders else ROOT
        paths.append(parent / name)
        if name.endswith("/"):
            folders.append((indent, parent / name))
    return paths


def test_every_room_on_the_map_is_there():
    """Each folder and module the map names exists."""
    paths = the_map()
    assert len(paths) > 25
    assert not [path for path in paths if not path.exists()]


def test_every_room_is_on_the_map():
    """Each module of the core and each room of the service stands on the map."""
    named = {path.resolve() for path in the_map()}
    for module in (ROOT / "cards").iterdir():
        if module.name not in {"__init__.py", "__pycache__"}:
            assert module.resolve() in named, module
    for room in (ROOT / "service").iterdir():
        if room.name not in {"__init__.py", "__pycache__"}:
            assert room.resolve() in named, room


@pytest.mark.parametrize(
    "requirement",
    [*PROJECT["dependencies"], *PROJECT["optional-dependencies"]["test"]],
)
def test_every_dependency_has_its_reason(requirement):
    """Each package that is needed is named in DEVELOPERS.md with what it is for."""
    name = re.split(r"[\[<>=~]", requirement)[0]
    plain = {"axe-playwright-python": "axe-core", "pypandoc-binary": "pypandoc-binary"}
    assert plain.get(name, name).removeprefix("types-") in DEVELOPERS.replace("Alembic", "alembic")


def test_each_start_is_one_line():
    """The two commands and the third are single lines that set everything up themselves."""
    lines = [line for line in README.splitlines() if line.startswith("python3 -m venv")]
    assert len(lines) == 3
    assert lines[0].endswith("catchword demo")
    assert lines[1].endswith("python -m tests")
    assert lines[2].endswith("catchword serve")


def test_every_figure_has_its_limit_in_the_benchmarks():
    """The limits in the README's table are the ones the suite holds the measurements to."""
    from tests.benchmarks import (  # noqa: PLC0415
        adding,
        answering,
        folding,
        locating,
        printing,
        sitting,
    )

    table = README.split("## Figures")[1]
    assert f"| {adding.FLAT} |" in table
    for measured in (answering, sitting, folding, adding, printing, locating):
        assert f"| {measured.LIMIT} |" in table
