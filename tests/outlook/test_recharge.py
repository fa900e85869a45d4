"""The physics behind the grades, hour by hour."""

from __future__ import annotations

from bot.reckoning.recharge import drips
from tests.outlook.invented import hours_of


def test_no_hours_give_no_drips() -> None:
    assert drips([]) == []


def test_nothing_flows_from_frozen_wood() -> None:
    assert all(drip.flow == 0 for drip in drips(hours_of([(5, 25)] * 2)))


def test_a_freeze_recharges_and_a_run_uses_it_up() -> None:
    night_then_warm = drips(hours_of([(22, 45), (40, 60), (42, 62)]))
    after_night = next(drip for drip in night_then_warm if drip.at_local.hour == 8)
    assert after_night.recharge > 0.8
    assert night_then_warm[-1].recharge < 0.3


def test_a_longer_freeze_recharges_more() -> None:
    short = drips(hours_of([(40, 50), (31, 50)]))
    long = drips(hours_of([(40, 50), (22, 50)]))
    assert max(d.recharge for d in long[24:34]) > max(d.recharge for d in short[24:34])


def test_frost_builds_in_the_trunk_over_cold_days_and_melts_over_warm_ones() -> None:
    cold_then_warm = drips(hours_of([(0, 20)] * 3 + [(40, 60)] * 2))
    assert cold_then_warm[71].trunk_frost == 1.0
    assert cold_then_warm[-1].trunk_frost == 0.0


def test_a_thick_trunk_makes_flow_begin_after_the_air_has_thawed() -> None:
    after_cold = drips(hours_of([(10, 25)] * 3 + [(15, 42)]))[72:]
    air_thaws = next(drip.at_local for drip in after_cold if drip.temp_f > 33)
    runs_well = next(drip.at_local for drip in after_cold if drip.flow > 0.3)
    assert runs_well > air_thaws


def test_all_shares_stay_between_none_and_all() -> None:
    for drip in drips(hours_of([(-30, -5)] * 3 + [(20, 70)] * 5 + [(60, 95)] * 4)):
        assert 0 <= drip.flow <= 1
        assert 0 <= drip.recharge <= 1
        assert 0 <= drip.trunk_frost <= 1
