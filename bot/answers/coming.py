"""Questions that Pailtext cannot answer yet, and says so."""

from __future__ import annotations

from bot.answers.asked import Asked
from bot.wording import coming as wording


def forecast(_asked: Asked) -> str:
    """There is no forecast, so none is invented."""
    return wording.NO_FORECAST


def boil_plan(_asked: Asked) -> str:
    """A plan for the boil."""
    return wording.BOIL_PLAN


def tap_plan(_asked: Asked) -> str:
    """A plan for the taps."""
    return wording.TAP_PLAN


def export(_asked: Asked) -> str:
    """One's own data."""
    return wording.EXPORT


def howto(_asked: Asked) -> str:
    """How something is done."""
    return wording.HOWTO
