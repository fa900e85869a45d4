"""The morning's alert: to whom, on which mornings, at which hour, and from which news."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta

import pytest

from bot.clock import utc_time
from tests.mornings.stage import (
    ANN,
    BEN,
    CAL,
    FROZEN,
    RUN,
    WARM,
    HandWeather,
    Season,
    alerts,
    weather_of,
)

TAPPED = ("put in 20 taps", "my buckets hold 2 gal")


def season(*days: tuple[float, float], place: str = "05760", tapped: bool = True) -> Season:
    """One settled sugarer from 1 March on, whose days go like this."""
    made = Season(weather_of(days))
    made.settle(place, *(TAPPED if tapped else ()))
    return made


# --- which mornings ------------------------------------------------------------------------------


def test_a_run_day_is_told_at_half_past_six() -> None:
    left = alerts(season(RUN, RUN, FROZEN).until("2027-03-02T12:00"))
    assert [one.at for one in left] == ["2027-03-01T06:30", "2027-03-02T06:30"]


def test_an_alert_names_the_low_and_the_high_and_what_to_do() -> None:
    left = alerts(season(FROZEN, RUN, RUN, (25, 46), RUN).until("2027-03-04T12:00"))
    assert left[-1].text == (
        "Pailtext: 25F at dawn, 46F by 2 pm. Big run likely. Your 2 gal pails could fill: gather"
        " by 5 pm."
    )


def test_a_frozen_morning_stays_quiet() -> None:
    assert season(FROZEN, FROZEN, FROZEN).until("2027-03-03T12:00") == []


def test_a_morning_after_four_warm_nights_stays_quiet() -> None:
    left = season(*[WARM] * 7).until("2027-03-06T12:00")
    assert [one.at for one in alerts(left) if one.at >= "2027-03-04"] == []


def test_a_day_of_37_after_a_freeze_is_possible_and_told() -> None:
    left = alerts(season(FROZEN, (22, 37), FROZEN).until("2027-03-02T12:00"))
    assert [one.at for one in left] == ["2027-03-02T06:30"]
    assert "possible" in left[0].text


def test_a_day_that_hardly_thaws_stays_quiet() -> None:
    assert alerts(season((15, 32), (15, 32), FROZEN).until("2027-03-02T12:00")) == []


def test_sap_told_without_taps_counts_as_tapped() -> None:
    made = season(FROZEN, RUN, RUN, RUN, tapped=False)
    made.text("12 gal at 2.2", "2027-03-01T18:00")
    assert "gather" in alerts(made.until("2027-03-02T12:00"))[0].text.lower()


def test_pulled_taps_silence_the_mornings() -> None:
    made = season(RUN, RUN, RUN, RUN)
    made.text("pulled all the spiles", "2027-03-01T18:00")
    assert made.until("2027-03-04T12:00") == []


def test_pulled_taps_silence_those_too_who_want_every_morning() -> None:
    made = season(RUN, RUN, RUN, RUN)
    made.text("text me every morning", "2027-03-01T18:00")
    made.text("pulled all the spiles", "2027-03-01T18:05")
    assert alerts(made.until("2027-03-04T12:00")) == []


def test_taps_put_in_again_bring_the_mornings_back() -> None:
    made = season(RUN, RUN, RUN, RUN)
    made.text("pulled all the spiles", "2027-03-01T18:00")
    made.text("put in 10 taps", "2027-03-02T18:00")
    assert [one.at for one in alerts(made.until("2027-03-04T05:00"))] == ["2027-03-03T06:30"]


# --- no taps yet ---------------------------------------------------------------------------------


def test_without_taps_the_first_real_stretch_is_told_once() -> None:
    left = season(*[FROZEN] * 4, *[RUN] * 10, tapped=False).until("2027-03-12T12:00")
    assert len(left) == 1
    assert left[0].kind == "alert"
    assert "first real stretch from Fri" in left[0].text


def test_without_taps_a_lone_warm_day_is_not_told() -> None:
    days = [FROZEN, FROZEN, FROZEN, (24, 46), FROZEN, FROZEN, FROZEN, FROZEN, FROZEN, FROZEN]
    assert season(*days, tapped=False).until("2027-03-06T12:00") == []


def test_the_stretch_is_told_again_in_another_season() -> None:
    made = Season(weather_of([RUN] * 420, date(2027, 2, 1)), "2027-02-01T00:00")
    made.settle()
    first = made.until("2027-02-08T12:00")
    made.clock.set(datetime(2028, 1, 5, tzinfo=UTC))
    again = made.until("2028-01-14T12:00")
    assert [one.at for one in (*first, *again)] == ["2027-02-01T06:30", "2028-01-10T06:30"]


def test_a_stretch_in_november_is_no_time_to_tap() -> None:
    made = Season(weather_of([RUN] * 30, date(2026, 11, 1)), "2026-11-01T00:00")
    made.settle()
    assert made.until("2026-11-20T12:00") == []


def test_in_the_south_a_stretch_before_christmas_is_told() -> None:
    made = Season(weather_of([RUN] * 40, date(2026, 12, 1)), "2026-12-01T00:00")
    made.settle("24426")
    assert [one.at for one in made.until("2026-12-30T12:00")] == ["2026-12-15T06:30"]


# --- the hour ------------------------------------------------------------------------------------


def test_the_hour_told_is_the_hour_kept() -> None:
    made = season(RUN, RUN, RUN)
    assert made.text("text me at 8", "2027-03-01T12:00").startswith("I text at 8 am")
    assert [one.at for one in alerts(made.until("2027-03-02T12:00"))] == ["2027-03-02T08:00"]


def test_an_undone_hour_is_the_hour_before() -> None:
    made = season(RUN, RUN, RUN)
    made.text("text me at 8", "2027-03-01T12:00")
    made.text("undo", "2027-03-01T12:01")
    assert [one.at for one in alerts(made.until("2027-03-02T12:00"))] == ["2027-03-02T06:30"]


def test_an_hour_at_which_no_alert_may_come_is_asked_about_and_not_kept() -> None:
    made = season(RUN, RUN, RUN)
    assert made.text("text me at 4", "2027-03-01T12:00").endswith("?")
    assert [one.at for one in alerts(made.until("2027-03-02T12:00"))] == ["2027-03-02T06:30"]


def test_an_evening_hour_speaks_of_the_next_day() -> None:
    made = season(FROZEN, RUN, RUN, RUN)
    made.text("text me at 7 pm", "2027-03-01T12:00")
    left = alerts(made.until("2027-03-01T23:00"))
    assert [one.at for one in left] == ["2027-03-01T19:00"]
    assert left[0].text.startswith("Pailtext: Tue 24F at dawn, 44F by 2 pm.")


def test_the_first_alert_says_how_to_change_the_hour_and_the_next_do_not() -> None:
    left = alerts(season((25, 38), (25, 38), (25, 38)).until("2027-03-02T12:00"))
    assert ["another hour" in one.text for one in left] == [True, False]


def test_who_chose_an_hour_is_not_told_how_to() -> None:
    made = season((25, 38), (25, 38), (25, 38))
    made.text("text me at 7", "2027-03-01T12:00")
    left = alerts(made.until("2027-03-02T12:00"))
    assert left
    assert not any("another hour" in one.text for one in left)


def test_every_morning_is_told_to_those_who_want_it() -> None:
    made = season(FROZEN, FROZEN, FROZEN)
    made.text("text me every morning", "2027-03-01T12:00")
    left = alerts(made.until("2027-03-03T12:00"))
    assert [one.at for one in left] == ["2027-03-02T06:30", "2027-03-03T06:30"]
    assert "No run." in left[0].text


def test_never_means_neither_alerts_nor_reminders() -> None:
    made = season(*[RUN] * 6)
    made.text("14 gal at 2.2", "2027-03-01T12:00")
    made.text("no more morning alerts", "2027-03-01T12:01")
    assert made.until("2027-03-06T12:00") == []


def test_an_hour_named_after_never_brings_the_alerts_back() -> None:
    made = season(*[RUN] * 4)
    made.text("no more morning alerts", "2027-03-01T12:01")
    made.text("text me at 7", "2027-03-02T12:01")
    assert [one.at for one in alerts(made.until("2027-03-03T12:00"))] == ["2027-03-03T07:00"]


# --- to whom -------------------------------------------------------------------------------------


def test_owner_and_helper_get_it_once_each_at_their_own_hour() -> None:
    made = season(*[RUN] * 4)
    made.text(f"add my wife {BEN} to my sugarbush", "2027-03-01T12:00")
    made.text("join", "2027-03-01T12:05", BEN)
    made.text("text me at 7:30", "2027-03-01T12:06", BEN)
    left = alerts(made.until("2027-03-02T12:00"))
    assert [(one.at, one.to) for one in left] == [
        ("2027-03-02T06:30", ANN),
        ("2027-03-02T07:30", BEN),
    ]


def test_a_wish_of_before_joining_is_kept() -> None:
    made = season(*[RUN] * 4)
    made.text("text me at 9", "2027-03-01T12:00", BEN)
    made.text(f"add {BEN}", "2027-03-01T12:01")
    made.text("join", "2027-03-01T12:05", BEN)
    left = alerts(made.until("2027-03-02T12:00"))
    assert ("2027-03-02T09:00", BEN) in [(one.at, one.to) for one in left]


def test_stop_silences_and_start_brings_back() -> None:
    made = season(*[RUN] * 6)
    made.text("STOP", "2027-03-01T12:00")
    assert made.until("2027-03-03T12:00") == []
    made.text("START", "2027-03-03T12:01")
    assert [one.at for one in alerts(made.until("2027-03-04T12:00"))] == ["2027-03-04T06:30"]


def test_a_place_nobody_told_brings_no_alert() -> None:
    made = Season(weather_of([RUN] * 4))
    made.text("put in 20 taps", "2027-03-01T01:00")
    assert made.until("2027-03-03T12:00") == []


def test_strangers_hear_of_their_own_taps_only() -> None:
    made = season(*[RUN] * 3)
    made.settle("13343", sender=CAL)
    assert {one.to for one in alerts(made.until("2027-03-01T07:00"))} == {ANN, CAL}
    assert {one.to for one in alerts(made.until("2027-03-02T07:00"))} == {ANN}


# --- clocks and zones ----------------------------------------------------------------------------

PLACES = {
    "A0A 1A0": "America/St_Johns",
    "B0N 1T0": "America/Halifax",
    "05760": "America/New_York",
    "54837": "America/Chicago",
    "99801": "America/Juneau",
    "99901": "America/Sitka",
}


@pytest.mark.parametrize("place", PLACES)
def test_half_past_six_is_theirs_from_newfoundland_to_alaska(place: str) -> None:
    made = season(*[RUN] * 3, place=place)
    left = alerts(made.until("2027-03-02T12:00"))
    assert [one.at for one in left] == ["2027-03-01T06:30", "2027-03-02T06:30"]


@pytest.mark.parametrize("place", PLACES)
def test_the_march_change_of_clocks_moves_no_alert(place: str) -> None:
    made = Season(weather_of([RUN] * 8, date(2027, 3, 12)), "2027-03-12T00:00")
    made.settle(place, *TAPPED)
    left = alerts(made.until("2027-03-15T12:00"))
    assert [one.at for one in left] == [f"2027-03-{day}T06:30" for day in (12, 13, 14, 15)]


@pytest.mark.parametrize("place", PLACES)
def test_the_november_change_of_clocks_doubles_no_alert(place: str) -> None:
    made = Season(weather_of([RUN] * 8, date(2026, 10, 30)), "2026-10-30T00:00")
    made.settle(place, *TAPPED)
    left = alerts(made.until("2026-11-02T12:00"))
    days = ["2026-10-30", "2026-10-31", "2026-11-01", "2026-11-02"]
    assert [one.at for one in left] == [f"{day}T06:30" for day in days]


# --- the news ------------------------------------------------------------------------------------


def test_without_any_source_no_alert_goes() -> None:
    made = Season(None)
    made.settle("05760", *TAPPED)
    assert alerts(made.until("2027-03-03T12:00")) == []


def test_a_morning_without_news_is_silent_and_the_next_with_news_is_not() -> None:
    weather = HandWeather(weather_of([RUN] * 5))
    made = Season(weather)
    made.settle("05760", *TAPPED)
    weather.fails = True
    assert alerts(made.until("2027-03-01T20:00")) == []
    weather.fails = False
    assert [one.at for one in alerts(made.until("2027-03-02T20:00"))] == ["2027-03-02T06:30"]


def test_old_news_say_their_age() -> None:
    weather = HandWeather(weather_of([RUN] * 5), age=timedelta(hours=26))
    made = Season(weather)
    made.settle("05760", *TAPPED)
    assert "Forecast 26 h old." in alerts(made.until("2027-03-01T12:00"))[0].text


def test_fresh_news_do_not() -> None:
    weather = HandWeather(weather_of([RUN] * 5), age=timedelta(hours=5))
    made = Season(weather)
    made.settle("05760", *TAPPED)
    assert "old" not in alerts(made.until("2027-03-01T12:00"))[0].text


def test_news_that_end_before_the_afternoon_call_no_run() -> None:
    weather = HandWeather(weather_of([RUN] * 5), ends_after=timedelta(hours=4))
    made = Season(weather)
    made.settle("05760", *TAPPED)
    assert alerts(made.until("2027-03-01T12:00")) == []


def test_such_news_are_told_as_far_as_they_go_to_those_who_want_every_morning() -> None:
    weather = HandWeather(weather_of([RUN] * 5), ends_after=timedelta(hours=4))
    made = Season(weather)
    made.settle("05760", *TAPPED, "text me every morning")
    left = alerts(made.until("2027-03-01T12:00"))
    assert "can't tell" in left[0].text
    assert "likely" not in left[0].text


def test_news_whose_hours_are_over_are_none() -> None:
    weather = HandWeather(weather_of([RUN] * 5), ends_after=timedelta(hours=-3))
    made = Season(weather)
    made.settle("05760", *TAPPED, "text me every morning")
    assert alerts(made.until("2027-03-01T12:00")) == []


# --- once, and in time ---------------------------------------------------------------------------


def test_a_morning_planned_twice_is_told_once() -> None:
    made = season(*[RUN] * 3)
    made.clock.set(utc_time(datetime.fromisoformat("2027-03-01T06:30"), made.zone(ANN)))
    since = made.clock.now_utc() - timedelta(minutes=15)
    assert len(made.tick(since)) == 1
    assert made.tick(since) == []


def test_a_worker_that_stood_still_an_hour_makes_up_for_it() -> None:
    made = season(*[RUN] * 3)
    made.clock.set(utc_time(datetime.fromisoformat("2027-03-01T07:40"), made.zone(ANN)))
    left = made.tick(made.clock.now_utc() - timedelta(hours=2))
    assert [one.at for one in left] == ["2027-03-01T07:40"]


def test_a_worker_that_stood_still_till_noon_says_nothing_of_the_morning() -> None:
    made = season(*[RUN] * 3)
    made.clock.set(utc_time(datetime.fromisoformat("2027-03-01T12:00"), made.zone(ANN)))
    assert alerts(made.tick(made.clock.now_utc() - timedelta(hours=20))) == []


def test_going_by_quarter_hours_tells_the_same_as_leaping() -> None:
    left = [
        season(FROZEN, RUN, RUN, FROZEN).until("2027-03-03T23:00", by_quarters=by_quarters)
        for by_quarters in (True, False)
    ]
    assert left[0] == left[1]
    assert left[0] != []


def test_one_place_is_asked_for_once_a_round() -> None:
    weather = HandWeather(weather_of([RUN] * 5))
    made = Season(weather)
    made.settle("05760", *TAPPED)
    made.settle("05760", *TAPPED, sender=BEN)
    made.settle("05760", *TAPPED, sender=CAL)
    made.until("2027-03-01T06:29")
    weather.asked.clear()
    assert len(alerts(made.until("2027-03-01T06:31"))) == 3
    assert len(weather.asked) == 1


def test_a_season_told_as_over_silences_mornings_and_reminders() -> None:
    made = season(RUN, RUN, RUN, RUN, RUN, RUN)
    made.text("30 gal at 2", "2027-03-01T17:00")
    made.text("season over", "2027-03-01T18:00")
    assert made.until("2027-03-06T22:00") == []


def test_sap_or_taps_after_the_season_was_told_as_over_bring_the_mornings_back() -> None:
    for words in ("12 gal at 2", "put in 10 taps"):
        made = season(RUN, RUN, RUN, RUN)
        made.text("season over", "2027-03-01T18:00")
        made.text(words, "2027-03-02T18:00")
        assert [one.at for one in alerts(made.until("2027-03-03T12:00"))] == ["2027-03-03T06:30"]


def test_an_undone_end_of_the_season_brings_the_mornings_back() -> None:
    made = season(RUN, RUN, RUN, RUN)
    made.text("season over", "2027-03-01T18:00")
    made.text("undo", "2027-03-01T18:05")
    assert [one.at for one in alerts(made.until("2027-03-02T12:00"))] == ["2027-03-02T06:30"]
