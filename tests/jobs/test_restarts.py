"""Engines that end and begin anew, and what one of them leaves to another."""

from __future__ import annotations

import time
from pathlib import Path

from sqlalchemy import text

from bot.ledger import Store
from bot.ledger.presence import PostgresPresence
from tests.jobs.desk import EVERY_SECOND, Desk, dues, running


def test_the_second_start_is_like_the_first_and_what_is_in_hand_is_finished_before_the_end(
    tmp_path: Path,
) -> None:
    """Schedules and queues that are there already are no error, and run on. (On PostgreSQL the
    next test starts twice, too.)"""
    url = f"sqlite:///{tmp_path / 'a.sqlite3'}"
    Store(url).close()
    finished: list[int] = []

    def slow() -> str:
        time.sleep(0.5)
        finished.append(1)
        return "sent"

    desk = Desk(outcomes={1: slow})
    with running(url, desk):
        desk.wait_for(*dues(1))
    assert finished == [1]
    desk = Desk()
    with running(url, desk):
        desk.wait_for(*dues(2))


def test_what_a_dead_worker_had_begun_is_taken_over_and_live_work_is_left_alone(
    postgres_url: str,
) -> None:
    """Nobody takes it over by itself. (That a killed process is seen to be dead is tested with
    real ones, in tests/faults.)"""
    store = Store(postgres_url)
    living, dead = PostgresPresence(postgres_url), PostgresPresence(postgres_url)
    living.begin()
    desk = Desk()
    with running(postgres_url, desk):
        desk.wait_for(*dues(1, 2))
    with store.writing() as connection:
        for number, name in ((1, dead.name), (2, living.name)):
            connection.execute(
                text(
                    "UPDATE dbos.workflow_status SET status = 'PENDING', executor_id = :name,"
                    " completed_at = NULL WHERE workflow_uuid = :id"
                ),
                {"name": name, "id": f"send-{number}-0"},
            )
    store.close()
    desk = Desk()
    with running(postgres_url, desk, take_over=EVERY_SECOND):
        desk.wait_for_ticks(4)
    assert desk.ids() == [1]
    living.end()
