"""The morning: who is told what unasked, and when. `Planner` decides, the outbox sends."""

from __future__ import annotations

from bot.morning.planning import Planner

__all__ = ["Planner"]
