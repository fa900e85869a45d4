"""A season to test mornings with: people text, the clock runs on, and what leaves is kept.

The weather is drawn as smooth curves through each day's low and high. Everything else is real:
ledger, planner, outbox and consent, on a clock that is moved by hand.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta
from itertools import count

from bot.clock import HandClock, local_time, utc_time
from bot.ledger import IN_MEMORY, Ledger
from bot.messages import Incoming
from bot.outbox import owe
from bot.outdoors import Outdoors, Skies, Weather, outdoors
from bot.replay import Collector
from bot.weather import Direct, Known, Place
from bot.weather.file import FileWeather
from bot.wiring import DEFAULT_ZONE, build
from tests.outlook.invented import hours_of

ANN, BEN, CAL = "+15550100021", "+15550100022", "+15550100023"
FIRST_DAY = date(2027, 3, 1)
HERE = Place(44.0, -73.0)

Days = Sequence[tuple[float, float]]
RUN, FROZEN, WARM = (24.0, 44.0), (8.0, 24.0), (41.0, 58.0)


def csv_of(days: Days, first_day: date = FIRST_DAY) -> list[str]:
    """Hours as the lines of a file, each day with its low and its high, F."""
    lines = ["time_local,temp_f"]
    lines += [f"{h.at_local:%Y-%m-%dT%H:%M},{h.temp_f:.1f}" for h in hours_of(days, first_day)]
    return lines


def weather_of(days: Days, first_day: date = FIRST_DAY) -> Weather:
    """The same as weather: at each moment the next seven days are the forecast."""
    return Direct(FileWeather(csv_of(days, first_day)))


def look(days: Days, at: str, first_day: date = FIRST_DAY, zone: str = DEFAULT_ZONE) -> Outdoors:
    """What is known outdoors at a local time."""
    now_utc = utc_time(datetime.fromisoformat(at), zone)
    known = weather_of(days, first_day).known(Place(44.0, -73.0, zone=zone), now_utc)
    assert known is not None
    found = outdoors(known, zone, now_utc)
    assert found is not None
    return found


@dataclass
class HandWeather:
    """Weather that is told what to do: fail, recover, grow old, end too soon."""

    weather: Weather
    fails: bool = False
    age: timedelta = timedelta()
    ends_after: timedelta | None = None
    asked: list[datetime] = field(default_factory=list)

    def known(self, place: Place, now_utc: datetime) -> Known | None:
        """What it is told to know."""
        self.asked.append(now_utc)
        found = None if self.fails else self.weather.known(place, now_utc)
        if found is None:
            return None
        hours = found.hours
        if self.ends_after is not None:
            hours = tuple(hour for hour in hours if hour.start_utc < now_utc + self.ends_after)
        return Known(found.forecast, hours, found.fetched_utc, self.age, ())

    def area(self, place: Place, now_utc: datetime) -> str:
        """That of the weather beneath."""
        return self.weather.area(place, now_utc)


@dataclass(frozen=True)
class Left:
    """A text that left unasked: the receiver's wall clock, the receiver, sort and words."""

    at: str
    to: str
    kind: str
    text: str


class Season:
    """People and the clock. weather: over everybody; None for no source at all."""

    def __init__(self, weather: Weather | None, first: str = "2027-03-01T00:00") -> None:
        self.clock = HandClock(datetime(2027, 3, 1, tzinfo=UTC))
        self.collector = Collector()

        def skies(_ledger: Ledger) -> Skies:
            assert weather is not None
            return Skies(weather)

        self.parts = build(
            IN_MEMORY,
            self.clock,
            channels={"twilio_sms": self.collector},
            skies=None if weather is None else skies,
        )
        self._ids = count(1)
        self.clock.set(utc_time(datetime.fromisoformat(first), DEFAULT_ZONE))

    def zone(self, address: str) -> str:
        """The zone of somebody's sugarbush."""
        with self.parts.ledger.reading() as book:
            return self.parts.conversation.zone(book, address) or DEFAULT_ZONE

    def text(self, words: str, at: str, sender: str = ANN) -> str:
        """Somebody texts at a wall-clock time of theirs, after all that leaves before it is
        forgotten; the reply, "" for none."""
        self.until(at, sender)
        number = str(next(self._ids))
        arrived = self.clock.now_utc()
        incoming = Incoming("twilio_sms", number, sender, words, arrived)
        return self.parts.inbox.receive(incoming) or ""

    def settle(self, place: str = "05760", *more: str, sender: str = ANN) -> None:
        """Somebody is there with a place, and tells more, before the season's first morning."""
        for words in ("hi", f"I'm in {place}", *more):
            local = local_time(self.clock.now_utc(), self.zone(sender))
            self.text(words, f"{local:%Y-%m-%dT%H:%M:%S}", sender)

    def until(self, at: str, of: str = ANN, *, by_quarters: bool = False) -> list[Left]:
        """Let the clock run to a wall-clock time of somebody, and give what left on the way. It
        leaps to each moment at which something may be owed, or goes by quarter hours, as the
        worker does."""
        until_utc = utc_time(datetime.fromisoformat(at), self.zone(of))
        left: list[Left] = []
        while (since_utc := self.clock.now_utc()) < until_utc:
            if by_quarters:
                next_utc: datetime | None = since_utc + timedelta(
                    minutes=15 - since_utc.minute % 15
                )
            else:
                next_utc = self.parts.planner.next_utc(since_utc)
            self.clock.set(until_utc if next_utc is None else min(next_utc, until_utc))
            left += self.tick(since_utc)
        return left

    def tick(self, since_utc: datetime) -> list[Left]:
        """One round of the worker, from a moment until now."""
        now_utc = self.clock.now_utc()
        planner = self.parts.planner
        for plan in (planner.plan_mornings, planner.plan_reminders):
            texts = list(plan(since_utc, now_utc))
            with self.parts.ledger.writing() as book:
                owe(book, texts, now_utc)
        self.parts.outbox.deliver_due()
        sent = [
            Left(
                f"{local_time(now_utc, self.zone(out.to)):%Y-%m-%dT%H:%M}",
                out.to,
                out.kind,
                out.text,
            )
            for out in self.collector.sent
        ]
        self.collector.sent.clear()
        return sent


def alerts(left: Sequence[Left]) -> list[Left]:
    """The alerts among what left."""
    return [one for one in left if one.kind == "alert"]


def reminders(left: Sequence[Left]) -> list[Left]:
    """The reminders among what left."""
    return [one for one in left if one.kind == "reminder"]
