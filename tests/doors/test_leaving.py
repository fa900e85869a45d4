"""A process that was told to stop ends, whatever a thread of its pool still waits for."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from tests.doors.running import environment

WAITS_FOR_EVER = """
import sys, threading
from concurrent.futures import ThreadPoolExecutor
from bot.serving import leave

begun = threading.Event()

def wait():
    begun.set()
    threading.Event().wait()

ThreadPoolExecutor().submit(wait)
begun.wait()
sys.stdout.write("closed")
"""
SOON_S = 3.0


def run(code: str, folder: Path, timeout_s: float) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-c", code],
        env=environment(folder),
        capture_output=True,
        text=True,
        check=False,
        timeout=timeout_s,
    )


def test_leaving_waits_for_no_thread_and_what_was_written_is_out(tmp_path: Path) -> None:
    done = run(WAITS_FOR_EVER + "leave()", tmp_path, 60.0)
    assert (done.returncode, done.stdout) == (0, "closed")


@pytest.mark.parametrize("code", [0, 1, 2])
def test_leaving_gives_the_code_that_it_was_told(tmp_path: Path, code: int) -> None:
    assert run(WAITS_FOR_EVER + f"leave({code})", tmp_path, 60.0).returncode == code


def test_without_leaving_python_would_wait_for_it(tmp_path: Path) -> None:
    with pytest.raises(subprocess.TimeoutExpired):
        run(WAITS_FOR_EVER, tmp_path, SOON_S)


@pytest.mark.parametrize(
    ("ended", "code", "said"),
    [
        ("sys.exit()", 0, ""),
        ("sys.exit(3)", 3, ""),
        ("sys.exit('no key')", 1, "work: no key\n"),
    ],
)
def test_a_command_that_exits_with_a_sentence_says_it_and_fails(
    tmp_path: Path, ended: str, code: int, said: str
) -> None:
    done = run(
        f"import sys; from bot.cli import _run; _run('work', lambda s: {ended})", tmp_path, 60.0
    )
    assert (done.returncode, done.stderr) == (code, said)
