"""When it is over: the signs, and what late sap is good for."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.howto_figures import SEASON_RUNS, SEASON_WEEKS
from bot.answers.howto.known import Known
from bot.answers.howto.seasons import month_name, part_of_year, usual_last
from bot.answers.howto.told import Told
from bot.reckoning.law import legal_density
from bot.reckoning.species import species_named

SOURCES: Final = (
    "OMAFRA: buddy flavour is quality, not safety",
    "UVM Extension: 12 to 15 runs in 5 to 8 weeks",
    "USDA NASS, Quick Stats: last day of sap by state, 2017 and 2018",
    "Cornell, Reducing Maple Sap Spoilage, 2025: cloudy, sour and ropy sap",
    "common practice, no source: buds, warm nights, moths and peepers as signs; red and silver"
    " maple go first",
)


def answer(known: Known) -> Told:
    """The signs, said as they bear on the month; early kinds first; the state's dates."""
    month = month_name(known)
    part = part_of_year(known)
    if part == "over":
        first = (
            f"In {month} it is over nearly everywhere. If spiles are still in, pull them all now,"
            " leave the holes open, and wash the gear before it dries on."
        )
    elif part in ("before", "soon"):
        first = (
            f"Not yet, in {month}. It ends when buds swell, nights stay above freezing for"
            " days on end, or sap turns cloudy, yellow or smells."
        )
    else:
        first = (
            "Pull when buds swell, nights stay above freezing for days, or sap comes cloudy,"
            " yellow or smelling of old socks. Frost ahead, buds tight: wait."
        )
    early = _early_budding(known)
    which = (
        f"your {' and '.join(f'{kind}s' for kind in early)}" if early else "red and silver maples"
    )
    first_to_go = (
        f"Watch {which}: they bud first, so pull those first. Other signs: moths in the pails,"
        " peepers calling, sugar falling, sap that smells or tastes of chewy chocolate (buddy)."
        " One sign is a nudge, two say more."
    )
    late_sap = (
        "Buddy syrup is a matter of taste, not of safety: boil a cupful first and taste. Cloudy"
        " but sweet-smelling sap: boil at once, it makes dark syrup. Sour, ropy or stinking:"
        " pour it out."
    )
    return Told(first, (first_to_go, late_sap, _how_long(known)))


def _early_budding(known: Known) -> list[str]:
    """The person's own kinds that bud before sugar maple, each once."""
    named = (species_named(kind) for kind in known.species)
    return list(
        dict.fromkeys(
            kind.name
            for kind in named
            if kind is not None and {"buds early", "buds first"} & set(kind.notes)
        )
    )


def _how_long(known: Known) -> str:
    usual = (
        f"A season lasts {SEASON_WEEKS[0]} to {SEASON_WEEKS[1]} weeks, {SEASON_RUNS[0]} to"
        f" {SEASON_RUNS[1]} runs, but many are shorter."
    )
    last = usual_last(known.region)
    if last is None:
        return f"{usual} No date fits every year: go by trees and forecast."
    name = legal_density(known.region).name
    return (
        f"{usual} In {name} the last sap came {last} in 2017 and 2018 by the USDA survey: go by"
        " trees and forecast, not the date."
    )
