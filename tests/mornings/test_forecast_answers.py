"""Will it run? Answered from the weather as known at the moment of the question, or not at all."""

from __future__ import annotations

from datetime import timedelta

import pytest

from bot.wording.gsm import is_gsm, segments
from tests.mornings.stage import FROZEN, RUN, WARM, HandWeather, Season, weather_of

# Monday 1 March frozen, then from Tuesday on.
WEEK = [FROZEN, (22.0, 37.0), RUN, (26.0, 47.0), FROZEN, RUN, RUN, WARM, WARM, RUN]


@pytest.fixture
def asked() -> Season:
    """A settled sugarer on a frozen Monday."""
    made = Season(weather_of(WEEK))
    made.settle()
    return made


@pytest.mark.parametrize(
    ("words", "reply"),
    [
        ("will it run tomorrow?", "Tomorrow 22F at dawn, 37F by 2 pm. A run is possible."),
        ("will the sap run today?", "Today 8F at dawn, 24F by 2 pm. No run."),
        ("will it run thursday?", "Thu 26F at dawn, 47F by 2 pm. Big run likely."),
        ("when is the next run?", "Wed 24F at dawn, 44F by 2 pm. Good run likely."),
        (
            "how does the week look for sap?",
            "Run outlook: Mon no run 8/24F, Tue possible 22/37F, Wed likely 24/44F,",
        ),
        ("is it going to freeze tonight?", "It freezes tonight: "),
        ("will it run this weekend?", "Run outlook: Sat "),
    ],
)
def test_each_way_of_asking_has_its_answer(asked: Season, words: str, reply: str) -> None:
    said = asked.text(words, "2027-03-01T09:00")
    assert said.startswith(reply)
    assert is_gsm(said)
    assert segments(said) == 1


def test_after_the_afternoon_the_question_is_about_tomorrow(asked: Season) -> None:
    said = asked.text("will it run?", "2027-03-01T18:00")
    assert said.startswith("Tomorrow ")
    assert "Wed likely" in said


def test_a_night_that_does_not_freeze_is_told_so() -> None:
    made = Season(weather_of([(40, 50)] * 9))
    made.settle()
    said = made.text("is it going to freeze tonight?", "2027-03-01T09:00")
    assert said.startswith("No freeze tonight: 40F at the coldest, 6 am.")


def test_before_dawn_tonight_is_the_night_that_is() -> None:
    made = Season(weather_of([(40, 50), (10, 30), (40, 50), (40, 50)]))
    made.settle()
    assert "10F" in made.text("will it freeze tonight", "2027-03-02T01:00")


def test_past_the_end_of_the_forecast_nothing_is_told(asked: Season) -> None:
    said = asked.text("will it run next wednesday?", "2027-03-04T09:00")
    assert "likely" not in said or "Wed" in said
    late = asked.text("will it run tomorrow?", "2027-03-10T18:00")
    assert late == "The forecast ends Wed midnight, so I can't tell of tomorrow."


def test_metric_people_are_answered_in_celsius() -> None:
    made = Season(weather_of(WEEK))
    made.settle("K0A 1A0")
    said = made.text("will it run thursday?", "2027-03-01T09:00")
    assert said.startswith("Thu -3C at dawn, 8C by 2 pm.")


def test_old_news_say_their_age() -> None:
    made = Season(HandWeather(weather_of(WEEK), age=timedelta(hours=50)))
    made.settle()
    assert "Forecast 2 days old." in made.text("will it run tomorrow?", "2027-03-01T09:00")


def test_a_source_that_fails_is_admitted() -> None:
    made = Season(HandWeather(weather_of(WEEK), fails=True))
    made.settle()
    said = made.text("will it run tomorrow?", "2027-03-01T09:00")
    assert said == "I can get no forecast just now, so I will not guess. Ask again in a while."


def test_without_a_source_the_rule_of_thumb_is_all_that_is_told() -> None:
    made = Season(None)
    made.settle()
    said = made.text("will it run tomorrow?", "2027-03-01T09:00")
    assert said.startswith("I have no forecast here, so I will not guess.")


def test_without_a_place_the_place_is_asked_for() -> None:
    made = Season(weather_of(WEEK))
    made.text("hi", "2027-03-01T08:00")
    said = made.text("will it run tomorrow?", "2027-03-01T09:00")
    assert said.startswith("I have no forecast until I know where your trees are.")


def test_a_place_told_in_the_same_breath_is_looked_up() -> None:
    made = Season(weather_of(WEEK))
    made.text("hi", "2027-03-01T08:00")
    said = made.text("I'm in 05760. will it run thursday?", "2027-03-01T09:00")
    assert "Big run likely." in said


def test_a_question_asks_for_the_weather_once_and_a_record_never() -> None:
    weather = HandWeather(weather_of(WEEK))
    made = Season(weather)
    made.settle("05760", "12 taps", "10 gal at 2.2")
    weather.asked.clear()
    made.text("will it run tomorrow?", "2027-03-01T05:00")
    assert len(weather.asked) == 1


def test_the_hour_of_the_alert_is_told_with_the_place_and_not_again() -> None:
    made = Season(weather_of(WEEK))
    made.text("hi", "2027-03-01T05:00")
    assert "at 6:30 am" in made.text("I'm in 05760", "2027-03-01T05:01")
    assert "at 6:30 am" not in made.text("I'm in 13343", "2027-03-01T05:02")


def test_without_a_source_no_alert_is_promised() -> None:
    made = Season(None)
    made.text("hi", "2027-03-01T05:00")
    assert "6:30" not in made.text("I'm in 05760", "2027-03-01T05:01")
    assert "no alert comes yet" in made.text("text me at 8", "2027-03-01T05:02")
