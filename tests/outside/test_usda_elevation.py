"""Source: USDA, Complete Guide to Home Canning, boiling point of water by elevation (as quoted
by others)."""

from __future__ import annotations

import pytest

from bot.reckoning.finish import standard_water_boils_f

USDA_F = ((0, 212.0), (1000, 210.2), (2000, 208.5), (3000, 206.7), (4000, 204.9))


@pytest.mark.parametrize(("feet", "usda_f"), USDA_F)
def test_our_boiling_point_is_near_the_canning_guides(feet: float, usda_f: float) -> None:
    """Within 0.3 F: the guide starts from 212 where water boils at 211.95, and rounds to 0.1."""
    assert standard_water_boils_f(feet) == pytest.approx(usda_f, abs=0.3)


def test_the_guide_reads_high_the_more_the_higher() -> None:
    """Never below ours, and 0.25 F above at 4000 ft, which is 0.6 Brix: we keep the standards'
    figures, and a pot of boiling water settles it."""
    above = [usda_f - standard_water_boils_f(feet) for feet, usda_f in USDA_F]
    assert all(difference >= 0 for difference in above)
    assert above[-1] == pytest.approx(0.25, abs=0.02)
    assert above[-1] == max(above)
