"""The trees that are tapped: how sweet their sap is, and what to know of each."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

Note = Literal[
    "best",
    "buds late",
    "buds early",
    "buds first",
    "low volume",
    "milky leaf stalk",
    "pectin clogs filters",
    "nut allergy",
    "runs after maple",
    "scorches",
    "acid",
    "hardly worth it",
]


@dataclass(frozen=True, slots=True)
class Species:
    """A kind of tree, the Brix its sap usually lies between, notes, and where they are from."""

    name: str
    brix_low: float
    brix_high: float
    notes: tuple[Note, ...]
    source: str


SPECIES: Final[dict[str, Species]] = {
    one.name: one
    for one in (
        Species(
            "sugar maple",
            2.0,
            2.5,
            ("best", "buds late"),
            "UNH as quoted in Foster's, 2010; single trees from 1 to over 4 are common practice",
        ),
        Species("black maple", 2.0, 2.5, ("best", "buds late"), "as sugar maple"),
        Species(
            "red maple",
            1.5,
            1.5,
            ("buds early", "low volume"),
            "quoted; low volume in SW Virginia: Peters and others, 2020",
        ),
        Species(
            "silver maple",
            1.0,
            2.0,
            ("buds first",),
            "common practice, no source; second-best substitute in Peters and others, 2020",
        ),
        Species(
            "box elder",
            1.0,
            2.0,
            (),
            "common practice, no source; 2.2 to 2.8 in Utah: Mathews and others,"
            " HortTechnology 2024",
        ),
        Species(
            "norway maple",
            2.2,
            2.8,
            ("milky leaf stalk",),
            "Mathews and others, HortTechnology 2024, in Utah",
        ),
        Species(
            "black walnut",
            1.0,
            1.5,
            ("pectin clogs filters", "nut allergy"),
            "Rechlin and Fotos; the allergy warning is common practice",
        ),
        Species(
            "birch",
            0.5,
            2.0,
            ("runs after maple", "scorches", "acid"),
            "Farrell 2013 says 1 to 2; often 0.5 to 1 is common practice. Its sugars are not"
            " sucrose, so the balance is only rough",
        ),
        Species(
            "sycamore", 0.5, 0.5, ("hardly worth it",), "Catskill Forest Association, one tree"
        ),
    )
}

# Other names for the same tree. "Soft maple" is left out: it is red or silver.
_ALSO: Final = {
    "hard maple": "sugar maple",
    "rock maple": "sugar maple",
    "maple": "sugar maple",
    "swamp maple": "red maple",
    "boxelder": "box elder",
    "manitoba maple": "box elder",
    "ash-leaved maple": "box elder",
    "walnut": "black walnut",
    "paper birch": "birch",
    "white birch": "birch",
    "yellow birch": "birch",
    "black birch": "birch",
    "sweet birch": "birch",
}


def species_named(name: str) -> Species | None:
    """What is known of a kind of tree by its English name, in any case; None if nothing is.

    A plain "maple" is taken for a sugar maple.
    """
    plain = " ".join(name.lower().split())
    return SPECIES.get(_ALSO.get(plain, plain))
