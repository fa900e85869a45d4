"""Weather: forecasts from outside services, the last good one kept.

One file a source; `services.SERVICES` lists those asked over the network, best first. The contract
suite in tests/weather runs over all of them.
"""

from __future__ import annotations

from bot.weather.direct import Direct
from bot.weather.errors import WeatherError
from bot.weather.forecast import Cell, Forecast, Hour, Place, Source, local_hours, pressure_at
from bot.weather.latest import Known, Latest
from bot.weather.store import Kept, Located, MemoryStore, Store

__all__ = [
    "Cell",
    "Direct",
    "Forecast",
    "Hour",
    "Kept",
    "Known",
    "Latest",
    "Located",
    "MemoryStore",
    "Place",
    "Source",
    "Store",
    "WeatherError",
    "local_hours",
    "pressure_at",
]
