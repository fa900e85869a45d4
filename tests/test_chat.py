"""`pailtext chat`: the conversation in the terminal."""

from __future__ import annotations

import os
import pty
import subprocess
import sys
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

import pytest

from bot.chat import Chat, PretendedTime, converse, fresh_store, store_url
from bot.clock import HandClock, utc_time
from bot.wiring import DEFAULT_ZONE, Parts, build

NOW = datetime.fromisoformat("2027-03-04T17:20")


@pytest.fixture
def parts(tmp_path: Path) -> Iterator[Parts]:
    built = build(store_url(tmp_path / "chat.sqlite"), HandClock(utc_time(NOW, DEFAULT_ZONE)))
    yield built
    built.ledger.close()


def say(parts: Parts, *lines: str) -> list[str]:
    """What is said to lines that are typed."""
    said: list[str] = []
    converse(Chat(parts, "+15550100001", PretendedTime(NOW)), lines, said.append)
    return said


def test_each_line_is_a_text_and_is_answered(parts: Parts) -> None:
    said = say(parts, "12 gal at 2.2", "how much so far")
    assert said[0].startswith("12 gal at 2.2, Thu.")
    assert "12 gal" in said[1]


def test_an_empty_line_leaves(parts: Parts) -> None:
    assert len(say(parts, "12 gal", "", "5 gal")) == 1


def test_silence_is_said_to_be_silence(parts: Parts) -> None:
    assert say(parts, "hi", "STOP")[1] == "(no reply)"


def test_the_pretended_time_can_be_moved(parts: Parts) -> None:
    said = say(parts, "lit the fire", "@+3h", "fire's out", "@2027-03-06T09:00", "5 gal", "@soon")
    assert "17:20" not in said[1]
    assert "20:20" in said[1]
    assert "3 h" in said[2]
    assert said[4].startswith("5 gal, Sat.")
    assert '"@+3h"' in said[5]


def test_the_tally_is_still_there_in_the_next_session(parts: Parts) -> None:
    say(parts, "12 gal at 2.2")
    assert "12 gal" in say(parts, "how much so far")[0]


def test_a_fresh_store_is_empty(tmp_path: Path) -> None:
    path = tmp_path / "chat.sqlite"
    for url in (store_url(path), fresh_store(path)):
        built = build(url, HandClock(utc_time(NOW, DEFAULT_ZONE)))
        assert "12 gal at 2.2" in say(built, "12 gal at 2.2")[0]
        assert "Season" not in say(built, "thanks")[0] or "12 gal" in say(built, "thanks")[0]
        built.ledger.close()


def test_the_command_answers_what_is_piped_in(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "bot", "chat", "--store", str(tmp_path / "a.sqlite"),
         "--at", "2027-03-04T17:20"],
        input="12 gal at 2.2\n", capture_output=True, text=True, check=True, timeout=60,
    )  # fmt: skip
    assert done.stdout.startswith("12 gal at 2.2, Thu.")


def test_the_command_talks_in_a_real_terminal(tmp_path: Path) -> None:
    ours, theirs = pty.openpty()
    process = subprocess.Popen(
        [sys.executable, "-m", "bot", "chat", "--store", str(tmp_path / "a.sqlite"),
         "--at", "2027-03-04T17:20"],
        stdin=theirs, stdout=theirs, stderr=theirs, env={**os.environ, "TERM": "dumb"},
    )  # fmt: skip
    os.close(theirs)
    os.write(ours, b"12 gal at 2.2\n\n")
    seen = b""
    while True:
        try:
            piece = os.read(ours, 4096)
        except OSError:
            break
        if not piece:
            break
        seen += piece
    assert process.wait(timeout=30) == 0
    os.close(ours)
    shown = seen.decode()
    assert "Text as you would from the sugarbush" in shown
    assert "12 gal at 2.2, Thu." in shown
    assert (tmp_path / "a.history").exists()
