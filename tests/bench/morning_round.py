"""How long the morning round takes for 100,000 people in 2,000 cells of the weather.

    python -m tests.bench.morning_round [--people 10000 100000] [--cells 2000] [--places 4]

For each number of people: a new database on a private PostgreSQL, filled in bulk with invented
people (a place, taps, a bucket size, two weeks of gatherings, some with an hour of their own); a
server on loopback in the shape of MET Norway's, which counts what it is asked; and a process of
its own that plans two mornings and queues all alerts, as the worker does. Each cell has several
places, so that people share a cell without sharing a place. The second morning is the usual one: by
then past hours are remembered and alerts were told.

Wanted: under 3 minutes a morning, as many weather requests as cells, under 500 MB for the process,
and a time for each person that does not grow with their number. All on loopback; bounded.
"""

from __future__ import annotations

import argparse
import json
import math
import random
import resource
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any, ClassVar
from urllib.parse import parse_qs, urlsplit

import psycopg

from bot.ledger import Ledger
from tests.postgres import running_postgres

WANTED_S, WANTED_MB, WANTED_RATIO = 180.0, 500.0, 1.3
ZONE = "America/New_York"
# 6:30 in March by the wall clock of New York, before and after the clocks change on the 14th.
MORNINGS = (datetime(2027, 3, 9, 11, 31, tzinfo=UTC), datetime(2027, 3, 10, 11, 31, tzinfo=UTC))
SEASON, FIRST_DAY = 2027, date(2027, 2, 24)
GATHERED_DAYS = range(0, 13, 2)
SEED = 20270309
HOURLY, SIX_HOURLY = 55, 28
REQUESTS_PER_SECOND = 2000.0


# --- the weather ---------------------------------------------------------------------------------


class Stub(BaseHTTPRequestHandler):
    """Locationforecast of invented weather: it freezes every night and thaws every day."""

    protocol_version = "HTTP/1.1"
    now_utc = MORNINGS[0]
    asked: ClassVar[list[str]] = []
    _counting = threading.Lock()

    def do_GET(self) -> None:
        """One cell's forecast, as from midnight UTC on."""
        query = parse_qs(urlsplit(self.path).query)
        latitude, longitude = float(query["lat"][0]), float(query["lon"][0])
        with self._counting:
            self.asked.append(f"{latitude},{longitude}")
        body = json.dumps(_forecast(latitude, longitude, self.now_utc)).encode()
        self.send_response(200)
        self.send_header("Content-Type", "application/json")
        self.send_header("Content-Length", str(len(body)))
        expires = datetime.now(UTC) + timedelta(minutes=30)
        self.send_header("Expires", expires.strftime("%a, %d %b %Y %H:%M:%S GMT"))
        self.end_headers()
        self.wfile.write(body)

    def log_message(self, format: str, *args: object) -> None:
        """Says nothing."""


def _forecast(latitude: float, longitude: float, now_utc: datetime) -> dict[str, Any]:
    begins = now_utc.replace(hour=0, minute=0, second=0, microsecond=0)
    hours = [*range(HOURLY), *(HOURLY + 6 * n for n in range(SIX_HOURLY))]
    warmer = 0.5 * (45 - latitude) + math.sin(longitude)
    steps = []
    for n in hours:
        at = begins + timedelta(hours=n)
        # Warmest at 20:00 UTC, the afternoon in New York.
        temp_c = 0.5 + warmer + 6 * math.cos((at.hour - 20) * math.tau / 24)
        details = {"air_temperature": round(temp_c, 1), "air_pressure_at_sea_level": 1015.2}
        steps.append(
            {"time": f"{at:%Y-%m-%dT%H:%M:%SZ}", "data": {"instant": {"details": details}}}
        )
    return {
        "type": "Feature",
        "geometry": {"type": "Point", "coordinates": [longitude, latitude, 200]},
        "properties": {
            "meta": {
                "updated_at": f"{now_utc - timedelta(hours=1):%Y-%m-%dT%H:%M:%SZ}",
                "units": {"air_temperature": "celsius", "air_pressure_at_sea_level": "hPa"},
            },
            "timeseries": steps,
        },
    }


@contextmanager
def weather() -> Iterator[str]:
    """The stub on loopback, until the end of the block; its base URL."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), Stub)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield f"http://127.0.0.1:{server.server_address[1]}"
    finally:
        server.shutdown()
        server.server_close()


# --- the people ----------------------------------------------------------------------------------


def places(cells: int, of_each: int) -> list[tuple[float, float]]:
    """So many places in each cell of a hundredth of a degree, invented, east of Lake Huron."""
    wide = math.ceil(math.sqrt(cells))
    found = []
    for cell in range(cells):
        latitude = 43 + 0.04 * (cell // wide)
        longitude = -77 + 0.04 * (cell % wide)
        found += [
            (round(latitude + 0.001 * (n % 8 - 3), 4), round(longitude + 0.001 * (n // 8), 4))
            for n in range(of_each)
        ]
    return found


def fill(url: str, people: int, where: list[tuple[float, float]]) -> None:
    """Enrol people in bulk, each on a sugarbush of their own, all numbered alike."""
    Ledger.open(url).close()
    draw = random.Random(SEED)
    met = MORNINGS[0] - timedelta(days=20)
    numbers = range(1, people + 1)
    spots = [where[n % len(where)] for n in range(people)]
    draw.shuffle(spots)
    with psycopg.connect(url) as connection:
        _copy(connection, "person (id, units, met_utc)", ((n, "us", met) for n in numbers))
        _copy(connection, "sugarbush (id, made_utc)", ((n, met) for n in numbers))
        _copy(
            connection,
            "address (person_id, address, linked_utc)",
            ((n, f"+1555{n:07d}", met) for n in numbers),
        )
        _copy(
            connection,
            "member (sugarbush_id, role, address, person_id, joined_utc)",
            ((n, "owner", f"+1555{n:07d}", n, met) for n in numbers),
        )
        _copy(
            connection,
            'inbox (id, door, provider_id, sender, "to", text, media, arrived_utc, tries,'
            " read_utc, reply_owed)",
            (
                (n, "bench", str(n), f"+1555{n:07d}", "", "invented", 0, met, 1, met, False)
                for n in numbers
            ),
        )
        _copy(
            connection,
            'record (sugarbush_id, person_id, text_id, made_by_text_id, kind, "on", at_local,'
            " season, gallons, brix, count, detail, stored_utc)",
            (row for n in numbers for row in _records(n, spots[n - 1], met, draw)),
        )
        connection.execute("ANALYZE")


def _copy(connection: psycopg.Connection[Any], into: str, rows: Iterable[tuple[Any, ...]]) -> None:
    with connection.cursor().copy(f"COPY {into} FROM STDIN".encode()) as copy:
        for row in rows:
            copy.write_row(row)


def _records(
    n: int, spot: tuple[float, float], met: datetime, draw: random.Random
) -> Iterator[tuple[Any, ...]]:
    taps = draw.randint(5, 200)

    def row(kind: str, on: date, hour: int, **told: Any) -> tuple[Any, ...]:
        at_local = datetime(on.year, on.month, on.day, hour)
        amounts = [told.get(name) for name in ("gallons", "brix", "count")]
        detail = json.dumps(told.get("detail", {}))
        return (n, n, n, n, kind, on, at_local, SEASON, *amounts, detail, met)

    place = {
        "latitude": spot[0],
        "longitude": spot[1],
        "zone": ZONE,
        "region": "NY",
        "country": "US",
        "exact": True,
        "name": "Invented",
    }
    yield row("place", FIRST_DAY, 8, detail=place)
    yield row("taps_set", FIRST_DAY, 9, count=taps)
    yield row("bucket_size", FIRST_DAY, 10, gallons=2.0)
    if n % 10 == 0:
        yield row("wish", FIRST_DAY, 11, detail={"alert_at": f"06:{17 + n // 10 % 14}"})
    for day in GATHERED_DAYS:
        gallons = round(taps * draw.uniform(0.1, 0.8), 1)
        brix = round(draw.uniform(1.6, 2.6), 1)
        yield row("sap", FIRST_DAY + timedelta(days=day), 16, gallons=gallons, brix=brix)
        if day % 4 == 2:
            state = {"state": "done"}
            yield row("boil", FIRST_DAY + timedelta(days=day + 1), 15, detail=state)


# --- the round -----------------------------------------------------------------------------------


def plan(url: str, weather_url: str, now_utc: datetime) -> None:
    """One morning's round, as the worker goes it; what it took is printed as JSON."""
    import logging

    from bot.clock import HandClock
    from bot.forecasts import LedgerDays, LedgerForecasts
    from bot.outdoors import Skies
    from bot.weather import Latest
    from bot.weather.fetching import Fetcher, cached_client
    from bot.weather.metno import MetNo
    from bot.wiring import build

    logging.disable(logging.WARNING)
    clock = HandClock(now_utc)
    with tempfile.TemporaryDirectory() as folder:
        client = cached_client("bench@example.com", Path(folder) / "weather.sqlite3")
        fetcher = Fetcher(client, MetNo.name, requests_per_second=REQUESTS_PER_SECOND)

        def skies(ledger: Ledger) -> Skies:
            latest = Latest([MetNo(fetcher, weather_url)], LedgerForecasts(ledger))
            return Skies(latest, days=LedgerDays(ledger))

        parts = build(url, clock, skies=skies)
        begun, own_begun = time.perf_counter(), time.process_time()
        texts = next(each for each in parts.rounds if each.name == "mornings").go()
        seconds = time.perf_counter() - begun
        own_seconds = time.process_time() - own_begun
        parts.ledger.close()
    peak_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    told = {"texts": texts, "seconds": seconds, "own_seconds": own_seconds, "peak_mb": peak_mb}
    sys.stdout.write(json.dumps(told) + "\n")


@dataclass(frozen=True)
class Morning:
    """What one morning's round took. own_seconds: of the process's own time on a core, whatever
    else the machine does, PostgreSQL's not included. requests: to the weather source; cells: those
    asked for."""

    texts: int
    seconds: float
    own_seconds: float
    peak_mb: float
    requests: int
    cells: int


def morning(url: str, weather_url: str, now_utc: datetime) -> Morning:
    """Plan a morning in a process of its own."""
    Stub.now_utc = now_utc
    Stub.asked.clear()
    command = [sys.executable, "-m", "tests.bench.morning_round", "--plan", url, weather_url]
    done = subprocess.run(
        [*command, now_utc.isoformat()], capture_output=True, text=True, check=False
    )
    if done.returncode != 0:
        raise RuntimeError(f"The round failed: {done.stderr[-2000:]}")
    return Morning(**json.loads(done.stdout), requests=len(Stub.asked), cells=len(set(Stub.asked)))


def main() -> int:
    """Print what each number of people takes; 1 where less was reached than wanted."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else None)
    parser.add_argument("--people", type=int, nargs="+", default=[10_000, 100_000])
    parser.add_argument("--cells", type=int, default=2000)
    parser.add_argument("--places", type=int, default=4, help="places in each cell, up to 40")
    parser.add_argument("--plan", nargs=3, metavar=("URL", "WEATHER", "NOW"))
    given = parser.parse_args()
    if given.plan is not None:
        plan(given.plan[0], given.plan[1], datetime.fromisoformat(given.plan[2]))
        return 0
    where = places(given.cells, given.places)
    say = sys.stdout.write
    good, a_person = True, []
    with running_postgres() as server, weather() as weather_url:
        for people in given.people:
            url = server.create(f"people_{people}")
            fill(url, people, where)
            took = [morning(url, weather_url, now_utc) for now_utc in MORNINGS]
            server.drop(f"people_{people}")
            for n, one in enumerate(took, 1):
                say(
                    f"{people} people, morning {n}: {one.texts} alerts queued in"
                    f" {one.seconds:.1f} s ({one.own_seconds:.1f} s of its own),"
                    f" {one.requests} requests for {one.cells} cells,"
                    f" {one.peak_mb:.0f} MB\n"
                )
                good &= one.seconds < WANTED_S and one.peak_mb < WANTED_MB
                good &= one.texts == people and one.requests == one.cells == given.cells
            a_person.append([one.seconds / people for one in took])
    for n in range(len(MORNINGS)):
        ratio = a_person[-1][n] / a_person[0][n]
        say(f"morning {n + 1}: time a person, most people to fewest: {ratio:.2f}\n")
        good &= ratio < WANTED_RATIO
    say("as wanted\n" if good else "NOT as wanted\n")
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main())
