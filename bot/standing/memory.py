"""What the records of sugarbushes come to, remembered in this process while none is added."""

from __future__ import annotations

import threading
from collections import OrderedDict
from collections.abc import Hashable
from typing import Generic, TypeVar

from bot.ledger import Edition, KindSum
from bot.reckoning.storage import Stored
from bot.standing.boils import Boil
from bot.standing.known import Told

# Sugarbushes that are remembered, those that texted last: some 3 kB each (our own).
MOST = 2000

What = TypeVar("What")


class Memory(Generic[What]):
    """One thing of each sugarbush, and what else it hangs on. Safe in threads."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._kept: OrderedDict[int, tuple[Edition, Hashable, What]] = OrderedDict()

    def of(self, edition: Edition | None, hangs_on: Hashable) -> What | None:
        """What it was at an edition, with the same that it hangs on; None if not at hand."""
        if edition is None:
            return None
        with self._lock:
            kept = self._kept.get(edition.sugarbush_id)
        if kept is None or kept[:2] != (edition, hangs_on):
            return None
        return kept[2]

    def keep(self, edition: Edition, hangs_on: Hashable, what: What) -> None:
        """Remember it. Only once the transaction that saw it is committed."""
        with self._lock:
            self._kept[edition.sugarbush_id] = edition, hangs_on, what
            self._kept.move_to_end(edition.sugarbush_id)
            if len(self._kept) > MOST:
                self._kept.popitem(last=False)

    def drop(self, sugarbush_id: int) -> None:
        """Forget it of a sugarbush."""
        with self._lock:
            self._kept.pop(sugarbush_id, None)


class Memories:
    """What a process remembers of sugarbushes."""

    def __init__(self) -> None:
        self.told: Memory[Told] = Memory()
        self.sums: Memory[tuple[KindSum, ...]] = Memory()
        self.stored: Memory[Stored] = Memory()
        self.boils: Memory[tuple[Boil, ...]] = Memory()

    def drop(self, sugarbush_id: int) -> None:
        """Forget all of a sugarbush."""
        self.told.drop(sugarbush_id)
        self.sums.drop(sugarbush_id)
        self.stored.drop(sugarbush_id)
        self.boils.drop(sugarbush_id)
