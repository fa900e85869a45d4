"""How somebody will be texted unasked, told back."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import time
from typing import Any

from bot.wording import amounts

NOTHING = (
    "No more texts unasked, neither alerts nor reminders."
    ' "Text me on run days" brings them back. STOP ends all texts.'
)
WEEKLY = "Your week's total comes Sundays at 7 pm."
NO_WEEKLY = "No weekly total any more."
NO_SOURCE = "No forecast is set up here, so no alert comes yet."


def run_days(at: time) -> str:
    """Alerts on run mornings only."""
    return f"I text at {amounts.clock(at)} on mornings when sap may run."


def every(at: time) -> str:
    """Alerts every morning."""
    return f"I text at {amounts.clock(at)} every morning."


def which_hour(opens: time, closes: time) -> str:
    """An hour at which no alert may come."""
    return (
        f"I text alerts from {amounts.clock(opens)} to {amounts.clock(closes)}. At which hour,"
        " like 7?"
    )


def short(detail: Mapping[str, Any]) -> str:
    """A wish in few words, to say that it is taken back: "alerts at 8 am"."""
    said = []
    at = detail.get("alert_at")
    if at is not None:
        said.append(f"alerts at {amounts.clock(time.fromisoformat(str(at)))}")
    mornings = detail.get("mornings")
    if mornings is not None:
        said.append(
            {"every": "alerts every morning", "run_days": "alerts on run days"}.get(
                str(mornings), "no alerts"
            )
        )
    weekly = detail.get("weekly")
    if weekly is not None:
        said.append("weekly total" if weekly else "no weekly total")
    return ", ".join(said) or "how I text you"
