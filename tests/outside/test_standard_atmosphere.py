"""Source: US Standard Atmosphere 1976, through the packages `ambiance` and `fluids`, which were
written independently of each other. Our two constants are from memory: this is their check."""

from __future__ import annotations

import pytest

# The package carries no type hints.
from ambiance import Atmosphere  # type: ignore[import-untyped]
from fluids.atmosphere import ATMOSPHERE_1976

from bot import figures
from bot.reckoning.finish import standard_water_boils_f, station_inhg, water_boils_f

PASCAL_PER_INHG = 3386.389
METRES_PER_FT = 0.3048


@pytest.mark.parametrize("feet", [-300, 0, 500, 1000, 1500, 2000, 3000, 4000, 5500, 7000])
def test_our_station_pressure_is_that_of_both_packages(feet: float) -> None:
    """Within 0.003 inHg, which moves the boiling point by 0.005 F: a barometer shows 0.01."""
    ours = station_inhg(figures.STANDARD_INHG, feet)
    theirs = float(Atmosphere(feet * METRES_PER_FT).pressure[0]) / PASCAL_PER_INHG
    others = ATMOSPHERE_1976(feet * METRES_PER_FT).P / PASCAL_PER_INHG
    assert ours == pytest.approx(theirs, abs=3e-3)
    assert ours == pytest.approx(others, abs=3e-3)


@pytest.mark.parametrize(
    ("feet", "boils_f"),
    [
        (0, 211.95),
        (500, 211.04),
        (1000, 210.13),
        (1500, 209.22),
        (2000, 208.31),
        (2500, 207.39),
        (3000, 206.48),
        (4000, 204.65),
    ],
)
def test_the_boiling_point_by_height_on_a_standard_day(feet: float, boils_f: float) -> None:
    """Computed from both standards; to half of the last place, and the pressure's 0.005 F."""
    assert standard_water_boils_f(feet) == pytest.approx(boils_f, abs=0.01)


def test_a_forecasts_sea_level_barometer_taken_for_the_stations_misses_the_finish() -> None:
    """At 1500 ft by 2.7 F, seven Brix: why the reduction is never left out."""
    wrong = water_boils_f(30.0)
    right = water_boils_f(station_inhg(30.0, 1500))
    assert wrong - right == pytest.approx(2.7, abs=0.1)
