"""Questions that Pailtext cannot answer yet, and says so."""

from __future__ import annotations

from bot.answers.asked import Asked
from bot.wording import coming as wording


def export(_asked: Asked) -> str:
    """One's own data."""
    return wording.EXPORT
