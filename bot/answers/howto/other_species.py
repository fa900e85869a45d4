"""Trees other than sugar maple: what they give and how they differ."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.howto_figures import BIRCH_SAP_PER_SYRUP
from bot.answers.howto.known import Known
from bot.answers.howto.told import Told
from bot.answers.howto.whom import extension
from bot.reckoning.balance import sap_per_syrup
from bot.reckoning.law import legal_density
from bot.reckoning.species import SPECIES, Species, species_named

SOURCES: Final = (
    "Peters and others, 2020: red and silver maple",
    "Mathews and others, HortTechnology, 2024: box elder and Norway maple in Utah",
    "Farrell, 2013: birch",
    "Rechlin and Fotos: black walnut",
    "Catskill Forest Association: sycamore, one tree",
    "computed: sap for a gallon of syrup by mass balance, as in reckoning.balance",
    "common practice, no source: usual sugar of silver maple and box elder, birch about 100 to"
    " 1, nut allergy, buds of red and silver maple",
)


def answer(known: Known) -> Told:
    """Any maple will do; how much sap the person's own kinds take; walnut, birch and others."""
    named = [species_named(kind) for kind in known.species]
    own = [kind for kind in named if kind is not None and "best" not in kind.notes]
    if own:
        first = f"{_own(own[0], known)} Be sure of the tree first."
    else:
        first = (
            "Any maple may be tapped. Sugar maple is sweetest; red takes about"
            f" {_ratio('red maple', known)} of sap to 1 of syrup, silver and box elder"
            f" {_ratio('silver maple', known)}. Be sure of the tree."
        )
    sugar, norway, red, box_elder, walnut, sycamore = (
        _ratio(kind, known)
        for kind in (
            "sugar maple",
            "norway maple",
            "red maple",
            "box elder",
            "black walnut",
            "sycamore",
        )
    )
    maples = (
        f"Of sap to 1 of syrup, as a rule of thumb: sugar maple {sugar}, Norway (in Utah) {norway},"
        f" red {red}, silver and box elder {box_elder}. Red and silver bud early, so tap and pull"
        " them first. Mixing maples in one pan is fine."
    )
    birch = (
        f"Birch: after the maples, when soil warms; about {BIRCH_SAP_PER_SYRUP} to 1; scorches"
        f" easily, so a low fire at the end; its acid eats bare metal. Sycamore {sycamore} to 1,"
        " from one tree tested. Both taste unlike maple."
    )
    nuts = (
        f"Black walnut and butternut: thin white wood, so a shallow hole; {walnut} to 1; pectin"
        " clogs filters. Not for anyone with a nut allergy, and say so on the jar. Don't tap oak,"
        f" cherry, pine or a tree you can't name; ask {extension(known.region)} what grows near"
        " you."
    )
    return Told(first, (maples, birch, nuts))


def _own(kind: Species, known: Known) -> str:
    """What the person's own kind of tree takes."""
    if "runs after maple" in kind.notes:
        return (
            f"{kind.name.capitalize()} runs after the maples; about {BIRCH_SAP_PER_SYRUP} of sap"
            " to 1 of syrup, and it scorches easily."
        )
    caution = " Not for anyone with a nut allergy." if "nut allergy" in kind.notes else ""
    low, high = kind.brix_low, kind.brix_high
    brix = f"{low:g}" if low == high else f"{low:g} to {high:g}"
    return (
        f"Yes: {_said(kind)} tests about {brix} Brix, so {_ratio(kind.name, known)} of sap to 1"
        f" of syrup.{caution}"
    )


def _said(kind: Species) -> str:
    return kind.name.replace("norway", "Norway")


def _ratio(kind: str, known: Known) -> str:
    """Sap for one of syrup of the legal density, to the nearest five: "35 to 45" or "60"."""
    syrup_brix = legal_density(known.region).min_brix
    most, least = (
        5 * round(sap_per_syrup(sap_brix, syrup_brix) / 5)
        for sap_brix in (SPECIES[kind].brix_low, SPECIES[kind].brix_high)
    )
    return f"{least}" if least == most else f"{least} to {most}"
