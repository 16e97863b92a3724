"""One pandoc process that reads documents until it is closed: shut in, and bounded in all it takes.

Starting pandoc takes longer than reading two pages with it, so a process is kept and
handed one document after another, through pandoc's own Lua (`worker.lua`).
"""

import contextlib
import io
import os
import subprocess
import sys
import threading
import weakref
from dataclasses import dataclass
from enum import Enum
from pathlib import Path
from typing import IO, cast

import pypandoc

if sys.platform == "linux":
    import resource

MEMORY = 256 * 1024 * 1024
"""Bytes of the converter's heap, and of all its own data: a two-page document takes 40 MB."""
MAX_OUTPUT = 16 * 1024 * 1024
"""Bytes of syntax tree read back: some 400,000 words, a thousand times a digest."""
_SCRIPT = Path(__file__).with_name("worker.lua")
_READY = b"ready\n"
_GRACE = 2.0
"""Seconds a worker gets to end by itself once nothing more is coming."""


class Verdict(Enum):
    """What came of a document that was handed to a worker."""

    READ = "read"
    UNREADABLE = "unreadable"
    TOO_LARGE = "too large"
    TOO_SLOW = "too slow"


_SAID = {b"0": Verdict.READ, b"1": Verdict.UNREADABLE, b"2": Verdict.TOO_LARGE}


@dataclass(frozen=True, slots=True)
class Answer:
    """A worker's answer.

    Attributes:
        verdict: what came of the document.
        tree: its syntax tree in JSON; empty unless it was read.
    """

    verdict: Verdict
    tree: bytes = b""


class WorkerNotStarted(RuntimeError):
    """Pandoc could not be started, or not with our script: nothing about a document."""

    def __init__(self, status: int) -> None:
        super().__init__(f"pandoc ended with {status} before it read anything")


class Worker:
    """A running pandoc. One thread at a time may use it.

    Attributes:
        taken: how many documents it was handed.
        killed: whether a signal ended it, which is more often the system's doing, short of
            memory, than the document's.
    """

    def __init__(self) -> None:
        self.taken = 0
        self.killed = False
        self._ready = False
        self._process = subprocess.Popen(  # noqa: S603 - a fixed command, its input on a pipe
            _command(),
            bufsize=0,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            cwd=os.path.abspath(os.sep),  # noqa: PTH100 - the root, on every system
            env=_environment(),
            # An interrupt typed at the terminal is for Catchword, which closes its workers.
            start_new_session=True,
        )
        _bound(self._process.pid)
        self._source = cast("io.FileIO", self._process.stdin)
        self._target = cast("IO[bytes]", io.BufferedReader(cast("io.FileIO", self._process.stdout)))
        self._end = weakref.finalize(self, _ended, self._process, self._source, self._target)

    @property
    def pid(self) -> int:
        """The id of its process."""
        return self._process.pid

    @property
    def alive(self) -> bool:
        """Whether it can be handed a document."""
        return self._process.poll() is None

    def read(self, content: bytes, reader: str, seconds: float) -> Answer:
        """Return what a document comes to; a worker that failed at it is no longer `alive`.

        Args:
            content: the document.
            reader: pandoc's name of its format, with extensions.
            seconds: how long it may take by the clock on the wall.

        Raises:
            WorkerNotStarted: pandoc does not run here.
        """
        self.taken += 1
        deadline = _Deadline(self._process)
        timer = threading.Timer(seconds, deadline.pass_)
        timer.daemon = True
        timer.start()
        try:
            answer = self._exchange(content, reader)
        except BaseException:
            self._process.kill()
            self.close()
            raise
        finally:
            timer.cancel()
            passed = deadline.over()
        if answer is not None and not passed:
            return answer
        status = self.close()
        self.killed = status < 0 and not passed
        if passed:
            return Answer(Verdict.TOO_SLOW)
        if not (self._ready or self.killed):
            raise WorkerNotStarted(status)
        # It catches what pandoc says of a document, so it ends by itself for want of room alone.
        return Answer(Verdict.TOO_LARGE if status > 0 else Verdict.UNREADABLE)

    def close(self) -> int:
        """End the process, wait until it is gone, and return its exit status."""
        self._end()
        return self._process.returncode

    def _exchange(self, content: bytes, reader: str) -> Answer | None:
        """Send a document and take the answer; None when the process ended before it was whole."""
        self._ready = self._ready or self._target.readline() == _READY
        if not self._ready:
            return None
        try:
            self._send(b"%d %s\n" % (len(content), reader.encode()))
            self._send(content)
        except OSError:
            return None
        status, _, length = self._target.readline().partition(b" ")
        if status not in _SAID or not length.endswith(b"\n"):
            return None
        tree = self._target.read(int(length))
        return Answer(_SAID[status], tree) if len(tree) == int(length) else None

    def _send(self, content: bytes) -> None:
        left = memoryview(content)
        while left:
            left = left[self._source.write(left) :]


class _Deadline:
    """Kills a process when the time of one document is over, and never later than that."""

    def __init__(self, process: subprocess.Popen[bytes]) -> None:
        self._process = process
        self._lock = threading.Lock()
        self._open = True
        self._passed = False

    def pass_(self) -> None:
        """End the document's time: called by the timer."""
        with self._lock:
            if self._open:
                self._passed = True
                self._process.kill()

    def over(self) -> bool:
        """Say that the document is done with, and tell whether its time ran out before."""
        with self._lock:
            self._open = False
            return self._passed


def _ended(process: subprocess.Popen[bytes], source: io.FileIO, target: IO[bytes]) -> None:
    """Let a process end, or end it, and take its exit status, so that nothing is left behind."""
    source.close()
    target.close()
    try:
        process.wait(_GRACE)
    except subprocess.TimeoutExpired:
        process.kill()
        process.wait()


def _command() -> list[str]:
    bounds = ["+RTS", f"-M{MEMORY}", "-RTS"]
    return [pypandoc.get_pandoc_path(), "lua", str(_SCRIPT), str(MAX_OUTPUT), *bounds]


def _bound(pid: int) -> None:
    """Hold a process to its memory by the system too, where the system can.

    Alone, pandoc's own bound makes it tidy up over and over near the end of its heap, until
    the time is over; the system's ends it within a second. Where a stricter bound is set
    already, that one holds.
    """
    if sys.platform == "linux":
        with contextlib.suppress(OSError, ValueError):
            resource.prlimit(pid, resource.RLIMIT_DATA, (MEMORY, MEMORY))


def _environment() -> dict[str, str]:
    """Return the least pandoc starts with: a language, no home, and no file for its history."""
    kept = {key: os.environ[key] for key in ("SYSTEMROOT",) if key in os.environ}
    return {"LANG": "C.UTF-8", "HOME": os.devnull, "PANDOC_REPL_HISTORY": os.devnull, **kept}
