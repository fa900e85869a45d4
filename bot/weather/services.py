"""The weather services asked over the network, in order of preference: a new one is one line."""

from __future__ import annotations

import httpx

from bot.weather.fetching import Fetcher
from bot.weather.forecast import Source
from bot.weather.metno import MetNo
from bot.weather.nws import Nws

REQUESTS_PER_SECOND = 15.0
"""MET Norway allows under 20 a second in all; the US limit is not published."""

SERVICES = (Nws, MetNo)
"""The US service first: forecasters edit its 2.5 km cells. Outside the US, and when it fails, the
next one has its turn."""


def network_sources(
    client: httpx.Client, requests_per_second: float = REQUESTS_PER_SECOND
) -> tuple[Source, ...]:
    """All services over one client (`fetching.cached_client`), best first."""
    return tuple(
        service(Fetcher(client, service.name, requests_per_second=requests_per_second))
        for service in SERVICES
    )
