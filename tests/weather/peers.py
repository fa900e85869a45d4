"""Each service's other side: the answers it would give, in its own shape, for the contract suite.

A new service needs a peer here; `test_every_service_has_a_peer` says so until it has one.
"""

from __future__ import annotations

import copy
import json
from collections.abc import Sequence
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any, Protocol

from bot.weather.fetching import Fetcher
from bot.weather.forecast import Source
from bot.weather.metno import MetNo
from bot.weather.nws import Nws
from tests.weather.loopback import Answer, Asked, Script

FIXTURES = Path(__file__).resolve().parents[2] / "fixtures" / "weather"

HourC = tuple[datetime, float | None]
"""Start, UTC, and C; None for a null."""


def fixture(name: str) -> Any:
    return json.loads((FIXTURES / name).read_text())


class Peer(Protocol):
    """name: the service's; nowhere: its answer outside what it covers."""

    name: str
    nowhere: Answer

    def source(self, fetcher: Fetcher, base_url: str) -> Source: ...

    def week(self) -> Any:
        """The invented week of the fixtures, as the service's body."""

    def body(self, hours: Sequence[HourC], issued_utc: datetime) -> Any:
        """Hours as the service's body."""

    def script(self, answer: Answer) -> Script:
        """A service that has this answer for the forecast, and a good one for all else."""

    def is_forecast(self, asked: Asked) -> bool:
        """Whether a request is the one for the hours."""


class NwsPeer:
    name = "nws"
    nowhere = Answer(fixture("nws_problem_invalid_point.json"), status=404)

    def source(self, fetcher: Fetcher, base_url: str) -> Source:
        return Nws(fetcher, base_url)

    def week(self) -> Any:
        return fixture("nws_gridpoint.json")

    def body(self, hours: Sequence[HourC], issued_utc: datetime) -> Any:
        body = self.week()
        properties = body["properties"]
        properties["updateTime"] = issued_utc.isoformat()
        first = hours[0][0] if hours else issued_utc
        properties["validTimes"] = f"{first.isoformat()}/P7DT6H"
        properties["temperature"]["values"] = [
            {"validTime": f"{start.isoformat()}/PT1H", "value": celsius} for start, celsius in hours
        ]
        for layer in ("maxTemperature", "minTemperature", "pressure"):
            properties[layer]["values"] = []
        return body

    def script(self, answer: Answer) -> Script:
        def answers(asked: Asked) -> Answer:
            return answer if self.is_forecast(asked) else Answer(fixture("nws_points.json"))

        return answers

    def is_forecast(self, asked: Asked) -> bool:
        return asked.path.startswith("/gridpoints/")


class MetNoPeer:
    name = "metno"
    nowhere = Answer({"error": "no data for this place"}, status=404)

    def source(self, fetcher: Fetcher, base_url: str) -> Source:
        return MetNo(fetcher, base_url)

    def week(self) -> Any:
        return fixture("metno_complete.json")

    def body(self, hours: Sequence[HourC], issued_utc: datetime) -> Any:
        body = self.week()
        body["properties"]["meta"]["updated_at"] = issued_utc.strftime("%Y-%m-%dT%H:%M:%SZ")
        body["properties"]["timeseries"] = [
            {
                "time": start.strftime("%Y-%m-%dT%H:%M:%SZ"),
                "data": {"instant": {"details": {"air_temperature": celsius}}},
            }
            for start, celsius in hours
        ]
        return body

    def script(self, answer: Answer) -> Script:
        return lambda asked: answer

    def is_forecast(self, asked: Asked) -> bool:
        return asked.path.endswith("/complete")


PEERS: tuple[Peer, ...] = (NwsPeer(), MetNoPeer())


def steady(start: datetime, count: int, celsius: float = 1.0) -> list[HourC]:
    """`count` hours of one temperature."""
    return [(start + timedelta(hours=n), celsius) for n in range(count)]


def changed(body: Any, path: Sequence[str], value: Any) -> Any:
    """A copy of a body with one value put in place of another."""
    altered = copy.deepcopy(body)
    inner = altered
    for name in path[:-1]:
        inner = inner[name]
    inner[path[-1]] = value
    return altered


def at(text: str) -> datetime:
    """A UTC time, for short."""
    return datetime.fromisoformat(text).replace(tzinfo=UTC)
