"""What a hydrometer or refractometer really says, its temperature allowed for."""

from __future__ import annotations

from typing import Literal

from bot import figures
from bot.reckoning.checks import within
from bot.reckoning.density import brix_from_baume
from bot.reckoning.tables import between_rows

Doubt = Literal["off the scale", "outside its temperatures"]


def sap_brix(reading_brix: float, sap_f: float, made_for_f: float) -> float:
    """True sugar of sap, Brix, from a sap hydrometer read at `sap_f` degrees F.

    `made_for_f` is printed on the stem: many maple ones say 38 F, others 60 or 68. Computed
    from the density of water (see `figures`); an instrument is read to 0.1. A reading below
    zero by the correction counts as 0. Raises ValueError for readings outside 0 to 15 Brix, or
    temperatures outside 32 to 80 F.
    """
    within("The sap hydrometer", reading_brix, 0.0, figures.SAP_SCALE_BRIX_MOST, "Brix")
    return max(0.0, reading_brix + _sap_add(sap_f, made_for_f))


def _sap_add(sap_f: float, made_for_f: float) -> float:
    """Brix to add to a sap hydrometer's reading."""
    rows = figures.SAP_HYDROMETER_ADD_BRIX
    coldest, warmest = rows[0][0], rows[-1][0]
    within("Sap", sap_f, coldest, warmest, "F")
    within("The stem's own temperature", made_for_f, coldest, warmest, "F")
    return between_rows(rows, sap_f) - between_rows(rows, made_for_f)


def syrup_line(syrup_f: float, syrup_brix: float) -> float:
    """Where a syrup hydrometer made for 60 F should float, Brix, in syrup of `syrup_brix`.

    Vermont's chart, read between its rows; from 209 to 211 F its last row, which the stem's hot
    line contradicts by 0.1. For another density than the chart's 66.9 the line is moved by the
    difference, which is good near 66 to 68. Raises ValueError outside 50 to 211 F.
    """
    within("Syrup", syrup_brix, figures.BRIX_LEAST, figures.BRIX_MOST, "Brix")
    return _chart(syrup_f) + syrup_brix - figures.VERMONT_CHART_FOR_BRIX


def syrup_brix(reading_brix: float, syrup_f: float) -> float:
    """True density of syrup, Brix, from a syrup hydrometer made for 60 F read at `syrup_f`.

    To the hundredth, which is finer than the instrument: treat a hot test as 0.2 either way,
    and see `figures` for the chart. Raises ValueError outside 50 to 211 F, or for a reading
    outside 45 to 75 Brix.
    """
    within(
        "The syrup hydrometer",
        reading_brix,
        figures.SYRUP_SCALE_BRIX_LEAST,
        figures.SYRUP_SCALE_BRIX_MOST,
        "Brix",
    )
    return round(reading_brix + figures.VERMONT_CHART_FOR_BRIX - _chart(syrup_f), 2)


def syrup_brix_from_baume(reading_baume: float, syrup_f: float) -> float:
    """The same from an instrument with a Baume scale. Raises ValueError as `syrup_brix` does."""
    return syrup_brix(brix_from_baume(reading_baume), syrup_f)


def _chart(syrup_f: float) -> float:
    rows = figures.VERMONT_CHART_BRIX
    within("Syrup", syrup_f, rows[0][0], figures.HOT_TEST_F_MOST, "F")
    return between_rows(rows, min(syrup_f, rows[-1][0]))


def refractometer_doubts(
    brix: float, sample_f: float | None, scale: Literal["sap", "syrup"]
) -> tuple[Doubt, ...]:
    """Why a refractometer's reading should not be trusted; empty when nothing speaks against.

    A rule of thumb from the instruments' labels: scales run 0 to 10 (sap) or 58 to 90 (syrup),
    and they allow for 50 to 86 F only. Hot and cloudy samples mislead too. `sample_f` None means
    nobody measured it, and then no doubt is raised over it.
    """
    low, high = (
        figures.REFRACTOMETER_SAP_BRIX if scale == "sap" else figures.REFRACTOMETER_SYRUP_BRIX
    )
    doubts: list[Doubt] = []
    if not low <= brix <= high:
        doubts.append("off the scale")
    coldest, warmest = figures.REFRACTOMETER_COMPENSATED_F
    if sample_f is not None and not coldest <= sample_f <= warmest:
        doubts.append("outside its temperatures")
    return tuple(doubts)
