"""The invented reader's year."""

from datetime import UTC, datetime
from pathlib import Path
from random import Random
from uuid import UUID

from service.main import desk_on
from service.store.sql_store import SqlStore
from service.use_cases import found_demo
from service.use_cases.found_demo import DemoFile
from service.use_cases.items import item_history, list_items
from service.use_cases.library import list_digests, open_digest
from service.use_cases.records import ReaderId
from tests.standing import lay_empty_library

LIBRARY = Path(found_demo.__file__).parent.parent / "documents" / "demo_library"
NOW = datetime(2026, 11, 24, 20, tzinfo=UTC)


def founded(folder: Path, name: str, seed: int):
    """Found a small demo library and tell all of it."""
    lay_empty_library(folder / name)
    store = SqlStore(f"sqlite:///{folder / name}")
    reader = ReaderId(UUID(int=1))
    files = [
        DemoFile(file.name, file.read_bytes())
        for file in (LIBRARY / "walden.docx", LIBRARY / "silas-marner.docx")
    ]
    with desk_on(store, lambda: NOW, lambda: UUID(int=5), reader) as desk:
        found_demo.found_demo(desk, files, seed)
        items = list_items(desk).items
        told = (
            [open_digest(desk, entry.kept.id) for entry in list_digests(desk).entries],
            [item_history(desk, item.kept.item.id).answers for item in items],
        )
    store.close()
    return told


def test_the_same_seed_tells_the_same_year(tmp_path, monkeypatch):
    """Same day and seed, same library; another seed, other answers. A month stands for the year."""
    monkeypatch.setattr(found_demo, "YEAR", 30)
    one, same, other = (
        founded(tmp_path, f"{name}.db", seed) for name, seed in (("a", 1), ("b", 1), ("c", 2))
    )
    assert one == same
    assert one != other


def test_the_year_is_whole(tmp_path, monkeypatch):
    """Digests, answers up to the days away, check-ins, none after now, in two months of a year."""
    monkeypatch.setattr(found_demo, "YEAR", 60)
    digests, answers = founded(tmp_path, "a.db", Random(3).randrange(100))
    flat = [kept.answer for history in answers for kept in history]
    assert len(digests) == 2
    assert len(flat) > 20
    assert {answer.grade.value for answer in flat} >= {"blank", "clear", "vivid"}
    assert all(answer.answered_at < NOW for answer in flat)
    assert any(opened.check_ins for opened in digests)
