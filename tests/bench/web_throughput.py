"""How many texts a second the webhook answers, against the barest endpoint of the same stack.

    python -m tests.bench.web_throughput [--texts 1500] [--clients 16]

Starts `pailtext serve` (one process, SQLite, every commit on the disk) and sends signed texts of
a mixed kind over kept-alive connections, each client for ten people. In the same run, in
turns, the same forms go to an endpoint that does the least there can be: parse the form, commit
one SQLModel row behind a lock, answer with TwiML. Prints requests a second, the median and the
99th hundredth of the answering times, and the ratios: at least 0.5 of the throughput is wanted,
and at most 5 times the 99th hundredth.

All on loopback; counts are bounded. Run it on a quiet machine: both sides share the cores.
"""

from __future__ import annotations

import argparse
import asyncio
import random
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from urllib.parse import parse_qsl, urlsplit

import httpx
import uvicorn
from fastapi import FastAPI, Request, Response
from sqlalchemy import event
from sqlmodel import Field, Session, SQLModel, create_engine
from starlette.concurrency import run_in_threadpool

from tests.doors.running import ROOT, environment, free_port, running
from tests.doors.twilio_peer import encoded, form, headers

WANTED_THROUGHPUT = 0.5
WANTED_P99 = 5.0
PEOPLE = 10  # whose texts each client sends in turn, as a carrier does
WARM_UP = 2  # texts of each person that are not counted: where they are, and their taps
TURNS = 3
SEED = 20270309

# What an invented season's texts are made of; the amounts are drawn anew for each.
MIX: list[tuple[int, Callable[[random.Random], str]]] = [
    (30, lambda draw: f"{draw.randint(3, 40)} gal at {draw.randint(15, 30) / 10}"),
    (10, lambda draw: f"gathered {draw.randint(3, 40)} gallons this morning"),
    (6, lambda draw: f"back bush {draw.randint(2, 20)} gal, sugar {draw.randint(15, 28) / 10}"),
    (5, lambda draw: f"yesterday {draw.randint(2, 30)} gal and {draw.randint(2, 9)} qt"),
    (5, lambda draw: f"{draw.randint(1, 8)} pints of syrup"),
    (4, lambda draw: f"lit the fire {draw.randint(6, 9)}:{draw.randint(10, 59)} this morning"),
    (4, lambda draw: f"done boiling, burned {draw.randint(1, 3)} face cords"),
    (4, lambda draw: f"set {draw.randint(1, 12)} taps"),
    (4, lambda draw: f"spent ${draw.randint(4, 90)} on filters"),
    (4, lambda draw: f"make that {draw.randint(3, 40)}"),
    (3, lambda draw: f"dumped {draw.randint(1, 4)} gal, it was cloudy"),
    (3, lambda draw: f"put up {draw.randint(2, 24)} pints in jars"),
    (8, lambda _draw: "how much so far"),
    (4, lambda _draw: "how much syrup will that make"),
    (3, lambda _draw: "how long will my sap keep"),
    (3, lambda _draw: "thanks!"),
]


@dataclass(frozen=True)
class Load:
    """Seconds that it took in all, and seconds that each request took."""

    seconds: float
    each: list[float]

    @property
    def per_second(self) -> float:
        return len(self.each) / self.seconds

    @property
    def p50_ms(self) -> float:
        return statistics.median(self.each) * 1000

    @property
    def p99_ms(self) -> float:
        return sorted(self.each)[int(len(self.each) * 0.99)] * 1000


def texts_of(person: int, count: int, draw: random.Random) -> list[dict[str, str]]:
    """The forms of one person, who first says where they are."""
    weights = [weight for weight, _ in MIX]
    makers = draw.choices([make for _, make in MIX], weights, k=count)
    bodies = ["I'm in 05843", "set 30 taps", *(make(draw) for make in makers)][:count]
    return [form(body, From=f"+1555010{person:04d}") for body in bodies]


def texts_through(client: int, of_each: int, draw: random.Random) -> list[dict[str, str]]:
    """The forms that one client sends: its people take turns."""
    people = [texts_of(client * PEOPLE + n, of_each, draw) for n in range(PEOPLE)]
    return [text for turn in zip(*people, strict=True) for text in turn]


def requests_of(url: str, texts: list[dict[str, str]]) -> list[bytes]:
    """The texts as whole signed requests, ready to be written."""
    host = urlsplit(url).netloc
    made = []
    for fields in texts:
        body = encoded(fields)
        named = headers(fields, f"{url}/in/twilio") | {
            "Host": host,
            "Content-Length": str(len(body)),
        }
        head = "".join(f"{name}: {value}\r\n" for name, value in named.items())
        made.append(f"POST /in/twilio HTTP/1.1\r\n{head}\r\n".encode("ascii") + body)
    return made


async def _client(url: str, requests: list[bytes]) -> list[float]:
    parts = urlsplit(url)
    reader, writer = await asyncio.open_connection(parts.hostname, parts.port)
    times = []
    for request in requests:
        begun = time.perf_counter()
        writer.write(request)
        head = await reader.readuntil(b"\r\n\r\n")
        status = head.split(b" ", 2)[1]
        assert status == b"200", head
        length = next(
            int(line.split(b":")[1])
            for line in head.split(b"\r\n")
            if line.lower().startswith(b"content-length")
        )
        answer = await reader.readexactly(length)
        assert b"<Response>" in answer
        times.append(time.perf_counter() - begun)
    writer.close()
    await writer.wait_closed()
    return times


def send(url: str, requests: list[list[bytes]]) -> Load:
    """Send each client's requests one after the other, all clients at once."""

    async def all_at_once() -> list[list[float]]:
        return await asyncio.gather(*(_client(url, own) for own in requests))

    begun = time.perf_counter()
    times = asyncio.run(all_at_once())
    return Load(time.perf_counter() - begun, [one for own in times for one in own])


# --- the barest endpoint --------------------------------------------------------------------


class BareText(SQLModel, table=True):
    """One text, as it came."""

    __tablename__ = "bare_text"

    id: int | None = Field(default=None, primary_key=True)
    sid: str = Field(unique=True)
    sender: str
    body: str
    arrived_utc: datetime


def barest(database: Path) -> FastAPI:
    """One form, one durable row behind a lock, one TwiML answer."""
    engine = create_engine(f"sqlite:///{database}")

    @event.listens_for(engine, "connect")
    def durable(connection: object, _record: object) -> None:
        cursor = connection.cursor()  # type: ignore[attr-defined]
        cursor.execute("PRAGMA journal_mode = WAL")
        cursor.execute("PRAGMA synchronous = FULL")
        cursor.close()

    SQLModel.metadata.create_all(engine, tables=[SQLModel.metadata.tables["bare_text"]])
    lock = threading.Lock()
    app = FastAPI()

    def keep(fields: dict[str, str]) -> None:
        with lock, Session(engine) as session:
            session.add(
                BareText(
                    sid=fields["MessageSid"],
                    sender=fields["From"],
                    body=fields["Body"],
                    arrived_utc=datetime.now(UTC),
                )
            )
            session.commit()

    @app.post("/in/twilio")
    async def in_twilio(request: Request) -> Response:
        fields = dict(parse_qsl((await request.body()).decode(), keep_blank_values=True))
        await run_in_threadpool(keep, fields)
        answer = '<?xml version="1.0" encoding="UTF-8"?><Response><Message>ok</Message></Response>'
        return Response(answer, media_type="text/xml")

    return app


@contextmanager
def running_barest(folder: Path) -> Iterator[str]:
    """The barest endpoint in a process of its own; its URL."""
    port = free_port()
    process = subprocess.Popen(
        [
            sys.executable, "-m", "tests.bench.web_throughput",
            "--barest", str(folder / "barest.sqlite3"), "--port", str(port),
        ],
        cwd=ROOT,
        env=environment(folder),
        stdin=subprocess.DEVNULL,
    )  # fmt: skip
    url = f"http://127.0.0.1:{port}"
    try:
        for _ in range(600):
            try:
                httpx.get(url)
                break
            except httpx.TransportError:
                time.sleep(0.05)
        yield url
    finally:
        process.terminate()
        process.wait()


# --- the comparison -------------------------------------------------------------------------


def together(loads: list[Load]) -> Load:
    """Several turns as one."""
    return Load(sum(load.seconds for load in loads), [one for load in loads for one in load.each])


def compare(texts: int, clients: int) -> tuple[Load, Load]:
    """The loads of the webhook and of the barest endpoint, taken in turns."""
    of_each = max(round(texts / clients / TURNS / PEOPLE), 1)
    draw = random.Random(SEED)
    queues = [texts_through(n, WARM_UP + of_each * TURNS, draw) for n in range(clients)]
    warm_up, each = WARM_UP * PEOPLE, of_each * PEOPLE
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        store = f"sqlite:///{folder / 'pailtext.sqlite3'}"
        with running(folder, store) as server, running_barest(folder) as bare:
            loads: dict[str, list[Load]] = {server.url: [], bare: []}
            for url in loads:
                send(url, [requests_of(url, own[:warm_up]) for own in queues])
            for turn in range(TURNS):
                first = warm_up + turn * each
                for url, taken in loads.items():
                    ready = [requests_of(url, own[first : first + each]) for own in queues]
                    taken.append(send(url, ready))
            return together(loads[server.url]), together(loads[bare])


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else None)
    parser.add_argument("--texts", type=int, default=1500)
    parser.add_argument("--clients", type=int, default=16)
    parser.add_argument("--barest", type=Path, help=argparse.SUPPRESS)
    parser.add_argument("--port", type=int, help=argparse.SUPPRESS)
    told = parser.parse_args()
    if told.barest is not None:
        uvicorn.run(barest(told.barest), port=told.port, access_log=False, log_level="warning")
        return
    ours, bare = compare(told.texts, told.clients)
    for what, load in (("webhook", ours), ("barest endpoint", bare)):
        print(
            f"{what:16} {load.per_second:7.0f} texts/s   p50 {load.p50_ms:6.1f} ms"
            f"   p99 {load.p99_ms:6.1f} ms   ({len(load.each)} texts)"
        )
    throughput, p99 = ours.per_second / bare.per_second, ours.p99_ms / bare.p99_ms
    print(f"throughput ratio {throughput:.2f} (wanted: at least {WANTED_THROUGHPUT})")
    print(f"p99 ratio        {p99:.2f} (wanted: at most {WANTED_P99:g})")


if __name__ == "__main__":
    main()
