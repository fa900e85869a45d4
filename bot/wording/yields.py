"""Answers on syrup: jars for a batch, sap for a gallon, ice, and where missing syrup may be."""

from __future__ import annotations

from collections.abc import Sequence

from bot.wording import amounts
from bot.wording.compose import sentence
from bot.wording.style import Style

HOT_FILL = "Fill hot at 185F, never under 180F. It burns: gloves."
HOT_FILL_METRIC = "Fill hot at 85C, never under 83C. It burns: gloves."


def jars_for(
    what: str, jars: Sequence[tuple[int, float]], rest_gallons: float, style: Style
) -> str:
    """Jars as (count, gallons each) that a batch fills, and what is left."""
    named = [
        f"{count} x {amounts.jar_size(size, style)}"
        if style.is_metric
        else _counted(count, amounts.jar_size(size, style))
        for count, size in jars
    ]
    if not named:
        return f"{sentence(f'{what} do not fill one')} Keep it for the table."
    said = f"{what} fill {' and '.join(named)}"
    if rest_gallons > _HARDLY_ANY:
        said += f", {amounts.fluid(rest_gallons, style)} left for the table"
    return f"{sentence(said)} {HOT_FILL_METRIC if style.is_metric else HOT_FILL}"


# Less than this is no rest, gallons: half a fluid ounce.
_HARDLY_ANY = 0.004


def sap_needed(
    syrup_gallons: float, sap_gallons: float, brix: float, style: Style, *, assumed: bool
) -> str:
    """How much sap so much syrup takes."""
    sap = amounts.rough(sap_gallons, style)
    at = f"an assumed {amounts.mean_brix(brix)}" if assumed else amounts.mean_brix(brix)
    made = amounts.syrup(syrup_gallons, style)
    return f"{made} of syrup takes {sap} of sap at {at} Brix, by mass balance."


def after_ice(
    left_gallons: float, low_brix: float, high_brix: float, style: Style, *, too_much: bool
) -> str:
    """What stays when ice is thrown out."""
    said = (
        f"{amounts.volume(left_gallons, style)} left at about {low_brix:.1f} to {high_brix:.1f}"
        " Brix: ice is mostly water. Not in the tally; test what is left."
    )
    if too_much:
        said += " Next time throw less than a third: some sugar goes with it."
    return said


def ice_without_brix(left_gallons: float, style: Style) -> str:
    """The same where nobody tested the sap before."""
    return (
        f"{amounts.volume(left_gallons, style)} left, and sweeter: ice is mostly water. Not in the"
        " tally; test what is left."
    )


def as_expected(drawn_gallons: float, expected_gallons: float, style: Style) -> str:
    """As much syrup as the sap promised, give or take."""
    return (
        f"{_made(drawn_gallons, style)} drawn against"
        f" {amounts.about_syrup(expected_gallons, style)} expected: that is as it should be, a sap"
        " hydrometer is no better."
    )


def over(drawn_gallons: float, expected_gallons: float, style: Style) -> str:
    """More syrup than the sap promised."""
    promised = amounts.about_syrup(expected_gallons, style)
    return (
        f"{_made(drawn_gallons, style)} drawn, {promised}"
        " expected: more than the sap should give. Some sap is not in the tally, or the syrup is"
        " thin: test it."
    )


def short(drawn_gallons: float, expected_gallons: float, short_gallons: float, style: Style) -> str:
    """Less syrup than the sap promised."""
    missing = amounts.about_syrup(short_gallons, style).removeprefix("about ")
    promised = amounts.about_syrup(expected_gallons, style)
    return f"{_made(drawn_gallons, style)} drawn, {promised} expected: {missing} short."


def nothing_drawn(waiting_gallons: float, expected_gallons: float, style: Style) -> str:
    """No syrup in the tally yet."""
    said = f"No syrup drawn yet, {amounts.about_syrup(expected_gallons, style)} expected."
    if waiting_gallons > 0:
        said += f" By my tally {amounts.rough(waiting_gallons, style)} of sap still waits."
    return said


def places(rests: Sequence[tuple[str, float | None, float | None]], style: Style) -> str:
    """Where it may be, as (place, least gallons, most gallons)."""
    said = []
    for place, least, most in rests:
        words = PLACES[place]
        if least is not None and most is not None and most > 0:
            words += f" ({_span(least, most, style)})"
        said.append(words)
    return f"It may be {', or '.join(said)}."


def _counted(count: int, size: str) -> str:
    """ "6 pints", but "10 x 12 oz jars": two figures do not stand side by side."""
    return f"{count} x {size}s" if size[:1].isdigit() else amounts.plural(count, size)


def _made(gallons: float, style: Style) -> str:
    """Syrup in the measure that the expected is said in, to be held against it."""
    if style.is_metric or gallons >= 1:
        return amounts.volume(round(gallons, 2), style)
    return amounts.pints(gallons)


PLACES = {
    "waiting": "in sap not boiled yet",
    "in the pan": "still in the pan",
    "drawn thick": "in thick syrup",
    "sap lost": "in sap poured out",
    "sugar read high": "a hydrometer read high",
    "filter and foam": "in filter and foam",
}


def _span(least: float, most: float, style: Style) -> str:
    high = amounts.about_syrup(most, style).removeprefix("about ")
    if most - least < _NEAR * most:
        return high
    return f"up to {high}"


# A span narrower than this share is one figure.
_NEAR = 0.05
