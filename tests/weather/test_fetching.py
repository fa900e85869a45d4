"""Politeness towards the services."""

from __future__ import annotations

from pathlib import Path

import httpx
import pytest

from bot.weather.errors import TryLaterError
from bot.weather.fetching import Fetcher, cached_client
from bot.weather.services import network_sources
from tests.weather.loopback import Answer, running


@pytest.mark.parametrize("contact", ["", "  ", "me"])
def test_without_a_contact_there_is_no_client(contact: str) -> None:
    with pytest.raises(ValueError, match="wanted a mail address or a site"):
        cached_client(contact, None)


def test_a_service_that_is_not_there_is_passing() -> None:
    with running() as service:
        gone = service.url
    with cached_client("host@sugarbush.example", None) as client:
        fetcher = Fetcher(client, "gone", requests_per_second=1000, sleep=lambda seconds: None)
        with pytest.raises(TryLaterError, match="ConnectError"):
            fetcher.json(f"{gone}/points/1,2")


def test_requests_of_a_round_are_kept_apart() -> None:
    """Ten requests at four a second: the waits add up to at least two seconds."""
    waits: list[float] = []
    transport = httpx.MockTransport(lambda request: httpx.Response(200, json={}))
    with cached_client("host@sugarbush.example", None, transport) as client:
        fetcher = Fetcher(client, "any", requests_per_second=4, sleep=waits.append)
        for n in range(10):
            fetcher.json(f"https://weather.example/{n}")
    assert len(waits) == 9
    assert max(waits) > 2.0


def test_the_cache_outlives_the_process(tmp_path: Path) -> None:
    answer = Answer({"properties": {}}, headers={"Cache-Control": "max-age=600"})
    with running() as service:
        service.script = lambda asked: answer
        for _ in range(2):
            with cached_client("host@sugarbush.example", tmp_path / "cache.sqlite3") as client:
                fetcher = Fetcher(client, "any", requests_per_second=1000)
                assert fetcher.json(f"{service.url}/points/1,2") == {"properties": {}}
        assert len(service.asked) == 1


def test_max_age_counts_and_not_the_age_meant_for_proxies() -> None:
    answer = Answer({}, headers={"Cache-Control": "public, max-age=0, s-maxage=3600"})
    with running() as service, cached_client("host@sugarbush.example", None) as client:
        service.script = lambda asked: answer
        fetcher = Fetcher(client, "any", requests_per_second=1000)
        fetcher.json(f"{service.url}/points/1,2")
        fetcher.json(f"{service.url}/points/1,2")
        assert len(service.asked) == 2


def test_the_network_sources_come_best_first() -> None:
    with cached_client("host@sugarbush.example", None) as client:
        assert [source.name for source in network_sources(client)] == ["nws", "metno"]
