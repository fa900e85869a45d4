"""Work for an engine that notes what it is asked to do, and a rhythm of seconds."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import Any

from bot.jobs import Jobs, Rhythm, Work
from bot.ledger import Due
from bot.ledger.presence import presence_on

EVERY_SECOND = "* * * * * *"
NEVER = "0 0 29 2 *"
PATIENCE_S = 60.0


@dataclass
class Desk:
    """`waiting` is what is due; `outcomes` is what becomes of a text, "sent" where not told."""

    waiting: list[Due] = field(default_factory=list)
    outcomes: dict[int, Callable[[], str]] = field(default_factory=dict)
    delivered: list[int] = field(default_factory=list)
    rounds: int = 0
    taken_up: int = 0
    lock: threading.Lock = field(default_factory=threading.Lock)

    def go(self) -> int:
        self.rounds += 1
        return 0

    def fail(self) -> int:
        raise RuntimeError("invented")

    def take_up(self) -> int:
        self.taken_up += 1
        return 0

    def due(self) -> list[Due]:
        with self.lock:
            return list(self.waiting)

    def deliver(self, text_id: int) -> str:
        with self.lock:
            self.delivered.append(text_id)
        return self.outcomes.get(text_id, lambda: "sent")()

    def wait_for(self, *due: Due) -> None:
        """Add what is due, and wait until each was delivered at least once."""
        with self.lock:
            self.waiting += due
        wanted = {each.id for each in due}
        wait_until(lambda: wanted <= set(self.ids()))

    def wait_for_ticks(self, ticks: int) -> None:
        """Wait until the minute has struck so often again."""
        wanted = self.taken_up + ticks
        wait_until(lambda: self.taken_up >= wanted)

    def ids(self) -> list[int]:
        with self.lock:
            return sorted(self.delivered)

    def work(self) -> Work:
        return Work((self.fail, self.go), self.take_up, self.due, self.deliver)


@contextmanager
def running(url: str, desk: Desk, **more: Any) -> Iterator[Jobs]:
    """An engine of the real kind on the store at `url`, until the end of the block."""
    quick: dict[str, Any] = {
        "plan": NEVER,
        "carry": EVERY_SECOND,
        "take_over": NEVER,
        "tidy": NEVER,
        "poll_s": 0.1,
    }
    jobs = Jobs(url, presence_on(url), desk.work(), Rhythm(**(quick | more)))
    jobs.start()
    try:
        yield jobs
    finally:
        jobs.stop()


def wait_until(holds: Callable[[], bool]) -> None:
    deadline = time.monotonic() + PATIENCE_S
    while not holds():
        assert time.monotonic() < deadline, "it never came to that"
        time.sleep(0.02)


def dues(*numbers: int, tries: int = 0, sent_from: str = "") -> list[Due]:
    return [Due(number, tries, sent_from) for number in numbers]
