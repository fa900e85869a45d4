"""Source: IAPWS-95, the international standard for water and steam, through the `iapws` package;
for sugar the water activity of Starzak and Peacock (1997)."""

from __future__ import annotations

import math

import pytest

# The package carries no type hints.
from iapws import IAPWS95  # type: ignore[import-untyped]

from bot import figures
from bot.reckoning import finish, fuel, instruments
from bot.reckoning.density import specific_gravity

KPA_PER_INHG = 3.386389
ATMOSPHERE_MPA = 0.101325


def _boils_f(megapascal: float) -> float:
    return float(IAPWS95(P=megapascal, x=0).T) * 1.8 - 459.67


def _water_activity(brix: float, kelvin: float) -> float:
    """Starzak and Peacock: (1 - x) gamma, ln gamma = (Q/RT)(1 + a x + b x^2) x^2."""
    sucrose, water = brix / 342.2965, (100 - brix) / 18.01528
    x = sucrose / (sucrose + water)
    bracket = 1 - 1.0038 * x - 0.24653 * x * x
    return (1 - x) * math.exp(-17638 / (8.314462618 * kelvin) * bracket * x * x)


def _rise_f(brix: float, megapascal: float) -> float:
    """Boiling point of the solution above that of water: its water boils where steam of the
    pressure divided by its activity would. Solved by going round, which settles in a few turns."""
    start = kelvin = float(IAPWS95(P=megapascal, x=0).T)
    for _ in range(6):
        kelvin = float(IAPWS95(P=megapascal / _water_activity(brix, kelvin), x=0).T)
    return (kelvin - start) * 1.8


@pytest.mark.parametrize(
    "inhg", [23.0, 25.0, 27.0, 28.0, 28.5, 29.0, 29.5, 29.92, 30.0, 31.0, 31.5]
)
def test_our_boiling_point_of_water_is_that_of_the_standard(inhg: float) -> None:
    """Within 0.002 F: the fit is good to 0.001, the rest is the inch of mercury."""
    assert finish.water_boils_f(inhg) == pytest.approx(
        _boils_f(inhg * KPA_PER_INHG / 1000), abs=2e-3
    )


def test_water_boils_at_211_95_not_212_at_one_atmosphere() -> None:
    """On the present scale: 99.97 C. Thermometers that say 212 are right by an older one."""
    assert finish.water_boils_f(figures.STANDARD_INHG) == pytest.approx(211.95, abs=0.01)
    assert _boils_f(ATMOSPHERE_MPA) == pytest.approx(211.95, abs=0.01)


@pytest.mark.parametrize(("brix", "rise_f"), figures.SUCROSE_RISE_F)
def test_every_row_of_the_rise_table_comes_out_again(brix: float, rise_f: float) -> None:
    """To half of its last place."""
    assert _rise_f(brix, ATMOSPHERE_MPA) == pytest.approx(rise_f, abs=6e-4)


@pytest.mark.parametrize("brix", [2.5, 22.5, 47.5, 57.0, 61.0, 63.0, 65.5, 67.5, 71.0, 75.0, 79.0])
def test_between_the_rows_the_table_is_near_enough(brix: float) -> None:
    """Within 0.1 F at 79 Brix and far less in syrup: a kitchen thermometer is good to 1 F."""
    between = finish.finish_f(212, brix) - 212
    assert between == pytest.approx(_rise_f(brix, ATMOSPHERE_MPA), abs=0.08)


@pytest.mark.parametrize(
    ("feet", "for_66", "for_66_9"), [(0, 7.20, 7.56), (2000, 7.12, 7.47), (3000, 7.08, 7.43)]
)
def test_elevation_barely_moves_the_rise(feet: float, for_66: float, for_66_9: float) -> None:
    """A tenth of a degree in 3000 ft, so we add the same rise everywhere: the rise to draw at for
    66.9, 7.5, is that of some 1300 ft."""
    megapascal = finish.station_inhg(figures.STANDARD_INHG, feet) * KPA_PER_INHG / 1000
    assert _rise_f(66.0, megapascal) == pytest.approx(for_66, abs=6e-3)
    assert _rise_f(66.9, megapascal) == pytest.approx(for_66_9, abs=6e-3)
    for brix, draw_f in figures.DRAW_RISE_F:
        assert draw_f == pytest.approx(_rise_f(brix, megapascal), abs=0.13)


def _water_kg_m3(fahrenheit: float) -> float:
    # At 32 F the standard's liquid is at its very edge, so a hair above.
    kelvin = max((fahrenheit + 459.67) / 1.8, 273.16)
    return float(IAPWS95(T=kelvin, P=ATMOSPHERE_MPA).rho)


@pytest.mark.parametrize(("sap_f", "added"), figures.SAP_HYDROMETER_ADD_BRIX)
def test_every_row_of_the_sap_hydrometer_table_comes_out_again(sap_f: float, added: float) -> None:
    """Water's density and glass swelling 25e-6 per kelvin, at 2.5 Brix, stem 60 F. Within 0.002
    Brix, the half of the last place and the straight line through the gravities."""
    gravity = specific_gravity(2.5) * _water_kg_m3(sap_f) / _water_kg_m3(60)
    gravity *= 1 + 25e-6 * (sap_f - 60) / 1.8
    slope = (specific_gravity(3.0) - specific_gravity(2.0)) / 1.0
    reads = 2.5 + (gravity - specific_gravity(2.5)) / slope
    assert 2.5 - reads == pytest.approx(added, abs=2e-3)
    assert instruments.sap_brix(reads, sap_f, 60) == pytest.approx(2.5, abs=2e-3)


def test_heating_and_boiling_a_pound_of_water_takes_what_we_say() -> None:
    """Within 1 BTU a pound, a thousandth of the whole: 2.326 kJ/kg is a BTU a pound."""
    cold = IAPWS95(T=(38 + 459.67) / 1.8, P=ATMOSPHERE_MPA).h
    boiling = IAPWS95(P=ATMOSPHERE_MPA, x=0).h
    steam = IAPWS95(P=ATMOSPHERE_MPA, x=1).h
    assert (boiling - cold) / 2.326 == pytest.approx(figures.HEAT_TO_BOIL_BTU_PER_LB, abs=1)
    assert (steam - boiling) / 2.326 == pytest.approx(figures.HEAT_TO_EVAPORATE_BTU_PER_LB, abs=1)


@pytest.mark.parametrize(("brix", "btu"), [(2.0, 406_000), (2.5, 323_000), (3.0, 267_000)])
def test_the_heat_of_a_gallon_of_syrup(brix: float, btu: float) -> None:
    """Computed from the two figures above, for 66.0; to half of the last thousand."""
    assert fuel.heat_btu_per_syrup_gallon(brix, 66.0) == pytest.approx(btu, abs=600)
