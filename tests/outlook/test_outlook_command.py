"""`pailtext outlook`, from the outside."""

from __future__ import annotations

import json

from typer.testing import CliRunner

from bot.cli import app
from tests.outlook.invented import hours_of


def csv_of(days: list[tuple[float, float]]) -> str:
    rows = [f"{hour.at_local.isoformat()},{hour.temp_f:.2f}" for hour in hours_of(days)]
    return "\n".join(["time_local,temp_f", *rows])


def test_each_day_is_one_json_line_with_the_four_fields() -> None:
    result = CliRunner().invoke(app, ["outlook"], input=csv_of([(24, 43)] * 2))
    lines = [json.loads(line) for line in result.stdout.splitlines()]
    assert result.exit_code == 0
    assert [set(line) for line in lines] == [{"date", "outlook", "score", "why"}] * 2
    assert lines[1]["date"] == "2027-03-02"
    assert lines[1]["outlook"] == "likely"
    assert 0.25 <= lines[1]["score"] < 0.75


def test_a_broken_line_stops_it_with_the_line_on_standard_error() -> None:
    result = CliRunner().invoke(app, ["outlook"], input="time_local,temp_f\nnoon,40\n")
    assert result.exit_code == 2
    assert "outlook: line 2" in result.stderr
