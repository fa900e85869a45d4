"""Source: National Bureau of Standards Circular C440 (1942), Table 114, by way of two quotations:
Asadi, Beet-Sugar Handbook, Table A.1 (specific gravities), and the cubic that brewers fit to the
table, Bx = 182.4601 S^3 - 775.6821 S^2 + 1262.7794 S - 669.5622."""

from __future__ import annotations

import pytest

from bot.reckoning.density import specific_gravity


def _cubic_brix(gravity: float) -> float:
    return ((182.4601 * gravity - 775.6821) * gravity + 1262.7794) * gravity - 669.5622


@pytest.mark.parametrize(
    ("brix", "gravity"),
    [(1, 1.00389), (2, 1.00779), (3, 1.01172), (10, 1.03998), (20, 1.08287)],
)
def test_our_specific_gravity_agrees_with_asadis_rows(brix: float, gravity: float) -> None:
    """Within 0.0001, which is 0.03 Brix: a sap hydrometer is read to 0.1."""
    assert specific_gravity(brix) == pytest.approx(gravity, abs=1e-4)


@pytest.mark.parametrize("brix", [1, 2, 3, 5, 10, 20, 30, 40])
def test_the_brewers_cubic_turns_our_gravity_back_into_the_brix(brix: float) -> None:
    """Within 0.05 Brix, half of what a sap hydrometer can be read to."""
    assert _cubic_brix(specific_gravity(brix)) == pytest.approx(brix, abs=0.05)


def test_the_brewers_cubic_must_not_be_used_for_syrup() -> None:
    """It was fitted up to 40 Brix. It reads finished syrup a quarter of a Brix too thick, so that
    66.7 would pass for Vermont's 66.9: sources that agree for sap and disagree for syrup."""
    assert _cubic_brix(specific_gravity(66.9)) - 66.9 == pytest.approx(0.25, abs=0.01)
    assert _cubic_brix(specific_gravity(66.7)) > 66.9
