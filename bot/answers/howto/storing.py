"""How sap is kept until it is boiled."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.known import Known
from bot.answers.howto.measures import heat, heat_at_most
from bot.answers.howto.seasons import part_of_year
from bot.answers.howto.told import Told
from bot.figures import ICE_SHARE_MOST, SAP_KEEPS_DAYS, SAP_KEEPS_DAYS_UNMEASURED, STORE_COLD_F

SOURCES: Final = (
    "many extension pages, as quoted: at or under 38 F, no more than 7 days",
    "Ohio State University Extension: growth slow below 40 F, rapid above 50; concentrate"
    " spoils faster",
    "Michigan State University Extension: partly boiled sap keeps better than raw",
    "Cornell, Reducing Maple Sap Spoilage, 2025: cloudy sap at once, sour or ropy sap away",
    "our own judgement: days by temperature between those two lines",
    "common practice, no source: snow, lids, straining, ice",
)


def answer(known: Known) -> Told:
    """Cold, covered and not for long: the table of days, then ice, mixing and freezing."""
    units = known.units
    cold = heat_at_most(STORE_COLD_F, units)
    coldest_f, longest = SAP_KEEPS_DAYS[0]
    warmest_f = SAP_KEEPS_DAYS[-1][0]
    best = SAP_KEEPS_DAYS_UNMEASURED
    where = (
        "iced or in a cold cellar"
        if part_of_year(known) in ("late", "over")
        else "packed in snow if you have it"
    )
    first = (
        f"Covered, in the shade, {where}, at {cold} or under: boil in {_days(best)} if you can."
        f" Over {heat(warmest_f, units)}, boil it the same day."
    )
    rows = ", ".join(
        f"{heat_at_most(most_f, units)} {_days(days)}" for most_f, days in SAP_KEEPS_DAYS[1:]
    )
    table = (
        f"A rule of thumb for the warmest it has been: up to {heat_at_most(coldest_f, units)}"
        f" {_days(longest)}, {rows}; warmer, today. Fresh is better: colder and sooner makes"
        " lighter syrup. Cloudy: boil at once. Sour, ropy or smelly: pour it out."
    )
    ice = (
        "Ice on top is mostly water: drop a clear skin of it and there is less to boil. Keep"
        f" what melts last, and throw no more than {_share(ICE_SHARE_MOST)} of the pail: some"
        " sugar goes with it. A pail frozen solid: let it melt, boil it all."
    )
    mixing = (
        "Strain it as you gather. Boil the oldest first, and don't pour fresh sap on old: the"
        " old spoils the new. Half-boiled sap keeps a little better if you chill it fast;"
        " concentrate from a membrane keeps worse. No room? Freeze it in jugs, with room to"
        " swell."
    )
    return Told(first, (table, ice, mixing))


def _days(days: int) -> str:
    return f"{days} day" if days == 1 else f"{days} days"


def _share(share: float) -> str:
    return {2: "half", 3: "a third", 4: "a quarter"}[round(1 / share)]
