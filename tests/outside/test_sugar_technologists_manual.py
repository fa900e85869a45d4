"""Source: Bubnik, Kadlec, Urban and Bruhns, Sugar Technologists Manual, Bartens 1995, page 164:
density of sucrose solutions from 0 to 100 C, independent of the CRC table that we fitted."""

from __future__ import annotations

import pytest

from bot import figures
from bot.reckoning import instruments
from bot.reckoning.density import density_g_ml
from tests.outside import sugar_technologists_manual as manual


@pytest.mark.parametrize("brix", [0, 1, 2, 2.5, 3, 5, 10, 20, 30, 40, 50, 60, 66, 66.9, 68.9])
def test_our_density_agrees_from_sap_to_syrup(brix: float) -> None:
    """Within 0.3 kg/m3, the difference between the two tables at 68.9: 0.05 Brix of syrup, half
    of what a hydrometer can be read to."""
    assert density_g_ml(brix) * 1000 == pytest.approx(manual.density_kg_m3(brix, 68), abs=0.3)


def test_past_syrup_the_two_tables_part() -> None:
    """The CRC table, which we follow, is 0.6 kg/m3 lighter at 84 Brix: shown, not averaged."""
    apart = manual.density_kg_m3(84, 68) - density_g_ml(84) * 1000
    assert 0.4 < apart < 0.8


@pytest.mark.parametrize(("at_f", "shrinks_to"), figures.HOT_SYRUP_SHRINKS_TO)
def test_hot_syrup_shrinks_as_our_table_says(at_f: float, shrinks_to: float) -> None:
    """Our rows are worked out from this equation: to half of their last place."""
    cold = manual.density_kg_m3(66.9, 60)
    assert manual.density_kg_m3(66.9, at_f) / cold == pytest.approx(shrinks_to, abs=5e-5)


SAP_F = (33.0, 38.0, 45.0, 50.0, 55.0, 60.0, 65.0, 70.0, 75.0, 80.0)


# Sap Brix, and how near: we take the density of water to stand for that of sap, whereas here the
# sugar's own expansion is in it, which grows with the sugar. A sap hydrometer is read to 0.1.
@pytest.mark.parametrize(("brix", "within"), [(1.0, 0.03), (2.5, 0.08), (5.0, 0.14)])
@pytest.mark.parametrize("made_for_f", [38.0, 60.0, 68.0])
@pytest.mark.parametrize("sap_f", SAP_F)
def test_our_sap_hydrometer_corrections_agree(
    brix: float, within: float, sap_f: float, made_for_f: float
) -> None:
    reads = manual.hydrometer_reads(brix, sap_f, made_for_f)
    assert instruments.sap_brix(reads, sap_f, made_for_f) == pytest.approx(brix, abs=within)


def test_the_corrections_change_more_with_sugar_than_water_alone_tells() -> None:
    """By water alone they are the same within 0.03 from 1 to 5 Brix; with sucrose's own expansion
    they part by 0.1 between sap of 1 and of 5 that is 40 degrees off its stem. Five is rare sap,
    and 0.1 is 2 % of it."""

    def added(brix: float) -> float:
        return brix - manual.hydrometer_reads(brix, 80.0, 38.0)

    assert added(5.0) - added(1.0) == pytest.approx(0.12, abs=0.03)
