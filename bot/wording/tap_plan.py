"""Answers to "how many taps" and "what will I need"."""

from __future__ import annotations

from collections.abc import Sequence

from bot import figures
from bot.wording import amounts, tables
from bot.wording.gsm import plain
from bot.wording.style import Style

CAUTION = "None in a sick, cracked or hurt tree."


def one_tree(
    across_in: float,
    around_in: float | None,
    taps: int,
    traditional: int,
    style: Style,
) -> str:
    """How many taps a tree bears, by the careful rule, and what the older one says."""
    size = f"{amounts.length(across_in, style)} across"
    if around_in is not None:
        size = f"{amounts.length(around_in, style)} around is {size}"
    rule = (
        "30 cm bears 1, 46 cm 2, never more"
        if style.is_metric
        else "12 in bears 1, 18 in 2, never more"
    )
    older = "" if traditional == taps else f" Older books say {traditional}."
    return f"{size}: {_taps(taps)} by the careful rule ({rule}).{older} {CAUTION}"


def several(trees: Sequence[tuple[int, float, int]], style: Style) -> str:
    """Trees as (how many, inches across, taps each): "3 of 14 in: 3 taps"."""
    total = sum(count * taps for count, _, taps in trees)
    each = ", ".join(
        f"{count} of {amounts.length(across, style)}: {_taps(count * taps)}"
        for count, across, taps in trees
    )
    return f"{each}. {_taps(total).capitalize()} in all by the careful rule."


def round_or_across(inches: float, style: Style) -> str:
    """A large figure with no word beside it."""
    return f"{amounts.length(inches, style)}: round or across?"


def usual_per_tap(style: Style) -> str:
    """What a tap gives in a season by the rule of thumb."""
    least, most = figures.SAP_PER_TAP_SEASON_GALLONS
    usual = amounts.rough_range(least, most, style)
    return f"A whole season gives {usual} a tap, as a rule of thumb."


def needs(
    lead: str,
    taps: int,
    storage_gallons: float,
    sap: tuple[float, float],
    syrup: tuple[float, float],
    style: Style,
) -> str:
    """What so many taps need and may give."""
    things = f"{amounts.plural(taps, 'spile')} and {amounts.plural(taps, 'pail')}"
    return (
        f"{lead}: {things}, room for {amounts.rough(storage_gallons, style)} (two big days)."
        f" A season may give {amounts.rough_range(*sap, style)} of sap,"
        f" {amounts.rough_range(*syrup, style)} of syrup: a rule of thumb."
    )


def trees_lead(trees: int, taps: int, too_thin: int) -> str:
    """ "6 trees told, 8 taps, 1 too thin"."""
    said = f"{amounts.plural(trees, 'tree')} told, {_taps(taps)} by the careful rule"
    return f"{said} ({too_thin} too thin)" if too_thin else said


def taps_lead(taps: int) -> str:
    """ "20 taps"."""
    return f"{_taps(taps).capitalize()}"


def tree_by_tree(trees: Sequence[tuple[str, int]]) -> str:
    """Each tree with its taps."""
    said = ", ".join(f"{plain(label, 12)} {taps}" for label, taps in trees)
    return f"Taps by tree: {said}. {CAUTION}"


def tree_table(trees: Sequence[tuple[str, str | None, float, int]], style: Style) -> str:
    """A table of trees, each its label, its species where told, inches across, taps."""
    return tables.lines(
        ("Tree", "Species", "Across", "Taps"),
        [
            (plain(label), plain(species or ""), amounts.length(across, style), str(taps))
            for label, species, across, taps in trees
        ],
    )


def size_wanted(label: str, style: Style) -> str:
    """Of a tree whose size nobody told."""
    size = "120 cm" if style.is_metric else "50 in"
    rule = "96 cm bears 1 tap, 144 cm 2" if style.is_metric else "38 in bears 1 tap, 57 in 2"
    like = f"tree {label} {size} around"
    return f"Measure it around at chest height and text it, like: {like}. {rule}."


def no_trees(style: Style) -> str:
    """Nobody told a tree or a tap yet: what to measure, and what the careful rule says."""
    size = "120 cm" if style.is_metric else "50 in"
    rule = (
        "30 cm across (96 around) bears 1 tap, 46 cm (144 around) 2."
        if style.is_metric
        else "12 in across (38 around) bears 1 tap, 18 in (57 around) 2."
    )
    like = f"tree 1 sugar maple {size} around"
    return f"Measure a trunk around at chest height and text it, like: {like}. {rule}"


def _taps(count: int) -> str:
    return "no tap" if count == 0 else amounts.plural(count, "tap")
