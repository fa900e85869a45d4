"""When it is syrup."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot import figures
from bot.reckoning import finish
from tests.reckoning import given as draw

PRESSURES = st.floats(figures.STATION_INHG_LEAST, figures.STATION_INHG_MOST)


@given(draw.water_boils_f, st.floats(0, 80), st.floats(0, 80))
def test_thicker_syrup_is_drawn_hotter(water_f: float, one: float, other: float) -> None:
    less, more = sorted((one, other))
    if more - less > 1e-6:
        assert finish.finish_f(water_f, less) < finish.finish_f(water_f, more)


@given(draw.water_boils_f, st.floats(min_value=0, max_value=16.9))
def test_a_hotter_pan_holds_more_sugar(water_f: float, rise_f: float) -> None:
    assert finish.pan_brix(water_f + rise_f, water_f) <= finish.pan_brix(
        water_f + rise_f + 0.1, water_f
    )


@given(draw.water_boils_f, st.floats(1, 80))
def test_a_pan_at_the_finish_point_is_near_the_syrup_wanted(water_f: float, brix: float) -> None:
    """Within 0.15 Brix: the rise to draw at for 66.9 is 7.5, the trade's figure, where sucrose
    at sea level gives 7.56."""
    pan_f = finish.finish_f(water_f, brix)
    assert finish.pan_brix(pan_f, water_f) == pytest.approx(brix, abs=0.15)


@given(draw.water_boils_f, st.sampled_from([66.0, 66.9]))
def test_a_pan_at_the_finish_point_is_done_and_a_tenth_below_is_not(
    water_f: float, brix: float
) -> None:
    pan_f = finish.finish_f(water_f, brix)
    assert finish.is_done(pan_f, water_f, brix)
    assert not finish.is_done(pan_f - 0.1, water_f, brix)


def test_a_pan_at_the_boil_holds_water() -> None:
    assert finish.pan_brix(212.0, 212.0) == 0.0


def test_a_pan_cooler_than_boiling_water_tells_nothing() -> None:
    with pytest.raises(ValueError, match=r"The pan is 205 F, but should be at or above 210.4 F"):
        finish.pan_brix(205, 210.4)


def test_a_pan_past_syrup_is_refused_with_the_temperature_where_it_ends() -> None:
    with pytest.raises(ValueError, match=r"The pan is 240 F, but syrup ends before 227\.434 F"):
        finish.pan_brix(240, 210.4)


@pytest.mark.parametrize("water_f", [199.9, 214.6, 100.0, float("nan")])
def test_a_misread_boiling_point_is_refused(water_f: float) -> None:
    with pytest.raises(ValueError, match=r"should be 200 to 214\.5 F"):
        finish.finish_f(water_f, 66.9)
    with pytest.raises(ValueError, match=r"should be 200 to 214\.5 F"):
        finish.pan_brix(216, water_f)


def test_syrup_past_the_table_is_refused() -> None:
    with pytest.raises(ValueError, match=r"Syrup is 81 Brix, but should be 0 to 80 Brix"):
        finish.finish_f(212, 81)


@given(PRESSURES, PRESSURES)
def test_water_boils_hotter_under_more_pressure(one: float, other: float) -> None:
    less, more = sorted((one, other))
    assert finish.water_boils_f(less) <= finish.water_boils_f(more)


@given(st.floats(28, 31), st.floats(0, 4000), st.floats(1, 1000))
def test_water_boils_cooler_higher_up(altimeter_inhg: float, feet: float, more: float) -> None:
    below = finish.water_boils_f(finish.station_inhg(altimeter_inhg, feet))
    above = finish.water_boils_f(finish.station_inhg(altimeter_inhg, feet + more))
    assert above < below


@given(st.floats(25, 31.5))
def test_at_sea_level_the_station_is_the_altimeter(altimeter_inhg: float) -> None:
    assert finish.station_inhg(altimeter_inhg, 0) == pytest.approx(altimeter_inhg)


@pytest.mark.parametrize("station_inhg", [22.9, 31.6, 1013.25, 760])
def test_a_pressure_that_is_not_in_inches_of_mercury_is_refused(station_inhg: float) -> None:
    with pytest.raises(ValueError, match=r"Station pressure is .* inHg, but should be 23 to 31\.5"):
        finish.water_boils_f(station_inhg)


@pytest.mark.parametrize("altimeter_inhg", [24.9, 32.6, 1013.25])
def test_an_impossible_barometer_is_refused(altimeter_inhg: float) -> None:
    with pytest.raises(ValueError, match=r"The barometer is .* inHg, but should be 25 to 32\.5"):
        finish.station_inhg(altimeter_inhg, 1000)


@pytest.mark.parametrize("feet", [-301, 7001, 29032])
def test_an_impossible_height_is_refused(feet: float) -> None:
    with pytest.raises(ValueError, match=r"Elevation is .* ft, but should be -300 to 7000 ft"):
        finish.station_inhg(29.92, feet)


def test_every_height_of_the_standard_day_has_a_boiling_point_that_is_accepted() -> None:
    """So that a finish point from the height alone is never refused as misread."""
    for feet in range(int(figures.ELEVATION_FT_LEAST), int(figures.ELEVATION_FT_MOST), 100):
        boils_f = finish.standard_water_boils_f(feet)
        if boils_f >= figures.MEASURED_BOIL_F_LEAST:
            assert finish.finish_f(boils_f, 66.9) == pytest.approx(boils_f + 7.5)
        else:
            assert feet > 6500


def test_the_draw_table_names_its_densities_among_the_sucrose_rows() -> None:
    """Else a rise to draw at would silently never be used."""
    rows = dict(figures.SUCROSE_RISE_F)
    assert all(brix in rows for brix, _ in figures.DRAW_RISE_F)
