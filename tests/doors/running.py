"""A real `pailtext serve` in a process of its own, on loopback."""

from __future__ import annotations

import os
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import httpx

from tests.doors.twilio_peer import TOKEN, encoded, headers

ROOT = Path(__file__).resolve().parents[2]
START_TIMEOUT_S = 60.0


@dataclass(frozen=True)
class Running:
    """A server that answers at `url`."""

    url: str
    process: subprocess.Popen[bytes]
    log: Path

    def text(self, fields: dict[str, str]) -> httpx.Response:
        """Send a text as Twilio does."""
        signed = headers(fields, f"{self.url}/in/twilio")
        return httpx.post(
            f"{self.url}/in/twilio", content=encoded(fields), headers=signed, timeout=30
        )


def free_port() -> int:
    """A port of loopback that nobody listens on."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port


def environment(folder: Path, **more: str) -> dict[str, str]:
    """The environment of a process that shall know nothing of this machine's own settings."""
    kept = {name: value for name, value in os.environ.items() if not name.startswith("PAILTEXT_")}
    own = {"PYTHONPATH": str(ROOT), "XDG_DATA_HOME": str(folder), "PYTHONWARNINGS": "error"}
    return kept | own | more


@contextmanager
def running(folder: Path, database_url: str, token: str | None = TOKEN) -> Iterator[Running]:
    """Run a server on the store at `database_url` until the end of the block."""
    port = free_port()
    url = f"http://127.0.0.1:{port}"
    more = {"PAILTEXT_DATABASE_URL": database_url, "PAILTEXT_PUBLIC_URL": url}
    if token is not None:
        more["PAILTEXT_TWILIO_AUTH_TOKEN"] = token
    log = folder / f"serve-{port}.log"
    with log.open("wb") as output:
        process = subprocess.Popen(
            [sys.executable, "-P", "-m", "bot", "serve", "--port", str(port)],
            cwd=folder,
            env=environment(folder, **more),
            stdin=subprocess.DEVNULL,
            stdout=output,
            stderr=subprocess.STDOUT,
        )
    server = Running(url, process, log)
    try:
        _wait_for(server)
        yield server
        stop(server)
        assert process.returncode == 0, log.read_text()
    finally:
        if process.poll() is None:
            process.kill()
            process.wait()


def stop(server: Running) -> None:
    """Tell it to stop, and wait until it has."""
    if server.process.poll() is None:
        server.process.send_signal(signal.SIGTERM)
        server.process.wait(timeout=30)


def _wait_for(server: Running) -> None:
    deadline = time.monotonic() + START_TIMEOUT_S
    while time.monotonic() < deadline:
        assert server.process.poll() is None, server.log.read_text()
        try:
            if httpx.get(f"{server.url}/ready").status_code == 200:
                return
        except httpx.TransportError:
            time.sleep(0.05)
    raise AssertionError(f"No answer in {START_TIMEOUT_S:g} s: {server.log.read_text()}")
