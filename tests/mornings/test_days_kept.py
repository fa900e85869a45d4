"""How days were judged is remembered for a winter, though a service's hours are for ten days."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta

import pytest

from bot.clock import DEFAULT_ZONE, HandClock, utc_time
from bot.forecasts import LedgerDays, LedgerForecasts
from bot.ledger import IN_MEMORY, Ledger
from bot.messages import Incoming
from bot.morning.reminders import end_signs
from bot.outdoors import DayKept, Outdoors, Skies
from bot.weather import Cell, Forecast, Hour, Latest, Place
from bot.wiring import Parts, build

ANN = "+15550100021"
HERE = Place(43.6, -72.97, zone=DEFAULT_ZONE)
JANUARY = date(2027, 1, 1)


@dataclass
class Service:
    """A service in which it freezes every night and thaws every day: it tells the hours from now
    on, of a week, and none gone by."""

    name: str = "invented_service"
    attribution: str = "invented"
    keep_for: timedelta = timedelta(minutes=45)
    asks_where: bool = False
    middle_f: float = 34.0

    def locate(self, place: Place) -> Cell:
        """One cell for all."""
        return Cell("one")

    def forecast(self, place: Place, cell: Cell, now_utc: datetime) -> Forecast:
        """24 to 44 F, unless its middle is moved; the warmest at 20:00 UTC."""
        first = now_utc.replace(minute=0, second=0, microsecond=0)
        at = [first + timedelta(hours=n) for n in range(24 * 7)]
        hours = [
            Hour(each, self.middle_f + 10 - abs((each.hour - 20 + 12) % 24 - 12) * 20 / 12)
            for each in at
        ]
        return Forecast(self.name, cell, now_utc, tuple(hours), None, self.attribution)


@pytest.fixture(params=["sqlite", "postgresql"])
def days(store_url: str) -> Iterator[LedgerDays]:
    """Where days are kept, on both databases."""
    ledger = Ledger.open(store_url)
    yield LedgerDays(ledger)
    ledger.close()


MONDAY = DayKept(date(2027, 3, 1), 0.4, 24.0, 44.0)
TUESDAY = DayKept(date(2027, 3, 2), 0.1, 30.0, 37.0)


def test_kept_days_are_found_by_area_in_order(days: LedgerDays) -> None:
    days.keep("a", [TUESDAY, MONDAY])
    assert days.of("a", JANUARY) == [MONDAY, TUESDAY]
    assert days.of("a", TUESDAY.date) == [TUESDAY]
    assert days.of("b", JANUARY) == []


def test_a_day_kept_anew_stands_in_place_of_what_was_kept(days: LedgerDays) -> None:
    days.keep("a", [MONDAY, TUESDAY])
    colder = DayKept(MONDAY.date, 0.2, 20.0, 39.0)
    days.keep("a", [colder])
    assert days.of("a", JANUARY) == [colder, TUESDAY]


class Winter:
    """A service asked from day to day, its days kept in a ledger."""

    def __init__(self) -> None:
        self.ledger = Ledger.open(IN_MEMORY)
        self.service = Service()
        self.kept = LedgerDays(self.ledger)
        self.skies = Skies(Latest([self.service], LedgerForecasts(self.ledger)), days=self.kept)

    def look(self, on: date) -> Outdoors:
        """What is known outdoors at 6 by the wall clock."""
        at = utc_time(datetime(on.year, on.month, on.day, 6), DEFAULT_ZONE)
        found = self.skies.over(HERE, DEFAULT_ZONE, at)
        assert found is not None
        return found

    def look_daily(self, first: date, last: date) -> Outdoors:
        """The same each day, and the last of them."""
        for n in range((last - first).days):
            self.look(first + timedelta(days=n))
        return self.look(last)


def test_days_older_than_the_hours_are_known_by_their_scores() -> None:
    out = Winter().look_daily(date(2027, 2, 20), date(2027, 3, 15))
    assert min(day.date for day in out.days) > date(2027, 3, 4)
    scores = out.scores()
    assert set(scores) >= {date(2027, 2, 20) + timedelta(days=n) for n in range(24)}
    assert all(scores[date(2027, 2, 22) + timedelta(days=n)] > 0 for n in range(5))


def test_a_day_gone_by_stays_as_it_was_judged_in_its_time() -> None:
    winter = Winter()
    winter.look_daily(date(2027, 3, 1), date(2027, 3, 4))
    area = winter.skies.area(HERE, datetime(2027, 3, 4, tzinfo=UTC))
    before = winter.kept.of(area, JANUARY)
    winter.service.middle_f = 60.0
    winter.look(date(2027, 3, 6))
    after = {day.date: day for day in winter.kept.of(area, JANUARY)}
    for day in before:
        if day.date < date(2027, 3, 5):
            assert after[day.date] == day
    assert after[date(2027, 3, 7)].high_f > 60


def test_an_outlook_that_tells_nothing_new_writes_nothing() -> None:
    winter = Winter()
    winter.look(date(2027, 3, 1))
    wrote: list[str] = []

    class Watched(LedgerDays):
        def keep(self, area: str, days: Sequence[DayKept]) -> None:
            wrote.append(area)

    watched = Skies(winter.skies.weather, days=Watched(winter.ledger))
    at = utc_time(datetime(2027, 3, 1, 6, 20), DEFAULT_ZONE)
    assert watched.over(HERE, DEFAULT_ZONE, at) is not None
    assert wrote == []


def test_degree_days_are_known_live_where_the_winter_was_watched() -> None:
    winter = Winter()
    assert end_signs(winter.look(date(2027, 3, 20)))[0].bud_f_days is None
    watched = Winter()
    out = watched.look_daily(date(2027, 1, 1), date(2027, 3, 20))
    assert end_signs(out)[0].bud_f_days is not None


def test_a_winter_of_seasons_before_is_not_read() -> None:
    winter = Winter()
    winter.look(date(2026, 3, 1))
    out = winter.look(date(2027, 3, 1))
    assert all(day.date.year == 2027 for day in out.kept)


def season(clock: HandClock) -> Parts:
    """Pailtext on the service, as the worker has it."""
    return build(
        IN_MEMORY,
        clock,
        skies=lambda ledger: Skies(
            Latest([Service()], LedgerForecasts(ledger)), days=LedgerDays(ledger)
        ),
    )


def test_gallons_are_learned_live_from_gatherings_older_than_the_hours() -> None:
    """Every third day: in ten days' memory there are never six."""
    clock = HandClock(datetime(2027, 2, 20, 12, tzinfo=UTC))
    parts = season(clock)
    numbers = iter(range(1000))

    def say(words: str) -> None:
        parts.inbox.receive(Incoming("twilio_sms", str(next(numbers)), ANN, words, clock.now_utc()))

    for words in ("hi", "I'm in 05760", "put in 20 taps"):
        say(words)
    mornings = parts.rounds[0]
    for day in range(25):
        # 6:45 in New York, then 18:00.
        clock.set(datetime(2027, 2, 21, 11, 45, tzinfo=UTC) + timedelta(days=day))
        mornings.go()
        clock.set(datetime(2027, 2, 21, 23, 0, tzinfo=UTC) + timedelta(days=day))
        if day % 3 == 2:
            say("40 gal at 2")
            say("boiled 40 gal in 8 hours")
    with parts.ledger.reading() as book:
        who = book.people.find(ANN)
        assert who is not None
        alerts = [
            text.body for text in book.outbox.of_person(who.person_id) if text.kind == "alert"
        ]
    assert "Likely" not in " ".join(alerts[:12])
    found = re.search(r"Likely ([\d.]+) to ([\d.]+) gal", alerts[-1])
    assert found is not None, alerts[-1]
    parts.ledger.close()
