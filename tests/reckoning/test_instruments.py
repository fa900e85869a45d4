"""Hydrometers and refractometers."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot import figures
from bot.reckoning import density, instruments

SAP_F = st.floats(32, 80)


@pytest.mark.parametrize("made_for_f", [38, 60, 68])
def test_a_sap_hydrometer_at_its_own_temperature_is_right(made_for_f: float) -> None:
    assert instruments.sap_brix(2.5, made_for_f, made_for_f) == 2.5


# Degrees F of the sap, and what to add, for the three stems that are sold (computed with
# IAPWS-95; rounded to the hundredth).
ADDED = {
    38: {33: 0.04, 45: 0.0, 50: 0.03, 55: 0.08, 60: 0.17, 65: 0.27, 70: 0.40, 75: 0.55, 80: 0.72},
    60: {33: -0.12, 38: -0.17, 45: -0.17, 50: -0.14, 55: -0.08, 65: 0.11, 70: 0.23, 80: 0.55},
    68: {33: -0.30, 38: -0.35, 45: -0.35, 50: -0.32, 55: -0.26, 60: -0.18, 70: 0.05, 80: 0.37},
}


@pytest.mark.parametrize("made_for_f", ADDED)
def test_each_stem_has_its_own_corrections(made_for_f: int) -> None:
    for sap_f, added in ADDED[made_for_f].items():
        # Half a unit of the last place, and as much again for two rows each rounded.
        true = instruments.sap_brix(2.5, sap_f, made_for_f)
        assert true - 2.5 == pytest.approx(added, abs=0.01)


@given(SAP_F, SAP_F, SAP_F)
def test_corrections_between_stems_cancel(sap_f: float, one: float, other: float) -> None:
    """What one stem reads, corrected, must not depend on the stem."""
    true = instruments.sap_brix(5.0, sap_f, one)
    on_other = true - (instruments.sap_brix(5.0, sap_f, other) - 5.0)
    assert instruments.sap_brix(on_other, sap_f, other) == pytest.approx(true)


def test_watery_sap_never_comes_out_below_zero() -> None:
    assert instruments.sap_brix(0.1, 38, 60) == 0.0


@pytest.mark.parametrize("sap_f", [31.0, 81.0])
def test_sap_frozen_or_hot_is_not_for_the_hydrometer(sap_f: float) -> None:
    with pytest.raises(ValueError, match=r"Sap is .* F, but should be 32 to 80 F"):
        instruments.sap_brix(2.0, sap_f, 38)


def test_a_sap_reading_of_syrup_is_refused() -> None:
    with pytest.raises(ValueError, match="The sap hydrometer is 22 Brix"):
        instruments.sap_brix(22, 38, 38)


@given(st.floats(50, 211), st.floats(60, 70))
def test_syrup_floats_the_hydrometer_at_its_own_line(syrup_f: float, brix: float) -> None:
    line = instruments.syrup_line(syrup_f, brix)
    assert instruments.syrup_brix(line, syrup_f) == pytest.approx(brix, abs=0.006)


@given(st.floats(50, 211), st.floats(50, 211))
def test_the_line_sinks_as_syrup_gets_hotter(one: float, other: float) -> None:
    colder, hotter = sorted((one, other))
    assert instruments.syrup_line(hotter, 66.9) <= instruments.syrup_line(colder, 66.9)


def test_the_line_for_66_is_nine_tenths_below_the_charts() -> None:
    assert instruments.syrup_line(60, 66.0) == pytest.approx(66.0)
    assert instruments.syrup_line(185, 66.0) == pytest.approx(59.5)


@pytest.mark.parametrize("syrup_f", [49.9, 211.1])
def test_syrup_outside_the_chart_is_refused(syrup_f: float) -> None:
    with pytest.raises(ValueError, match=r"Syrup is .* F, but should be 50 to 211 F"):
        instruments.syrup_brix(60, syrup_f)


def test_sap_on_a_syrup_hydrometer_is_refused() -> None:
    with pytest.raises(ValueError, match="The syrup hydrometer is 2 Brix"):
        instruments.syrup_brix(2.0, 60)


@given(st.floats(50, 209), st.floats(55, 70))
def test_a_baume_scale_says_the_same(syrup_f: float, reading: float) -> None:
    from_baume = instruments.syrup_brix_from_baume(density.baume(reading), syrup_f)
    assert from_baume == pytest.approx(instruments.syrup_brix(reading, syrup_f), abs=0.011)


@pytest.mark.parametrize(
    ("brix", "sample_f", "scale", "doubts"),
    [
        (2.2, 60.0, "sap", ()),
        (2.2, None, "sap", ()),
        (2.2, 38.0, "sap", ("outside its temperatures",)),
        (2.2, 0.0, "sap", ("outside its temperatures",)),
        (66.9, 70.0, "syrup", ()),
        (66.9, 180.0, "syrup", ("outside its temperatures",)),
        (40.0, 180.0, "syrup", ("off the scale", "outside its temperatures")),
        (12.0, 60.0, "sap", ("off the scale",)),
    ],
)
def test_a_refractometer_is_doubted_off_its_scale_and_temperatures(
    brix: float, sample_f: float | None, scale: str, doubts: tuple[str, ...]
) -> None:
    assert scale in ("sap", "syrup")
    found = instruments.refractometer_doubts(brix, sample_f, "sap" if scale == "sap" else "syrup")
    assert found == doubts


def test_the_hot_end_is_doubted_by_as_much_as_chart_and_hot_line_differ() -> None:
    """The stem's hot line at 211 F is 59.1 (instrument makers), the chart's last row 59.0."""
    assert abs(59.1 - instruments.syrup_line(211, 66.9)) <= figures.HOT_TEST_BRIX_DOUBT
