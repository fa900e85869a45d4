"""Questions that Pailtext cannot answer yet, and says so."""

from __future__ import annotations

from bot.answers.asked import Asked
from bot.wording import coming as wording
from bot.wording import totals


def forecast(_asked: Asked) -> str:
    """There is no forecast, so none is invented."""
    return wording.NO_FORECAST


def boil_plan(_asked: Asked) -> str:
    """A plan for the boil."""
    return wording.BOIL_PLAN


def tap_plan(asked: Asked) -> str:
    """A plan for the taps; "how many taps" alone asks how many hang."""
    if asked.says("should", "need", "can", "inch", "inches", "tree", "trees", "plan"):
        return wording.TAP_PLAN
    return totals.taps(None if asked.known.taps is None else dict(asked.known.taps.by_lot))


def export(_asked: Asked) -> str:
    """One's own data."""
    return wording.EXPORT


def howto(_asked: Asked) -> str:
    """How something is done."""
    return wording.HOWTO
