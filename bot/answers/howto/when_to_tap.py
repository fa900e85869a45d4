"""When to put the taps in: at the first real stretch of frost nights and mild days."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.howto_figures import (
    EARLY_REGIONS,
    HOLE_RUNS_DAYS,
    RUN_DAY_F,
    RUN_NIGHT_F,
    SEASON_RUNS,
    SEASON_WEEKS,
    TRUNK_F_LEAST,
)
from bot.answers.howto.known import Known
from bot.answers.howto.measures import heat, heat_at_least, heats
from bot.answers.howto.seasons import month_name, part_of_year, usual_start
from bot.answers.howto.told import Told
from bot.reckoning.law import legal_density

SOURCES: Final = (
    "UVM Extension: nights in the 20s and days in the middle 30s to 40s; 12 to 15 runs in 5 to"
    " 8 weeks",
    "Ober, Ohio State University Extension: a gravity hole runs little over 30 days",
    "OMAFRA, 2015: not in a trunk under -5 C",
    "USDA NASS, Quick Stats: first day of sap by state, 2017 and 2018",
    "common practice, no source: a lone warm day is not worth a hole; the south starts in late"
    " December; which months count as early and late",
)


def answer(known: Known) -> Told:
    """The weather to wait for, said as it bears on the month; dates of the state where known."""
    nights, days = _nights(known), _days(known)
    month = month_name(known)
    first = {
        "before": f"{month} is early: holes dry before the main runs. Wait for a stretch of nights"
        f" {nights} and days {days}.",
        "soon": f"Soon: when the forecast shows several nights {nights} with days {days},"
        " tap. A lone warm day is not worth a hole.",
        "running": f"When the forecast shows several nights {nights} with days {days},"
        " tap. A lone warm day is not worth a hole.",
        "late": f"Late. Buds tight, nights {nights} and days {days} to come: you may catch"
        " the last runs. Buds swelling: wait a year.",
        "over": f"Not in {month}: sap runs in late winter, on nights {nights} and days"
        f" {days}. Mark your maples while they have leaves.",
    }[part_of_year(known)]
    hole = (
        f"A hole runs some {HOLE_RUNS_DAYS} days by bucket, then dries, so too early costs the"
        f" late runs and too late the first. Usual season: {SEASON_WEEKS[0]} to"
        f" {SEASON_WEEKS[1]} weeks with {SEASON_RUNS[0]} to {SEASON_RUNS[1]} runs, most of the"
        " sap on a few big days."
    )
    frozen = (
        "Drill on a mild day, when the trunk is at"
        f" {heat_at_least(TRUNK_F_LEAST, known.units)} or warmer: in deep-frozen wood the bark"
        " may split and the spile leaks. Two hands on the drill, both feet firm."
    )
    return Told(first, (*_here(known), hole, frozen))


def _here(known: Known) -> tuple[str, ...]:
    """When it begins where the person is, if that is known."""
    if known.region in EARLY_REGIONS:
        name = legal_density(known.region).name
        return (
            f"In {name} makers mostly start between late December and the middle of February,"
            " and the season is short: watch the forecast from Christmas on.",
        )
    start = usual_start(known.region)
    if start is None:
        return ()
    name = legal_density(known.region).name
    return (
        f"In {name} sap began {start} in 2017 and 2018 by the USDA survey. That counts big"
        " makers on tubing, who start early: with buckets go by the forecast, not the date.",
    )


def _nights(known: Known) -> str:
    """The nights of a run: "in the 20s", or in degrees Celsius."""
    if known.units == "us":
        return f"in the {RUN_NIGHT_F[0]:g}s"
    return f"at {heats(RUN_NIGHT_F, known.units)}"


def _days(known: Known) -> str:
    """The days of a run: "from 35F into the 40s", or in degrees Celsius."""
    low_f, high_f = RUN_DAY_F
    if known.units == "us":
        return f"from {heat(low_f, known.units)} into the {high_f // 10 * 10:g}s"
    return f"at {heats(RUN_DAY_F, known.units)}"
