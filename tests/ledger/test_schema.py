"""The tables: made at once or migrated, the same; and a store that is ahead is refused."""

from __future__ import annotations

import subprocess
import sys
from datetime import UTC, date, datetime
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.config import Config
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import create_engine, inspect, text
from sqlmodel import SQLModel

from bot.ledger import IN_MEMORY, Ledger, NewerStoreError, Store
from bot.ledger.schema import HEAD, MIGRATIONS, create_today, migrate, stamp


def test_the_head_is_the_newest_migration() -> None:
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS))
    assert ScriptDirectory.from_config(config).get_heads() == [HEAD]


def test_tables_made_at_once_are_those_that_the_migrations_make() -> None:
    migrated, at_once = create_engine("sqlite://"), create_engine("sqlite://")
    migrate(migrated)
    with at_once.begin() as connection:
        create_today(connection)
    sql = "SELECT name, sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY name"
    made = []
    for engine in (migrated, at_once):
        with engine.connect() as connection:
            made.append({name: _normal(words) for name, words in connection.execute(text(sql))})
        engine.dispose()
    assert made[0] == made[1]


def _normal(sql: str) -> list[str]:
    """One spelling: quotes, spaces and the order of a table's lines do not matter."""
    lines = sql.replace('"', "").replace("(", ",", 1).removesuffix(")").split(",")
    return sorted(" ".join(line.split()).rstrip(") ") for line in lines)


def test_the_migrated_postgresql_store_is_what_the_tables_say(postgres_url: str) -> None:
    store = Store(postgres_url)
    with store.engine.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        assert compare_metadata(context, SQLModel.metadata) == []
    store.close()


@pytest.fixture(params=["sqlite", "postgresql"])
def old_store_url(tmp_path: Path, request: pytest.FixtureRequest) -> str:
    """Where a store of an earlier schema is to be laid: both databases, nothing in it yet."""
    if request.param == "sqlite":
        return f"sqlite:///{tmp_path / 'old.sqlite'}"
    return str(request.getfixturevalue("empty_postgres_url"))


def test_an_old_store_is_brought_up_to_date_with_what_it_holds(old_store_url: str) -> None:
    """From the first migration on: a person, their text and their STOP are there afterwards."""
    engine = create_engine(old_store_url.replace("postgresql:", "postgresql+psycopg:"))
    migrate(engine, "0001")
    with engine.begin() as connection:
        for sentence in (
            "INSERT INTO person (id, met_utc) VALUES (1, '2027-03-01 12:00:00+00')",
            "INSERT INTO consent (person_id, said, how, at_utc)"
            " VALUES (1, 'stop', 'test: STOP', '2027-03-01 12:00:00+00')",
        ):
            if engine.dialect.name == "sqlite":
                sentence = sentence.replace("+00", ".000000")
            connection.execute(text(sentence))
    engine.dispose()
    ledger = Ledger.open(old_store_url)
    with ledger.reading() as book:
        (word,) = book.consents.of_person(1)
        assert (word.said, word.how, word.address) == ("stop", "test: STOP", None)
        assert word.at_utc == datetime(2027, 3, 1, 12, tzinfo=UTC)
        assert book.outbox.counts() == {}
    ledger.close()


def test_a_store_that_kept_no_days_keeps_them_from_now_on(old_store_url: str) -> None:
    """From the schema before: its forecast is there afterwards."""
    engine = create_engine(old_store_url.replace("postgresql:", "postgresql+psycopg:"))
    migrate(engine, "0004")
    assert "weather_day" not in inspect(engine).get_table_names()
    with engine.begin() as connection:
        connection.execute(
            text(
                "INSERT INTO forecast (source, cell_key, fetched_utc, told)"
                " VALUES ('nws', 'INV/1,2', '2027-03-01 12:00:00.000000', 'invented')"
            )
        )
    engine.dispose()
    ledger = Ledger.open(old_store_url)
    with ledger.writing() as book:
        assert book.forecasts.told("nws", "INV/1,2") == "invented"
        book.forecasts.keep_days("nws INV/1,2", [(date(2027, 3, 1), 0.4, 24.0, 44.0)])
    with ledger.reading() as book:
        assert len(book.forecasts.days("nws INV/1,2", date(2027, 1, 1))) == 1
    ledger.close()


def test_opening_twice_changes_nothing(store_url: str) -> None:
    Store(store_url).close()
    store = Store(store_url)
    with store.engine.connect() as connection:
        assert stamp(connection) == HEAD
    store.close()


def test_a_store_of_a_later_version_is_refused_with_what_to_do(tmp_path: Path) -> None:
    url = f"sqlite:///{tmp_path / 'later.sqlite'}"
    store = Store(url)
    with store.writing() as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))
    store.close()
    with pytest.raises(NewerStoreError, match=r"9999.*written by a later Pailtext"):
        Store(url)


def test_sqlite_runs_in_wal_with_full_sync_foreign_keys_and_a_timeout(tmp_path: Path) -> None:
    store = Store(f"sqlite:///{tmp_path / 'a.sqlite'}")
    with store.reading() as connection:
        found = {
            name: connection.execute(text(f"PRAGMA {name}")).scalar()
            for name in ("journal_mode", "synchronous", "foreign_keys", "busy_timeout")
        }
    store.close()
    assert found == {
        "journal_mode": "wal",
        "synchronous": 2,
        "foreign_keys": 1,
        "busy_timeout": 10_000,
    }


def test_the_folder_of_a_new_file_is_made(tmp_path: Path) -> None:
    Store(f"sqlite:///{tmp_path / 'not' / 'yet' / 'a.sqlite'}").close()
    assert (tmp_path / "not" / "yet" / "a.sqlite").exists()


def test_a_current_store_is_opened_without_alembic(tmp_path: Path) -> None:
    """alembic takes a third of a second to import."""
    url = f"sqlite:///{tmp_path / 'a.sqlite'}"
    code = (
        "import sys; from bot.ledger import Store;"
        f"[Store({url!r}).close() for _ in range(2)];"
        "sys.exit('alembic' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def test_a_transaction_that_raises_leaves_nothing(store_url: str) -> None:
    store = Store(store_url)

    def fail() -> None:
        with store.writing() as connection:
            connection.execute(text("INSERT INTO sugarbush (made_utc) VALUES ('2027-03-01')"))
            raise RuntimeError

    with pytest.raises(RuntimeError):
        fail()
    with store.reading() as connection:
        assert connection.execute(text("SELECT count(*) FROM sugarbush")).scalar() == 0
    store.close()


def test_a_store_in_memory_has_the_tables() -> None:
    store = Store(IN_MEMORY)
    assert "record" in inspect(store.engine).get_table_names()
    store.close()
