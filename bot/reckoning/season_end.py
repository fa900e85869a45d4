"""Is the season nearly over? Warm nights, degree-days for buds, a weekly model: a nudge, never a
verdict. An ESF thesis found no significant link between degree-days and the change of flavour at
Attica, New York; taste and buds decide.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from math import acos, exp, pi, sin

from bot.reckoning.outlook_figures import (
    BUD_BASE_F,
    CYCLE_BASE_C,
    CYCLE_F,
    FREEZING_F,
    HOULE_CONSTANT,
    HOULE_CUT,
    HOULE_CYCLES_NEEDED,
    HOULE_PER_C_DAY,
    HOULE_PER_CYCLE,
    HOULE_PER_CYCLE_SQUARED,
    KNOWN_SHARE_NEEDED,
    RED_FIRST_BLOOM_F_DAYS,
    SILVER_FIRST_BLOOM_F_DAYS,
    SILVER_FULL_BLOOM_F_DAYS,
    WARM_NIGHTS_AHEAD,
)


@dataclass(frozen=True, slots=True)
class DayTemps:
    """A local day's lowest and highest temperature, F. Raises ValueError for a low above the
    high."""

    date: date
    low_f: float
    high_f: float

    def __post_init__(self) -> None:
        if not self.low_f <= self.high_f:
            raise ValueError(
                f"{self.date}: the low, {self.low_f:g} F, is above the high, {self.high_f:g} F"
            )


@dataclass(frozen=True, slots=True)
class SeasonEnd:
    """The signs, each None where too little is known.

    warm_nights: nights in a row without a freeze, to the end of what is known; bud_f_days:
    degree-days base 50 F since 1 January; buds: "silver maple", "red maple" and the like that
    those figures say are blooming; weekly_model: probability from `houle_probability`;
    nearly_over: whether to mention it.
    """

    warm_nights: int
    bud_f_days: float | None
    buds: tuple[str, ...]
    weekly_model: float | None
    nearly_over: bool


def season_end(days: Sequence[DayTemps]) -> SeasonEnd:
    """The signs from the days since 1 January that are known, the forecast's included, in order.

    nearly_over: four nights or more in a row to the end of the forecast stay above freezing, and
    either buds or the weekly model agree, or nothing is known of them.
    """
    warm_nights = 0
    for day in reversed(days):
        if day.low_f <= FREEZING_F:
            break
        warm_nights += 1
    since_january = known_since_january(days)
    bud_f_days = None if since_january is None else bud_degree_days(since_january)
    weekly = None if since_january is None else _weekly_model(since_january)
    buds = () if bud_f_days is None else buds_out(bud_f_days)
    agreed = since_january is None or bool(buds) or (weekly is not None and weekly < HOULE_CUT)
    return SeasonEnd(
        warm_nights=warm_nights,
        bud_f_days=bud_f_days,
        buds=buds,
        weekly_model=weekly,
        nearly_over=warm_nights >= WARM_NIGHTS_AHEAD and agreed,
    )


def known_since_january(days: Sequence[DayTemps]) -> Sequence[DayTemps] | None:
    """The days of the last one's year, or None if over a tenth of them are missing: a sum with
    holes would tell of buds too late."""
    if not days:
        return None
    last = days[-1].date
    this_year = [day for day in days if day.date.year == last.year]
    elapsed = (last - date(last.year, 1, 1)).days + 1
    return this_year if len(this_year) >= KNOWN_SHARE_NEEDED * elapsed else None


def bud_degree_days(days: Sequence[DayTemps]) -> float:
    """F days above 50 F, each day taken as one sine wave between its low and its high
    (Baskerville and Emin 1969; the simple mean would miss warm afternoons after cold nights)."""
    return sum(_above(day, BUD_BASE_F) for day in days)


def buds_out(bud_f_days: float) -> tuple[str, ...]:
    """Which maples bloom by then, by the published figures. For sugar maple there is none."""
    figures = (
        (SILVER_FIRST_BLOOM_F_DAYS, "silver maple, first bloom"),
        (SILVER_FULL_BLOOM_F_DAYS, "silver maple, full bloom"),
        (RED_FIRST_BLOOM_F_DAYS, "red maple, first bloom"),
    )
    return tuple(stage for needed, stage in figures if bud_f_days >= needed)


def houle_probability(cycles: int, degree_days_c: float) -> float:
    """Probability, 0 to 1, that a week is a week of production.

    1 / (1 + e^-P), P = -5.09 + 0.722 F - 0.014 F2 - 0.07 G (Houle et al. 2015; see
    `HOULE_CONSTANT`). cycles: F, freeze-thaw cycles since 1 January that cross 3 C;
    degree_days_c: G, C days since 1 January above 5 C, here of the daily mean.
    """
    p = (
        HOULE_CONSTANT
        + HOULE_PER_CYCLE * cycles
        + HOULE_PER_CYCLE_SQUARED * cycles**2
        + HOULE_PER_C_DAY * degree_days_c
    )
    return 1 / (1 + exp(-p))


def _weekly_model(days: Sequence[DayTemps]) -> float | None:
    """None before enough cycles: then a low probability means that the season has not begun."""
    cycles = sum(day.low_f < CYCLE_F < day.high_f for day in days)
    if cycles < HOULE_CYCLES_NEEDED:
        return None
    means_c = [((day.low_f + day.high_f) / 2 - 32) / 1.8 for day in days]
    return houle_probability(cycles, sum(max(0.0, mean - CYCLE_BASE_C) for mean in means_c))


def _above(day: DayTemps, base_f: float) -> float:
    """Degree-days over `base_f` of a sine wave from the low to the high."""
    mean, half_range = (day.low_f + day.high_f) / 2, (day.high_f - day.low_f) / 2
    if day.low_f >= base_f:
        return mean - base_f
    if day.high_f <= base_f:
        return 0.0
    half_arc = acos((base_f - mean) / half_range)
    return ((mean - base_f) * half_arc + half_range * sin(half_arc)) / pi
