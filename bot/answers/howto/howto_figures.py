"""Figures that only the how-to answers use: value, unit, published source.

The figures that are reckoned with stand in `bot.figures`, and so does what the marks mean.
"""

from __future__ import annotations

from typing import Final

# --- Tapping -----------------------------------------------------------------------------

# Upward slant of the hole, degrees (published: Ontario Maple Syrup Producers Association, "How
# to Tap"). Straight in is the other advice (published: UVM Extension; OSU Extension, 2025).
SLANT_DEGREES: Final = (5, 10)
# The trunk should be at least so warm, degrees F, or the bark may split (published: OMAFRA,
# 2015: -5 C).
TRUNK_F_LEAST: Final = 23.0
# Days that a hole runs by gravity (published: Ober, OSU Extension: little over 30).
HOLE_RUNS_DAYS: Final = 30
# Years in which a healthy tree closes a hole (published: UVM Extension).
HOLE_CLOSES_YEARS: Final = (2, 3)
# Sap from holes of 1 and 2 in, as a share of that from 1 1/2 in (published: University of
# Vermont, on vacuum).
SAP_AT_ONE_INCH_SHARE: Final = 0.63
SAP_AT_TWO_INCHES_SHARE: Final = 1.25
# The other small spile of today, inches (published: M. Farrell, Northern Woodlands).
BIT_SMALLER_IN: Final = 19 / 64

# --- The season --------------------------------------------------------------------------

# A night and a day on which sap runs, degrees F (published: UVM Extension: lows in the 20s,
# highs in the middle 30s to 40s).
RUN_NIGHT_F: Final = (20.0, 29.0)
RUN_DAY_F: Final = (35.0, 49.0)
# Weeks of a season, and runs in it (published: UVM Extension).
SEASON_WEEKS: Final = (5, 8)
SEASON_RUNS: Final = (12, 15)
# First and last day of sap in 2017 and 2018, as (month, day), by state: the survey includes
# big makers on tubing, who start early (published: USDA NASS, Quick Stats).
SAP_DAYS: Final[dict[str, tuple[tuple[tuple[int, int], ...], tuple[tuple[int, int], ...]]]] = {
    "WV": (((2, 3), (2, 4)), ((3, 7), (3, 14))),
    "IN": (((2, 9), (2, 10)), ((3, 12), (3, 19))),
    "OH": (((2, 11), (2, 14)), ((3, 16), (3, 27))),
    "PA": (((2, 11), (2, 17)), ((3, 22), (4, 3))),
    "CT": (((2, 12), (2, 12)), ((3, 26), (3, 26))),
    "MA": (((2, 19), (2, 18)), ((4, 2), (4, 1))),
    "NY": (((2, 18), (2, 18)), ((4, 2), (4, 11))),
    "NH": (((2, 24), (2, 24)), ((4, 7), (4, 8))),
    "VT": (((2, 23), (2, 23)), ((4, 10), (4, 16))),
    "MI": (((2, 24), (2, 28)), ((3, 28), (4, 10))),
    "ME": (((3, 2), (2, 26)), ((4, 12), (4, 9))),
    "MN": (((3, 4), (3, 21)), ((4, 3), (4, 22))),
    "WI": (((3, 4), (3, 16)), ((4, 2), (4, 21))),
}
# Where the season comes from late December to the middle of February (common practice, no
# source).
EARLY_REGIONS: Final = frozenset({"VA", "KY", "MO", "TN"})

# --- Kinds of tree -----------------------------------------------------------------------

# Gallons of birch sap for one of syrup (common practice, no source).
BIRCH_SAP_PER_SYRUP: Final = 100

# --- Cleaning ----------------------------------------------------------------------------

# Unscented household bleach of so many percent, one part in so many of water, no stronger
# (published: University of Maine Cooperative Extension, Bulletin 7038).
BLEACH_PERCENT: Final = 5.25
BLEACH_WATER_PARTS: Final = 20
# Metal gear soldered before this year may hold lead (published: OMAFRA, "Best Production
# Practices for Producing Safe, Quality Maple Syrup": 1994 for galvanized, 1995 for other).
LEAD_SOLDER_BEFORE: Final = 1995

# --- Filtering and bottling --------------------------------------------------------------

# Filter at, degrees F (published: Michigan State University Extension; the least also quoted
# from the International Maple Syrup Institute).
FILTER_F: Final = (185.0, 190.0)
# Air over the syrup in a jar, inches (common practice, no source).
HEADSPACE_IN: Final = 0.25
# Minutes that clean jars are boiled (quoted: Ohio State University Extension, by Michigan
# State University Extension).
JARS_BOIL_MINUTES: Final = 10
# Years that syrup keeps sealed in a cool dark place, and opened in the refrigerator (quoted:
# Michigan State University Extension).
SEALED_KEEPS_YEARS: Final = 2
OPENED_KEEPS_YEARS: Final = 1
