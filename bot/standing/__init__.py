"""Where a sugarbush stands: its records folded into taps, boils, stored sap and sums."""

from __future__ import annotations

from bot.standing.boils import BOIL_IS_STALE, Boil, BoilSums, boil_sums, boils_of, open_boil
from bot.standing.known import Known, know
from bot.standing.store import sap_on_hand, stored_sap
from bot.standing.sums import part_of_season, season_boils, season_tally
from bot.standing.taps import SEASON_OVER, Taps, taps_of

__all__ = [
    "BOIL_IS_STALE",
    "SEASON_OVER",
    "Boil",
    "BoilSums",
    "Known",
    "Taps",
    "boil_sums",
    "boils_of",
    "know",
    "open_boil",
    "part_of_season",
    "sap_on_hand",
    "season_boils",
    "season_tally",
    "stored_sap",
    "taps_of",
]
