"""Workers that are really killed: nothing is lost, and nothing is doubled.

Each worker is a process of its own (tests.faults.victim), killed by SIGKILL at a named point; the
next one on the same store, or another that lives, does what it left. Twilio is a stub that
remembers all that it accepted.
"""

from __future__ import annotations

import signal
import subprocess
import sys
import time
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path

import pytest
from sqlalchemy import text

from bot.consent import Consent
from bot.ledger import Ledger, Store
from bot.messages import Incoming
from tests.channels.twilio_stub import TwilioStub, twilio_stub
from tests.doors.running import environment
from tests.faults.victim import POINTS

VICTIM = ("-m", "tests.faults.victim")
PATIENCE_S = 60.0
TEXT_POINTS = ("text kept", "text read")


@pytest.fixture
def stub() -> Iterator[TwilioStub]:
    with twilio_stub() as running:
        yield running


class Crew:
    """Workers on one store."""

    def __init__(self, url: str, stub: TwilioStub, folder: Path) -> None:
        self._url, self._stub, self._folder = url, stub, folder
        self._started: list[tuple[subprocess.Popen[bytes], Path]] = []

    def start(self, *arguments: str, **more: str) -> subprocess.Popen[bytes]:
        log = self._folder / f"worker-{len(self._started)}.log"
        with log.open("wb") as output:
            process = subprocess.Popen(
                [sys.executable, *VICTIM, self._url, self._stub.url, *arguments],
                env=environment(self._folder, **more),
                stdin=subprocess.DEVNULL,
                stdout=output,
                stderr=subprocess.STDOUT,
            )
        self._started.append((process, log))
        return process

    def killed_at(self, point: str, address: str) -> None:
        """Start one that kills itself at a point, and see that it does."""
        arguments = (address,) if point in TEXT_POINTS else ()
        fault = {"PAILTEXT_FAULT": point, "PAILTEXT_FAULT_ADDRESS": address}
        process = self.start(*arguments, **fault)
        process.wait(PATIENCE_S)
        assert process.returncode == -signal.SIGKILL, self.log(process)

    def stop(self, process: subprocess.Popen[bytes]) -> None:
        process.send_signal(signal.SIGTERM)
        try:
            process.wait(PATIENCE_S)
        except subprocess.TimeoutExpired:
            process.send_signal(signal.SIGUSR1)
            time.sleep(1)
            pytest.fail(f"it did not stop\n{self.log(process)}")
        assert process.returncode == 0, self.log(process)

    def log(self, process: subprocess.Popen[bytes]) -> str:
        return next(log.read_text() for each, log in self._started if each is process)

    def wait_until(self, holds: Callable[[], bool]) -> None:
        deadline = time.monotonic() + PATIENCE_S
        while not holds():
            logs = "\n".join(log.read_text() for _, log in self._started)
            assert time.monotonic() < deadline, f"it never came to that\n{logs}"
            time.sleep(0.05)

    def end(self) -> None:
        for process, _ in self._started:
            if process.poll() is None:
                process.kill()
                process.wait()


@contextmanager
def crew(url: str, stub: TwilioStub, folder: Path) -> Iterator[Crew]:
    Ledger.open(url).close()
    here = Crew(url, stub, folder)
    try:
        yield here
    finally:
        here.end()


def meet(url: str, *addresses: str) -> None:
    """People who have texted before."""
    ledger = Ledger.open(url)
    now_utc = datetime.now(UTC)
    for address in addresses:
        # All in one transaction, so that no worker finds the text unread and takes it up.
        with ledger.writing() as book:
            kept = book.inbox.keep(
                Incoming("twilio_sms", f"SM-met-{address}", address, "hi", now_utc)
            )
            who = book.people.meet(address, now_utc)
            Consent(book).met(who.person_id, kept)
            book.inbox.answer(kept.id, None, now_utc, owed=False)
    ledger.close()


def one(url: str, sentence: str) -> int:
    """The one number that a query gives."""
    store = Store(url)
    try:
        with store.reading() as connection:
            found: int = connection.execute(text(sentence)).scalar_one()
            return found
    finally:
        store.close()


def sends_begun(url: str) -> int:
    """How many jobs that send a text were begun and not finished."""
    jobs = "workflow_status" if url.startswith("sqlite") else "dbos.workflow_status"
    return one(url, f"SELECT count(*) FROM {jobs} WHERE name = 'send' AND status = 'PENDING'")


def boil_today(address: str) -> str:
    return f"Pailtext: boil today, {address[-4:]}."


@pytest.mark.parametrize(
    ("database", "points"),
    [("sqlite", POINTS), ("postgresql", POINTS[4:])],
    ids=["sqlite", "postgresql"],
)
def test_a_worker_killed_at_any_point_loses_no_text_and_doubles_none(
    database: str,
    points: Sequence[str],
    stub: TwilioStub,
    tmp_path: Path,
    request: pytest.FixtureRequest,
) -> None:
    """One after the other on one store, each killed over a text of its own at another point; each
    also does what the ones before it left. (What does not concern the engine, on SQLite only.)"""
    if database == "sqlite":
        url = f"sqlite:///{tmp_path / 'pailtext.sqlite3'}"
    else:
        url = request.getfixturevalue("postgres_url")
    addresses = {point: f"+1555010{number:04d}" for number, point in enumerate(points, 100)}
    with crew(url, stub, tmp_path) as workers:
        for point, address in addresses.items():
            if point not in TEXT_POINTS:
                meet(url, address)
            workers.killed_at(point, address)
        last = workers.start()
        wanted = {boil_today(address) for address in addresses.values()}
        workers.wait_until(lambda: wanted <= set(stub.bodies()))
        texted = [addresses[point] for point in TEXT_POINTS if point in addresses]
        workers.wait_until(lambda: all(len(stub.bodies(address)) == 2 for address in texted))
        workers.wait_until(
            lambda: one(url, "SELECT count(*) FROM outbox WHERE state <> 'sent'") == 0
        )
        # The last one was killed with all of it sent, and its job not noted as done.
        workers.wait_until(lambda: sends_begun(url) == 0)
        workers.stop(last)
    sent = Counter((message.to, message.body) for message in stub.messages)
    assert set(sent.values()) == {1}, sent
    for address in texted:
        (reply,) = set(stub.bodies(address)) - {boil_today(address)}
        assert "12 gal at 2.2" in reply
    assert one(url, "SELECT count(*) FROM record WHERE kind = 'sap'") == len(texted)
    assert one(url, "SELECT count(*) FROM inbox WHERE read_utc IS NULL") == 0


def test_two_workers_on_one_postgresql_share_the_work_and_each_tick_is_one_s_only(
    postgres_url: str, stub: TwilioStub, tmp_path: Path
) -> None:
    """And when one of them is killed, the other takes over what it had begun."""
    ticks = tmp_path / "ticks"
    people = [f"+1555010{number:04d}" for number in range(200, 280)]
    with crew(postgres_url, stub, tmp_path) as workers:
        first = workers.start(VICTIM_TICKS=str(ticks))
        second = workers.start(VICTIM_TICKS=str(ticks))
        workers.wait_until(lambda: ticks.exists() and len(set(ticks.read_text().split())) == 2)
        meet(postgres_url, *people)
        workers.wait_until(lambda: len(stub.bodies()) >= len(people))
        first.kill()
        first.wait()
        workers.wait_until(lambda: pending(postgres_url, first.pid) == 0)
        workers.stop(second)
    assert Counter(stub.bodies()) == Counter(map(boil_today, people))
    senders = one(
        postgres_url,
        "SELECT count(DISTINCT executor_id) FROM dbos.workflow_status"
        " WHERE name = 'send' AND status = 'SUCCESS'",
    )
    assert senders == 2
    rounds = one(postgres_url, "SELECT count(*) FROM dbos.workflow_status WHERE name = 'plan'")
    # A round that was taken over, or was not begun, is the only one that may differ.
    assert abs(len(ticks.read_text().split()) - rounds) <= 1


def pending(url: str, pid: int) -> int:
    """How many jobs a worker has begun and not finished."""
    return one(
        url,
        "SELECT count(*) FROM dbos.workflow_status"
        f" WHERE status = 'PENDING' AND executor_id LIKE '%-{pid}-%'",
    )
