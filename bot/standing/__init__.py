"""Where a sugarbush stands: its records folded into taps, boils, stored sap and sums."""

from __future__ import annotations

from bot.standing.boils import BOIL_IS_STALE, Boil, boils_of, open_boil
from bot.standing.known import Known, know
from bot.standing.store import WINDOW_DAYS, sap_on_hand
from bot.standing.sums import part_of_season, season_tally
from bot.standing.taps import Taps, taps_of

__all__ = [
    "BOIL_IS_STALE",
    "WINDOW_DAYS",
    "Boil",
    "Known",
    "Taps",
    "boils_of",
    "know",
    "open_boil",
    "part_of_season",
    "sap_on_hand",
    "season_tally",
    "taps_of",
]
