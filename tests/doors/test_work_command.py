"""`pailtext work`, and `pailtext serve` with its worker or without."""

from __future__ import annotations

import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import httpx
import pytest

from bot.ledger import Ledger
from bot.ledger.presence import FilePresence, NoRoomError
from tests.doors.running import environment, free_port

PATIENCE_S = 60.0


@contextmanager
def command(folder: Path, url: str, *words: str) -> Iterator[subprocess.Popen[str]]:
    """A command of ours in a process of its own, ended at the end of the block at the latest."""
    process = subprocess.Popen(
        [sys.executable, "-P", "-m", "bot", *words],
        cwd=folder,
        env=environment(folder, PAILTEXT_DATABASE_URL=url),
        stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
    )
    try:
        yield process
    finally:
        if process.poll() is None:
            process.kill()
        process.communicate()


def is_worked_on(store: Path) -> bool:
    """True while a worker holds the store."""
    presence = FilePresence(Path(f"{store}.worker"))
    try:
        presence.begin()
    except NoRoomError:
        return True
    presence.end()
    return False


def wait_for_worker(store: Path) -> None:
    deadline = time.monotonic() + PATIENCE_S
    while not is_worked_on(store):
        assert time.monotonic() < deadline, "no worker came"
        time.sleep(0.1)


def test_work_sends_until_it_is_told_to_stop_and_lets_no_second_in(tmp_path: Path) -> None:
    store = tmp_path / "pailtext.sqlite3"
    url = f"sqlite:///{store}"
    Ledger.open(url).close()
    with command(tmp_path, url, "work") as first:
        wait_for_worker(store)
        with command(tmp_path, url, "work") as second:
            _, said = second.communicate(timeout=PATIENCE_S)
        assert second.returncode == 1
        assert said.splitlines()[-1].startswith("work: Another worker holds")
        assert "Traceback" not in said
        first.send_signal(signal.SIGTERM)
        _, said = first.communicate(timeout=PATIENCE_S)
        assert first.returncode == 0, said
        assert "Traceback" not in said
    assert not is_worked_on(store)


@pytest.mark.parametrize("with_worker", [True, False])
def test_serve_works_too_unless_told_not(tmp_path: Path, with_worker: bool) -> None:
    store = tmp_path / "pailtext.sqlite3"
    port = free_port()
    more = () if with_worker else ("--no-worker",)
    with command(tmp_path, f"sqlite:///{store}", "serve", "--port", str(port), *more) as served:
        deadline = time.monotonic() + PATIENCE_S
        while True:
            assert time.monotonic() < deadline
            assert served.poll() is None
            try:
                assert httpx.get(f"http://127.0.0.1:{port}/health").status_code == 200
                break
            except httpx.TransportError:
                time.sleep(0.1)
        assert is_worked_on(store) is with_worker
        served.send_signal(signal.SIGTERM)
        _, said = served.communicate(timeout=PATIENCE_S)
        assert served.returncode == 0, said


def test_a_store_in_memory_is_worked_on_by_nobody(tmp_path: Path) -> None:
    with command(tmp_path, "sqlite://", "work") as worker:
        _, said = worker.communicate(timeout=PATIENCE_S)
    assert worker.returncode == 1
    assert said.splitlines()[-1] == (
        "work: A store in memory has no room for a worker: give it a file."
    )
