"""A private PostgreSQL for the tests: one server a session, a database of its own for each test.

The server keeps nothing safe (fsync off), listens on a Unix socket in a folder of its own and
nowhere else, and is stopped at the end. Each worker of pytest-xdist starts its own.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from itertools import count
from pathlib import Path
from urllib.parse import urlencode

import psycopg
import pytest
from psycopg import sql

from bot.ledger.store import Store

SUPERUSER = "pailtext"
TEMPLATE = "pailtext_template"
# PostgreSQL refuses to run as root; Debian's packages make this account for it.
ACCOUNT_FOR_ROOT = "postgres"
START_TIMEOUT_S = 60
_NO_PROGRAMS = "no PostgreSQL server programs here (Debian: apt install postgresql)"


@dataclass(frozen=True)
class Server:
    """A running server, reached through the socket in `folder`."""

    folder: Path

    def url(self, database: str) -> str:
        """The URL of one of its databases."""
        return f"postgresql://{SUPERUSER}@/{database}?{urlencode({'host': str(self.folder)})}"

    def create(self, database: str, template: str | None = None) -> str:
        """Make a database, as a copy of `template` if there is one; its URL."""
        command = sql.SQL("CREATE DATABASE {}").format(sql.Identifier(database))
        if template is not None:
            command += sql.SQL(" TEMPLATE {}").format(sql.Identifier(template))
        self._run(command)
        return self.url(database)

    def drop(self, database: str) -> None:
        """Remove a database, whoever is still connected to it."""
        self._run(sql.SQL("DROP DATABASE {} WITH (FORCE)").format(sql.Identifier(database)))

    def _run(self, command: sql.SQL | sql.Composed) -> None:
        with psycopg.connect(self.url("postgres"), autocommit=True) as connection:
            connection.execute(command)


def programs() -> Path | None:
    """The folder of the server's programs, None where there is no server. The newest is taken."""
    on_path = shutil.which("initdb")
    found = sorted(
        Path("/usr/lib/postgresql").glob("*/bin/initdb"), key=lambda path: int(path.parts[-3])
    )
    if found:
        return found[-1].parent
    return None if on_path is None else Path(on_path).resolve().parent


@pytest.fixture(scope="session")
def postgres_server() -> Iterator[Server]:
    """A PostgreSQL server of our own. Without its programs: skipped, but under CI a failure."""
    if programs() is None:
        if os.environ.get("CI") == "true":
            pytest.fail(_NO_PROGRAMS)
        pytest.skip(_NO_PROGRAMS)
    with running_postgres() as server:
        yield server


@contextmanager
def running_postgres() -> Iterator[Server]:
    """A PostgreSQL server of our own, until the end of the block. Raises RuntimeError without its
    programs."""
    bin_folder = programs()
    if bin_folder is None:
        raise RuntimeError(_NO_PROGRAMS)
    # Short, as the path of a socket may have about 100 characters only.
    folder = Path(tempfile.mkdtemp(prefix="pailtext-", dir="/tmp"))
    as_user = ACCOUNT_FOR_ROOT if os.geteuid() == 0 else None
    if as_user is not None:
        shutil.chown(folder, as_user)
    data = folder / "data"
    options = (
        f"-c listen_addresses='' -k {folder} -c fsync=off -c synchronous_commit=off"
        " -c full_page_writes=off -c max_connections=100"
    )

    def run(program: str, *arguments: str) -> None:
        # pg_ctl leaves the server holding the output it was given: a file, not a pipe, or the
        # wait for its end would never finish.
        with (folder.parent / f"{folder.name}.out").open("w+") as output:
            done = subprocess.run(
                [str(bin_folder / program), *arguments],
                user=as_user,
                extra_groups=None if as_user is None else [],
                cwd="/",
                stdin=subprocess.DEVNULL,
                stdout=output,
                stderr=subprocess.STDOUT,
                check=False,
                timeout=START_TIMEOUT_S,
            )
            output.seek(0)
            assert done.returncode == 0, f"{program} failed: {output.read()}"

    try:
        run(
            "initdb", "--no-sync", "--auth=trust", "--encoding=UTF8", "--locale=C.UTF-8",
            f"--username={SUPERUSER}", "-D", str(data),
        )  # fmt: skip
        run("pg_ctl", "start", "-w", "-s", "-D", str(data), "-l", f"{folder}/log", "-o", options)
        try:
            yield Server(folder)
        finally:
            run("pg_ctl", "stop", "-w", "-s", "-m", "immediate", "-D", str(data))
    finally:
        shutil.rmtree(folder)
        (folder.parent / f"{folder.name}.out").unlink(missing_ok=True)


_NUMBERS = count(1)


@pytest.fixture
def empty_postgres_url(postgres_server: Server) -> Iterator[str]:
    """The URL of a new PostgreSQL database without any table."""
    name = f"empty_{next(_NUMBERS)}"
    yield postgres_server.create(name)
    postgres_server.drop(name)


@pytest.fixture(scope="session")
def _postgres_template(postgres_server: Server) -> str:
    """A database that has today's tables, to copy from: much quicker than to migrate each time."""
    store = Store(postgres_server.create(TEMPLATE))
    store.close()
    return TEMPLATE


@pytest.fixture
def postgres_url(postgres_server: Server, _postgres_template: str) -> Iterator[str]:
    """The URL of a new PostgreSQL database with today's tables, all empty."""
    name = f"test_{next(_NUMBERS)}"
    yield postgres_server.create(name, _postgres_template)
    postgres_server.drop(name)


@pytest.fixture(params=["sqlite", "postgresql"])
def store_url(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """The URL of a new, empty store: a test that takes it runs on both databases."""
    if request.param == "sqlite":
        return f"sqlite:///{tmp_path / 'pailtext.sqlite3'}"
    found: str = request.getfixturevalue("postgres_url")
    return found
