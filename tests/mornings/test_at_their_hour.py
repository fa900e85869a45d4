"""An alert leaves at the hour that was asked for, not at the worker's next quarter hour."""

from __future__ import annotations

from datetime import datetime, timedelta

from bot.clock import DEFAULT_ZONE, local_time, utc_time
from bot.messages import Incoming
from tests.mornings.stage import ANN, RUN, HandWeather, Season, weather_of

MINUTE = timedelta(minutes=1)


class Worker:
    """The worker's rhythm: rounds each quarter hour, what is due each minute."""

    def __init__(self, weather: HandWeather | None = None) -> None:
        self.season = Season(weather or weather_of([RUN] * 9))
        self.season.settle("05760", "put in 20 taps")
        self._said = 0

    def text(self, words: str) -> None:
        """Ann texts now."""
        self._said += 1
        now_utc = self.season.clock.now_utc()
        incoming = Incoming("twilio_sms", f"now {self._said}", ANN, words, now_utc)
        self.season.parts.inbox.receive(incoming)

    def until(self, at: str) -> list[str]:
        """Work to a wall-clock time of Ann's; when alerts left, by the clock on the wall."""
        season, until_utc = self.season, utc_time(datetime.fromisoformat(at), DEFAULT_ZONE)
        left = []
        while (now_utc := season.clock.now_utc()) < until_utc:
            season.clock.set(now_utc.replace(second=0, microsecond=0) + MINUTE)
            if season.clock.now_utc().minute % 15 == 0:
                season.parts.rounds[0].go()
            season.parts.outbox.deliver_due()
            left += [
                f"{local_time(season.clock.now_utc(), DEFAULT_ZONE):%a %H:%M}"
                for sent in season.collector.sent
                if sent.kind == "alert"
            ]
            season.collector.sent.clear()
        return left


def test_an_alert_comes_at_its_minute() -> None:
    worker = Worker()
    worker.text("text me at 7:10")
    assert worker.until("2027-03-03T12:00") == ["Mon 07:10", "Tue 07:10", "Wed 07:10"]


def test_at_a_full_quarter_too() -> None:
    assert Worker().until("2027-03-02T12:00") == ["Mon 06:30", "Tue 06:30"]


def test_an_alert_that_is_written_waits_for_its_hour() -> None:
    worker = Worker()
    assert worker.until("2027-03-01T06:29") == []
    with worker.season.parts.ledger.reading() as book:
        assert book.outbox.counts() == {"owed": 1}


def test_a_later_hour_named_after_it_was_written_holds_already_today() -> None:
    worker = Worker()
    worker.until("2027-03-01T06:20")
    worker.text("text me at 7:10")
    assert worker.until("2027-03-01T12:00") == ["Mon 07:10"]


def test_an_earlier_hour_named_within_the_stretch_that_was_planned_is_not_missed() -> None:
    worker = Worker()
    worker.text("text me at 8")
    worker.until("2027-03-01T07:05")
    worker.text("text me at 7:10")
    assert worker.until("2027-03-01T12:00") == ["Mon 07:15"]


def test_who_wants_no_more_texts_gets_not_even_the_written_one() -> None:
    worker = Worker()
    worker.until("2027-03-01T06:20")
    worker.text("no alerts please")
    assert worker.until("2027-03-01T12:00") == []


def test_weather_that_comes_back_before_the_hour_is_told_at_the_hour() -> None:
    weather = HandWeather(weather_of([RUN] * 9), fails=True)
    worker = Worker(weather)
    worker.until("2027-03-01T06:20")
    weather.fails = False
    assert worker.until("2027-03-01T12:00") == ["Mon 06:30"]


def test_a_written_alert_asks_for_no_weather_again() -> None:
    weather = HandWeather(weather_of([RUN] * 9))
    worker = Worker(weather)
    worker.until("2027-03-01T06:20")
    asked = len(weather.asked)
    worker.until("2027-03-01T12:00")
    assert len(weather.asked) == asked > 0
