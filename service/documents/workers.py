"""The few pandoc processes a reader of documents keeps, lent to one thread at a time."""

import os
import threading
import time
import weakref

from service.documents.worker import Answer, Verdict, Worker

MOST = 2
"""Processes at a time; a third document waits. Each takes up to 200 MB."""
DOCUMENTS = 200
"""Documents after which a process is replaced by a new one, whatever it has gathered."""
IDLE = 60.0
"""Seconds after which a process nobody needed is ended."""


class Workers:
    """Pandoc processes, started when a document comes and none is free.

    Attributes:
        idle: seconds after which a process nobody needed is ended.
    """

    def __init__(self, idle: float = IDLE) -> None:
        self.idle = idle
        self._begin()
        _POOLS.add(self)

    def _begin(self) -> None:
        self._changed = threading.Condition()
        self._free: list[tuple[float, Worker]] = []
        self._lent: set[Worker] = set()
        self._sweeping = False

    def read(self, content: bytes, reader: str, seconds: float) -> Answer:
        """Return what a document comes to, see `Worker.read`.

        One that failed in a process which had read others before, or was killed, is tried
        again in a new one, so that no document is refused for what another left behind.
        """
        worker = self._borrow()
        until = time.monotonic() + seconds
        try:
            if not worker.alive:
                worker = self._replaced(worker)
            answer = worker.read(content, reader, seconds)
            at_first = worker.taken == 1 and not worker.killed
            if worker.alive or at_first or answer.verdict is Verdict.TOO_SLOW:
                return answer
            worker = self._replaced(worker)
            return worker.read(content, reader, max(0.0, until - time.monotonic()))
        finally:
            self._give_back(worker)

    def pids(self) -> list[int]:
        """Return the ids of the processes that wait for a document."""
        with self._changed:
            return [worker.pid for _, worker in self._free]

    def close(self) -> None:
        """End every process; one that is reading ends when it is done. New ones may be started."""
        with self._changed:
            free, self._free = self._free, []
            self._lent.clear()
        for _, worker in free:
            worker.close()

    def _borrow(self) -> Worker:
        with self._changed:
            while not self._free and len(self._lent) >= MOST:
                self._changed.wait()
            worker = self._free.pop()[1] if self._free else Worker()
            self._lent.add(worker)
        return worker

    def _replaced(self, spent: Worker) -> Worker:
        """Return a new worker lent in the place of one that ended."""
        spent.close()
        worker = Worker()
        with self._changed:
            self._lent.discard(spent)
            self._lent.add(worker)
        return worker

    def _give_back(self, worker: Worker) -> None:
        with self._changed:
            kept = worker in self._lent and worker.alive and worker.taken < DOCUMENTS
            self._lent.discard(worker)
            if kept:
                self._free.append((time.monotonic(), worker))
                self._sweep_later()
            self._changed.notify()
        if not kept:
            worker.close()

    def _sweep_later(self) -> None:
        if not self._sweeping:
            self._sweeping = True
            timer = threading.Timer(self.idle, _sweep, [weakref.ref(self)])
            timer.daemon = True
            timer.start()

    def sweep(self) -> None:
        """End the processes nobody needed for a while; called by a timer of its own."""
        with self._changed:
            self._sweeping = False
            before = time.monotonic() - self.idle
            stale = [worker for since, worker in self._free if since <= before]
            self._free = [kept for kept in self._free if kept[0] > before]
            if self._free:
                self._sweep_later()
        for worker in stale:
            worker.close()


_POOLS: weakref.WeakSet[Workers] = weakref.WeakSet()


def _sweep(pool: weakref.ref[Workers]) -> None:
    if (workers := pool()) is not None:
        workers.sweep()


def _forget() -> None:
    """Leave the parent's processes to the parent: two must not write into one pipe."""
    for workers in _POOLS:
        workers._begin()  # noqa: SLF001 - the pools of this module


if hasattr(os, "register_at_fork"):
    os.register_at_fork(after_in_child=_forget)
