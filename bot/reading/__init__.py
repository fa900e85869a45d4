"""Reading: what a sugarer's text means. Pure: no clock, no I/O."""

from __future__ import annotations

from bot.reading.amounts import Amount, amounts, days
from bot.reading.numbers import figures_spoken
from bot.reading.read import read
from bot.reading.settling import settle
from bot.reading.tidy import tidy as tidied
from bot.reading.understanding import Choice, Doubt, Profile, Understanding

__all__ = [
    "Amount",
    "Choice",
    "Doubt",
    "Profile",
    "Understanding",
    "amounts",
    "days",
    "figures_spoken",
    "read",
    "settle",
    "tidied",
]
