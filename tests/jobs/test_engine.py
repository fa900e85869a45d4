"""The engine under the outbox: what it promises, and the traps that are minded while it runs.

One engine of the real kind runs for all the tests of a database, each with texts of its own.
"""

from __future__ import annotations

import logging
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from dbos import DBOS
from sqlalchemy import text

from bot.jobs import APPLICATION_VERSION, LATEST_TICK, Jobs
from bot.ledger import Store
from tests.jobs.desk import EVERY_SECOND, Desk, dues, running, wait_until
from tests.postgres import Server

TEXTS, PERIOD_S = 4, 2.0


@dataclass
class Engine:
    """A running engine, its work, and its store."""

    jobs: Jobs
    desk: Desk
    store: Store


@pytest.fixture(scope="module", params=["sqlite", "postgresql"])
def engine(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[Engine]:
    if request.param == "sqlite":
        url = f"sqlite:///{tmp_path_factory.mktemp('engine') / 'pailtext.sqlite3'}"
    else:
        server: Server = request.getfixturevalue("postgres_server")
        url = server.create("engine")
    # As in `serve`: our own engine opens the store first.
    store = Store(url)
    desk = Desk()
    with running(url, desk, plan=EVERY_SECOND, texts=TEXTS, period_s=PERIOD_S) as jobs:
        yield Engine(jobs, desk, store)
    store.close()
    if request.param == "postgresql":
        server.drop("engine")


@pytest.fixture
def desk(engine: Engine) -> Desk:
    return engine.desk


def of(text_id: int) -> list[Any]:
    """The engine's jobs that are about a text."""
    return list(DBOS.list_workflows(workflow_id_prefix=f"send-{text_id}-"))


def test_what_is_due_is_delivered_once_however_often_it_is_found(desk: Desk) -> None:
    desk.wait_for(*dues(11, 12))
    desk.wait_for_ticks(3)
    assert [number for number in desk.ids() if number in (11, 12)] == [11, 12]


def test_the_next_try_of_a_text_is_another_job(desk: Desk) -> None:
    desk.wait_for(*dues(21))
    desk.waiting = dues(21, tries=1)
    wait_until(lambda: desk.ids().count(21) == 2)


def test_the_rounds_are_gone_by_the_clock_though_one_fails(desk: Desk) -> None:
    before = desk.rounds
    wait_until(lambda: desk.rounds >= before + 2)


def test_each_sender_has_a_rate_of_its_own(desk: Desk) -> None:
    """Twice as many texts as a period allows, by each of two numbers: the second half waits for
    the next period, and neither number for the other. (By the moment at which the engine begins
    them, which the limit counts; a busy machine is late with some, not early.)"""
    first, second = (31, 32, 33, 34, 35, 36, 37, 38), (41, 42, 43, 44, 45, 46, 47, 48)
    desk.wait_for(*dues(*first, sent_from="+15550100098"), *dues(*second, sent_from="+15550100099"))
    begun = [sorted(map(begun_s, numbers)) for numbers in (first, second)]
    for times in begun:
        assert times[TEXTS] - times[0] >= PERIOD_S
        # No more than the limit in any stretch of a period's length.
        for early, late in zip(times, times[TEXTS:], strict=False):
            assert late - early >= PERIOD_S * 0.9
    both = sorted([*begun[0][:TEXTS], *begun[1][:TEXTS]])
    assert both[-1] - both[0] < PERIOD_S


def begun_s(text_id: int) -> float:
    """When the engine took the first try of a text from the queue, in seconds."""
    return float(of(text_id)[0].dequeued_at) / 1000


def test_the_version_of_the_application_is_a_constant(desk: Desk) -> None:
    """By default it is a hash of the source: work left by another version would wait for ever."""
    desk.wait_for(*dues(51))
    assert APPLICATION_VERSION == "1"
    assert {each.app_version for each in of(51)} == {"1"}


def test_a_text_that_is_put_off_makes_no_noise(desk: Desk) -> None:
    """A step that the engine itself tries again logs a traceback each time."""
    said: list[str] = []

    class Listener(logging.Handler):
        def emit(self, record: logging.LogRecord) -> None:
            said.append(record.getMessage())

    listener = Listener()
    logging.getLogger("dbos").addHandler(listener)
    try:
        desk.outcomes[61] = lambda: "owed"
        desk.wait_for(*dues(61))
        desk.wait_for(*dues(61, tries=1))
        wait_until(lambda: [each.status for each in of(61)] == ["SUCCESS"] * 2)
    finally:
        logging.getLogger("dbos").removeHandler(listener)
    assert said == []


def test_what_was_finished_a_month_ago_is_deleted_and_the_rest_kept(engine: Engine) -> None:
    engine.desk.wait_for(*dues(71, 72))
    engine.desk.waiting = []
    wait_until(lambda: [each.status for each in (*of(71), *of(72))] == ["SUCCESS"] * 2)
    table = "workflow_status" if engine.store.is_sqlite else "dbos.workflow_status"
    with engine.store.writing() as connection:
        connection.execute(
            text(
                f"UPDATE {table} SET completed_at = completed_at - :ms"
                " WHERE workflow_uuid = 'send-71-0'"
            ),
            {"ms": 31 * 24 * 3600 * 1000},
        )
    engine.jobs._tidy(datetime.now(UTC), None)
    assert [each.workflow_id for each in (*of(71), *of(72))] == ["send-72-0"]


def test_a_tick_that_comes_far_too_late_is_passed_over(engine: Engine) -> None:
    """After the machine slept, the engine works off every minute that it missed."""
    desk = Desk()
    jobs = Jobs("", engine.jobs._presence, desk.work())
    long_ago = datetime.now(UTC) - LATEST_TICK - timedelta(seconds=1)
    jobs._carry(long_ago, None)
    jobs._plan(long_ago, None)
    assert (desk.taken_up, desk.rounds) == (0, 0)
    jobs._plan(datetime.now(UTC), None)
    assert desk.rounds == 1


def test_it_shares_our_file_in_wal_mode_on_sqlite(engine: Engine) -> None:
    """It does not set WAL by itself, and the webhook would wait for it."""
    if not engine.store.is_sqlite:
        with engine.store.reading() as connection:
            shared = connection.execute(text("SELECT count(*) FROM dbos.workflow_status"))
            assert shared.scalar_one() > 0
        return
    with engine.store.reading() as connection:
        assert connection.execute(text("PRAGMA journal_mode")).scalar() == "wal"
        assert connection.execute(text("SELECT count(*) FROM workflow_status")).scalar_one() > 0
