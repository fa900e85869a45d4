"""`pailtext replay`: conversations lived through on a simulated clock."""

from __future__ import annotations

import json
import subprocess
import sys
from typing import Any

import pytest

from bot.replay import replay

ANN, BEN = "+15550100011", "+15550100012"


def play(*steps: tuple[str, str, str]) -> list[dict[str, Any]]:
    """The lines that come out of (at, from, text) steps."""
    lines = (json.dumps({"at": at, "from": who, "text": text}) for at, who, text in steps)
    return [json.loads(line) for line in replay(lines)]


def test_each_reply_says_what_it_answers_and_to_whom() -> None:
    out = play(
        ("2027-03-05T18:00", ANN, "12 gal at 2.2"),
        ("2027-03-05T18:05", ANN, "STOP"),
        ("2027-03-05T18:06", BEN, "3 gal"),
    )
    assert [(line["re"], line["to"], line["at"]) for line in out[:-1]] == [
        (0, ANN, "2027-03-05T18:00"),
        (2, BEN, "2027-03-05T18:06"),
    ]


def test_the_final_totals_are_those_of_the_first_sender_in_the_last_season() -> None:
    out = play(
        ("2026-03-05T18:00", ANN, "50 gal at 2"),
        ("2027-03-05T18:00", ANN, "10 taps"),
        ("2027-03-05T18:01", ANN, "12 gal at 2.2, $9 for lids"),
        ("2027-03-05T18:02", ANN, "dumped 2 gal"),
        ("2027-03-05T18:03", ANN, "drew off 1 pint"),
        ("2027-03-05T18:04", ANN, "bottled 2 half pints"),
        ("2027-03-05T18:05", ANN, "boiled 3 hours"),
        ("2027-03-05T18:06", BEN, "99 gal"),
    )
    assert out[-1] == {
        "final": {
            "sap_gallons": 12.0,
            "syrup_gallons": 0.125,
            "sap_brix_mean": 2.2,
            "taps": 10,
            "poured_out_gallons": 2.0,
            "jars_gallons": 0.125,
            "cost_dollars": 9.0,
            "boil_hours": 3.0,
        }
    }


def test_a_place_further_east_keeps_everybodys_wall_clock() -> None:
    """Halifax is an hour ahead of the clock that is taken before a place is known."""
    out = play(
        ("2027-03-05T18:00", ANN, "B3H 1A1"),
        ("2027-03-05T23:30", ANN, "20 L at 2"),
        ("2027-03-06T00:10", ANN, "5 L at 2"),
    )
    assert "Fri" in out[1]["text"]
    assert "Sat" in out[2]["text"]


def test_the_owners_line_of_the_evening_is_lived_through() -> None:
    out = play(
        ("2027-03-05T07:00", ANN, "05673"),
        ("2027-03-05T07:01", ANN, f"add {BEN}"),
        ("2027-03-05T07:02", BEN, "join"),
        ("2027-03-05T07:03", ANN, "tell me what helpers log"),
        ("2027-03-05T18:00", BEN, "12 gal at 2.2"),
        ("2027-03-07T08:00", ANN, "thanks"),
    )
    (line,) = [line for line in out[:-1] if line["re"] is None and line["to"] == ANN]
    assert (line["at"], line["kind"]) == ("2027-03-05T19:30", "reminder")
    assert "12 gal" in line["text"]


def test_nothing_in_is_nothing_out() -> None:
    assert play() == []


@pytest.mark.parametrize(
    "line",
    [
        '{"at": "2027-03-05T18:00"}',
        "[1]",
        "not json",
        '{"at": "2027-03-05T18:00Z", "from": "a", "text": "b"}',
        '{"at": "soon", "from": "a", "text": "b"}',
    ],
)
def test_a_line_that_is_no_step_is_named(line: str) -> None:
    with pytest.raises(ValueError, match="line 2"):
        list(replay(["\n", line]))


def run(arguments: list[str], typed: str) -> subprocess.CompletedProcess[str]:
    """The program itself."""
    return subprocess.run(
        [sys.executable, "-m", "bot", *arguments],
        input=typed, capture_output=True, text=True, check=False, timeout=60,
    )  # fmt: skip


def test_the_command_answers_lines_with_lines() -> None:
    step = {"at": "2027-03-05T18:00", "from": ANN, "text": "12 gal at 2.2"}
    done = run(["replay"], json.dumps(step) + "\n")
    assert done.returncode == 0, done.stderr
    reply, final = (json.loads(line) for line in done.stdout.splitlines())
    assert reply["re"] == 0
    assert final["final"]["sap_gallons"] == 12


def test_the_command_explains_a_bad_line() -> None:
    done = run(["replay"], "rubbish\n")
    assert (done.returncode, done.stdout) == (2, "")
    assert "line 1" in done.stderr


@pytest.mark.parametrize("command", ["replay", "chat"])
def test_what_takes_long_to_import_is_not_imported(command: str, tmp_path: Any) -> None:
    heavy = ("alembic", "dbos", "twilio", "matplotlib", "fastapi")
    arguments = {"replay": ["replay"], "chat": ["chat", "--store", str(tmp_path / "a.sqlite")]}
    code = (
        "import sys; from bot.cli import app;\n"
        f"app({arguments[command]!r}, standalone_mode=False)\n"
        f"print([name for name in {heavy!r} if name in sys.modules], file=sys.stderr)"
    )
    typed = {"replay": "", "chat": "12 gal at 2.2\n"}[command]
    done = subprocess.run(
        [sys.executable, "-c", code], input=typed, capture_output=True, text=True, check=True
    )
    assert done.stderr.splitlines()[-1] == "[]"
