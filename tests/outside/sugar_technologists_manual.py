"""Density of sucrose in water by concentration and temperature.

Bubnik, Kadlec, Urban and Bruhns, Sugar Technologists Manual, Bartens 1995, page 164, for 0 to
100 C; its water by Kell (1975). Coefficients as transcribed in two public programs that agree
with each other (one prints -3.9646 for -3.9643, a difference of 0.05 g/L at most).
"""

from __future__ import annotations

from bot.figures import Table

_BY_TEMPERATURE = (
    (385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890),
    (-46.2720, -7.1720, 1.1597, 5.1126, 17.5254),
    (59.7712, 7.2491, 12.3630, -35.4791),
    (-47.2207, -21.6977, 27.6301),
    (18.3184, 12.3081),
)
# Cubic expansion of a hydrometer's glass, per kelvin (soda glass, common practice).
GLASS_PER_K = 25e-6


def celsius(fahrenheit: float) -> float:
    """Degrees C from degrees F."""
    return (fahrenheit - 32) / 1.8


def density_kg_m3(brix: float, at_f: float) -> float:
    """Density in kg/m3 of a sucrose solution at so many degrees F."""
    t = celsius(at_f)
    water = (
        999.83952
        + t * (16.952577 + t * (-7.9905127e-3 + t * (-46.241757e-6)))
        + t**4 * (105.84601e-9 - 281.03006e-12 * t)
    ) / (1 + 16.887236e-3 * t)
    share, step = brix / 100, (t - 20) / 100
    return water + sum(
        step**power * sum(c * share ** (k + 1) for k, c in enumerate(row))
        for power, row in enumerate(_BY_TEMPERATURE)
    )


def hydrometer_reads(brix: float, at_f: float, made_for_f: float) -> float:
    """What a glass hydrometer shows in a solution of `brix` at so many degrees F.

    It floats where the liquid that it pushes away weighs as much as at its own temperature, its
    glass having grown a little.
    """
    grown = 1 + GLASS_PER_K * (celsius(at_f) - celsius(made_for_f))
    wanted = density_kg_m3(brix, at_f) * grown
    low, high = -5.0, 90.0
    for _ in range(60):
        middle = (low + high) / 2
        if density_kg_m3(middle, made_for_f) < wanted:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def chart_differs(chart: Table, brix: float, made_for_f: float) -> dict[float, float]:
    """Row by row, how much a printed chart lies above what the equation says."""
    return {at_f: shown - hydrometer_reads(brix, at_f, made_for_f) for at_f, shown in chart}
