"""`deploy/pailtext` and `.ci/run`, on a small house with a stand-in for what gets installed."""

from __future__ import annotations

import os
import shutil
import stat
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
TIMEOUT_S = 60

# What a bare system has: the commands that the launcher itself needs.
BARE = "sh dirname readlink cmp rm cp mv printf uname cat ln mkdir sleep".split()

BOT = """
import os, sys
print("|".join([os.getcwd(), *sys.argv[1:], sys.stdin.read()]))
"""
# Stands in for uv: notes what it was asked, and makes an environment of this very Python.
UV = f"""#!/bin/sh
echo "$1 $2" >>"$UV_LOG"
for last; do :; done
[ -e "$UV_LOG.fails" ] && exit 7
case $1 in
    venv) mkdir -p "$last/bin" && ln -sf "{sys.executable}" "$last/bin/python" ;;
    pip) sleep 0.3; echo noise ;;
esac
"""


@dataclass
class House:
    """A copy of the launcher with a small package, and the PATH that it is run with."""

    root: Path
    path: Path

    @property
    def launcher(self) -> Path:
        return self.root / "deploy" / "pailtext"

    @property
    def installed(self) -> Path:
        return self.root / ".venv" / "installed.lock"

    def start(
        self, *arguments: str, cwd: Path | None = None, launcher: Path | None = None
    ) -> subprocess.Popen[str]:
        return subprocess.Popen(
            [str(launcher or self.launcher), *arguments],
            cwd=cwd or self.root,
            env={"PATH": str(self.path), "UV_LOG": str(self.path / "uv.log"), "HOME": "/none"},
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        )

    def run(
        self, *arguments: str, cwd: Path | None = None, launcher: Path | None = None
    ) -> tuple[int, str, str]:
        """Its exit status, standard output and standard error."""
        started = self.start(*arguments, cwd=cwd, launcher=launcher)
        out, err = started.communicate("said", timeout=TIMEOUT_S)
        return started.returncode, out, err

    def asked_of_uv(self) -> list[str]:
        log = self.path / "uv.log"
        return log.read_text().splitlines() if log.exists() else []

    @property
    def uv_fails(self) -> Path:
        """While this file stands, uv fails."""
        return self.path / "uv.log.fails"

    def put(self, name: str, script: str) -> None:
        program = self.path / name
        program.unlink(missing_ok=True)
        program.write_text(script)
        program.chmod(0o755)


@pytest.fixture
def house(tmp_path: Path) -> House:
    """A house whose system has a Python and uv."""
    root = tmp_path / "a house"
    (root / "deploy").mkdir(parents=True)
    (root / "bot").mkdir()
    (root / "bot" / "__main__.py").write_text(BOT)
    shutil.copy2(ROOT / "deploy" / "pailtext", root / "deploy")
    (root / "deploy" / "requirements.lock").write_text("# run\n")
    (root / "deploy" / "requirements-test.lock").write_text("# run\n# test\n")
    path = tmp_path / "bin"
    path.mkdir()
    for name in BARE:
        found = shutil.which(name)
        if found is not None:
            (path / name).symlink_to(found)
    (path / "python3").symlink_to(os.path.realpath(sys.executable))
    made = House(root, path)
    made.put("uv", UV)
    return made


def test_the_first_run_sets_up_and_then_runs_the_command(house: House) -> None:
    status, out, err = house.run("read", "--a b", "")
    assert (status, out) == (0, f"{house.root}|read|--a b||said\n")
    assert "setting up" in err
    assert house.asked_of_uv() == ["venv --quiet", "pip sync"]


def test_a_later_run_sets_up_nothing(house: House) -> None:
    house.run("read")
    status, _, err = house.run("read")
    assert (status, err) == (0, "")
    assert house.asked_of_uv() == ["venv --quiet", "pip sync"]


def test_it_runs_in_any_folder_and_a_package_of_the_same_name_there_is_not_taken(
    house: House, tmp_path: Path
) -> None:
    elsewhere = tmp_path / "elsewhere"
    (elsewhere / "bot").mkdir(parents=True)
    (elsewhere / "bot" / "__main__.py").write_text("print('the wrong one')")
    assert house.run("chat", cwd=elsewhere)[1] == f"{elsewhere}|chat|said\n"


def test_it_runs_through_a_link(house: House, tmp_path: Path) -> None:
    link = tmp_path / "pailtext"
    link.symlink_to(Path("a house") / "deploy" / "pailtext")
    assert house.run("chat", cwd=tmp_path, launcher=link)[1] == f"{tmp_path}|chat|said\n"


def test_a_changed_lock_is_installed(house: House) -> None:
    house.run("read")
    (house.root / "deploy" / "requirements.lock").write_text("# run, newer\n")
    (house.root / "deploy" / "requirements-test.lock").write_text("# run, newer\n# test\n")
    house.run("read")
    assert house.asked_of_uv() == ["venv --quiet", "pip sync", "pip sync"]
    assert house.installed.read_text() == "# run, newer\n"


def test_the_environment_of_the_tests_serves_every_command(house: House) -> None:
    house.run("test")
    assert house.installed.read_text() == "# run\n# test\n"
    house.run("read")
    assert house.asked_of_uv() == ["venv --quiet", "pip sync"]


def test_two_copies_that_start_at_once_set_up_once(house: House) -> None:
    started = [house.start("read", str(n)) for n in range(4)]
    for n, copy in enumerate(started):
        out, err = copy.communicate("said", timeout=TIMEOUT_S)
        assert (copy.returncode, out) == (0, f"{house.root}|read|{n}|said\n"), err
    assert house.asked_of_uv() == ["venv --quiet", "pip sync"]


def test_an_installation_that_fails_is_said_and_done_again(house: House) -> None:
    """Neither uv nor pip can: the lock asks for what has no hash."""
    house.uv_fails.touch()
    for lock in ("requirements.lock", "requirements-test.lock"):
        (house.root / "deploy" / lock).write_text("./nowhere\n")
    status, out, err = house.run("read")
    assert (status, out) == (1, "")
    assert "could not set up" in err
    assert not house.installed.exists()
    house.uv_fails.unlink()
    assert house.run("read")[0] == 0


def test_where_uv_cannot_pip_does_it(house: House) -> None:
    house.uv_fails.touch()
    status, out, err = house.run("read")
    assert (status, out) == (0, f"{house.root}|read|said\n"), err
    assert "trying pip" in err
    assert (house.root / ".venv" / "pyvenv.cfg").exists()


@pytest.mark.parametrize("old", [None, "#!/bin/sh\nexit 1\n"], ids=["none", "too old"])
def test_without_a_python_it_says_so_plainly(house: House, old: str | None) -> None:
    (house.path / "python3").unlink()
    if old is not None:
        house.put("python3", old)
    status, out, err = house.run("read")
    assert (status, out) == (1, "")
    assert err.startswith("pailtext: needs Python 3.11 or newer, and found none")
    assert len(err.splitlines()) == 1


def test_a_newer_python_is_found_behind_an_older_one(house: House) -> None:
    (house.path / "python3.12").symlink_to(os.path.realpath(sys.executable))
    (house.path / "python3").unlink()
    house.put("python3", "#!/bin/sh\nexit 1\n")
    assert house.run("read")[0] == 0


def test_a_python_that_cannot_make_environments_is_said(house: House) -> None:
    (house.path / "uv").unlink()
    real = os.path.realpath(sys.executable)
    (house.path / "python3").unlink()
    house.put(
        "python3",
        '#!/bin/sh\ncase $2 in *ensurepip*) exit 1 ;; *"print("*) echo "$0" ;;'
        f' *) exec "{real}" "$@" ;; esac\n',
    )
    status, _, err = house.run("read")
    assert status == 1
    assert "apt install python3-venv" in err


def test_the_launcher_and_the_ci_script_may_be_run() -> None:
    for path in (ROOT / "deploy" / "pailtext", ROOT / "deploy" / "lock", ROOT / ".ci" / "run"):
        assert path.stat().st_mode & stat.S_IXUSR, path


def test_ci_runs_the_tests_as_the_readme_says() -> None:
    lines = (ROOT / ".ci" / "run").read_text(encoding="utf-8").splitlines()
    assert lines[-1] == "deploy/pailtext test </dev/null"
