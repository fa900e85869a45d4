"""Where the weather comes from: services with a contact, invented in the chat, else nowhere."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from bot.chat import Chat, PretendedTime
from bot.clock import HandClock
from bot.ledger import IN_MEMORY
from bot.outdoors import Outdoors, Skies, WeatherWantedError, weather_for
from bot.settings import SettingsError, load_settings
from bot.weather import Known, Place
from bot.wiring import build, invented_skies, network_skies

NOON = datetime(2027, 3, 1, 17, tzinfo=UTC)


def test_without_a_contact_no_service_is_asked(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("PAILTEXT_WEATHER_CONTACT", raising=False)
    assert network_skies(load_settings(None)) is None


def test_a_contact_that_is_none_stops_the_start(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PAILTEXT_WEATHER_CONTACT", "nobody")
    with pytest.raises(SettingsError, match="PAILTEXT_WEATHER_CONTACT is 'nobody'"):
        load_settings(None)


def test_with_a_contact_both_services_are_at_hand(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("PAILTEXT_WEATHER_CONTACT", "host@example.com")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    over = network_skies(load_settings(None))
    assert over is not None
    parts = build(IN_MEMORY, HandClock(NOON), skies=over)
    assert parts.planner.skies is not None
    assert parts.planner.skies.anywhere is None
    assert parts.planner.skies.patience is not None
    parts.ledger.close()


def test_the_chats_weather_says_that_it_is_invented() -> None:
    parts = build(IN_MEMORY, HandClock(NOON), skies=invented_skies)
    chat = Chat(parts, "+15550100041", PretendedTime(datetime(2027, 3, 1, 9)))
    chat.answer(1, "I'm in 05760")
    said = chat.answer(2, "will it run tomorrow?")
    assert "Tomorrow" in said
    assert "(Invented weather, no real forecast.)" in said
    parts.ledger.close()


class Slow:
    """A service that takes its time."""

    def known(self, place: Place, now_utc: datetime) -> Known | None:
        """Nothing, and late."""
        import time

        time.sleep(5)
        return None

    def area(self, place: Place, now_utc: datetime) -> str:
        """Nothing is shared."""
        return place.key


def test_whoever_waits_for_an_answer_is_not_kept_waiting_by_a_slow_service() -> None:
    skies = Skies(Slow(), patience=timedelta(milliseconds=50))
    began = datetime.now(UTC)
    looked = skies.look(WeatherWantedError(Place(44.0, -73.0), "America/New_York", NOON))
    assert datetime.now(UTC) - began < timedelta(seconds=2)
    assert looked.found is None


def test_weather_is_wanted_once_and_then_given() -> None:
    parts = build(IN_MEMORY, HandClock(NOON), skies=invented_skies)
    skies = invented_skies(parts.ledger)
    here = Skies(skies.weather, anywhere=Place(44.0, -73.0))
    zone = "America/New_York"
    with pytest.raises(WeatherWantedError) as wanted:
        weather_for(here, None, zone, NOON, None)
    looked = here.look(wanted.value)
    assert isinstance(weather_for(here, None, zone, NOON, looked), Outdoors)
    parts.ledger.close()
