"""The newest forecast that can be had, with time moved by hand."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable
from datetime import datetime, timedelta

import pytest

from bot.weather.errors import (
    CellMovedError,
    NotCoveredError,
    RefusedError,
    StaleError,
    TryLaterError,
    WeatherError,
)
from bot.weather.forecast import ONE_HOUR, Cell, Forecast, Hour, Place
from bot.weather.latest import Known, Latest
from bot.weather.store import MemoryStore
from tests.weather.peers import at

BUSH = Place(44.05, -72.95, 352.0, "America/New_York")
MORNING = at("2027-03-08T10:30")


class Scripted:
    """A source that does as it is told. trouble: raised instead of a forecast; cell: the one every
    place lies in, unless `cells` names another for the place."""

    attribution = "invented"
    keep_for = timedelta(minutes=45)
    asks_where = True

    def __init__(self, name: str, temp_f: float = 40.0, hours: int = 72) -> None:
        self.name = name
        self.temp_f = temp_f
        self.hours = hours
        self.cell = Cell("one")
        self.cells: dict[str, Cell] = {}
        self.trouble: WeatherError | None = None
        self.trouble_of_cell: dict[str, WeatherError] = {}
        self.locate_trouble: WeatherError | None = None
        self.fetched: list[str] = []
        self.located: list[str] = []
        self.before_answer: Callable[[], None] = lambda: None

    def locate(self, place: Place) -> Cell:
        self.located.append(place.key)
        if self.locate_trouble is not None:
            raise self.locate_trouble
        return self.cells.get(place.key, self.cell)

    def forecast(self, place: Place, cell: Cell, now_utc: datetime) -> Forecast:
        self.fetched.append(cell.key)
        self.before_answer()
        trouble = self.trouble or self.trouble_of_cell.get(cell.key)
        if trouble is not None:
            raise trouble
        first = now_utc.replace(minute=0)
        hours = tuple(Hour(first + n * ONE_HOUR, self.temp_f) for n in range(self.hours))
        return Forecast(self.name, cell, now_utc, hours, 352.0, self.attribution)


@pytest.fixture
def first() -> Scripted:
    return Scripted("first", temp_f=40.0)


@pytest.fixture
def second() -> Scripted:
    return Scripted("second", temp_f=30.0)


@pytest.fixture
def latest(first: Scripted, second: Scripted) -> Latest:
    return Latest([first, second], MemoryStore())


def known(latest: Latest, now_utc: datetime, place: Place = BUSH) -> Known:
    found = latest.known(place, now_utc)
    assert found is not None
    return found


def test_the_first_source_is_preferred(latest: Latest, second: Scripted) -> None:
    found = known(latest, MORNING)
    assert found.forecast.source == "first"
    assert found.age == timedelta(0)
    assert found.failures == ()
    assert second.located == []


def test_when_the_first_fails_the_second_has_its_turn(latest: Latest, first: Scripted) -> None:
    first.trouble = TryLaterError("first: down")
    found = known(latest, MORNING)
    assert found.forecast.source == "second"
    assert found.failures == ("first: down",)


def test_where_the_first_does_not_cover_the_second_serves(latest: Latest, first: Scripted) -> None:
    first.locate_trouble = NotCoveredError("first: abroad")
    assert known(latest, MORNING).forecast.source == "second"


def test_a_place_not_covered_is_asked_about_once_a_day(latest: Latest, first: Scripted) -> None:
    first.locate_trouble = NotCoveredError("first: abroad")
    for hour in range(0, 30, 2):
        known(latest, MORNING + hour * ONE_HOUR)
    assert len(first.located) == 2


def test_fail_recover_fail_while_young_expire(
    latest: Latest, first: Scripted, second: Scripted
) -> None:
    """One source's day, hour by hour; the second has nothing to give."""
    second.trouble = TryLaterError("second: down")
    first.trouble = TryLaterError("first: down")
    assert latest.known(BUSH, MORNING) is None

    first.trouble = None
    recovered = known(latest, MORNING + ONE_HOUR)
    assert (recovered.forecast.source, recovered.age) == ("first", timedelta(0))

    first.trouble = TryLaterError("first: down again")
    young = known(latest, MORNING + 3 * ONE_HOUR)
    assert (young.age, young.failures) == (2 * ONE_HOUR, ())

    old = known(latest, MORNING + 30 * ONE_HOUR)
    assert old.age == 29 * ONE_HOUR
    assert old.failures[0] == "first: down again"
    assert len(old.failures) == 2

    assert latest.known(BUSH, MORNING + 80 * ONE_HOUR) is None

    first.trouble = None
    assert known(latest, MORNING + 81 * ONE_HOUR).age == timedelta(0)


def test_a_young_forecast_is_better_than_the_second_source_s(
    latest: Latest, first: Scripted, second: Scripted
) -> None:
    known(latest, MORNING)
    first.trouble = TryLaterError("first: down")
    assert known(latest, MORNING + 5 * ONE_HOUR).forecast.source == "first"
    assert second.fetched == []


def test_the_second_source_s_news_are_better_than_an_old_forecast(
    latest: Latest, first: Scripted
) -> None:
    known(latest, MORNING)
    first.trouble = TryLaterError("first: down")
    assert known(latest, MORNING + 7 * ONE_HOUR).forecast.source == "second"


def test_a_stale_answer_is_not_told_as_new(
    latest: Latest, first: Scripted, second: Scripted
) -> None:
    second.trouble = TryLaterError("second: down")
    known(latest, MORNING)
    first.trouble = StaleError("first: too old")
    assert known(latest, MORNING + 12 * ONE_HOUR).age == 12 * ONE_HOUR


def test_of_two_old_forecasts_the_newer_is_told(
    latest: Latest, first: Scripted, second: Scripted
) -> None:
    known(latest, MORNING)
    first.trouble = TryLaterError("first: down")
    known(latest, MORNING + 8 * ONE_HOUR)
    second.trouble = TryLaterError("second: down")
    found = known(latest, MORNING + 20 * ONE_HOUR)
    assert (found.forecast.source, found.age) == ("second", 12 * ONE_HOUR)


def test_a_young_forecast_that_has_run_out_is_not_told(
    latest: Latest, first: Scripted, second: Scripted
) -> None:
    first.hours = 2
    known(latest, MORNING)
    first.trouble = second.trouble = TryLaterError("down")
    assert latest.known(BUSH, MORNING + 3 * ONE_HOUR) is None


def test_a_cell_is_fetched_once_for_all_who_live_in_it(latest: Latest, first: Scripted) -> None:
    for n in range(50):
        known(latest, MORNING + n * timedelta(seconds=30), Place(44.05, -72.95 + n / 1000))
    assert first.fetched == ["one"]


def test_a_cell_is_fetched_once_by_many_threads_at_the_same_time(
    latest: Latest, first: Scripted
) -> None:
    first.before_answer = lambda: time.sleep(0.05)
    threads = [threading.Thread(target=known, args=(latest, MORNING)) for _ in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert first.fetched == ["one"]


def test_a_cell_is_fetched_again_when_its_forecast_is_no_longer_new(
    latest: Latest, first: Scripted
) -> None:
    known(latest, MORNING)
    known(latest, MORNING + timedelta(minutes=44))
    known(latest, MORNING + timedelta(minutes=46))
    assert len(first.fetched) == 2


def test_two_cells_are_fetched_each(latest: Latest, first: Scripted) -> None:
    elsewhere = Place(45.0, -72.0)
    first.cells[elsewhere.key] = Cell("two")
    known(latest, MORNING)
    known(latest, MORNING, elsewhere)
    assert first.fetched == ["one", "two"]


def test_a_failing_cell_is_not_asked_again_for_each_who_lives_in_it(
    latest: Latest, first: Scripted
) -> None:
    first.trouble = TryLaterError("first: down")
    for n in range(20):
        known(latest, MORNING + n * timedelta(seconds=10))
    assert first.fetched == ["one"]


def test_after_three_cells_failed_in_a_row_a_source_is_left_alone(
    latest: Latest, first: Scripted
) -> None:
    first.trouble = TryLaterError("first: down")
    for n in range(40):
        place = Place(44 + n / 10, -72)
        first.cells[place.key] = Cell(str(n))
        known(latest, MORNING, place)
    assert len(first.fetched) == 3


def test_a_source_left_alone_is_asked_again_after_its_rest(latest: Latest, first: Scripted) -> None:
    first.trouble = TryLaterError("first: down")
    for n in range(4):
        place = Place(44 + n / 10, -72)
        first.cells[place.key] = Cell(str(n))
        known(latest, MORNING, place)
    first.trouble = None
    assert known(latest, MORNING + timedelta(minutes=6)).forecast.source == "first"


def test_single_bad_cells_do_not_silence_a_source(latest: Latest, first: Scripted) -> None:
    for n in range(12):
        place = Place(44 + n / 10, -72)
        first.cells[place.key] = Cell(str(n))
        if n % 2:
            first.trouble_of_cell[str(n)] = TryLaterError("first: this one")
        known(latest, MORNING, place)
    assert len(first.fetched) == 12


def test_a_refusal_is_logged_for_the_host_and_not_repeated(
    latest: Latest, first: Scripted, capsys: pytest.CaptureFixture[str]
) -> None:
    first.trouble = RefusedError("first: 403 Forbidden")
    for n in range(3):
        place = Place(44 + n / 10, -72)
        first.cells[place.key] = Cell(str(n))
        known(latest, MORNING, place)
    assert len(first.fetched) == 1
    assert "weather_refused" in capsys.readouterr().out


def test_a_cell_that_has_moved_is_found_anew_at_once(latest: Latest, first: Scripted) -> None:
    known(latest, MORNING)
    first.trouble_of_cell["one"] = CellMovedError("first: 404 marine")
    first.cell = Cell("moved")
    found = known(latest, MORNING + ONE_HOUR)
    assert found.forecast.cell.key == "moved"
    assert len(first.located) == 2


def test_a_cell_that_is_gone_and_nowhere_else_gives_the_second_its_turn(
    latest: Latest, first: Scripted
) -> None:
    first.trouble = CellMovedError("first: 404 marine")
    assert known(latest, MORNING).forecast.source == "second"


def test_a_place_is_located_once_a_day(latest: Latest, first: Scripted) -> None:
    for hour in range(23):
        known(latest, MORNING + hour * ONE_HOUR)
    assert len(first.located) == 1
    known(latest, MORNING + 25 * ONE_HOUR)
    assert len(first.located) == 2


def test_an_old_cell_serves_while_the_source_cannot_locate(latest: Latest, first: Scripted) -> None:
    known(latest, MORNING)
    first.locate_trouble = TryLaterError("first: no points today")
    assert known(latest, MORNING + 25 * ONE_HOUR).forecast.source == "first"


def test_hours_gone_by_are_kept_from_forecasts_before(latest: Latest, first: Scripted) -> None:
    """What the trees remember: last night's freeze is not in this morning's forecast."""
    first.temp_f = 20.0
    known(latest, MORNING)
    first.temp_f = 50.0
    found = known(latest, MORNING + 24 * ONE_HOUR)
    temps = [hour.temp_f for hour in found.hours]
    assert temps == [20.0] * 24 + [50.0] * 72
    starts = [hour.start_utc for hour in found.hours]
    assert starts == sorted(set(starts))


def test_hours_gone_by_come_along_when_the_source_changes(latest: Latest, first: Scripted) -> None:
    known(latest, MORNING)
    first.trouble = TryLaterError("first: down")
    found = known(latest, MORNING + 10 * ONE_HOUR)
    assert found.forecast.source == "second"
    assert len(found.hours) == 82


def test_hours_older_than_ten_days_are_forgotten(latest: Latest) -> None:
    for day in range(14):
        found = known(latest, MORNING + timedelta(days=day))
    assert found.forecast.hours[0].start_utc - found.hours[0].start_utc == timedelta(days=10)


def test_no_source_at_all_is_refused() -> None:
    with pytest.raises(ValueError, match="no weather source given"):
        Latest([], MemoryStore())


def test_places_of_one_cell_are_one_area(latest: Latest, first: Scripted) -> None:
    near, far = Place(44.051, -72.951), Place(45.0, -72.0)
    first.cells[far.key] = Cell("two")
    assert latest.area(BUSH, MORNING) == latest.area(near, MORNING) == "first one"
    assert latest.area(far, MORNING) == "first two"
    assert first.fetched == []


def test_an_area_is_asked_for_once_with_its_forecast(latest: Latest, first: Scripted) -> None:
    latest.area(BUSH, MORNING)
    known(latest, MORNING)
    assert first.located == [BUSH.key]


def test_the_second_source_names_an_area_that_the_first_does_not_cover(
    latest: Latest, first: Scripted
) -> None:
    first.locate_trouble = NotCoveredError("first: not here")
    assert latest.area(BUSH, MORNING) == "second one"


def test_an_area_that_nobody_can_name_is_the_place(
    latest: Latest, first: Scripted, second: Scripted
) -> None:
    first.locate_trouble = second.locate_trouble = TryLaterError("down")
    assert latest.area(BUSH, MORNING) == BUSH.key


def test_where_no_request_is_needed_nothing_is_noted() -> None:
    reckons = Scripted("first")
    reckons.asks_where = False
    store = MemoryStore()
    latest = Latest([reckons], store)
    assert latest.area(BUSH, MORNING) == "first one"
    known(latest, MORNING)
    assert store.located("first", BUSH.key) is None
