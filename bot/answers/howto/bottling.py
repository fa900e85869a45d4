"""How jars are filled, and how syrup keeps."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.howto_figures import (
    HEADSPACE_IN,
    JARS_BOIL_MINUTES,
    OPENED_KEEPS_YEARS,
    SEALED_KEEPS_YEARS,
)
from bot.answers.howto.known import Known
from bot.answers.howto.measures import heat, heat_at_least, heat_at_most, length
from bot.answers.howto.told import Told
from bot.answers.howto.whom import extension
from bot.figures import BOTTLE_F, BOTTLE_F_LEAST, BOTTLE_F_MOST

SOURCES: Final = (
    "CFIA, maple manual: 180 to 185 F, jars at least 90 % full",
    "OMAFRA: fill at 185 to 190 F so that it is 180 or more when the cap goes on; thin syrup"
    " sours or moulds",
    "Michigan State University Extension: reheat below 180 F, not over 200; sealed 2 years,"
    " opened and refrigerated 1 year; jars boiled 10 minutes (quoting Ohio State)",
    "University of Maine Cooperative Extension and mapleresearch.org: reboiling mouldy syrup"
    " may be risky",
    "Perkins and van den Berg, 2009, as quoted: the older habit of skimming and reboiling",
    "common practice, no source: headspace, tipping, no water bath, jars apart to cool",
)


def answer(known: Known) -> Told:
    """The heat to fill at and its least; then jars, keeping, and doubtful jars."""
    units = known.units
    first = (
        f"Fill at {heat(BOTTLE_F, units)}, never under"
        f" {heat_at_least(BOTTLE_F_LEAST, units)} when the cap goes on; over"
        f" {heat_at_most(BOTTLE_F_MOST, units)} it darkens. Warm, clean jars, filled to"
        f" {length(HEADSPACE_IN, units)} from the top. Gloves: it burns."
    )
    jars = (
        f"Canning jars or syrup jugs, new lids. Clean jars, boiled {JARS_BOIL_MINUTES} minutes and"
        " still warm, so that they don't crack. Cap at once, tip each to wet the lid with hot"
        " syrup, stand them apart to cool. No water bath after. Syrup cooled down while you"
        " filled: heat it again."
    )
    keeping = (
        f"Sealed, cool and dark it keeps about {SEALED_KEEPS_YEARS} years; opened, about"
        f" {_years(OPENED_KEEPS_YEARS)} in the refrigerator. The freezer is best: good syrup"
        " does not set hard. A lid that didn't seal: refrigerate and use it first."
    )
    doubtful = (
        "Mold, fizz or an off smell: throw it out. Older books skim and reboil mold, newer"
        " advice calls that risky, and I can't tell a safe jar by text. In doubt throw it out,"
        f" always if it is to be sold or given away; ask {extension(known.region)}."
    )
    return Told(first, (jars, keeping, doubtful))


def _years(years: int) -> str:
    return "a year" if years == 1 else f"{years} years"
