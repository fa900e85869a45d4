"""The private PostgreSQL that other tests stand on."""

from __future__ import annotations

import psycopg
import pytest

from tests.postgres import Server


def tables_of(url: str) -> set[str]:
    """The names of a database's own tables."""
    with psycopg.connect(url) as connection:
        rows = connection.execute("SELECT tablename FROM pg_tables WHERE schemaname = 'public'")
        return {name for (name,) in rows}


def test_an_empty_database_has_no_table(empty_postgres_url: str) -> None:
    assert tables_of(empty_postgres_url) == set()


def test_a_database_from_the_template_has_todays_tables(postgres_url: str) -> None:
    assert {"inbox", "record", "alembic_version"} <= tables_of(postgres_url)


@pytest.mark.parametrize("_turn", [1, 2])
def test_what_one_test_writes_is_gone_in_the_next(postgres_url: str, _turn: int) -> None:
    with psycopg.connect(postgres_url) as connection:
        assert connection.execute("SELECT count(*) FROM person").fetchone() == (0,)
        connection.execute("INSERT INTO person (met_utc) VALUES (now())")


def test_the_server_keeps_to_its_socket(postgres_server: Server) -> None:
    with psycopg.connect(postgres_server.url("postgres")) as connection:
        assert connection.execute("SHOW listen_addresses").fetchone() == ("",)
