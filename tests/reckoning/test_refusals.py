"""Every figure that cannot be is refused by the function that is asked, naming the thing."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date

import pytest

from bot.reckoning import (
    balance,
    boil,
    bottling,
    density,
    fuel,
    instruments,
    season,
    storage,
    taps,
    thickness,
    yields,
)
from bot.reckoning.taps import Hole

NAN = float("nan")
SHORT = yields.check_yield(1, 0.5)

REFUSALS: tuple[tuple[str, Callable[[], object]], ...] = (
    ("Sap sugar is 0 Brix", lambda: balance.rule_of_86(0)),
    ("Sap sugar is 0 Brix", lambda: balance.revised_rule(0, 66.0)),
    ("Sap sugar is nan Brix", lambda: balance.rule_of_86(NAN)),
    ("Syrup sugar is 0 Brix", lambda: balance.syrup_gallons(1, 0, 0)),
    ("Sugar is -1 Brix", lambda: balance.syrup_gallons(1, -1, 66.9)),
    ("A lot is -1 gal", lambda: balance.mixed_brix([(-1, 2.0), (5, 2.0)])),
    ("Sap is 0 gal", lambda: balance.after_ice(0, 2.0, 0)),
    ("Sap sugar is -2 Brix", lambda: balance.after_ice(10, -2.0, 3, -2.0)),
    ("Ice is -1 gal", lambda: balance.after_ice(10, 2.0, -1)),
    ("Ice is -1 gal", lambda: balance.too_much_ice(10, -1)),
    ("Sap is 0 gal", lambda: balance.too_much_ice(0, 0)),
    ("Sap is nan gal", lambda: balance.syrup_gallons(NAN, 2.0, 66.9)),
    ("Sugar is 85 Brix", lambda: density.sugar_pounds(1, 85)),
    ("Syrup is 85 Brix", lambda: instruments.syrup_line(60, 85)),
    ("The stem's own temperature is 212 F", lambda: instruments.sap_brix(2, 40, 212)),
    ("Syrup is 0 gal", lambda: thickness.water_to_add(0, 70, 66.9)),
    ("The density wanted is 0 Brix", lambda: thickness.water_to_add(1, 70, 0)),
    ("The pan's length is 0 in", lambda: boil.pan_ft2(0, 24)),
    ("The pan's width is -2 in", lambda: boil.pan_ft2(24, -2)),
    ("The pot's diameter is 0 in", lambda: boil.round_pan_ft2(0)),
    ("Sap is -1 gal", lambda: boil.boil_time(-1, 0, surface_ft2=6)),
    ("Syrup is -1 gal", lambda: boil.boil_time(1, -1, surface_ft2=6)),
    ("The boil is 0 hours", lambda: boil.progress(10, 1, 0, 1)),
    ("Time gone is -1 hours", lambda: boil.progress(10, 1, 5, -1)),
    ("Heat is -1 BTU", lambda: fuel.wood_for(-1, 0.3)),
    ("Heat is -1 BTU", lambda: fuel.propane_for(-1, 0.3)),
    ("Heat is -1 BTU", lambda: fuel.wood_efficiency(1, -1)),
    ("Wood is -1 cords", lambda: fuel.syrup_from_wood(-1, 0.3, 2.0, 66.9)),
    ("Propane is -1 lb", lambda: fuel.syrup_from_propane(-1, 0.5, 2.0, 66.9)),
    ("Sap taken is -1 gal", lambda: storage.take_oldest([], -1)),
    ("Syrup is -1 gal", lambda: bottling.jars_for(-1, [0.25])),
    ("A jar is 0 gal", lambda: bottling.jars_for(1, [0.25, 0])),
    ("Syrup is -1 gal", lambda: bottling.cold_gallons(-1, 185)),
    ("Syrup is 219 F", lambda: bottling.cold_gallons(1, 219)),
    ("Syrup is 90 Brix", lambda: bottling.may_crystallize(90)),
    ("Syrup is -1 gal", lambda: bottling.cost_of(5, -1)),
    ("Syrup is -1 gal", lambda: bottling.worth_dollars(-1, 50)),
    ("The price is -1 dollars a gallon", lambda: bottling.worth_dollars(1, -1)),
    ("Syrup drawn is -1 gal", lambda: yields.check_yield(1, -1)),
    ("The pan is 0 square feet", lambda: yields.where_the_rest_may_be(SHORT, 66.9, pan_ft2=0)),
    ("Depth is -1 in", lambda: yields.pan_gallons(6, -1)),
    ("The tree's girth is 0 in", lambda: taps.diameter_in(0)),
    ("The tree is 0 in", lambda: taps.round_or_across(0)),
    ("The tree's girth is 0 in", lambda: taps.is_clear(Hole(0, 36), [], 0)),
    ("The tree's girth is -1 in", lambda: taps.next_hole([Hole(0, 36)], -1)),
    ("Taps is -1 in number", lambda: taps.storage_for(-1)),
    ("Sap is -1 gal", lambda: taps.doubtful_day(-1, 10)),
    ("Days is 0 in number", lambda: taps.doubtful_day(10, 10, 0)),
    ("Sap is -1 gal", lambda: taps.doubtful_pails(-1, 10, 2)),
    ("Taps is 0 in number", lambda: taps.doubtful_pails(10, 0, 2)),
    ("A pail is 0 gal", lambda: taps.doubtful_pails(10, 10, 0)),
    (
        "Syrup is -1 gal",
        lambda: season.season_sum(2027, [], [season.SyrupDay(date(2027, 3, 1), -1)]),
    ),
)


@pytest.mark.parametrize(("said", "ask"), REFUSALS)
def test_what_cannot_be_is_refused_by_name(said: str, ask: Callable[[], object]) -> None:
    with pytest.raises(ValueError, match=rf"^{said}, but should be "):
        ask()
