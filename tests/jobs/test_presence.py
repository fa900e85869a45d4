"""Which workers live on a store; and who loads their engine at all."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from sqlalchemy import text

from bot.ledger import Store
from bot.ledger.presence import ONLY_WORKER, NoRoomError, PostgresPresence, presence_on
from tests.jobs.desk import wait_until

ROOT = Path(__file__).resolve().parents[2]


def test_one_sqlite_store_has_one_worker(tmp_path: Path) -> None:
    url = f"sqlite:///{tmp_path / 'a.sqlite3'}"
    first, second = presence_on(url), presence_on(url)
    assert first.name == second.name == ONLY_WORKER
    first.begin()
    with pytest.raises(NoRoomError, match="room for one"):
        second.begin()
    first.end()
    second.begin()
    second.end()


def test_a_store_in_memory_has_no_room_for_a_worker() -> None:
    with pytest.raises(NoRoomError, match="in memory"):
        presence_on("sqlite://")


def test_every_worker_on_postgresql_has_a_name_of_its_own_and_is_seen_while_it_lives(
    postgres_url: str,
) -> None:
    first, second = PostgresPresence(postgres_url), PostgresPresence(postgres_url)
    first.begin()
    second.begin()
    assert first.name != second.name
    assert not second.is_gone(first.name)
    assert not first.is_gone(first.name)
    first.end()
    assert second.is_gone(first.name)
    assert second.is_gone("nobody-ever")
    second.end()


def test_a_worker_whose_connection_was_lost_shows_itself_again(postgres_url: str) -> None:
    first, second = PostgresPresence(postgres_url), PostgresPresence(postgres_url)
    first.begin()
    second.begin()
    store = Store(postgres_url)
    with store.writing() as connection:
        connection.execute(
            text(
                "SELECT pg_terminate_backend(pid) FROM pg_locks WHERE locktype = 'advisory'"
                " AND objid::bigint = (hashtext('pailtext:' || :name)::bigint & 4294967295)"
            ),
            {"name": first.name},
        )
    store.close()
    wait_until(lambda: second.is_gone(first.name))
    first.renew()
    assert not second.is_gone(first.name)
    first.end()
    second.end()


def test_only_a_worker_loads_the_engine() -> None:
    """It takes half a second, and whoever launches it must be the only one of its name."""
    modules = "bot.cli, bot.chat, bot.replay, bot.doctor, bot.serving"
    code = f"import sys, {modules}; sys.exit('dbos' in sys.modules)"
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    done = subprocess.run([sys.executable, "-c", code], env=environment, check=False)
    assert done.returncode == 0
