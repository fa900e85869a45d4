"""What people write, and what it means: our own texts, a file a kind."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from bot.reading.kinds import KINDS
from bot.reading.lines import answer
from tests.reading.judge import faults

TEXTS = Path(__file__).parents[2] / "fixtures" / "texts"
FEWEST_A_KIND = 25
FEWEST_UNDERSTOOD = 0.93
"""The share of our texts that must be understood exactly."""


def _lines() -> list[dict[str, Any]]:
    return [
        json.loads(line)
        for path in sorted(TEXTS.glob("*.jsonl"))
        for line in path.read_text(encoding="utf-8").splitlines()
    ]


LINES = _lines()
NOT_YET = frozenset(
    line
    for line in (TEXTS / "not-yet.txt").read_text(encoding="utf-8").split("\n")
    if line and not line.startswith("#")
)


@pytest.mark.parametrize("line", LINES, ids=lambda line: line["id"])
def test_a_text_is_understood(line: dict[str, Any]) -> None:
    """Every reading and the asking are right, or the text is listed as not yet understood."""
    wrong = faults(line, json.loads(json.dumps(answer(line))))
    if line["id"] in NOT_YET:
        assert wrong, f"{line['text']!r} is understood now: take it off not-yet.txt"
    else:
        assert not wrong, f"{line['text']!r}: {wrong}"


@pytest.mark.parametrize("kind", [each.kind for each in KINDS])
def test_every_kind_has_texts_of_its_own(kind: str) -> None:
    """A new kind brings its texts along."""
    lines = (TEXTS / f"{kind}.jsonl").read_text(encoding="utf-8").splitlines()
    assert len(lines) >= FEWEST_A_KIND


def test_few_texts_are_not_yet_understood() -> None:
    """The list of what is missed stays short, and names texts that exist."""
    assert {line["id"] for line in LINES} >= NOT_YET
    assert len(NOT_YET) <= (1 - FEWEST_UNDERSTOOD) * len(LINES)
