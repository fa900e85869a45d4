"""Signs that the season is nearly over."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from bot.reckoning.season_end import (
    DayTemps,
    bud_degree_days,
    buds_out,
    houle_probability,
    known_since_january,
    season_end,
)


def since_january(*spells: tuple[int, float, float]) -> list[DayTemps]:
    """Days from 1 January 2027 on: (how many, low F, high F) one after another."""
    temps = [(low_f, high_f) for many, low_f, high_f in spells for _ in range(many)]
    start = date(2027, 1, 1)
    return [DayTemps(start + timedelta(days=n), low, high) for n, (low, high) in enumerate(temps)]


WINTER = (60, 15.0, 30.0)
RUNS = (20, 25.0, 44.0)


@pytest.mark.parametrize(
    ("cycles", "degree_days_c", "probability"),
    [
        (0, 0, 0.006),
        (5, 0, 0.14),
        (8, 0, 0.45),
        (12, 5, 0.77),
        (20, 10, 0.95),
        (30, 40, 0.76),
        (35, 90, 0.04),
    ],
)
def test_weekly_model_gives_the_values_computed_from_its_published_formula(
    cycles: int, degree_days_c: float, probability: float
) -> None:
    """Houle et al. 2015; values computed by hand from the formula."""
    assert houle_probability(cycles, degree_days_c) == pytest.approx(probability, abs=0.006)


def test_a_day_wholly_above_the_base_counts_its_mean() -> None:
    assert bud_degree_days(since_january((1, 52.0, 62.0))) == pytest.approx(7.0)


def test_a_day_wholly_below_the_base_counts_nothing() -> None:
    assert bud_degree_days(since_january((3, 20.0, 50.0))) == 0.0


def test_a_warm_afternoon_counts_although_the_mean_is_below_the_base() -> None:
    """Half a sine wave of amplitude 15 above its mean: 15 / pi."""
    assert bud_degree_days(since_january((1, 35.0, 65.0))) == pytest.approx(15 / 3.14159, rel=1e-4)


@pytest.mark.parametrize(
    ("f_days", "stages"), [(33.9, 0), (34, 1), (41.9, 1), (42, 2), (43.9, 2), (44, 3)]
)
def test_buds_open_at_the_published_degree_days(f_days: float, stages: int) -> None:
    """Silver maple 34 and 42 (OSU BYGL), red maple 44 (OSU calendar)."""
    assert len(buds_out(f_days)) == stages


def test_a_full_run_is_not_the_end() -> None:
    signs = season_end(since_january(WINTER, RUNS))
    assert not signs.nearly_over
    assert signs.warm_nights == 0
    assert signs.buds == ()


def test_warm_nights_and_buds_are_the_end() -> None:
    signs = season_end(since_january(WINTER, RUNS, (8, 40.0, 66.0)))
    assert signs.nearly_over
    assert signs.warm_nights == 8
    assert "red maple, first bloom" in signs.buds


def test_a_warm_week_in_a_young_season_is_not_the_end() -> None:
    assert not season_end(since_january(WINTER, (6, 34.0, 46.0))).nearly_over


def test_a_freeze_to_come_puts_the_end_off() -> None:
    signs = season_end(since_january(WINTER, RUNS, (8, 40.0, 66.0), (1, 28.0, 45.0)))
    assert signs.warm_nights == 0
    assert not signs.nearly_over


def test_a_night_of_exactly_32_counts_as_a_freeze() -> None:
    assert season_end(since_january((5, 32.0, 50.0))).warm_nights == 0


def test_without_the_months_before_only_the_nights_speak() -> None:
    warm = [DayTemps(date(2027, 4, 1) + timedelta(days=n), 40, 65) for n in range(6)]
    signs = season_end(warm)
    assert signs.nearly_over
    assert signs.bud_f_days is None
    assert signs.weekly_model is None
    assert signs.buds == ()


def test_sums_with_holes_are_not_told() -> None:
    days = since_january(WINTER, RUNS)
    assert known_since_january(days[::2]) is None
    assert known_since_january(days[5:]) is not None


def test_nothing_known_is_no_sign() -> None:
    assert not season_end([]).nearly_over


def test_a_low_above_the_high_is_refused() -> None:
    with pytest.raises(ValueError, match="the low, 50 F, is above the high, 40 F"):
        DayTemps(date(2027, 3, 1), 50, 40)
