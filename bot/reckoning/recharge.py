"""What freezing stores in a maple and thawing lets out, hour by hour.

Freezing puts ice into gas-filled wood fibres and squeezes their gas, and sap is drawn up from
the roots; on thaw the gas pushes it out of the hole (Graf, Ceseri and Stockie 2015; Zarrinderakht
et al. 2024). No formula for gallons a day was found in print. This is that picture with few,
blunt parameters, for ranking days; the figures are in `outlook_figures`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import pairwise
from math import exp, log1p, sqrt

from bot.reckoning.hourly import ONE_HOUR, Hour
from bot.reckoning.outlook_figures import (
    CROWN_LAG_HOURS,
    FLOW_EMPTIES_HOURS,
    FLOW_FULL_ABOVE_F,
    FLOW_STARTS_F,
    FREEZE_BLUR_F,
    FREEZE_FORGOTTEN_HOURS,
    FREEZING_F,
    FROST_HOLDS_BACK,
    HARD_FREEZE_DEPTH_F,
    MELT_FACTOR,
    RECHARGE_HOURS,
    RECHARGE_UNKNOWN,
    UNKNOWN_NIGHT_MILD_F,
    UNKNOWN_NIGHT_SCALE_F,
    WOODS,
)


@dataclass(frozen=True, slots=True)
class Drip:
    """One hour of a tree. at_local: wall clock, naive; temp_f: air, F; flow: 0 none to 1 as fast
    as it runs; recharge: 0 spent to 1 full; trunk_frost: 0 none to 1 a thick trunk frozen through,
    at the end of the hour."""

    at_local: datetime
    temp_f: float
    flow: float
    recharge: float
    trunk_frost: float


def drips(hours: Sequence[Hour]) -> list[Drip]:
    """The flow of each hour, for hours as `whole_hours` gives them.

    Each hour, in this order: the crown and the wood follow the air; a frozen crown recharges, an
    unfrozen one slowly forgets; frost in the wood grows or melts; the warmth of the wood, what
    frost keeps back and the recharge give the flow; the flow uses the recharge up.
    """
    if not hours:
        return []
    recharge = _recharge_before(hours)
    crown_f = hours[0].temp_f
    wood_f = [hours[0].temp_f] * len(WOODS)
    frost = [0.0] * len(WOODS)
    out: list[Drip] = []
    unknown_hours = [0, *(_unknown_between(a, b) for a, b in pairwise(hours))]
    for hour, gap in zip(hours, unknown_hours, strict=True):
        if gap:
            recharge += (RECHARGE_UNKNOWN - recharge) * (1 - exp(-gap / FREEZE_FORGOTTEN_HOURS))
        crown_f += (hour.temp_f - crown_f) * _share_followed(CROWN_LAG_HOURS, gap + 1)
        recharge = _after_an_hour(recharge, crown_f)
        warmth = 0.0
        for index, (lag_hours, most_frost) in enumerate(WOODS):
            wood_f[index] += (hour.temp_f - wood_f[index]) * _share_followed(lag_hours, gap + 1)
            frost[index] = _frost_after_an_hour(frost[index], hour.temp_f, most_frost)
            held_back = FROST_HOLDS_BACK * frost[index] / most_frost
            warmth += _warmth(wood_f[index]) * (1 - held_back) / len(WOODS)
        flow = warmth * recharge
        recharge *= exp(-flow / FLOW_EMPTIES_HOURS)
        thickest = max(range(len(WOODS)), key=lambda index: WOODS[index][0])
        out.append(
            Drip(
                hour.at_local,
                hour.temp_f,
                flow,
                recharge,
                frost[thickest] / WOODS[thickest][1],
            )
        )
    return out


def _recharge_before(hours: Sequence[Hour]) -> float:
    """What the nights before the first known hour have left: unknown, so half; less when the first
    day's low is mild, since then the night before it was hardly a freezing one."""
    first_day = [hour for hour in hours if hour.at_local < hours[0].at_local + 24 * ONE_HOUR]
    mildness_f = max(0.0, min(hour.temp_f for hour in first_day) - UNKNOWN_NIGHT_MILD_F)
    return RECHARGE_UNKNOWN * exp(-mildness_f / UNKNOWN_NIGHT_SCALE_F)


def _unknown_between(first: Hour, second: Hour) -> int:
    return round((second.at_local - first.at_local) / ONE_HOUR) - 1


def _share_followed(lag_hours: float, hours_passed: int) -> float:
    return 1 - exp(-hours_passed / lag_hours)


def _after_an_hour(recharge: float, crown_f: float) -> float:
    if crown_f >= FREEZING_F:
        recharge *= exp(-1 / FREEZE_FORGOTTEN_HOURS)
    hardness = min(_freeze_depth_f(crown_f), HARD_FREEZE_DEPTH_F) / HARD_FREEZE_DEPTH_F
    return recharge + (1 - recharge) * (1 - exp(-hardness / RECHARGE_HOURS))


def _freeze_depth_f(crown_f: float) -> float:
    """F below freezing, setting in softly: 1 F at 32, and next to nothing from 38 up."""
    scaled = (FREEZING_F - crown_f) / FREEZE_BLUR_F
    return FREEZE_BLUR_F * (max(scaled, 0.0) + log1p(exp(-abs(scaled))))


def _frost_after_an_hour(frost: float, temp_f: float, most: float) -> float:
    above_f = temp_f - FREEZING_F
    change = above_f * MELT_FACTOR if above_f > 0 else above_f
    return min(max(frost - change, 0.0), most)


def _warmth(wood_f: float) -> float:
    above_f = min(max(wood_f - FLOW_STARTS_F, 0.0), FLOW_FULL_ABOVE_F)
    return sqrt(above_f / FLOW_FULL_ABOVE_F)
