"""What was told of sugarbushes, remembered in this process while no record is added to them."""

from __future__ import annotations

import threading
from collections import OrderedDict

from bot.ledger import Edition
from bot.standing.known import Told

# Sugarbushes that are remembered, those that texted last: some 3 kB each (our own).
MOST = 2000


class Memory:
    """What was told, by sugarbush. Safe in threads."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._kept: OrderedDict[int, tuple[Edition, int, Told]] = OrderedDict()

    def told(self, edition: Edition | None, since_season: int) -> Told | None:
        """What was told up to an edition, now and then from a season on; None if not at hand."""
        if edition is None:
            return None
        with self._lock:
            kept = self._kept.get(edition.sugarbush_id)
        if kept is None or kept[:2] != (edition, since_season):
            return None
        return kept[2]

    def keep(self, edition: Edition, since_season: int, told: Told) -> None:
        """Remember it. Only once the transaction that saw it is committed."""
        with self._lock:
            self._kept[edition.sugarbush_id] = edition, since_season, told
            self._kept.move_to_end(edition.sugarbush_id)
            if len(self._kept) > MOST:
                self._kept.popitem(last=False)

    def drop(self, sugarbush_id: int) -> None:
        """Forget what was told of a sugarbush."""
        with self._lock:
            self._kept.pop(sugarbush_id, None)
