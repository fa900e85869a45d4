"""Syrup drawn against syrup expected, and where the rest may be."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from bot import figures
from bot.reckoning.balance import syrup_gallons
from bot.reckoning.checks import not_negative, positive

Verdict = Literal["short", "as expected", "over"]
Place = Literal["in the pan", "drawn thick", "sap lost", "sugar read high", "filter and foam"]


@dataclass(frozen=True, slots=True)
class YieldCheck:
    """Expected and drawn syrup in gallons, drawn as a share of expected, and a verdict.

    `short_gallons` is what is missing, 0 when nothing is.
    """

    expected_gallons: float
    drawn_gallons: float
    share: float
    short_gallons: float
    verdict: Verdict


@dataclass(frozen=True, slots=True)
class Rest:
    """A place where missing syrup may be, with the gallons it could account for at least and at
    most, or None where that cannot be told."""

    place: Place
    least_gallons: float | None = None
    most_gallons: float | None = None


def check_yield(expected_gallons: float, drawn_gallons: float) -> YieldCheck:
    """Whether a batch or a season gave what its sap promised, within 15 % either way.

    A rule of thumb of our own: a sap hydrometer is good to 5 % at 2 Brix, a pail's marks to
    about as much. Raises ValueError when nothing is expected.
    """
    positive("Expected syrup", expected_gallons, "gal")
    share = not_negative("Syrup drawn", drawn_gallons, "gal") / expected_gallons
    verdict: Verdict = "as expected"
    if share < figures.YIELD_SHARE_LOW:
        verdict = "short"
    elif share > figures.YIELD_SHARE_HIGH:
        verdict = "over"
    short = max(0.0, expected_gallons - drawn_gallons)
    return YieldCheck(expected_gallons, drawn_gallons, share, short, verdict)


def where_the_rest_may_be(
    check: YieldCheck,
    syrup_brix: float,
    sap_brix: float | None = None,
    drawn_brix: float | None = None,
    pan_ft2: float | None = None,
    poured_out_gallons: float = 0.0,
) -> tuple[Rest, ...]:
    """Where missing syrup may be, the likeliest and best known first; empty when none misses.

    - in the pan: a pan that was not drawn empty holds an inch or two between 20 and 60 Brix
      (that is our own guess; the depths are Ohio State's 2 in and the common 1 in);
    - drawn thick: syrup of `drawn_brix` above `syrup_brix` is fewer gallons of the same sugar;
    - sap lost: what was poured out, at `sap_brix`;
    - sugar read high: a sap hydrometer's 0.1 Brix;
    - filter and foam: always something, never reckoned.
    """
    if check.verdict != "short":
        return ()
    rests: list[Rest] = []
    if pan_ft2 is not None:
        least = pan_gallons(pan_ft2, figures.PAN_DEPTH_IN_LEAST)
        most = pan_gallons(pan_ft2, figures.PAN_DEPTH_IN)
        rests.append(
            Rest(
                "in the pan",
                syrup_gallons(least, figures.PAN_HELD_BRIX_LEAST, syrup_brix),
                syrup_gallons(most, figures.PAN_HELD_BRIX_MOST, syrup_brix),
            )
        )
    else:
        rests.append(Rest("in the pan"))
    if drawn_brix is not None and drawn_brix > syrup_brix:
        # So much thinner syrup would the drawn syrup make: the other way round of boiling down.
        kept = 1 / syrup_gallons(1.0, syrup_brix, drawn_brix)
        thick = check.drawn_gallons * (kept - 1)
        rests.append(Rest("drawn thick", thick, thick))
    if poured_out_gallons > 0 and sap_brix is not None:
        lost = syrup_gallons(poured_out_gallons, sap_brix, syrup_brix)
        rests.append(Rest("sap lost", lost, lost))
    if sap_brix is not None and sap_brix > 0:
        part = min(1.0, figures.SAP_HYDROMETER_DOUBT_BRIX / sap_brix)
        rests.append(Rest("sugar read high", 0.0, check.expected_gallons * part))
    rests.append(Rest("filter and foam"))
    return tuple(rests)


def pan_gallons(pan_ft2: float, depth_in: float) -> float:
    """Gallons in a pan of so many square feet, filled so many inches deep."""
    positive("The pan", pan_ft2, "square feet")
    not_negative("Depth", depth_in, "in")
    cubic_inches = pan_ft2 * figures.SQUARE_INCHES_PER_FT2 * depth_in
    return cubic_inches / figures.CUBIC_INCHES_PER_GALLON
