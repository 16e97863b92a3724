"""Pandoc is kept and handed one document after another, shut in, bounded, and never left behind."""

import gc
import json
import os
import signal
import subprocess
import threading
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from http.server import BaseHTTPRequestHandler, HTTPServer
from pathlib import Path

import pypandoc
import pytest

from service.documents import worker as worker_module
from service.documents import workers as workers_module
from service.documents.worker import Answer, Verdict, Worker, WorkerNotStarted
from service.documents.workers import MOST, Workers

LITTLE = 64 * 1024 * 1024
"""Bytes of memory in which pandoc starts and reads a page."""
BOMB = b"<div>" * 20_000 + b"x"
"""A page that takes more memory than that."""
SLOW = b"<ul><li>" * 3_000 + b"x"
"""A page that pandoc needs minutes for."""


@pytest.fixture
def workers() -> Iterator[Workers]:
    """Workers of this test alone."""
    made = Workers()
    yield made
    made.close()


def words(answer: Answer) -> list[str]:
    """Return the words of an answer that was read."""
    assert answer.verdict is Verdict.READ
    tree = json.loads(answer.tree)
    return [inline["c"] for block in tree["blocks"] for inline in block["c"] if "c" in inline]


def free(workers: Workers) -> list[Worker]:
    """Return the workers that wait for a document."""
    return [worker for _, worker in workers._free]


def gone(process: int) -> bool:
    """Tell whether a process is neither running nor waiting for its exit to be taken note of."""
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return True
    return False


def test_one_process_reads_many_documents(workers: Workers):
    """A second document goes to the process that read the first, and gets its own answer."""
    assert words(workers.read(b"one\n", "commonmark", 10)) == ["one"]
    (first,) = free(workers)
    assert words(workers.read(b"two\n", "commonmark", 10)) == ["two"]
    assert free(workers) == [first]
    assert first.taken == 2


def test_a_document_of_no_bytes_is_answered(workers: Workers):
    """An empty document is read at once, and the next one is too."""
    assert words(workers.read(b"", "html", 5)) == []
    assert words(workers.read(b"two\n", "commonmark", 5)) == ["two"]


def test_no_process_before_the_first_document():
    """A reader of documents that reads none starts nothing."""
    assert free(Workers()) == []


@pytest.mark.parametrize(
    ("content", "verdict"), [(BOMB, Verdict.TOO_LARGE), (b"PK not a zip", Verdict.UNREADABLE)]
)
def test_a_document_fails_alone(
    workers: Workers, content: bytes, verdict: Verdict, monkeypatch: pytest.MonkeyPatch
):
    """What kills a process or can not be read is refused as what it is; the next is read."""
    monkeypatch.setattr(worker_module, "MEMORY", LITTLE)
    workers.read(b"one\n", "commonmark", 10)
    reader = "html" if content is BOMB else "docx"
    assert workers.read(content, reader, 60).verdict is verdict
    assert words(workers.read(b"two\n", "commonmark", 10)) == ["two"]


def test_a_document_that_takes_too_long_is_stopped(workers: Workers):
    """Its process is killed when the time is over, and the next document gets a new one."""
    assert workers.read(SLOW, "html", 0.3).verdict is Verdict.TOO_SLOW
    assert free(workers) == []
    assert words(workers.read(b"two\n", "commonmark", 10)) == ["two"]


def test_a_process_killed_between_documents_is_replaced(workers: Workers):
    """The death of a waiting process costs no document."""
    workers.read(b"one\n", "commonmark", 10)
    (first,) = free(workers)
    os.kill(first.pid, signal.SIGKILL)
    assert words(workers.read(b"two\n", "commonmark", 10)) == ["two"]
    assert free(workers) != [first]
    assert gone(first.pid)


def test_a_process_killed_over_a_document_is_tried_again_once(
    workers: Workers, monkeypatch: pytest.MonkeyPatch
):
    """A document whose process had read others before is read in a new one."""
    workers.read(b"one\n", "commonmark", 10)
    (first,) = free(workers)
    exchange = first._exchange

    def killed(content: bytes, reader: str) -> Answer | None:
        os.kill(first.pid, signal.SIGKILL)
        return exchange(content, reader)

    monkeypatch.setattr(first, "_exchange", killed)
    assert words(workers.read(b"two\n", "commonmark", 10)) == ["two"]


@pytest.mark.parametrize("started", [True, False])
def test_a_process_killed_over_its_first_document_is_tried_again_too(
    workers: Workers, monkeypatch: pytest.MonkeyPatch, *, started: bool
):
    """What a system short of memory kills, ready or not yet, is no document's fault."""
    exchange = Worker._exchange
    killed: list[int] = []

    def kill_first(self: Worker, content: bytes, reader: str) -> Answer | None:
        if not killed:
            killed.append(self.pid)
            self._ready = started and self._target.readline() == b"ready\n"
            os.kill(self.pid, signal.SIGKILL)
        return exchange(self, content, reader)

    monkeypatch.setattr(Worker, "_exchange", kill_first)
    assert words(workers.read(b"one\n", "commonmark", 10)) == ["one"]
    assert gone(*killed)


def test_a_process_is_replaced_after_so_many_documents(
    workers: Workers, monkeypatch: pytest.MonkeyPatch
):
    """What a process gathers is let go with it."""
    monkeypatch.setattr(workers_module, "DOCUMENTS", 2)
    workers.read(b"one\n", "commonmark", 10)
    (first,) = free(workers)
    workers.read(b"two\n", "commonmark", 10)
    assert free(workers) == []
    assert gone(first.pid)


def test_closing_leaves_no_process_behind():
    """After closing, no process runs or lingers, and a later document starts a new one."""
    workers = Workers()
    workers.read(b"one\n", "commonmark", 10)
    (first,) = free(workers)
    workers.close()
    assert gone(first.pid)
    assert words(workers.read(b"two\n", "commonmark", 10)) == ["two"]
    workers.close()


def test_workers_nobody_closed_end_when_they_are_dropped():
    """Dropping a reader of documents ends its processes, without a warning."""
    workers = Workers()
    workers.read(b"one\n", "commonmark", 10)
    process = free(workers)[0].pid
    del workers
    gc.collect()
    assert gone(process)


def test_idle_processes_end():
    """A process nobody needed for the time set is ended, one just used is not."""
    workers = Workers(idle=3600)
    workers.read(b"one\n", "commonmark", 10)
    workers.sweep()
    (first,) = free(workers)
    workers.idle = 0
    workers.sweep()
    assert free(workers) == []
    assert gone(first.pid)


def test_threads_get_their_own_answers_from_few_processes(workers: Workers):
    """Eight threads read at once, each its own documents, and few processes are left over."""

    def read(number: int) -> bool:
        return words(workers.read(b"n%d\n" % number, "commonmark", 30)) == [f"n{number}"]

    with ThreadPoolExecutor(8) as threads:
        assert all(threads.map(read, range(160)))
    assert 1 <= len(free(workers)) <= MOST


def test_an_interrupt_ends_the_process_it_was_waiting_for(
    workers: Workers, monkeypatch: pytest.MonkeyPatch
):
    """A reader who interrupts gets the interrupt, and no half answer is left for the next one."""
    workers.read(b"one\n", "commonmark", 10)
    (first,) = free(workers)

    def interrupted(content: bytes, reader: str) -> Answer | None:
        raise KeyboardInterrupt

    monkeypatch.setattr(first, "_exchange", interrupted)
    with pytest.raises(KeyboardInterrupt):
        workers.read(b"two\n", "commonmark", 10)
    assert gone(first.pid)
    assert words(workers.read(b"three\n", "commonmark", 10)) == ["three"]


def test_an_interrupt_typed_at_the_terminal_does_not_reach_pandoc(workers: Workers):
    """A process stands in a session of its own."""
    workers.read(b"one\n", "commonmark", 10)
    assert os.getsid(free(workers)[0].pid) != os.getsid(0)


def test_a_forked_process_starts_its_own(workers: Workers):
    """After a fork the child reads with a process of its own, and the parent's goes on."""
    workers.read(b"one\n", "commonmark", 10)
    (first,) = free(workers)
    child = os.fork()
    if child == 0:
        status = 1
        try:
            right = words(workers.read(b"child\n", "commonmark", 10)) == ["child"]
            status = 0 if right and free(workers)[0].pid != first.pid else 2
            workers.close()
        finally:
            os._exit(status)
    assert os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == 0
    assert words(workers.read(b"two\n", "commonmark", 10)) == ["two"]
    assert free(workers) == [first]


def test_pandoc_that_does_not_start_is_no_fault_of_the_document(monkeypatch: pytest.MonkeyPatch):
    """A broken installation is an error of ours, never a refusal."""
    monkeypatch.setattr(worker_module, "_SCRIPT", Path("/nowhere/worker.lua"))
    workers = Workers()
    with pytest.raises(WorkerNotStarted):
        workers.read(b"one\n", "commonmark", 10)


INCLUDES = {
    "latex": "\\input{%s}",
    "rst": ".. include:: %s\n",
    "org": '#+INCLUDE: "%s"\n',
}


@pytest.mark.parametrize("reader", INCLUDES)
def test_includes_are_not_followed(workers: Workers, tmp_path: Path, reader: str):
    """A file that pandoc would include, left to itself, is not: the reader runs in its sandbox."""
    secret = tmp_path / "secret.txt"
    secret.write_text("SECRETWORDS")
    text = (INCLUDES[reader] % secret).encode()
    alone = subprocess.run(
        [pypandoc.get_pandoc_path(), "--from", reader, "--to", "json"],
        input=text,
        capture_output=True,
        check=True,
    )
    assert b"SECRETWORDS" in alone.stdout
    assert b"SECRETWORDS" not in workers.read(text, reader, 10).tree


def test_nothing_is_fetched(workers: Workers, tmp_path: Path):
    """Frames, pictures, objects, scripts and styles of a page reach neither network nor disk."""
    asked: list[str] = []

    class Noting(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            asked.append(self.path)
            self.send_response(200)
            self.end_headers()
            self.wfile.write(b"<p>SECRETWORDS</p>")

        def log_message(self, *_: object) -> None:
            """Say nothing."""

    (tmp_path / "secret.html").write_text("<p>SECRETWORDS</p>")
    with HTTPServer(("127.0.0.1", 0), Noting) as server:
        thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.01})
        thread.start()
        try:
            places = (f"http://127.0.0.1:{server.server_port}/", f"file://{tmp_path}/secret.html")
            page = "".join(
                f'<iframe src="{at}"></iframe><img src="{at}"><object data="{at}"></object>'
                f'<embed src="{at}"><script src="{at}"></script><link rel="stylesheet" href="{at}">'
                for at in (*places, str(tmp_path / "secret.html"))
            ).encode()
            subprocess.run(
                [pypandoc.get_pandoc_path(), "--from", "html", "--to", "json"],
                input=page,
                capture_output=True,
                check=True,
            )
            unshut = len(asked)
            tree = workers.read(page + b"<p>kept</p>", "html", 10).tree
        finally:
            server.shutdown()
            thread.join()
    assert unshut > 0
    assert len(asked) == unshut
    assert b"kept" in tree
    assert b"SECRETWORDS" not in tree
