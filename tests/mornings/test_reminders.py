"""Reminders: each owed to a record or the weather, at a decent hour, once, and never nagging."""

from __future__ import annotations

from datetime import date, timedelta
from itertools import pairwise

import pytest

from tests.mornings.stage import (
    BEN,
    FROZEN,
    RUN,
    Left,
    Season,
    reminders,
    weather_of,
)

COOL = (34.0, 39.0)  # neither a hard freeze nor a warm spell
MILD = (28.0, 44.0)
HARD = (10.0, 44.0)
TAPPED = ("put in 20 taps",)


def season(*days: tuple[float, float], first_day: date = date(2027, 3, 1)) -> Season:
    """One settled sugarer with taps, from the first day on."""
    made = Season(weather_of(days, first_day), f"{first_day}T00:00")
    made.settle("05760", *TAPPED)
    return made


def said(left: list[Left]) -> list[tuple[str, str]]:
    """When, and the first words."""
    return [(one.at, " ".join(one.text.split()[1:5])) for one in reminders(left)]


# --- sap that waits ------------------------------------------------------------------------------


def test_sap_is_to_be_boiled_on_its_day() -> None:
    made = Season(None)
    made.settle("05760", *TAPPED)
    made.text("30 gal at 2.2", "2027-03-01T18:00")
    left = reminders(made.until("2027-03-08T12:00"))
    assert [one.at for one in left] == ["2027-03-04T08:00"]
    assert "30 gal of sap from Mon should be boiled today" in left[0].text


def test_boiled_sap_is_not_spoken_of() -> None:
    made = Season(None)
    made.settle("05760", *TAPPED)
    made.text("30 gal at 2.2", "2027-03-01T18:00")
    made.text("boiled 30 gal in 6 hours", "2027-03-03T18:00")
    assert made.until("2027-03-08T12:00") == []


def test_undone_sap_is_not_spoken_of() -> None:
    made = Season(None)
    made.settle("05760", *TAPPED)
    made.text("30 gal at 2.2", "2027-03-01T18:00")
    made.text("undo", "2027-03-01T18:01")
    assert made.until("2027-03-08T12:00") == []


def test_each_gathering_has_its_own_day() -> None:
    made = Season(None)
    made.settle("05760", *TAPPED)
    made.text("30 gal at 2.2", "2027-03-01T18:00")
    made.text("boiled 30 gal in 6 hours", "2027-03-02T18:00")
    made.text("20 gal at 2", "2027-03-05T18:00")
    assert said(made.until("2027-03-12T12:00")) == [("2027-03-08T08:00", "20 gal of sap")]


def test_no_boil_is_asked_for_while_the_fire_burns() -> None:
    made = Season(None)
    made.settle("05760", *TAPPED)
    made.text("30 gal at 2.2", "2027-03-01T18:00")
    made.text("lit the fire", "2027-03-04T07:00")
    assert made.until("2027-03-04T12:00") == []


def test_an_alert_that_says_boil_today_leaves_the_reminder_nothing_to_say() -> None:
    made = season(*[FROZEN] * 3, *[RUN] * 6)
    made.text("30 gal at 2.2", "2027-03-01T18:00")
    left = [one for one in made.until("2027-03-04T14:00") if one.at >= "2027-03-04"]
    assert [one.kind for one in left] == ["alert"]
    assert "boil today" in left[0].text


def test_a_reminder_before_the_alert_is_not_said_again_by_it() -> None:
    made = season(*[COOL] * 3, *[RUN] * 6)
    made.text("text me at 9", "2027-03-01T17:00")
    made.text("30 gal at 2.2", "2027-03-01T18:00")
    left = [one for one in made.until("2027-03-04T14:00") if one.at >= "2027-03-04"]
    assert [(one.at, one.kind) for one in left] == [
        ("2027-03-04T08:00", "reminder"),
        ("2027-03-04T09:00", "alert"),
    ]
    assert "boil" not in left[1].text


def test_sap_past_its_day_is_not_harped_on() -> None:
    made = season(*[FROZEN] * 3, *[RUN] * 9)
    made.text("30 gal at 2.2", "2027-03-01T18:00")
    later = made.until("2027-03-12T12:00")
    assert [one.at for one in later if "boil" in one.text] == [
        "2027-03-04T06:30",
        "2027-03-05T06:30",
    ]


def test_a_warm_day_that_spoils_what_waits_is_told_the_day_before() -> None:
    made = season(COOL, COOL, (38, 58), (40, 60), COOL, COOL)
    made.text("30 gal at 2.2", "2027-03-01T18:00")
    left = [one for one in reminders(made.until("2027-03-04T07:00")) if "spoil" in one.text]
    assert [one.at for one in left] == ["2027-03-02T08:00"]
    assert "58F Wed" in left[0].text
    assert "spoil fast" in left[0].text


def test_an_empty_barrel_hears_nothing_of_warm_days() -> None:
    assert reminders(season(COOL, COOL, (38, 58), (40, 60), COOL).until("2027-03-04T12:00")) == []


def test_one_spell_is_told_once() -> None:
    made = season(COOL, COOL, *[(40, 60)] * 6)
    made.text("30 gal at 2.2", "2027-03-01T18:00")
    left = reminders(made.until("2027-03-06T12:00"))
    assert len([one for one in left if "spoil" in one.text]) == 1


# --- freezing nights -----------------------------------------------------------------------------


def test_a_hard_freeze_is_told_in_the_afternoon_while_sap_hangs() -> None:
    made = season(MILD, MILD, HARD, HARD)
    left = reminders(made.until("2027-03-02T20:00"))
    assert [one.at for one in left] == ["2027-03-02T15:00"]
    assert left[0].text.startswith("Pailtext: 10F tonight. Gather before dark")


def test_pails_gathered_today_hang_empty() -> None:
    made = season(MILD, MILD, HARD, HARD)
    made.text("no sap today", "2027-03-02T14:00")
    assert reminders(made.until("2027-03-02T20:00")) == []


def test_sap_in_jars_is_told_to_come_in() -> None:
    made = season(MILD, MILD, HARD, HARD)
    made.text("12 gal at 2.2", "2027-03-02T14:00")
    left = reminders(made.until("2027-03-02T20:00"))
    assert "glass or jars can burst" in left[0].text
    assert "Gather" not in left[0].text


def test_a_mild_freeze_bursts_nothing_and_is_not_told() -> None:
    assert reminders(season(*[(29, 45)] * 5).until("2027-03-04T20:00")) == []


def test_a_cold_week_is_told_once_in_three_days() -> None:
    left = reminders(season(*[(12, 46)] * 8).until("2027-03-07T20:00"))
    days = [one.at[:10] for one in left]
    assert len(days) >= 2
    for earlier, later in pairwise(days):
        assert date.fromisoformat(later) - date.fromisoformat(earlier) >= timedelta(days=3)


def test_without_taps_and_sap_a_freeze_is_nobodys_business() -> None:
    made = Season(weather_of([(10, 46)] * 4))
    made.settle()
    assert reminders(made.until("2027-03-03T20:00")) == []


# --- the fire ------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("lit", "asked"),
    [
        ("2027-03-05T08:00", "2027-03-05T18:00"),
        ("2027-03-05T10:30", "2027-03-05T20:30"),
        # Ten hours on it is night: before it, or in the morning.
        ("2027-03-05T11:00", "2027-03-05T20:45"),
        ("2027-03-05T15:00", "2027-03-06T08:00"),
    ],
)
def test_a_fire_lit_ten_hours_is_asked_after_at_a_decent_hour(lit: str, asked: str) -> None:
    made = Season(None)
    made.settle()
    made.text("lit the fire", lit)
    left = made.until("2027-03-08T12:00")
    assert [one.at for one in left] == [asked]
    assert "fire was lit" in left[0].text


def test_a_fire_that_is_out_is_not_asked_after() -> None:
    made = Season(None)
    made.settle()
    made.text("lit the fire", "2027-03-05T08:00")
    made.text("fire's out", "2027-03-05T15:00")
    assert made.until("2027-03-08T12:00") == []


def test_owner_and_helper_are_both_asked_after_the_fire() -> None:
    made = Season(None)
    made.settle()
    made.text(f"add my wife {BEN} to my sugarbush", "2027-03-05T07:00")
    made.text("join", "2027-03-05T07:05", BEN)
    made.text("lit the fire", "2027-03-05T08:00")
    left = made.until("2027-03-05T20:00")
    assert {(one.at, one.to) for one in left} == {
        ("2027-03-05T18:00", "+15550100021"),
        ("2027-03-05T18:00", "+15550100022"),
    }


# --- the week, and the end -----------------------------------------------------------------------


def test_a_weekly_total_comes_on_sunday_evening_to_those_who_want_it() -> None:
    made = Season(None)
    made.settle("05760", *TAPPED)
    assert "Sundays" in made.text("text me a weekly total", "2027-03-01T17:00")
    made.text("10 gal at 2.2", "2027-03-05T18:00")
    made.text("boiled 10 gal in 3 hours", "2027-03-05T22:00")
    left = made.until("2027-03-07T23:00")
    assert [(one.at, one.text) for one in left] == [
        (
            "2027-03-07T19:00",
            "Pailtext: this week 10 gal of sap. Season 10 gal, about 2 pints syrup.",
        )
    ]


def test_nobody_else_gets_one() -> None:
    made = Season(None)
    made.settle("05760", *TAPPED)
    made.text("10 gal at 2.2", "2027-03-05T18:00")
    made.text("boiled 10 gal in 3 hours", "2027-03-05T22:00")
    assert made.until("2027-03-07T23:00") == []


def test_a_season_without_anything_has_no_weekly_total() -> None:
    made = Season(None)
    made.settle("05760", *TAPPED)
    made.text("text me a weekly total", "2027-03-01T17:00")
    assert made.until("2027-03-14T23:00") == []


def test_the_seasons_end_is_nudged_once_with_what_to_do() -> None:
    days = [*[(10, 25)] * 59, *[(24, 46)] * 20, *[(44, 66)] * 20]
    made = Season(weather_of(days, date(2027, 1, 1)), "2027-03-10T00:00")
    made.settle("05760", *TAPPED)
    left = [one for one in made.until("2027-04-02T12:00") if "near its end" in one.text]
    assert len(left) == 1
    assert left[0].at.endswith("T08:00")
    assert "pull every spile" in left[0].text


def test_it_is_not_nudged_once_the_taps_are_out() -> None:
    days = [*[(10, 25)] * 59, *[(24, 46)] * 20, *[(44, 66)] * 20]
    made = Season(weather_of(days, date(2027, 1, 1)), "2027-03-10T00:00")
    made.settle("05760", *TAPPED)
    made.text("pulled all the taps", "2027-03-10T12:00")
    assert made.until("2027-04-02T12:00") == []


# --- decency -------------------------------------------------------------------------------------


@pytest.mark.parametrize("place", ["A0A 1A0", "05760", "99801"])
def test_no_reminder_comes_before_8_or_after_21(place: str) -> None:
    made = Season(weather_of([HARD, HARD, (12, 50), (38, 58), (40, 62), *[HARD] * 5]))
    made.settle(place, *TAPPED)
    made.text("30 gal at 2.2", "2027-03-01T18:00")
    made.text("lit the fire", "2027-03-02T14:00")
    left = reminders(made.until("2027-03-09T12:00"))
    assert left
    assert all("08:00" <= one.at[11:] < "21:00" for one in left)


def test_stop_silences_reminders() -> None:
    made = Season(None)
    made.settle("05760", *TAPPED)
    made.text("30 gal at 2.2", "2027-03-01T18:00")
    made.text("STOP", "2027-03-02T18:00")
    assert made.until("2027-03-08T12:00") == []
