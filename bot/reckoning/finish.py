"""When it is syrup: the pan's temperature against that of boiling water, here and now.

Plain water boiled in the same pan room with the same thermometer on the same day cancels
elevation, weather and thermometer error, and beats every table. Without it the boiling point
is worked out from the barometer and the height. One degree F is 2.5 Brix near the finish, so a
thermometer only brings one near: a hydrometer confirms.
"""

from __future__ import annotations

import math

from bot import figures
from bot.reckoning.checks import within
from bot.reckoning.tables import Rows, between_rows, turned


def finish_f(water_boils_f: float, syrup_brix: float) -> float:
    """Pan temperature, degrees F, at which to draw syrup of `syrup_brix`.

    Adds 7.2 F for 66.0 Brix and 7.5 F for 66.9 (see `figures.DRAW_RISE_F`), the rise of pure
    sucrose elsewhere. `water_boils_f` is where plain water boils, by the same thermometer.
    Raises ValueError for a boiling point outside 200 to 214.5 F, or syrup outside 0 to 80 Brix.
    """
    _measured(water_boils_f)
    lowest, highest = figures.SUCROSE_RISE_F[0][0], figures.SUCROSE_RISE_F[-1][0]
    within("Syrup", syrup_brix, lowest, highest, "Brix")
    return water_boils_f + between_rows(_DRAW_ROWS, syrup_brix)


def is_done(pan_f: float, water_boils_f: float, syrup_brix: float) -> bool:
    """True when the pan has reached the temperature to draw at."""
    return pan_f >= finish_f(water_boils_f, syrup_brix)


def pan_brix(pan_f: float, water_boils_f: float) -> float:
    """Sugar in a boiling pan, Brix, from how far it boils above water.

    Pure sucrose at one atmosphere; real syrup is a little thinner at the same temperature, and
    one degree F of error is 2.5 Brix near the finish: say it with "about". Raises ValueError
    for a boiling point of water outside 200 to 214.5 F, for a pan that is cooler than boiling
    water (its sugar cannot be told), and for one beyond 80 Brix.
    """
    _measured(water_boils_f)
    rise_f = pan_f - water_boils_f
    highest = figures.SUCROSE_RISE_F[-1][1]
    if not rise_f >= 0:
        raise ValueError(
            f"The pan is {pan_f:.6g} F, but should be at or above {water_boils_f:.6g} F,"
            " where water boils, for its sugar to be told"
        )
    if rise_f > highest:
        raise ValueError(
            f"The pan is {pan_f:.6g} F, but syrup ends before {water_boils_f + highest:.6g} F"
        )
    return between_rows(_BRIX_BY_RISE, rise_f)


def water_boils_f(station_inhg: float) -> float:
    """Boiling point of water, degrees F, at a station pressure in inches of mercury.

    From a fit to IAPWS-95 that is good to 0.001 F. The pressure must be the real one here, not
    a forecast's sea-level figure: see `station_inhg`. Raises ValueError outside 23 to 31.5.
    """
    within(
        "Station pressure",
        station_inhg,
        figures.STATION_INHG_LEAST,
        figures.STATION_INHG_MOST,
        "inHg",
    )
    log = math.log(station_inhg)
    a, b, c = figures.WATER_BOILS_COEFFICIENTS
    return a + b * log + c * log * log


def station_inhg(altimeter_inhg: float, elevation_ft: float) -> float:
    """Pressure here, inHg, from a barometer that is reduced to sea level, and the height.

    US Standard Atmosphere 1976 (its two constants from memory, checked against two packages).
    Raises ValueError for a barometer outside 25 to 32.5 inHg or a height outside -300 to
    7000 ft.
    """
    within(
        "The barometer",
        altimeter_inhg,
        figures.ALTIMETER_INHG_LEAST,
        figures.ALTIMETER_INHG_MOST,
        "inHg",
    )
    within("Elevation", elevation_ft, figures.ELEVATION_FT_LEAST, figures.ELEVATION_FT_MOST, "ft")
    share = 1 - figures.STANDARD_LAPSE_PER_FT * elevation_ft
    return float(altimeter_inhg * share**figures.STANDARD_PRESSURE_POWER)


def standard_water_boils_f(elevation_ft: float) -> float:
    """Boiling point of water, degrees F, at a height on a day of standard pressure.

    Weather moves it by 0.17 F for each 0.1 inHg, so by a degree and more from day to day:
    second best to boiling water, or to today's barometer.
    """
    return water_boils_f(station_inhg(figures.STANDARD_INHG, elevation_ft))


def _measured(water_boils_f: float) -> None:
    within(
        "The reading where water boils",
        water_boils_f,
        figures.MEASURED_BOIL_F_LEAST,
        figures.MEASURED_BOIL_F_MOST,
        "F",
    )


def _with_draw_rises(rows: Rows) -> Rows:
    """The sucrose table with the rises to draw at in place of its own rows at those Brix."""
    draw = dict(figures.DRAW_RISE_F)
    return tuple((brix, draw.get(brix, rise)) for brix, rise in rows)


_DRAW_ROWS = _with_draw_rises(figures.SUCROSE_RISE_F)
_BRIX_BY_RISE = turned(figures.SUCROSE_RISE_F)
