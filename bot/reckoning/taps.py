"""How many taps a tree bears, where to drill and how deep, and what a sugarbush will need.

The conservative guideline is the one that is used (see `figures` for it and the others). No tap
belongs in a sick, cracked or lately injured tree, whatever its size (common practice).
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from bot import figures
from bot.reckoning.balance import syrup_gallons
from bot.reckoning.checks import not_negative, positive, within
from bot.reckoning.species import SPECIES, species_named


@dataclass(frozen=True, slots=True)
class Hole:
    """A tap hole: inches around the trunk from any mark on it, and inches above the ground."""

    around_in: float
    height_in: float


@dataclass(frozen=True, slots=True)
class Drilling:
    """The bit, the depth and the most depth for a spile, all in inches."""

    bit_in: float
    depth_in: float
    depth_most_in: float


@dataclass(frozen=True, slots=True)
class PlannedTree:
    """A tree to tap: its label, inches across at 4.5 ft, and its kind if that is known."""

    label: str
    diameter_in: float
    species: str | None = None


@dataclass(frozen=True, slots=True)
class TapPlan:
    """What a list of trees will need and may give in a season.

    `taps` is by label, trees too thin to tap with 0; `spiles` and `pails` are one for each tap.
    `storage_gallons` holds two big days. Sap and syrup are gallons, low to high.
    """

    taps: Mapping[str, int]
    spiles: int
    pails: int
    storage_gallons: float
    sap_low: float
    sap_high: float
    syrup_low: float
    syrup_high: float

    @property
    def total_taps(self) -> int:
        """Taps of all trees together."""
        return sum(self.taps.values())


def diameter_in(girth_in: float) -> float:
    """Inches across, from inches around."""
    return positive("The tree's girth", girth_in, "in") / math.pi


def round_or_across(inches: float) -> bool:
    """True when a tree's size with no word beside it should be asked after: over 30 it may well
    be the girth (our own rule)."""
    return positive("The tree", inches, "in") > figures.ROUND_OR_ACROSS_IN


def taps_for(across_in: float, guideline: str = "conservative") -> int:
    """Taps for a tree so many inches across at 4.5 ft; 0 for one that is too thin.

    By the conservative guideline, 12 to 18 in one, 18 and over two, and never more. Another is
    named by its key in `figures.TAP_GUIDELINES_IN`. Raises ValueError for an unknown guideline,
    or a tree of 0 or over 100 in.
    """
    positive("The tree", across_in, "in")
    within("The tree", across_in, 0.0, figures.DIAMETER_IN_MOST, "in across")
    steps = figures.TAP_GUIDELINES_IN.get(guideline)
    if steps is None:
        raise ValueError(
            f"The guideline is {guideline!r}, but should be one of:"
            f" {', '.join(figures.TAP_GUIDELINES_IN)}"
        )
    # A tape is not read to a thousandth: 56.5 in around is 18 across.
    return sum(across_in >= least - figures.DIAMETER_IN_DOUBT for least in steps)


def taps_by_guideline(across_in: float) -> dict[str, int]:
    """Taps for a tree by every guideline we know, the conservative one first."""
    return {name: taps_for(across_in, name) for name in figures.TAP_GUIDELINES_IN}


def drilling(spile_in: float | None = None) -> Drilling:
    """Bit and depth for a spile of so many inches across; 5/16 where it is not known.

    Straight in, 1 1/2 in deep and no more than 2 (Ohio State University Extension, 2025). The
    bit is the spile's own size: 5/16 today, 7/16 for older bucket spiles. Raises ValueError for
    a spile that is not between 1/4 and 5/8 in.
    """
    bit = figures.BIT_TODAY_IN if spile_in is None else spile_in
    within("The spile", bit, *figures.SPILE_IN, "in")
    return Drilling(bit, figures.TAP_DEPTH_IN, figures.TAP_DEPTH_IN_MOST)


def is_clear(hole: Hole, old_holes: Sequence[Hole], girth_in: float) -> bool:
    """True when a hole is far enough from every old one, either way around the trunk.

    Far enough is 4 in sideways and 12 in up or down, both at once (the cautious end of Perkins,
    UVM Proctor, 2024), or 6 in sideways at any height (UVM Extension). Straight above or below
    is never far enough: the wood is stained in a narrow column along the trunk. Other
    guidelines stand in `figures.FROM_OLD_HOLE_IN`.
    """
    positive("The tree's girth", girth_in, "in")
    sideways, upward = figures.FROM_OLD_HOLE_IN["Vermont"]
    for old in old_holes:
        apart = _apart(hole, old, girth_in)
        if apart >= figures.BESIDE_OLD_HOLE_IN:
            continue
        if apart < sideways or abs(hole.height_in - old.height_in) < upward:
            return False
    return True


def next_hole(old_holes: Sequence[Hole], girth_in: float) -> Hole | None:
    """Where to drill this year: a spot clear of every old hole, near the last one in the list.

    Goes around the trunk by an inch at a time, and at each tries a foot higher, a foot lower,
    and the last hole's own height, between 2 and 4 ft from the ground. So a tree that is tapped
    every year is used all around. None when there is no such spot: rest the tree. Raises
    ValueError without an old hole, since then any sound wood will do.
    """
    if not old_holes:
        raise ValueError("Old holes are missing, but should be one or more")
    positive("The tree's girth", girth_in, "in")
    last = old_holes[-1]
    lowest, highest = figures.TAP_HEIGHT_IN
    _, upward = figures.FROM_OLD_HOLE_IN["Vermont"]
    heights = [
        height
        for height in (last.height_in + upward, last.height_in - upward, last.height_in)
        if lowest <= height <= highest
    ]
    for around in range(1, math.ceil(girth_in)):
        for height in heights:
            hole = Hole((last.around_in + around) % girth_in, height)
            if is_clear(hole, old_holes, girth_in):
                return hole
    return None


def _apart(one: Hole, other: Hole, girth_in: float) -> float:
    """Inches between two holes around the trunk, the shorter way."""
    way = abs(one.around_in - other.around_in) % girth_in
    return min(way, girth_in - way)


def plan(
    trees: Sequence[PlannedTree], syrup_brix: float, guideline: str = "conservative"
) -> TapPlan:
    """What a list of trees needs and may give, as ranges and rules of thumb.

    A bucket tap gives 5 to 15 gallons in an average season (University of Maine), 2 on a big
    day; the sugar is the usual of its kind, sugar maple where that is not known. Raises
    ValueError for two trees of one label.
    """
    taps: dict[str, int] = {}
    sap_low = sap_high = syrup_low = syrup_high = 0.0
    least, most = figures.SAP_PER_TAP_SEASON_GALLONS
    for tree in trees:
        if tree.label in taps:
            raise ValueError(
                f"Tree {tree.label!r} is there twice, but should have a label of its own"
            )
        count = taps[tree.label] = taps_for(tree.diameter_in, guideline)
        kind = species_named(tree.species) if tree.species is not None else None
        kind = kind or SPECIES["sugar maple"]
        sap_low += count * least
        sap_high += count * most
        syrup_low += syrup_gallons(count * least, kind.brix_low, syrup_brix)
        syrup_high += syrup_gallons(count * most, kind.brix_high, syrup_brix)
    total = sum(taps.values())
    return TapPlan(
        taps=taps,
        spiles=total,
        pails=total,
        storage_gallons=storage_for(total),
        sap_low=sap_low,
        sap_high=sap_high,
        syrup_low=syrup_low,
        syrup_high=syrup_high,
    )


def storage_for(taps: int) -> float:
    """Gallons of storage for so many bucket taps: two big days of 2 gallons each (our own; three
    quarters of a season's sap come on a fifth of its days)."""
    not_negative("Taps", taps, "in number")
    return taps * figures.SAP_PER_TAP_BIG_DAY_GALLONS * figures.STORAGE_BIG_DAYS


def doubtful_day(gallons: float, taps: int, days: int = 1) -> bool:
    """True when so much sap from so many bucket taps in so many days is hard to believe.

    Over 4 gallons a tap a day, twice a big day (our own). No taps known: nothing to doubt it by,
    so callers ask only when they know them. Raises ValueError for no taps or no days.
    """
    not_negative("Sap", gallons, "gal")
    positive("Taps", taps, "in number")
    positive("Days", days, "in number")
    return gallons > taps * days * figures.SAP_PER_TAP_DAY_DOUBTFUL_GALLONS


def doubtful_pails(gallons: float, taps: int, pail_gallons: float) -> bool:
    """True when one round of gathering brings more than all pails hold, filled to the brim."""
    not_negative("Sap", gallons, "gal")
    positive("Taps", taps, "in number")
    positive("A pail", pail_gallons, "gal")
    return gallons > taps * pail_gallons
