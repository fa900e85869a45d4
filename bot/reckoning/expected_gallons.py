"""How many gallons to expect, as a range learned from a person's own gatherings.

Gallons are hard: on three seasons of one bush, weather explained less than a tenth of them in a
season not used for fitting. So there is a range or nothing: nothing until there are gatherings
enough, then the 10 to 90 % range of a straight line through logarithms, whose start is the
published yield (a Bayesian regression with a conjugate prior; its predictions follow Student's t).
Its width is then corrected by how wide it should have been for each past gathering, foretold from
the others, so that an 80 % range holds about 80 % for bushes steady and wild.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp, log, sqrt
from statistics import NormalDist

from bot.figures import SAP_PER_TAP_GOOD_DAY_GALLONS
from bot.reckoning.checks import not_negative, within
from bot.reckoning.outlook_figures import (
    ENOUGH_GATHERINGS,
    GOOD_DAY_SCORE,
    LOWEST_GALLONS_A_TAP,
    LOWEST_SCORE,
    RANGE_SHARE,
    RATE_PRIOR_LOG_SD,
    SCATTER_PRIOR_DAYS,
    SCATTER_PRIOR_LOG_SD,
    SLOPE_PRIOR,
    SLOPE_PRIOR_SD,
    THEORY_GATHERINGS,
)

MOST_TAPS = 100_000.0


@dataclass(frozen=True, slots=True)
class Gathering:
    """One emptying. score: the sum of the scores of the days since the one before; gallons: US,
    zero for dry pails; taps: how many hung then."""

    score: float
    gallons: float
    taps: float


@dataclass(frozen=True, slots=True)
class GallonsRange:
    """US gallons: one gathering in ten is under `low`, one in ten over `high`, half on either side
    of `middle`. learned_from: how many gatherings it rests on."""

    low: float
    middle: float
    high: float
    learned_from: int


def expected_gallons(past: Sequence[Gathering], score: float, taps: float) -> GallonsRange | None:
    """The range of gallons for days whose scores add up to `score`, from `taps` taps.

    None while fewer than six gatherings are known. Raises ValueError for a negative score or
    gallons, or for no taps.
    """
    _sensible(score, taps)
    for gathering in past:
        _sensible(gathering.score, gathering.taps)
        not_negative("Sap", gathering.gallons, "gal")
    if len(past) < ENOUGH_GATHERINGS:
        return None
    line = _learned(past)
    middle, scale, freedom = line.prediction(_warmth(score))
    by_theory = student_t_point(0.5 + RANGE_SHARE / 2, freedom)
    by_past = _share_point([line.missed_by(gathering) for gathering in past], RANGE_SHARE)
    reach = scale * (
        (THEORY_GATHERINGS * by_theory + len(past) * by_past) / (THEORY_GATHERINGS + len(past))
    )
    low, mid, high = (
        taps * max(0.0, exp(logged) - LOWEST_GALLONS_A_TAP)
        for logged in (middle - reach, middle, middle + reach)
    )
    return GallonsRange(low, mid, high, len(past))


def student_t_point(share: float, freedom: float) -> float:
    """The value under which `share` (0 to 1) of Student's t lies, for 4 degrees of freedom or more.

    Cornish and Fisher's expansion (Abramowitz and Stegun 1964, 26.7.5), good to 1 % there.
    """
    within("Degrees of freedom", freedom, 4, float(10**9), "")
    z = NormalDist().inv_cdf(share)
    return (
        z
        + (z**3 + z) / (4 * freedom)
        + (5 * z**5 + 16 * z**3 + 3 * z) / (96 * freedom**2)
        + (3 * z**7 + 19 * z**5 + 17 * z**3 - 15 * z) / (384 * freedom**3)
    )


@dataclass(frozen=True, slots=True)
class _Line:
    """log gallons a tap = intercept + slope * warmth, with the covariance of the two before it is
    scaled by the scatter's square, and what is known of that scatter."""

    intercept: float
    slope: float
    var_intercept: float
    covariance: float
    var_slope: float
    scatter_squared: float
    freedom: float

    def prediction(self, warmth: float) -> tuple[float, float, float]:
        """(middle, scale, degrees of freedom) of Student's t for one more gathering."""
        spread = 1 + self.var_intercept + 2 * self.covariance * warmth + self.var_slope * warmth**2
        return (
            self.intercept + self.slope * warmth,
            sqrt(self.scatter_squared * spread),
            self.freedom,
        )

    def missed_by(self, gathering: Gathering) -> float:
        """How many scales off this past gathering would have been, had the line been learned
        without it (the closed form of leaving one out of a regression)."""
        x = _warmth(gathering.score)
        leverage = self.var_intercept + 2 * self.covariance * x + self.var_slope * x * x
        miss = _logged(gathering) - self.intercept - self.slope * x
        squares_without = self.scatter_squared * self.freedom - miss**2 / (1 - leverage)
        scatter_without = squares_without / (self.freedom - 1)
        return abs(miss) / sqrt(scatter_without * (1 - leverage))


def _learned(past: Sequence[Gathering]) -> _Line:
    """The prior line, moved by what was gathered: the normal inverse-gamma update, 2 by 2."""
    scatter0 = SCATTER_PRIOR_LOG_SD**2
    start = log(SAP_PER_TAP_GOOD_DAY_GALLONS + LOWEST_GALLONS_A_TAP)
    p_aa = scatter0 / RATE_PRIOR_LOG_SD**2
    p_bb = scatter0 / SLOPE_PRIOR_SD**2
    xs = [_warmth(gathering.score) for gathering in past]
    ys = [_logged(gathering) for gathering in past]
    aa = p_aa + len(xs)
    ab = sum(xs)
    bb = p_bb + sum(x * x for x in xs)
    right_a = p_aa * start + sum(ys)
    right_b = p_bb * SLOPE_PRIOR + sum(x * y for x, y in zip(xs, ys, strict=True))
    determinant = aa * bb - ab * ab
    intercept = (bb * right_a - ab * right_b) / determinant
    slope = (aa * right_b - ab * right_a) / determinant
    misfit = sum((y - intercept - slope * x) ** 2 for x, y in zip(xs, ys, strict=True))
    misfit += p_aa * (intercept - start) ** 2 + p_bb * (slope - SLOPE_PRIOR) ** 2
    freedom = SCATTER_PRIOR_DAYS + len(past)
    return _Line(
        intercept=intercept,
        slope=slope,
        var_intercept=bb / determinant,
        covariance=-ab / determinant,
        var_slope=aa / determinant,
        scatter_squared=(SCATTER_PRIOR_DAYS * scatter0 + misfit) / freedom,
        freedom=freedom,
    )


def _share_point(values: Sequence[float], share: float) -> float:
    """The value under which `share` (0 to 1) of the values lie, between neighbours by parts."""
    ordered = sorted(values)
    place = share * (len(ordered) - 1)
    lower = int(place)
    upper = min(lower + 1, len(ordered) - 1)
    return ordered[lower] + (place - lower) * (ordered[upper] - ordered[lower])


def _warmth(score: float) -> float:
    """Logarithm of a score, 0 for a good day's."""
    return log((score + LOWEST_SCORE) / (GOOD_DAY_SCORE + LOWEST_SCORE))


def _logged(gathering: Gathering) -> float:
    return log(gathering.gallons / gathering.taps + LOWEST_GALLONS_A_TAP)


def _sensible(score: float, taps: float) -> None:
    not_negative("Score", score, "")
    within("Taps", taps, 1, MOST_TAPS, "taps")
