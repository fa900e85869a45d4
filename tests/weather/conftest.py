"""A loopback service, and a source that asks it, for each service of the family."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from random import Random

import pytest

from bot.weather.fetching import Fetcher, cached_client
from bot.weather.forecast import Forecast, Place, Source
from tests.weather.loopback import Loopback, running
from tests.weather.peers import PEERS, Peer, at

CONTACT = "host@sugarbush.example"
BUSH = Place(44.0512, -72.9534, 352.0, "America/New_York")
NOW = at("2027-03-08T10:30")


@dataclass
class Asking:
    """One service under test: its peer, the loopback it runs on, our source, the pauses made."""

    peer: Peer
    service: Loopback
    source: Source
    pauses: list[float] = field(default_factory=list)

    def forecast(self, place: Place = BUSH) -> Forecast:
        return self.source.forecast(place, self.source.locate(place), NOW)

    def forecast_requests(self) -> int:
        return sum(self.peer.is_forecast(asked) for asked in self.service.asked)


Opener = Callable[[Peer], Asking]


@pytest.fixture
def opened() -> Iterator[Opener]:
    """Opens a service on loopback and a source that asks it; closes both after the test."""
    with running() as service, cached_client(CONTACT, None, timeout_seconds=0.4) as client:

        def open_one(peer: Peer) -> Asking:
            pauses: list[float] = []
            fetcher = Fetcher(
                client,
                peer.name,
                requests_per_second=10_000,
                sleep=pauses.append,
                chance=Random(1),
            )
            return Asking(peer, service, peer.source(fetcher, service.url), pauses)

        yield open_one


@pytest.fixture(params=PEERS, ids=lambda peer: peer.name)
def asking(request: pytest.FixtureRequest, opened: Opener) -> Asking:
    """Every service of the family in turn."""
    return opened(request.param)
