"""What the outlook says of invented days."""

from __future__ import annotations

from datetime import date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.reckoning.hourly import Hour
from bot.reckoning.outlook import outlook_by_day
from bot.reckoning.outlook_figures import BIG_SCORE, LIKELY_SCORE
from tests.outlook.invented import FIRST_DAY, hours_of, last_day_of, outlooks_of

GOOD = (24.0, 43.0)
FROZEN = (5.0, 20.0)
MILD = (38.0, 58.0)


def test_frozen_night_and_warm_day_is_likely() -> None:
    """Worked example of the trade: low 24, high 43."""
    assert last_day_of([GOOD] * 3).outlook == "likely"


def test_why_names_the_low_the_high_and_the_hour() -> None:
    assert last_day_of([GOOD] * 3).why == "froze hard to 24, 43 by 2 pm"


def test_every_day_gets_its_own_line_in_order() -> None:
    assert [day.date for day in outlooks_of([GOOD] * 4)] == [
        FIRST_DAY + timedelta(days=n) for n in range(4)
    ]


@pytest.mark.parametrize("high_f", [35, 36, 37, 38, 39, 40])
def test_a_day_of_35_to_40_after_a_freeze_is_never_none(high_f: float) -> None:
    assert last_day_of([(26, high_f)] * 3).outlook in ("possible", "likely")


@pytest.mark.parametrize("high_f", [35, 36, 37, 38, 39, 40])
def test_a_day_of_35_to_40_after_deep_cold_is_at_least_possible(high_f: float) -> None:
    assert last_day_of([FROZEN] * 4 + [(10, high_f)]).outlook != "none"


@pytest.mark.parametrize("high_f", [-5, 0, 20, 25, 29])
def test_a_day_that_stays_frozen_is_none_and_says_so(high_f: float) -> None:
    day = last_day_of([(high_f - 12, high_f)] * 2)
    assert day.outlook == "none"
    assert f"stays frozen, {high_f:.0f} at best" in day.why


def test_zero_degrees_is_a_temperature_like_any_other() -> None:
    day = last_day_of([FROZEN, (0.0, 20.0)])
    assert day.low_f == 0.0
    assert day.why.startswith("froze hard to 0,")


@pytest.mark.parametrize("high_f", [30, 31, 32])
def test_a_day_that_hardly_thaws_is_possible_not_none(high_f: float) -> None:
    day = last_day_of([(20, high_f)] * 2)
    assert day.outlook == "possible"
    assert f"hardly thaws, {high_f} at best" in day.why


def test_a_run_fades_when_nights_stop_freezing() -> None:
    scores = [day.score for day in outlooks_of([GOOD] * 3 + [MILD] * 6)][3:]
    assert scores == sorted(scores, reverse=True)
    assert scores[-1] < scores[0] / 4


def test_the_third_night_without_a_freeze_is_said_to_be_fading() -> None:
    """Worked example of the trade: low 36, high 58, third night above freezing."""
    day = last_day_of([GOOD] * 3 + [(36, 58)] * 3)
    assert day.why.startswith("no freeze for three nights")
    assert day.why.endswith("fading")
    assert day.nights_unfrozen == 3


def test_the_second_night_without_a_freeze_is_not_yet_fading() -> None:
    day = last_day_of([GOOD] * 3 + [(36, 58)] * 2)
    assert day.nights_unfrozen == 2
    assert "fading" not in day.why


def test_the_day_after_a_freeze_still_runs_without_a_new_one() -> None:
    """A freeze still works 36 to 48 hours later."""
    assert last_day_of([GOOD] * 3 + [MILD]).outlook in ("likely", "big")


def test_a_week_without_a_freeze_has_nothing_left_to_run() -> None:
    day = last_day_of([GOOD] * 2 + [(48, 65)] * 9)
    assert day.outlook == "none"
    assert "nothing left to run" in day.why


def test_a_freeze_brings_the_run_back() -> None:
    assert last_day_of([MILD] * 7 + [GOOD]).outlook in ("likely", "big")


def test_first_warm_day_after_deep_cold_scores_under_the_second() -> None:
    first, second = outlooks_of([(0, 15)] * 5 + [(22, 45), (26, 45)])[-2:]
    assert first.score < second.score


def test_first_warm_day_after_deep_cold_says_it_may_lag() -> None:
    assert "trunks still cold, may lag" in last_day_of([(0, 15)] * 5 + [(20, 40)]).why


def test_a_steady_run_says_nothing_of_lag() -> None:
    assert "lag" not in last_day_of([(27, 45)] * 4).why


def test_deep_cold_before_a_thaw_lowers_the_score() -> None:
    assert last_day_of([(0, 15)] * 5 + [(20, 40)]).score < last_day_of([(27, 40)] * 6).score


def test_a_warmer_day_after_the_same_night_scores_no_less() -> None:
    scores = [last_day_of([GOOD, (24, high)]).score for high in (33, 35, 37, 40, 45, 55)]
    assert scores == sorted(scores)


def test_warmth_beyond_the_low_forties_adds_little() -> None:
    cool, warm = (last_day_of([(26, high)] * 3).score for high in (45, 60))
    assert warm < 1.35 * cool


def test_a_warm_midnight_before_a_cold_day_is_told_as_falling() -> None:
    hours = hours_of([GOOD, GOOD])
    falling = [Hour(hours[0].at_local + timedelta(days=2, hours=n), 40.0 - n) for n in range(20)]
    day = outlook_by_day([*hours, *falling])[-1]
    assert "40 at midnight, falling to 23 by evening" in day.why


def test_summer_is_none_from_its_first_day() -> None:
    assert {day.outlook for day in outlooks_of([(60, 85)] * 5)} == {"none"}


def test_a_file_that_begins_on_a_frozen_morning_is_judged_all_the_same() -> None:
    assert outlooks_of([GOOD])[0].outlook in ("possible", "likely")


def test_hours_in_any_order_give_the_same_outlook() -> None:
    hours = hours_of([GOOD, MILD, GOOD])
    assert outlook_by_day(reversed(hours)) == outlook_by_day(hours)


def test_no_hours_give_no_days() -> None:
    assert outlook_by_day([]) == []


def test_an_unknown_afternoon_is_never_called_none() -> None:
    morning = [hour for hour in hours_of([FROZEN] * 3) if hour.at_local.hour < 8]
    day = outlook_by_day(morning)[-1]
    assert day.outlook == "possible"
    assert not day.complete
    assert day.why.endswith("known only from midnight to 7 am")


def test_a_whole_day_says_nothing_of_what_is_known() -> None:
    day = last_day_of([GOOD] * 2)
    assert day.complete
    assert "known" not in day.why


@pytest.mark.parametrize("first_hour", range(6))
def test_six_hourly_readings_keep_a_run_day(first_hour: int) -> None:
    sparse = [hour for hour in hours_of([GOOD] * 4) if (hour.at_local.hour - first_hour) % 6 == 0]
    assert outlook_by_day(sparse)[2].outlook == "likely"


def test_scattered_missing_hours_hardly_change_the_score() -> None:
    hours = hours_of([GOOD] * 4)
    holed = [hour for n, hour in enumerate(hours) if n % 4]
    assert outlook_by_day(holed)[2].score == pytest.approx(outlook_by_day(hours)[2].score, abs=0.03)


def test_days_nobody_measured_are_left_out_and_not_invented() -> None:
    hours = [h for h in hours_of([GOOD] * 6) if h.at_local.date() != FIRST_DAY + timedelta(days=2)]
    assert FIRST_DAY + timedelta(days=2) not in {day.date for day in outlook_by_day(hours)}


def test_march_change_of_clocks_makes_no_odds() -> None:
    """The wall clock leaves out 2 am on 14 March 2027; the hour is bridged."""
    hours = hours_of([GOOD] * 4, first_day=date(2027, 3, 12))
    changed = [
        hour for hour in hours if hour.at_local != datetime.fromisoformat("2027-03-14T02:00")
    ]
    assert [day.outlook for day in outlook_by_day(changed)] == [
        day.outlook for day in outlook_by_day(hours)
    ]
    assert outlook_by_day(changed)[2].score == pytest.approx(
        outlook_by_day(hours)[2].score, abs=0.01
    )


def test_november_change_of_clocks_makes_no_odds() -> None:
    """The wall clock has 1 am twice on 7 November 2027."""
    hours = hours_of([GOOD] * 3, first_day=date(2027, 11, 6))
    doubled = [*hours, Hour(datetime.fromisoformat("2027-11-07T01:00"), 30.0)]
    assert len(outlook_by_day(doubled)) == 3
    assert outlook_by_day(doubled)[1].outlook == outlook_by_day(hours)[1].outlook


def test_a_long_warm_spring_lowers_the_same_days_score() -> None:
    early = last_day_of([(26, 36)] * 20 + [GOOD] * 3)
    late = last_day_of([(45, 65)] * 20 + [GOOD] * 3)
    assert late.score < early.score
    assert "late in the season" in late.why


def test_warmth_of_the_year_before_does_not_age_the_season() -> None:
    autumn = hours_of([(45, 70)] * 20 + [GOOD] * 14, first_day=date(2026, 12, 1))
    assert "late in the season" not in outlook_by_day(autumn)[-1].why


def test_the_whole_why_can_be_sent_as_a_text() -> None:
    """GSM-7 letters only: plain ASCII without the characters that count twice."""
    days = outlooks_of([FROZEN] * 3 + [GOOD] * 3 + [MILD] * 12 + [(29, 32)])
    assert all(day.why.isascii() and not set(day.why) & set("^{}\\[~]|`") for day in days)


@given(
    st.lists(
        st.tuples(
            st.integers(0, 24 * 20), st.floats(-40, 100, allow_nan=False, allow_infinity=False)
        ),
        max_size=60,
    )
)
def test_any_hours_give_one_outlook_a_date_with_a_score_that_fits_its_grade(
    readings: list[tuple[int, float]],
) -> None:
    start = datetime.fromisoformat("2027-02-20")
    hours = [Hour(start + timedelta(hours=at), temp_f) for at, temp_f in readings]
    days = outlook_by_day(hours)
    assert {hour.at_local.date() for hour in hours} <= {day.date for day in days}
    assert len({day.date for day in days}) == len(days)
    for day in days:
        assert 0 <= day.score <= 1
        assert day.why
        assert (day.outlook == "big") == (day.score >= BIG_SCORE)
        if day.outlook == "likely":
            assert LIKELY_SCORE <= day.score < BIG_SCORE
        if day.outlook == "none":
            assert day.score < 0.01
        if day.outlook == "possible":
            assert 0.01 <= day.score < LIKELY_SCORE
