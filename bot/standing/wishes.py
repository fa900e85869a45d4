"""How each person wants to be texted unasked, out of what they told."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import time
from typing import Final

from bot.entry import Entry

WISH: Final = "wish"
RUN_DAYS, EVERY, NEVER = "run_days", "every", "never"
# The hour of the morning alert while nobody has told another (our own).
USUAL_ALERT_AT: Final = time(6, 30)


@dataclass(frozen=True, slots=True)
class Wishes:
    """alert_at: local time of the morning alert. mornings: "run_days", "every", or "never", which
    forbids all unasked texts but a weekly total that was asked for. weekly: that total."""

    alert_at: time = USUAL_ALERT_AT
    mornings: str = RUN_DAYS
    weekly: bool = False

    @property
    def wants_reminders(self) -> bool:
        """False for those who want nothing unasked."""
        return self.mornings != NEVER


def wishes_of(entries: Iterable[Entry]) -> Wishes:
    """What stands of one person's `wish` entries, which come in wall-clock order: each changes
    what it tells and leaves the rest."""
    told: dict[str, object] = {}
    for entry in entries:
        told.update(entry.detail)
    usual = Wishes()
    at, mornings, weekly = (told.get(name) for name in ("alert_at", "mornings", "weekly"))
    return Wishes(
        alert_at=usual.alert_at if at is None else time.fromisoformat(str(at)),
        mornings=usual.mornings if mornings is None else str(mornings),
        weekly=usual.weekly if weekly is None else bool(weekly),
    )
