"""How syrup is filtered, and sap strained."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.howto_figures import FILTER_F
from bot.answers.howto.known import Known
from bot.answers.howto.measures import heat_at_least, heats
from bot.answers.howto.told import Told
from bot.figures import BOTTLE_F_LEAST

SOURCES: Final = (
    "Michigan State University Extension: filter at 185 to 190 F",
    "International Maple Syrup Institute, as quoted: at 185 F or more",
    "Ohio State University Extension, All Things Evaporators: niter",
    "common practice, no source: felt with paper pre-filters, wetted, not wrung; settling;"
    " straining sap; cheesecloth is too open",
)


def answer(known: Known) -> Told:
    """Hot, through felt with paper before it; what the sand is, and what to do when it clogs."""
    first = (
        f"Hot, at {heats(FILTER_F, known.units)}: a paper pre-filter inside felt, both wetted"
        " with hot water first. Don't squeeze it. It burns: gloves, steady stand."
    )
    clogs = (
        "Won't go through: it has cooled, or the sand has sealed the paper. Lift out the top"
        " paper and go on with the next one, so start with two or three. Keep a lid on to hold"
        " the heat. Felt new or old: hot water only, never soap."
    )
    sand = (
        "Sugar sand (niter) is minerals from the sap: gritty, harmless, and it clouds syrup. It"
        " comes as syrup nears its finish, so filter after, not before. Without felt: let jars"
        f" settle some days, pour off the clear, heat it to {_reheat(known)} again and jar it."
    )
    sap = (
        "Sap: strain out bark and moths through a clean cloth or milk filter as you gather. For"
        " syrup cheesecloth, coffee filters and paper towels do poorly: too open, or they clog"
        " and tear. Old pillowcases hold soap. Walnut sap clogs any filter (pectin)."
    )
    return Told(first, (clogs, sand, sap))


def _reheat(known: Known) -> str:
    return f"{heat_at_least(BOTTLE_F_LEAST, known.units)} or more"
