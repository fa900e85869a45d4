"""Replays kept as data in fixtures/mornings (the README there says how): what leaves, and when."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest
from typer.testing import CliRunner

from bot.cli import app

FOLDER = Path(__file__).parents[2] / "fixtures" / "mornings"
REPLAYS = [
    json.loads(line)
    for path in sorted(FOLDER.glob("*.jsonl"))
    for line in path.read_text(encoding="utf-8").splitlines()
]


def lived(told: dict[str, Any]) -> list[dict[str, Any]]:
    """The lines that `pailtext replay` gives."""
    asked = ["replay", "--until", told["until"]]
    if told["hours"] is not None:
        asked += ["--forecast", str(FOLDER / told["hours"])]
    done = CliRunner().invoke(app, asked, input="\n".join(map(json.dumps, told["steps"])))
    assert done.exit_code == 0, done.output
    return [json.loads(line) for line in done.stdout.splitlines()]


def matches(patterns: list[str], text: str) -> bool:
    return all(re.search(pattern, text, re.IGNORECASE) for pattern in patterns)


@pytest.mark.parametrize("told", REPLAYS, ids=[one["id"] for one in REPLAYS])
def test_a_replay_goes_as_its_file_says(told: dict[str, Any]) -> None:
    lines = lived(told)
    assert "final" in lines[-1]
    left = [line for line in lines[:-1] if line["re"] is None]
    assert [(line["at"], line["to"], line["kind"]) for line in left] == [
        (one["at"], one["to"], one["kind"]) for one in told["unasked"]
    ]
    for line, one in zip(left, told["unasked"], strict=True):
        assert matches(one["match"], line["text"]), (line["text"], one["match"])
    replies = {str(line["re"]): line["text"] for line in lines[:-1] if line["re"] is not None}
    for step, patterns in told.get("replies", {}).items():
        assert matches(patterns, replies[step]), (replies[step], patterns)


@pytest.mark.parametrize("told", REPLAYS, ids=[one["id"] for one in REPLAYS])
def test_what_leaves_comes_in_order_and_never_before_its_cause(told: dict[str, Any]) -> None:
    lines = lived(told)[:-1]
    times = [line["at"] for line in lines]
    assert times == sorted(times)
    assert all(line["at"] > told["steps"][0]["at"] for line in lines if line["re"] is None)


def test_an_unreadable_file_of_hours_is_refused_by_name(tmp_path: Path) -> None:
    hours = tmp_path / "hours.csv"
    hours.write_text("time_local,temp_f\n2027-03-01T00:00,warm\n")
    step = json.dumps({"at": "2027-03-01T08:00", "from": "+15550100031", "text": "hi"})
    done = CliRunner().invoke(app, ["replay", "--forecast", str(hours)], input=step)
    assert done.exit_code == 2
    assert "line 2" in done.stderr


def test_a_missing_file_of_hours_is_refused(tmp_path: Path) -> None:
    done = CliRunner().invoke(app, ["replay", "--forecast", str(tmp_path / "none.csv")], input="")
    assert done.exit_code == 2


def test_an_end_with_an_offset_is_refused() -> None:
    step = json.dumps({"at": "2027-03-01T08:00", "from": "+15550100031", "text": "hi"})
    done = CliRunner().invoke(app, ["replay", "--until", "2027-03-02T08:00+01:00"], input=step)
    assert done.exit_code == 2
