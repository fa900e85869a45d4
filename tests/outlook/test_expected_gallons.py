"""Gallons to expect, as a range."""

from __future__ import annotations

import math
import random

import pytest
from scipy.stats import t  # type: ignore[import-untyped]

from bot.reckoning.expected_gallons import Gathering, expected_gallons, student_t_point


def invented_season(
    rng: random.Random, taps: float, gallons_a_tap: float, scatter: float, dry_share: float
) -> list[Gathering]:
    """25 gatherings whose gallons follow the score by a power, with scatter and dry pails."""
    slope = rng.uniform(0.4, 1.2)
    season = []
    for _ in range(25):
        score = rng.betavariate(1, 1.5)
        gallons = gallons_a_tap * taps * (score / 0.75) ** slope * math.exp(rng.gauss(0, scatter))
        dry = rng.random() < dry_share
        season.append(Gathering(score, 0.0 if dry else round(gallons * 2) / 2, taps))
    return season


def test_five_gatherings_are_too_few_to_say() -> None:
    assert expected_gallons([Gathering(0.6, 10, 12)] * 5, 0.6, 12) is None


def test_six_gatherings_give_a_range_about_what_was_gathered() -> None:
    expected = expected_gallons([Gathering(0.6, 9.0 + n % 3, 12) for n in range(6)], 0.6, 12)
    assert expected is not None
    assert expected.low < 10 < expected.high
    assert expected.learned_from == 6


def test_a_better_day_expects_more() -> None:
    past = [Gathering(0.1 * n, 4.0 * n, 12) for n in range(1, 8)]
    poor, good = expected_gallons(past, 0.1, 12), expected_gallons(past, 0.9, 12)
    assert poor is not None
    assert good is not None
    assert poor.middle < good.middle


def test_twice_the_taps_expect_twice_the_gallons() -> None:
    past = [Gathering(0.5, 8.0, 12)] * 8
    few, many = expected_gallons(past, 0.5, 12), expected_gallons(past, 0.5, 24)
    assert few is not None
    assert many is not None
    assert many.middle == pytest.approx(2 * few.middle)


def test_dry_pails_count_and_never_give_less_than_nothing() -> None:
    expected = expected_gallons([Gathering(0.3, 0.0, 12)] * 8, 0.3, 12)
    assert expected is not None
    assert expected.low == 0.0
    assert expected.high < 12


def test_a_few_gatherings_move_only_part_of_the_way_from_the_published_yield() -> None:
    """Poor bush: a twentieth of the published gallon a tap."""
    few = expected_gallons([Gathering(0.75, 0.6, 12)] * 6, 0.75, 12)
    many = expected_gallons([Gathering(0.75, 0.6, 12)] * 40, 0.75, 12)
    assert few is not None
    assert many is not None
    assert few.middle > many.middle > 0.6 / 2
    assert few.high - few.low > many.high - many.low


@pytest.mark.parametrize("freedom", [4, 6, 10, 20, 40])
def test_the_t_point_agrees_with_an_independent_library(freedom: int) -> None:
    """SciPy's Student t."""
    assert student_t_point(0.9, freedom) == pytest.approx(t.ppf(0.9, freedom), rel=0.01)


@pytest.mark.parametrize(
    ("taps", "gallons_a_tap", "scatter", "dry_share"),
    [
        (6, 0.3, 0.5, 0.0),
        (6, 1.0, 1.0, 0.1),
        (50, 0.6, 0.7, 0.0),
        (50, 1.5, 0.6, 0.1),
        (200, 0.5, 0.9, 0.05),
        (12, 0.6, 0.4, 0.0),
    ],
)
def test_an_80_percent_range_holds_about_80_percent_of_gatherings_not_used_to_learn(
    taps: float, gallons_a_tap: float, scatter: float, dry_share: float
) -> None:
    """Each gathering of 80 invented seasons is foretold from those before it."""
    rng = random.Random(2027)
    inside = told = 0
    for _ in range(80):
        season = invented_season(rng, taps, gallons_a_tap, scatter, dry_share)
        for known in range(6, len(season)):
            expected = expected_gallons(season[:known], season[known].score, taps)
            assert expected is not None
            told += 1
            inside += expected.low <= season[known].gallons <= expected.high
    assert 0.75 <= inside / told <= 0.87


@pytest.mark.parametrize(("score", "gallons", "taps"), [(-0.1, 5, 12), (0.5, -5, 12), (0.5, 5, 0)])
def test_impossible_gatherings_are_refused(score: float, gallons: float, taps: float) -> None:
    with pytest.raises(ValueError, match="should be"):
        expected_gallons([Gathering(score, gallons, taps)] * 8, 0.5, 12)
