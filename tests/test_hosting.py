"""What a host installs: the systemd unit, the container and its parts, the example of settings."""

from __future__ import annotations

import re
import shlex
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest
import typer
import yaml

from bot import settings
from bot.cli import app
from bot.settings import load_settings

ROOT = Path(__file__).resolve().parents[1]
DEPLOY = ROOT / "deploy"
INSTALLED = "/opt/pailtext"
# systemd's own scale, from 0 (nothing to fear) to 10; a service without any care has 9.6.
MOST_EXPOSED = 2.0


@pytest.fixture
def systemd_analyze() -> str:
    """The program that looks at units; the tests that want it skip without it, and say so."""
    found = shutil.which("systemd-analyze")
    if found is None:
        pytest.skip("no systemd-analyze here (Debian: apt install systemd)")
    return found


@pytest.fixture
def unit(tmp_path: Path) -> Path:
    """The unit, as if this checkout were installed."""
    words = (DEPLOY / "pailtext.service").read_text(encoding="utf-8")
    assert INSTALLED in words
    path = tmp_path / "pailtext.service"
    path.write_text(words.replace(INSTALLED, str(ROOT)), encoding="utf-8")
    return path


def run(*words: str) -> str:
    done = subprocess.run(
        words, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, check=False
    )
    assert done.returncode == 0, done.stdout
    return done.stdout


def test_systemd_finds_nothing_wrong_with_the_unit(systemd_analyze: str, unit: Path) -> None:
    assert run(systemd_analyze, "verify", "--man=no", str(unit)) == ""


def test_the_unit_is_hardened(systemd_analyze: str, unit: Path) -> None:
    said = run(systemd_analyze, "security", "--offline=yes", "--no-pager", str(unit))
    level = re.search(r"Overall exposure level for \S+: ([\d.]+)", said)
    assert level is not None, said
    assert float(level[1]) <= MOST_EXPOSED


def commands() -> dict[str, set[str]]:
    """Every command of ours with its options."""
    found = typer.main.get_command(app)
    return {
        name: {word for option in command.params for word in (*option.opts, *option.secondary_opts)}
        for name, command in found.commands.items()  # type: ignore[attr-defined]
    }


def assert_runs(words: list[str]) -> None:
    """A command line of ours names a command and options that there are."""
    name, *rest = words
    assert name in commands()
    assert {word for word in rest if word.startswith("-")} <= commands()[name]


def test_the_unit_starts_a_command_that_there_is() -> None:
    words = (DEPLOY / "pailtext.service").read_text(encoding="utf-8")
    (line,) = re.findall(r"^ExecStart=(.*)$", words, re.M)
    launcher, *command = shlex.split(line)
    assert Path(launcher.replace(INSTALLED, str(ROOT))).exists()
    assert_runs(command)


def test_the_unit_keeps_the_store_in_the_folder_that_it_may_write() -> None:
    words = (DEPLOY / "pailtext.service").read_text(encoding="utf-8")
    assert "StateDirectory=pailtext\n" in words
    assert "PAILTEXT_DATABASE_URL=sqlite:////var/lib/pailtext/" in words


def test_the_container_is_made_of_files_that_there_are() -> None:
    words = (DEPLOY / "Dockerfile").read_text(encoding="utf-8")
    copied = [shlex.split(line)[1:-1] for line in re.findall(r"^COPY .*$", words, re.M)]
    sources = [source for line in copied for source in line]
    assert sources
    kept = (DEPLOY / "Dockerfile.dockerignore").read_text(encoding="utf-8").splitlines()
    for source in sources:
        assert (ROOT / source).exists(), source
        assert f"!{source}" in kept, source


def test_the_container_runs_as_nobody_of_weight() -> None:
    words = (DEPLOY / "Dockerfile").read_text(encoding="utf-8")
    assert re.findall(r"^USER (\d+)$", words, re.M) == ["10001"]


@pytest.fixture
def compose() -> dict[str, Any]:
    found: dict[str, Any] = yaml.safe_load((DEPLOY / "compose.yaml").read_text(encoding="utf-8"))
    return found


def test_the_parts_are_web_worker_store_and_a_proxy_with_tls(compose: dict[str, Any]) -> None:
    services = compose["services"]
    assert set(services) == {"web", "worker", "store", "proxy"}
    for name in ("web", "worker"):
        assert_runs(services[name]["command"])
    assert "--no-worker" in services["web"]["command"]
    # Nothing but the proxy is reached from outside.
    assert [name for name, each in services.items() if "ports" in each] == ["proxy"]


def test_every_volume_is_declared(compose: dict[str, Any]) -> None:
    mounted = {
        mount.partition(":")[0]
        for service in compose["services"].values()
        for mount in service.get("volumes", ())
    }
    assert {name for name in mounted if not name.startswith(".")} == set(compose["volumes"])
    assert all((DEPLOY / name).exists() for name in mounted if name.startswith("."))


def test_the_settings_of_the_parts_are_ours(compose: dict[str, Any]) -> None:
    given = {
        name
        for service in ("web", "worker")
        for name in compose["services"][service]["environment"]
    }
    assert given <= set(settings.names())


def test_the_proxy_leads_to_where_the_web_listens(compose: dict[str, Any]) -> None:
    words = (DEPLOY / "Caddyfile").read_text(encoding="utf-8")
    assert "reverse_proxy web:8000" in words
    assert "8000" in compose["services"]["web"]["healthcheck"]["test"][-1]


def test_the_example_of_settings_can_be_read(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in settings.names():
        monkeypatch.delenv(name, raising=False)
    path = DEPLOY / "pailtext.env.example"
    assert settings.misspelt(path) == []
    found = load_settings(path)
    assert found.public_url == "https://sap.example"
    assert found.twilio_from == "+15550100099"
    assert found.weather_contact == "host@sap.example"
